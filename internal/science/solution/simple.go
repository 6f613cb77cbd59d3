package solution

import (
	"fmt"

	"rootbell/internal/base/finding"
)

// Dosed is a bottle or bag with its maker's dose: mL of a liquid or g of a dry
// one for each litre of tub.
type Dosed struct {
	Fertiliser Fertiliser
	PerLitre   float64
}

// strongestDose is mL or g for a litre that no maker asks for.
const strongestDose = 50

// Poured is what of a bottle or bag goes into the tub.
type Poured struct {
	Name        string
	Grams       float64 // of a dry one
	Millilitres float64 // of a liquid
}

// SimpleMix is the path without chemistry: the maker's dose times the litres.
type SimpleMix struct {
	Portions []Poured
	MgL      Content // with the water
	Ions     Ions
	Band     Band // EC expected, mS/cm at 25 °C
	Findings []finding.Finding
}

// Simple multiplies the maker's dose with the litres of the tub and predicts
// the EC. With water of which not even the EC is known the band reaches from
// soft water to the alkalinity assumed; no acid is dosed. A dose that cannot be is a
// *Fault.
func Simple(litres float64, feeds []Dosed, water Water) (SimpleMix, error) {
	if !(litres > 0) {
		return SimpleMix{}, &Fault{"tub-empty", "", "the tub holds no solution", "look at its fill line"}
	}
	m := SimpleMix{MgL: water.Content}
	for i, d := range feeds {
		if !(d.PerLitre > 0 && d.PerLitre <= strongestDose) {
			return m, &Fault{"dose-absurd", fmt.Sprintf("fertilisers[%d].dose", i), fmt.Sprintf("%g for each litre is no dose of %s", d.PerLitre, d.Fertiliser.Name), "copy the maker's dose in mL or g for one litre"}
		}
		grams, p := d.PerLitre, Poured{Name: d.Fertiliser.Name}
		if d.Fertiliser.Liquid() {
			grams = d.Fertiliser.Grams(d.PerLitre)
			p.Millilitres = d.PerLitre * litres
		} else {
			p.Grams = d.PerLitre * litres
		}
		m.Portions = append(m.Portions, p)
		m.MgL = m.MgL.Plus(d.Fertiliser.MgL(grams))
		m.Ions = m.Ions.Plus(d.Fertiliser.Ions.Times(grams))
		m.Findings = append(m.Findings, d.Fertiliser.assumptions(fmt.Sprintf("fertilisers[%d]", i))...)
	}
	m.Band = ECBand(EC25(water.Ions.Plus(m.Ions), OutdoorAir()))
	if !water.Known && !water.ECKnown {
		m.Band = m.Band.Over(ECBand(EC25(m.Ions, OutdoorAir())))
	}
	if least := value(factFeedCalciumMin); m.MgL[Calcium] < least {
		taken := ""
		if water.CalciumTaken {
			taken = " Nobody measured the tap's calcium: it is taken from the alkalinity."
		}
		m.say(finding.Warn, "feed-calcium", "fertilisers", fmt.Sprintf("%.0f mg/L of calcium is less than the %g mg/L that lettuce needs.", m.MgL[Calcium], least)+taken,
			"Most one-bottle feeds leave calcium out: a second bottle or calcium nitrate brings it.")
	}
	m.forms()
	return m, nil
}

// forms warns of nitrogen in a form that a tub does not bear much of.
func (m *SimpleMix) forms() {
	all := m.MgL[Nitrogen]
	if all <= 0 {
		return
	}
	if share := m.MgL[UreaN] / all; share > percent(factFeedUreaWarn) {
		m.say(finding.Warn, "feed-urea", "fertilisers", fmt.Sprintf("%.0f %% of the nitrogen is urea, which plants in clean water hardly take up.", 100*share),
			"Take a feed for water culture, with its nitrogen as nitrate.")
	}
	if share := m.MgL[AmmoniumN] / all; share > percent(factFeedAmmoniumWarn) {
		m.say(finding.Warn, "feed-ammonium", "fertilisers", fmt.Sprintf("%.0f %% of the nitrogen is ammonium: the pH will fall fast.", 100*share),
			"Measure the pH twice a week, or take a feed with most of its nitrogen as nitrate.")
	}
}

func (m *SimpleMix) say(level finding.Level, code, field, text, hint string) {
	m.Findings = append(m.Findings, finding.Finding{Level: level, Code: code, Field: field, Text: text, Hint: hint})
}

// assumptions tells what was taken for granted about a label.
func (f Fertiliser) assumptions(field string) []finding.Finding {
	var out []finding.Finding
	for _, a := range f.Assumed {
		out = append(out, finding.Finding{Level: finding.Note, Code: "label-assumed", Field: field + ".label", Text: f.Name + ": " + a + ".", Hint: "The maker's data sheet tells the forms."})
	}
	return out
}
