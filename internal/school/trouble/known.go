package trouble

import (
	"fmt"

	"rootbell/internal/base/quantity"
)

// Figure is a figure that may not be known.
type Figure struct {
	Value float64
	Known bool
}

// Of is a figure that is known.
func Of(v float64) Figure { return Figure{v, true} }

// Known is what the plan and the logbook tell of a tub.
type Known struct {
	Units         quantity.System // in which reasons are told
	Crop          string
	Heading       bool // a lettuce that closes its head
	Still         bool
	EC            Figure // mS/cm, as last read
	ECLow, ECHigh float64
	PH            Figure
	PHLow, PHHigh float64
	WaterC        Figure // °C
	RoomC         Figure
	OxygenMgL     Figure // worked out for the tub as it stands
	DLI           Figure // mol/m²/d at the leaves
	DLILow        float64
	DLIHigh       float64
	Humidity      Figure   // %
	ChlorineMgL   Figure   // of the tap, chloramine too
	SinceChange   Figure   // days since the water was last new
	SinceMove     Figure   // days since the plants went in
	SinceAway     Figure   // days since a long closed stretch ended
	SinceFed      Figure   // hours since something was poured in
	PastHarvest   bool     // the days of harvest are over
	Low           bool     // the last reading stands under the lowest safe line
	Leak          bool     // more is gone than thirst explains
	RootsBrown    bool     // as the logbook says
	Smells        bool     // likewise
	Gathered      string   // what has built up from the tap; empty: nothing over its limit
	Lacks         []string // nutrients that the mix does not bring
	MeterDue      bool     // nobody knows whether the meter tells the truth
}

// clue is something that the readings or the history may tell.
type clue string

const (
	strong    clue = "strong"
	weak      clue = "weak"
	sour      clue = "sour"
	alkaline  clue = "alkaline"
	warm      clue = "warm"
	cold      clue = "cold"
	airless   clue = "airless"
	dim       clue = "dim"
	bright    clue = "bright"
	damp      clue = "damp"
	chlorine  clue = "chlorine"
	oldWater  clue = "old water"
	justMoved clue = "just moved"
	wasAway   clue = "was away"
	justFed   clue = "just fed"
	overdue   clue = "overdue"
	lowLine   clue = "low line"
	losing    clue = "losing"
	rotten    clue = "rotten"
	gathered  clue = "gathered"
	noIron    clue = "no iron"
	noMg      clue = "no magnesium"
	noN       clue = "no nitrogen"
	noP       clue = "no phosphorus"
	untested  clue = "untested"
	stillTub  clue = "still tub"
)

// told is whether a clue holds, in words; known is false where nobody measured
// it, and then it speaks neither for nor against.
func (k Known) told(c clue) (says string, holds, known bool) {
	over := func(f Figure, limit float64, yes string) (string, bool, bool) {
		return fmt.Sprintf(yes, f.Value, limit), limit > 0 && f.Known && f.Value > limit, f.Known && limit > 0
	}
	under := func(f Figure, limit float64, yes string) (string, bool, bool) {
		return fmt.Sprintf(yes, f.Value, limit), f.Known && f.Value < limit, f.Known && limit > 0
	}
	switch c {
	case strong:
		return over(k.EC, k.ECHigh, "the EC as last read, %.2f, is over %.2f mS/cm")
	case weak:
		return under(k.EC, k.ECLow, "the EC as last read, %.2f, is under %.2f mS/cm")
	case sour:
		return under(k.PH, k.PHLow, "the pH as last read, %.1f, is under %.1f")
	case alkaline:
		return over(k.PH, k.PHHigh, "the pH as last read, %.1f, is over %.1f")
	case warm:
		return k.degrees("the water is warm: %s, over %s", k.warmC(), k.WaterC.Value > k.warmC())
	case cold:
		return k.degrees("the water is cold: %s, under %s", value(factWaterCold), k.WaterC.Value < value(factWaterCold))
	case airless:
		return under(k.OxygenMgL, value(factOxygenLow), "the pump leaves %.1f mg/L of oxygen in the water, under %.0f")
	case dim:
		return under(k.DLI, k.DLILow, "the lamp brings %.1f mol of light a day, under %.0f")
	case bright:
		return over(k.DLI, k.brightDLI(), "the lamp brings %.1f mol of light a day, over %.0f")
	case damp:
		return over(k.Humidity, value(factAirHumid), "the air is damp: %.0f %%, over %.0f")
	case chlorine:
		return over(k.ChlorineMgL, value(factChlorineHarm), "the tap has %.1f mg/L of chlorine, over %.1f")
	case oldWater:
		return over(k.SinceChange, value(factOldDays), "the water is %.0f days old, over %.0f")
	case justMoved:
		return under(k.SinceMove, value(factNewDays), "the plants went in %.0f days ago, under %.0f")
	case wasAway:
		return under(k.SinceAway, value(factAwayDays), "a long closed stretch ended %.0f days ago, under %.0f")
	case justFed:
		return under(k.SinceFed, value(factLatelyHours), "something was poured in %.0f hours ago, under %.0f")
	}
	return k.plain(c)
}

// plain are the clues that are there or not.
func (k Known) plain(c clue) (says string, holds, known bool) {
	lacks := func(symbol, word string) (string, bool, bool) {
		for _, l := range k.Lacks {
			if l == symbol {
				return "the mix brings too little " + word, true, true
			}
		}
		return "", false, len(k.Lacks) > 0
	}
	switch c {
	case overdue:
		return "the days of harvest are over", k.PastHarvest, k.PastHarvest
	case lowLine:
		return "the line as last read is under the lowest safe line", k.Low, k.Low
	case losing:
		return "more is gone than thirst explains", k.Leak, k.Leak
	case rotten:
		return "the logbook says brown roots or a bad smell", k.RootsBrown || k.Smells, k.RootsBrown || k.Smells
	case gathered:
		return k.Gathered, k.Gathered != "", k.Gathered != ""
	case noIron:
		return lacks("Fe", "iron")
	case noMg:
		return lacks("Mg", "magnesium")
	case noN:
		return lacks("N", "nitrogen")
	case noP:
		return lacks("P", "phosphorus")
	case untested:
		return "nobody knows whether the meter tells the truth", k.MeterDue, k.MeterDue
	case stillTub:
		return "the tub has no pump", k.Still, k.Still
	}
	return "", false, false
}

// degrees is a clue of the water's warmth, in the units of the garden.
func (k Known) degrees(yes string, limitC float64, holds bool) (says string, is, known bool) {
	show := func(c float64) string {
		return quantity.Format(quantity.Temperature.WithDecimals(0, 0), quantity.Celsius.Base(c), k.Units)
	}
	return fmt.Sprintf(yes, show(k.WaterC.Value), show(limitC)), k.WaterC.Known && holds, k.WaterC.Known
}

// warmC is from where on the water is too warm for the roots.
func (k Known) warmC() float64 {
	if k.Crop == "spinach" {
		return value(factWaterWarmSpinach)
	}
	return value(factWaterWarm)
}

// brightDLI is from where on there is too much light.
func (k Known) brightDLI() float64 {
	if k.Heading {
		return value(factLightHeading)
	}
	return k.DLIHigh
}
