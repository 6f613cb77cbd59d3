package garden

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/science/lamp"
)

// lamps says what is to be said of the lamps and readings of the whole garden.
func (a *assessor) lamps() {
	if len(a.plan.Lamps) == 0 && len(a.plan.Lux) == 0 {
		a.findings = append(a.findings, lamp.Day{WindowOnly: true}.Check("garden")...)
		return
	}
	for i := range a.plan.Lamps {
		a.lamp(i)
	}
	a.luxes()
	if len(a.plan.Lamps) == 0 {
		return
	}
	if len(a.plan.Lux) == 0 {
		a.note("lamp-place", "lamps[0]", a.lampsStand(), "Light that walls throw back is not counted. A lux meter at the lid settles it: lux.")
	}
	c := lamp.Cautions()
	a.note("lamp-eyes", "lamps[0]", c[0], strings.Join(c[1:3], " "))
}

// lampsStand says where lamps and tubs are taken to be.
func (a *assessor) lampsStand() string {
	if !a.bayKnown() {
		return "The shelf or the tubs' outside is not known, so each tub is taken to stand with its middle under the lamps."
	}
	lamps := "The lamp is taken to hang along the bay, over its middle"
	if len(a.plan.Lamps) > 1 {
		lamps = "The lamps are taken to hang along the bay, side by side across it"
		if a.endToEnd() {
			lamps = "The lamps are taken to hang end to end along the bay"
		}
	}
	if len(a.plan.Tubs) == 1 {
		return lamps + ", and the tub to stand in its middle."
	}
	return lamps + ", and the tubs to stand side by side in its middle, " + a.plan.Tubs[0].Name + " at the left end."
}

// lamp says what one lamp of the plan lacks.
func (a *assessor) lamp(i int) {
	l, field := a.plan.Lamps[i], fmt.Sprintf("lamps[%d]", i)
	name := l.Name
	if name == "" {
		name = fmt.Sprintf("lamp %d", i+1)
	}
	switch {
	case l.Flux.Set():
	case l.Power.Set():
		a.note("flux-from-watts", field, fmt.Sprintf("Of %s only the watts are known. It is taken to send %s, as a white household lamp does.", name, quantity.Format(quantity.PhotonFlux, quantity.MicromolePerSecond.Base(fluxOf(l)), a.plan.Units)),
			"Look for the photon flux (µmol/s, PPF) on its data sheet: flux.")
	default:
		a.warn("lamp-no-flux", field, "Of "+name+" neither the photon flux nor the watts are known, so it counts as dark.", "Write flux or power, as its label says.")
	}
	if hoursOf(l) == 0 {
		a.warn("lamp-no-hours", field+".lit", "The hours of "+name+" begin and end at the same time, so it counts as dark.", "Write from when to when it is lit.")
	}
	if !l.AboveLid.Set() {
		a.note("lamp-height", field, fmt.Sprintf("It is not said how high %s hangs; %s over the lid is taken.", name, a.mm(lamp.StartClearMM())), "Measure from the lid up to the lamp: above_lid.")
	} else if over := float64(l.AboveLid.Value); over < lamp.LeafClearMM() {
		a.warn("lamp-close", field+".above_lid", fmt.Sprintf("%s hangs %s over the lid. Leaves want %s from a lamp at the least, or they dry and scorch.", upper(name), a.mm(over), a.mm(lamp.LeafClearMM())),
			"Hang it higher. Hold the back of a hand at leaf height for a minute: what is warm to the hand is too warm for a leaf.")
	}
	if !l.Length.Set() {
		a.note("lamp-size", field, "The size of "+name+" is not known, so it counts as one bright point: straight under it that is too much by up to a third, and aside of it too little.", "Measure the part that shines: length and width.")
	}
}

// luxes says which readings do not serve, and how long a day they count for.
func (a *assessor) luxes() {
	window, other := false, false
	for i, l := range a.plan.Lux {
		source := sourceOf(l)
		if _, ok := source.LuxPerUmol(); !ok {
			a.warn("lux-useless", fmt.Sprintf("lux[%d].source", i), "A lux meter sees little of red and blue light, so this reading is left out.", "Use the lamp's photon flux, or a meter for plants (PPFD).")
			continue
		}
		window = window || ofWindow(source)
		other = other || !ofWindow(source)
	}
	if len(a.plan.Lamps) > 0 || !window && !other {
		return
	}
	if other {
		a.note("lux-hours", "lux[0]", fmt.Sprintf("No lamp is in the plan; the light that was read is taken to be on for %s h a day.", quantity.FormatNumber(a.litHours(), 0)), "Write the lamp with its hours: lamps.")
		return
	}
	a.warn("window-read", "lux[0]", fmt.Sprintf("Light by a window changes with every cloud and from month to month. What was read counts for %s h a day.", quantity.FormatNumber(lamp.WindowHours(), 0)),
		"Read at 9:00, 12:00 and 15:00 on a bright and on a dull day, all at the same place; or hang a lamp.")
}

// checkLight says what there is to say about the light at a tub's holes.
func (t *tubState) checkLight(light tubLight, day lamp.Spread, out *Light) {
	field := "lamps[0]"
	if len(light.read) > 0 {
		field = "lux[0]"
	}
	said := map[string]bool{}
	for _, c := range t.kinds() {
		band := c.DLI()
		d := lamp.Day{Crop: c.Name, DLI: quantity.Round(day.Mean, 1), Low: band.Low, High: band.High, Hours: light.hours, Heading: c.Heading(), LongNight: c.LongNight()}
		for _, f := range d.Check(field) {
			if said[f.Code] || f.Code == "light-long" && t.index > 0 {
				continue
			}
			said[f.Code] = true
			t.findings = append(t.findings, t.named(f))
		}
	}
	t.uneven(field, out)
	t.ripe(field, out)
}

// ripe says where plants are not what is picked by the meal for want of light.
// Where light is not short, the season says it.
func (t *tubState) ripe(field string, out *Light) {
	m := out.Meal
	if m == nil || m.DarkReady || !(out.DLI > 0) {
		return
	}
	by := t.due().Words()
	if !m.Ready && out.DLI < out.WantLow {
		t.warn("light-meal", field, fmt.Sprintf("%s: in this light %s has %s on %s, and is picked at %s.", t.name, m.Crop, t.grams(m.MassG), by, t.grams(m.PickG)),
			"That is the middle of the forecast. A stronger or lower lamp, more days in the tub, or a smaller harvest_mass.")
		return
	}
	if !m.Ready {
		return
	}
	hint := "Swap its cup with that of a bright hole every week."
	if len(t.growth.each) > 1 {
		hint = "Put the other crop there, or s" + hint[1:]
	}
	t.note("light-dark-hole", field, fmt.Sprintf("%s: at the darkest hole, %d, %s has %s on %s, and is picked at %s.", t.name, m.DarkHole, m.DarkCrop, t.grams(m.DarkG), by, t.grams(m.DarkPickG)), hint)
}

// named puts a tub's name before what is said of it.
func (t *tubState) named(f finding.Finding) finding.Finding {
	f.Text = t.name + ": " + lower(f.Text)
	return f
}

// uneven says where the holes differ so much that plants will.
func (t *tubState) uneven(field string, out *Light) {
	if out.Even <= 0 || out.Even >= lamp.Uneven() || len(out.PPFD) < 2 {
		return
	}
	dark, bright := out.PPFD[0], out.PPFD[0]
	for _, h := range out.PPFD {
		if h.DLI < dark.DLI {
			dark = h
		}
		if h.DLI > bright.DLI {
			bright = h
		}
	}
	level := func(v float64) string {
		return quantity.Format(lamp.LightLevel, lamp.LightLevel.Metric.Base(v), t.plan.Units)
	}
	t.note("light-uneven", field, fmt.Sprintf("%s: hole %d gets %s and hole %d %s, so their plants will differ.", t.name, dark.N, level(dark.PPFD), bright.N, level(bright.PPFD)),
		"Swap the cups every week, or turn the tub end for end when it is empty. Never move a filled tub.")
}

// lower writes the first letter small.
func lower(text string) string {
	r, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return text
	}
	return string(unicode.ToLower(r)) + text[size:]
}
