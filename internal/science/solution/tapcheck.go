package solution

import (
	"fmt"
	"math"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/finding"
)

// What no tap delivers: beyond it a unit or a decimal point is wrong.
const (
	lowestTapPH, highestTapPH = 4, 11
	mostAlkalinity            = 800  // mg/L CaCO3
	mostOfAnIon               = 3000 // mg/L
	mostTapEC                 = 10   // mS/cm
	mostChlorine              = 10   // mg/L
)

func (t Tap) check() error {
	for _, f := range []struct {
		field    string
		figure   Figure
		low, top float64
		unit     string
	}{
		{"ph", t.PH, lowestTapPH, highestTapPH, ""},
		{"alkalinity", t.Alkalinity, 0, mostAlkalinity, " mg/L as CaCO3"},
		{"ec", t.EC, 0, mostTapEC, " mS/cm"},
		{"calcium", t.Calcium, 0, mostOfAnIon, " mg/L"},
		{"magnesium", t.Magnesium, 0, mostOfAnIon, " mg/L"},
		{"sodium", t.Sodium, 0, mostOfAnIon, " mg/L"},
		{"potassium", t.Potassium, 0, mostOfAnIon, " mg/L"},
		{"chloride", t.Chloride, 0, mostOfAnIon, " mg/L"},
		{"sulfate", t.Sulfate, 0, mostOfAnIon, " mg/L"},
		{"nitrate_n", t.NitrateN, 0, mostOfAnIon, " mg/L"},
		{"phosphate_p", t.PhosphateP, 0, mostOfAnIon, " mg/L"},
		{"iron", t.Iron, 0, mostOfAnIon, " mg/L"},
		{"boron", t.Boron, 0, mostOfAnIon, " mg/L"},
		{"chlorine", t.Chlorine, 0, mostChlorine, " mg/L"},
		{"chloramine", t.Chloramine, 0, mostChlorine, " mg/L"},
	} {
		if !f.figure.Known {
			continue
		}
		if !(f.figure.Low >= f.low && f.figure.High <= f.top && f.figure.Low <= f.figure.High) {
			return &Fault{"tap-absurd", f.field, fmt.Sprintf("%g%s is nothing that a tap gives", f.figure.High, f.unit), fmt.Sprintf("it lies between %g and %g%s; look at the unit of the report", f.low, f.top, f.unit)}
		}
	}
	return nil
}

// Findings says what the water is good for, with fields below the tap: softened
// water, a report out of balance, ions over their limits, alkalinity, chlorine.
func (t Tap) Findings(w Water) []finding.Finding {
	var out []finding.Finding
	say := func(level finding.Level, code, field, text, hint string) {
		out = append(out, finding.Finding{Level: level, Code: code, Field: field, Text: text, Hint: hint})
	}
	if t.Softened {
		say(finding.Stop, "tap-softened", "softened", "Softened water is full of sodium, and plants cannot use it.", "Take the tap that is not softened, often the one in the kitchen, or rain water.")
	}
	switch gap := 100 * w.GapShare; {
	case gap > value(factTapBalanceStop):
		say(finding.Stop, "tap-balance", "", fmt.Sprintf("The report is out of balance by %.0f %%: %s.", gap, side(w.GapEqL)), "A figure is mistyped or in another unit: sulfate as SO4, nitrate as N, alkalinity as CaCO3.")
	case gap > value(factTapBalanceWarn):
		say(finding.Warn, "tap-balance", "", fmt.Sprintf("The report is out of balance by %.0f %%: %s.", gap, side(w.GapEqL)), "Read the figures again. The gap is filled with sodium or chloride until then.")
	}
	if ec := EC25(w.Ions, Closed); t.EC.Known && t.anyIon() && math.Abs(ec-t.EC.Value) > percent(factTapEcOff)*t.EC.Value {
		say(finding.Note, "tap-ec", "ec", fmt.Sprintf("The ions of the report make %.2f mS/cm, and the EC told is %.2f.", ec, t.EC.Value), "Taps change with the season: dip the meter into it.")
	}
	for _, l := range t.limited() {
		f := Facts.Get(l.limit)
		if l.figure.Known && l.figure.High > f.Value {
			say(finding.Warn, "tap-"+l.field, l.field, fmt.Sprintf("%g mg/L of %s is more than the %g mg/L that are good for a tub.", l.figure.High, l.field, f.Value),
				fmt.Sprintf("Blend with rain or deionised water: %s.", quarters(BlendFor(l.figure.High, f.Value))))
		}
	}
	return append(out, t.alkalinityFindings()...)
}

// limitedIon is a figure of the tap with the most that is good for a tub.
type limitedIon struct {
	field  string
	figure Figure
	limit  facts.ID
}

func (t Tap) limited() []limitedIon {
	return []limitedIon{
		{"sodium", t.Sodium, factTapSodiumMax},
		{"calcium", t.Calcium, factTapCalciumMax},
		{"chloride", t.Chloride, factTapChlorideMax},
		{"sulfate", t.Sulfate, factTapSulfateMax},
	}
}

// BlendShare is the least share of rain or deionised water, in whole quarters,
// that brings the alkalinity and every ion under its limit; 0 where all are, and
// for what is not known.
func (t Tap) BlendShare() float64 {
	share := 0.0
	for _, l := range append(t.limited(), limitedIon{"alkalinity", t.Alkalinity, factTapAlkalinityAcidOrBlend}) {
		if l.figure.Known {
			share = max(share, BlendFor(l.figure.High, value(l.limit)))
		}
	}
	return share
}

func side(gap float64) string {
	if gap > 0 {
		return "there is more calcium, magnesium, sodium and potassium than goes with the rest"
	}
	return "there is more alkalinity, chloride, sulfate and nitrate than goes with the rest"
}

func (t Tap) alkalinityFindings() []finding.Finding {
	var out []finding.Finding
	most := value(factTapAlkalinityAcidOrBlend)
	switch {
	case !t.Alkalinity.Known:
		out = append(out, finding.Finding{
			Level: finding.Note, Code: "tap-alkalinity-unknown", Field: "alkalinity",
			Text: fmt.Sprintf("The tap's alkalinity is not known; %g mg/L is assumed, and no acid is dosed on a guess.", value(factTapAlkalinityUnknown)),
			Hint: "A strip or a drop test for carbonate hardness tells it in a minute.",
		})
	case t.Alkalinity.High > most:
		out = append(out, finding.Finding{
			Level: finding.Warn, Code: "tap-alkalinity-high", Field: "alkalinity",
			Text: fmt.Sprintf("An alkalinity of %g mg/L asks for so much acid that the acid would rule the recipe.", t.Alkalinity.High),
			Hint: fmt.Sprintf("Blend first: %s.", quarters(BlendFor(t.Alkalinity.High, most))),
		})
	}
	if t.Chlorine.Known && t.Chlorine.High >= value(factChlorineUseBelow) || t.Chloramine.Known && t.Chloramine.High >= value(factChlorineUseBelow) {
		out = append(out, t.chlorinated())
	}
	return out
}

// chlorinated warns of chlorine, and of chloramine where that is what there is.
func (t Tap) chlorinated() finding.Finding {
	out := finding.Finding{
		Level: finding.Warn, Code: "tap-chlorine", Field: "chlorine",
		Text: fmt.Sprintf("The tap holds chlorine; from %g mg/L on it hurts lettuce, and with ammonium from the feed it turns into chloramine, which browns roots.", value(factChlorineHarm)),
		Hint: "Take it out before the salts go in, also from jugs for topping up.",
	}
	if t.Chloramine.Known && t.Chloramine.High >= value(factChlorineUseBelow) {
		out.Field, out.Text = "chloramine", "The tap holds chloramine, which browns roots and does not go by standing."
	}
	return out
}

// BlendFor is the least share of rain or deionised water, in whole quarters,
// that brings a figure down to a limit: 0.25, 0.5, 0.75 or 1.
func BlendFor(mgL, limit float64) (share float64) {
	if !(mgL > limit) || mgL <= 0 {
		return 0
	}
	step := percent(factTapBlendStep)
	// A figure on the limit needs no further quarter, whatever the last digit says.
	return min(1, math.Ceil((1-limit/mgL)/step-1e-9)*step)
}

func quarters(share float64) string {
	rain := int(math.Round(share * 4))
	if rain >= 4 {
		return "rain or deionised water alone"
	}
	return fmt.Sprintf("%d %s rain or deionised water to %d of tap water", rain, map[bool]string{true: "part of", false: "parts of"}[rain == 1], 4-rain)
}
