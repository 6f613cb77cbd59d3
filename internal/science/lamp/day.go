package lamp

import "rootbell/internal/base/facts"

func value(id facts.ID) float64 { return Facts.Get(id).Value }

// DLI is the light of a day, mol/m²/d, of a PPFD in µmol/m²/s for some hours.
func DLI(ppfd, hours float64) float64 { return ppfd * hours * 3600 / 1e6 }

// Hours are how long a lamp is lit, in hours a day.
type Hours struct {
	Wanted  float64 // what the light of a day needs at this PPFD
	Given   float64 // within what leaves stand
	Reaches float64 // the light of a day that this gives, mol/m²/d
}

// HoursFor is how long a PPFD in µmol/m²/s must be lit for the light of a day,
// never over the most that leaves stand. In the dark no hours serve: Wanted is
// then 24 and Reaches 0.
func HoursFor(dli, ppfd float64) Hours {
	most := value(factLampHoursMax)
	if !(ppfd > 0) {
		return Hours{Wanted: 24, Given: most}
	}
	wanted := dli * 1e6 / (ppfd * 3600)
	given := min(wanted, most)
	return Hours{Wanted: wanted, Given: given, Reaches: DLI(ppfd, given)}
}

// UsualHours are the least, usual and most hours a day that leafy crops are lit.
func UsualHours() (least, usual, most float64) {
	return value(factLampHoursMin), value(factLampHours), value(factLampHoursMax)
}

// WindowHours is how many hours a day light by a window counts, where it was
// read at several hours.
func WindowHours() float64 { return value(factWindowHours) }

// Uneven is the light of the darkest hole beside the mean under which plants
// grow visibly apart.
func Uneven() float64 { return value(factLampEven) }

// DarkHours is the night that tomato and strawberry want at the least.
func DarkHours() float64 { return value(factLampDarkMin) }

// KWh is the energy of a power in watts for some hours a day and days.
func KWh(watts, hoursADay, days float64) float64 { return watts * hoursADay * days / 1000 }

// WattsFor is the power that lights an area in m² with a PPFD, for an efficacy
// in µmol/J and the share of the photons that fall where they are wanted. It is
// 0 where efficacy or share is.
func WattsFor(ppfd, areaM2, efficacy, share float64) float64 {
	if !(efficacy*share > 0) {
		return 0
	}
	return ppfd * areaM2 / (efficacy * share)
}

// FluxOfWatts is what a white household lamp of some watts sends, in µmol/s,
// where nothing but its watts is known.
func FluxOfWatts(watts float64) float64 { return watts * value(factLampEfficacyHousehold) }
