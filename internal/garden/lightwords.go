package garden

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lamp"
)

// LightWords are what there is to know of the light of a tub, in sentences; none
// where nothing is known of it.
func (a *Assessment) LightWords(tub int) []string {
	l := a.Tubs[tub].Light
	if l == nil {
		return nil
	}
	system := a.Plan.Units
	from := "The lamps bring"
	if l.From == FromLux {
		from = "By the lux meter there are"
	}
	holes := fmt.Sprintf("mean of the %d holes", len(l.PPFD))
	if len(l.PPFD) == 1 {
		holes = "at the one hole"
	}
	out := []string{fmt.Sprintf("%s %s on the leaves (PPFD), %s, for %s h: %s a day (DLI). Its crops want %s to %s.", from,
		quantity.Format(lamp.LightLevel, lamp.LightLevel.Metric.Base(l.MeanPPF), system), holes, brief(l.Hours),
		dayLight(l.DLI), brief(l.WantLow), dayLight(l.WantTop))}
	if len(l.PPFD) > 1 {
		out = append(out, fmt.Sprintf("The darkest hole gets %s and the brightest %s.", quantity.FormatNumber(l.LowDLI, 1), dayLight(l.HighDLI)))
	}
	switch _, _, most := lamp.UsualHours(); {
	case l.DLI <= 0 || quantity.Round(l.DLI, 1) >= l.WantLow:
	case l.NeedH > 0:
		out = append(out, fmt.Sprintf("%s h a day would bring the least that is wanted.", brief(l.NeedH)))
	default:
		out = append(out, fmt.Sprintf("No day is long enough for that in this light: leaves stand %s h of it at most.", quantity.FormatNumber(most, 0)))
	}
	if l.RaiseMM > 0 {
		out = append(out, fmt.Sprintf("Over the grown crop the lamp hangs %s higher than on transplant day.", quantity.Format(quantity.Length, l.RaiseMM, system)))
	}
	return append(out, a.mealWords(l)...)
}

// mealWords are what the light brings by the meal, and what it takes.
func (a *Assessment) mealWords(l *Light) []string {
	m := l.Meal
	if m == nil {
		return nil
	}
	grams := func(g float64) string {
		return quantity.Format(quantity.SmallMass, quantity.Gram.Base(g), a.Plan.Units)
	}
	by := m.By
	if day, err := term.ParseDate(m.By); err == nil {
		by = day.Words()
	}
	out := []string{fmt.Sprintf("After %d days in the tub, by %s, the middle of the forecast has one plant of %s at %s, and at the darkest hole one of %s at %s; they are picked at %s and %s.",
		m.Days, by, m.Crop, grams(m.MassG), m.DarkCrop, grams(m.DarkG), grams(m.PickG), grams(m.DarkPickG))}
	if m.Crop == m.DarkCrop {
		out[0] = fmt.Sprintf("After %d days in the tub, by %s, the middle of the forecast has one plant of %s at %s, and at %s at the darkest hole; it is picked at %s.",
			m.Days, by, m.Crop, grams(m.MassG), grams(m.DarkG), grams(m.PickG))
	}
	if m.KWh > 0 {
		fee := ""
		if m.Cost != nil {
			fee = ", which cost " + a.Money(*m.Cost)
		}
		out = append(out, fmt.Sprintf("All the lamps take %s kWh a day, and %s kWh in those days%s.", quantity.FormatNumber(l.KWhADay, 2), quantity.FormatNumber(m.KWh, 0), fee))
	}
	return out
}

func dayLight(v float64) string { return brief(v) + "\u00a0mol/m²" }

// brief writes a number with one decimal, or with none where that is nought.
func brief(v float64) string { return strings.TrimSuffix(quantity.FormatNumber(v, 1), ".0") }

// AirWords are what there is to know of a tub's oxygen, in sentences; none for a
// tub without a pump.
func (a *Assessment) AirWords(tub int) []string {
	o := a.Tubs[tub].Oxygen
	if o == nil {
		return nil
	}
	system := a.Plan.Units
	flow := func(lMin float64) string {
		return quantity.Format(quantity.AirFlow, quantity.LitrePerMinute.Base(lMin), system)
	}
	mg := func(v float64) string { return quantity.FormatNumber(v, 1) }
	out := []string{
		fmt.Sprintf("On a warm day, with the water at %s and the plants grown, full water holds %s mg/L of oxygen.", quantity.Format(quantity.Temperature, quantity.Celsius.Base(o.WarmC), system), mg(o.SaturateMgL)),
		fmt.Sprintf("The pump's %s keep it at %s mg/L, with a poor stone at %s.", flow(o.HaveLMin), mg(o.SteadyMgL), mg(o.LowMgL)),
	}
	if o.NeedLMin > 0 {
		out = append(out, fmt.Sprintf("To hold %s mg/L the roots want %s.", quantity.FormatNumber(o.HoldMgL, 0), flow(o.NeedLMin)))
	}
	if o.To4H > 0 {
		out = append(out, fmt.Sprintf("When the pump stops, a tub with a poor stone falls to 4 mg/L in %s h, to 3 in %s h and to 2 in %s h.", mg(o.To4H), mg(o.To3H), mg(o.To2H)))
	}
	return append(out, o.QuietWords(), fmt.Sprintf("The pump blows against %s of water, and tube and stone besides. Without a check valve water can run back through the line when a pump that stands low stops.", quantity.Format(quantity.Length, o.HeadMM, system)))
}

// LampCautions are what stands where a lamp is hung or worked under.
func LampCautions() []string { return lamp.Cautions() }

// LampHeight is how high a lamp hangs over the lid while leaves stand so high.
type LampHeight struct{ LeavesMM, LampMM float64 }

// LampHeights are the heights of a tub's lowest lamp over leaves up to the grown
// crop, in steps that a ruler has; none without a lamp.
func (a *Assessment) LampHeights(tub int) []LampHeight {
	l := a.Tubs[tub].Light
	height, known := a.Book.Find("tubs." + Slug(a.Tubs[tub].Name) + ".light.lamp_1.raise")
	if l == nil || len(l.Lamps) == 0 || !known || len(height.Inputs) < 2 {
		return nil
	}
	above := l.Lamps[0].AboveMM
	for _, one := range l.Lamps {
		above = min(above, one.AboveMM)
	}
	step := 50.0
	if a.Plan.Units == quantity.US {
		step = 2 * 25.4
	}
	grown := height.Inputs[1].Base
	var out []LampHeight
	for leaves := step; leaves < grown+step-0.01 && len(out) < 12; leaves += step {
		out = append(out, LampHeight{leaves, math.Ceil((above+lamp.RaiseMM(above, leaves))/step*4-1e-9) * step / 4})
	}
	return out
}

// QuietWords tell how long the pump may be off for a lesson.
func (o *Oxygen) QuietWords() string {
	if !(o.QuietMin > 0) {
		return "Do not stop the pump for a lesson."
	}
	return fmt.Sprintf("For a quiet lesson the pump may be off %s min at most. Set a timer to switch it on again.", quantity.FormatNumber(o.QuietMin, 0))
}
