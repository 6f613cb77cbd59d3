package garden

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/lamp"
)

// Where the light of a tub is known from.
const (
	FromLamps = "lamps"
	FromLux   = "lux readings"
)

// lit works out the light at the holes of a tub that is laid out.
func (t *tubState) lit() {
	light, places := t.lightOf(t.index), t.holePlaces()
	if !light.known() || len(places) == 0 {
		return
	}
	out := &Light{From: FromLamps, Hours: quantity.Round(light.hours, 2), KWhADay: quantity.Round(light.rig.KWhADay(), 3), Key: t.book.Key("light")}
	if len(light.read) > 0 {
		out.From = FromLux
	}
	dli := make([]float64, len(places))
	for i, v := range light.at(places) {
		dli[i] = light.dli(places[i])
		out.PPFD = append(out.PPFD, HoleLight{N: i + 1, PPFD: quantity.Round(v, 1), DLI: quantity.Round(dli[i], 2)})
	}
	steady := light.steady(places)
	level, day := lamp.SpreadOf(steady), lamp.SpreadOf(dli)
	out.MeanPPF, out.DLI, out.Even = quantity.Round(level.Mean, 1), quantity.Round(day.Mean, 2), quantity.Round(level.Even, 3)
	out.LowDLI, out.HighDLI = quantity.Round(day.Least, 2), quantity.Round(day.Most, 2)
	out.WantLow, out.WantTop = t.wantedLight()
	if h := lamp.HoursFor(out.WantLow, level.Mean); h.Wanted <= h.Given {
		out.NeedH = quantity.Round(h.Wanted, 2)
	}
	out.Lamps = light.rig
	for _, l := range light.rig {
		out.RaiseMM = max(out.RaiseMM, quantity.Round(lamp.RaiseMM(l.AboveMM, t.growth.height.Base), 1))
	}
	t.out.Light = out
	t.showLight(light, places, steady, level.Mean)
	t.mealLight(light, steady)
	t.checkLight(light, day, out)
}

// wantedLight is the daily light that suits all crops of the tub: as much as the
// one that wants most, and no more than what the one that wants least can use.
func (t *tubState) wantedLight() (low, top float64) {
	for i, c := range t.kinds() {
		band := c.DLI()
		low = max(low, band.Low)
		if i == 0 || band.High < top {
			top = band.High
		}
	}
	return low, max(low, top)
}

// showLight enters the light at the darkest and at the brightest hole, and that
// of the day over all.
func (t *tubState) showLight(light tubLight, places []lamp.Point, steady []float64, mean float64) {
	b := t.book.In("light")
	darkest, brightest := 0, 0
	for i := range steady {
		if steady[i] < steady[darkest] {
			darkest = i
		}
		if steady[i] > steady[brightest] {
			brightest = i
		}
	}
	if len(light.read) > 0 {
		t.showRead(b)
	}
	for _, i := range []int{darkest, brightest} {
		at := b.In(fmt.Sprintf("hole_%d", i+1))
		if len(light.read) == 0 {
			light.rig.Show(at, places[i].XMM, places[i].YMM)
			continue
		}
		at.Found("ppfd", fmt.Sprintf("light on the leaf at hole %d", i+1), "E", lamp.LightLevel, lamp.LightLevel.Metric.Base(steady[i]),
			"search: the mean of the readings, each weighted by one over the square of its distance")
	}
	var sum []string
	for _, v := range steady {
		sum = append(sum, quantity.FormatNumber(v, 1))
	}
	how := fmt.Sprintf("search: the mean of the holes, (%s)/%d", strings.Join(sum, " + "), len(sum))
	level := b.Found("ppfd_mean", "light on the leaf, mean of the holes", "E", lamp.LightLevel, lamp.LightLevel.Metric.Base(mean), how)
	lamp.ShowDLI(b, level, light.hours)
	if low, _ := t.wantedLight(); mean > 0 {
		t.showWanted(b, low)
		lamp.ShowHours(b, level, low)
	}
	for i, l := range light.rig {
		lamp.ShowRaise(b.In(fmt.Sprintf("lamp_%d", i+1)), l.AboveMM, t.growth.height)
	}
}

// showWanted enters the row of the crop that wants the most light.
func (t *tubState) showWanted(b *working.Book, low float64) {
	for _, c := range t.kinds() {
		if f := c.LeastDLI(); f.Value == low {
			b.Fact("dli_wanted", "light of a day wanted by "+c.Name, "D", lamp.DayLight, lamp.DayLight.Metric.Base(low), f)
			return
		}
	}
}

// showRead enters what each reading of the lux meter means for leaves.
func (t *tubState) showRead(b *working.Book) {
	for i, l := range t.plan.Lux {
		sourceOf(l).ShowLux(b.In(fmt.Sprintf("reading_%d", i+1)), float64(l.Value.Value))
	}
}

// priceKind is the price of a kilowatt-hour.
var priceKind = quantity.Money

var feeLaw = working.Must(working.Law{
	Symbol: "c", Kind: quantity.Money, Unit: quantity.Money.Metric, Empirical: true, Formula: "W*p",
	Where: []working.Symbol{
		{Name: "W", Meaning: "electricity", Kind: lamp.Energy, Unit: lamp.Energy.Metric},
		{Name: "p", Meaning: "price of a kilowatt-hour", Kind: priceKind, Unit: priceKind.Metric},
	},
	Basis: working.OfNature, Source: "kilowatt-hours times their price",
})

// grownPlant is a plant on the day it is to be ready.
type grownPlant struct {
	crop        string
	grams, pick float64
}

func (p grownPlant) ready() bool { return p.grams >= p.pick }

// mealLight is how far the light brings plants by the meal, and what the lamps
// take until then.
func (t *tubState) mealLight(light tubLight, steady []float64) {
	d, ok := t.growDays(light)
	level := lamp.SpreadOf(steady)
	if !ok || !(level.Mean > 0) {
		return
	}
	count := len(steady)
	key := fmt.Sprintf("meal %v %v %v %v %d %v %v", d, light.source, t.growth.each, t.typed.HarvestMass, count, level, t.perM2(count))
	both, _ := remembered(t.in.Memory, key, func() ([2]grownPlant, error) {
		var out [2]grownPlant
		for i, ppfd := range []float64{level.Mean, level.Least} {
			c, grams, pick := t.grownAt(d, light.source, ppfd, count)
			out[i] = grownPlant{c.Name, grams, pick}
		}
		return out, nil
	})
	mean, dark := both[0], both[1]
	m := &MealLight{
		By: d.To.String(), Days: len(d.Open), DarkHole: slices.Index(steady, level.Least) + 1,
		Crop: mean.crop, MassG: quantity.Round(mean.grams, 1), PickG: quantity.Round(mean.pick, 1), Ready: mean.ready(),
		DarkCrop: dark.crop, DarkG: quantity.Round(dark.grams, 1), DarkPickG: quantity.Round(dark.pick, 1), DarkReady: dark.ready(),
	}
	t.electricity(light.rig, m)
	t.out.Light.Meal = m
}

// electricity is what all lamps of the garden take in the days of a tub.
func (t *tubState) electricity(rig lamp.Rig, m *MealLight) {
	watts, wattHours := 0.0, 0.0
	for _, l := range rig {
		watts, wattHours = watts+l.PowerWatts, wattHours+l.PowerWatts*l.HoursADay
	}
	if !(watts > 0) {
		return
	}
	book := t.book.In("light")
	book.Found("lamp_days", "days in the tub", "d", quantity.Time, quantity.Day.Base(float64(m.Days)), "search: the days of the calendar from the move into the tub to "+t.due().Long())
	energy := lamp.ShowKWh(book, watts, wattHours/watts, float64(m.Days))
	m.KWh = *in(energy, lamp.Energy.Metric, 2)
	if price, told := t.plan.Prices["electricity"]; told {
		fee := book.Work(feeLaw, "lamp_fee", "price of that electricity", energy, book.Typed("electricity", "price of a kilowatt-hour", "p", priceKind, float64(price.Value), 0))
		m.Cost = in(fee, quantity.Money.Metric, 2)
	}
}
