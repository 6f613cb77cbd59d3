package lamp

import (
	"math"
	"strconv"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

const bySum = "sum of four corner factors of the lamp's rectangle as the leaf sees it, worked out by the program"

// Show enters the light of one lamp at a place, for a scope of the book that
// is the place's own. i tells several lamps apart.
func (l Lamp) Show(b *working.Book, i int, xMM, yMM float64) working.Number {
	key := "lamp_" + strconv.Itoa(i+1)
	flux := b.Typed(key+"_flux", "photons sent down by "+l.Name, "f", quantity.PhotonFlux, quantity.MicromolePerSecond.Base(l.FluxUmolS), 0)
	length := func(what, name, symbol string, mm float64) working.Number {
		return b.Typed(key+"_"+what, name, symbol, quantity.Length, mm, 0)
	}
	if l.AboveMM > 0 && l.AlongXMM < thin*l.AboveMM && l.AlongYMM < thin*l.AboveMM {
		return b.Work(smallLaw, key, "light of "+l.Name, flux, length("above", "lamp over the leaf", "h", l.AboveMM), length("aside", "aside of it", "r", math.Hypot(xMM-l.XMM, yMM-l.YMM)))
	}
	// A strip is shown as a panel of a millimetre: a pencil sees no difference.
	w, d := max(l.AlongXMM, 1), max(l.AlongYMM, 1)
	seen := 0.0
	if l.FluxUmolS > 0 {
		seen = l.PPFD(xMM, yMM) * w * d / 1e6 / l.FluxUmolS
	}
	return b.Work(panelLaw, key, "light of "+l.Name, flux, length("width", "width of the lamp", "w", w), length("length", "length of the lamp", "l", d),
		b.Found(key+"_seen", "share of what the leaf sees that is lamp", "F", quantity.Factor.WithDecimals(4, 4), seen, bySum))
}

// Show enters the light of all lamps at a place; ok is false for no lamp.
func (r Rig) Show(b *working.Book, xMM, yMM float64) (total working.Number, ok bool) {
	for i, l := range r {
		one := l.Show(b, i, xMM, yMM)
		if i == 0 {
			total = one
			continue
		}
		total = b.Work(addLaw, "lamps_"+strconv.Itoa(i+1), "light of the lamps together", total, one)
	}
	return total, len(r) > 0
}

// ShowDLI enters the light of a day of a light level for some hours.
func ShowDLI(b *working.Book, level working.Number, hours float64) working.Number {
	return b.Work(dliLaw, "dli", "light of a day", level, b.Typed("hours", "hours lit in a day", "h", LitHours, hoursADay.Base(hours), 0))
}

// ShowHours enters how long a level must be lit for the light of a day.
func ShowHours(b *working.Book, level working.Number, dli float64) working.Number {
	return b.Work(hoursLaw, "hours_needed", "hours a day for that light", b.Typed("dli_wanted", "light of a day wanted", "D", DayLight, dliUnit.Base(dli), 0), level)
}

// ShowKWh enters what the lamps take from the socket.
func ShowKWh(b *working.Book, watts, hours, days float64) working.Number {
	return b.Work(kwhLaw, "lamp_energy", "electricity of the lamps",
		b.Typed("lamp_power", "lamps, from the socket", "P", quantity.Power, quantity.Watt.Base(watts), 0),
		b.Typed("lamp_hours", "hours lit in a day", "h", LitHours, hoursADay.Base(hours), 0),
		b.Typed("lamp_days", "days", "d", quantity.Time, quantity.Day.Base(days), 0))
}

// ShowWatts enters the power that would light an area so.
func ShowWatts(b *working.Book, ppfd, areaM2, efficacy, share float64) working.Number {
	return b.Work(wattsLaw, "lamp_power_needed", "power of a lamp for that light",
		b.Typed("ppfd_wanted", "light on the leaf", "E", LightLevel, ppfdUnit.Base(ppfd), 0), b.Typed("lit_area", "area lit", "A", Ground, squareMetre.Base(areaM2), 0),
		b.Typed("efficacy", "photons for each joule", "e", Efficacy, umolPerJoule.Base(efficacy), 0), b.Typed("on_target", "share that falls on the area", "s", quantity.Share, share, 0))
}

// ShowLux enters what a lux meter's reading means for leaves; ok is false for
// light that no single factor serves.
func (s Source) ShowLux(b *working.Book, reading float64) (working.Number, bool) {
	f, known := sources[s]
	if !known || f.lux == "" {
		return working.Number{}, false
	}
	row := Facts.Get(f.lux)
	return b.Work(luxLaw, "ppfd", "light on the leaf", b.Typed("lux", "lux meter at the leaf", "l", Lux, quantity.Lux.Base(reading), 0),
		b.Fact("lux_factor", "lux for each µmol/m²/s of "+string(s), "k", LuxFactor, row.Value, row)), true
}

// ShowRaise enters how much higher a lamp must hang over leaves of a height.
func ShowRaise(b *working.Book, lampMM float64, leaves working.Number) working.Number {
	clearance := Facts.Get(factLampOverLeafMin)
	return b.Work(raiseLaw, "raise", "raise the lamp by", b.Typed("none", "nought", "z", quantity.Length, 0, 0), leaves,
		b.Fact("lamp_clear", "lamp over the leaves, at the least", "c", quantity.Length, quantity.Centimetre.Base(clearance.Value), clearance), b.Typed("lamp_height", "lamp over the lid", "a", quantity.Length, lampMM, 0))
}
