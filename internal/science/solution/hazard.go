package solution

import (
	"fmt"

	"rootbell/internal/base/finding"
)

// Burns tells whether the bottle is strong enough to burn skin; the label in
// hand and the safety data sheet rule.
func (r Reagent) Burns() bool {
	return r.row.burnsPercent != nil && 100*r.ByMass >= r.row.burnsPercent()
}

// PupilsMay tells whether pupils of an age in years may handle it: no mineral
// acid and no alkali at any strength; citric acid only when weak, with goggles
// and an adult beside. The site's own rule goes before.
func (r Reagent) PupilsMay(age float64) bool {
	return r.Citric() && 100*r.ByMass <= value(factAcidCitricPupil) && age >= value(factAcidCitricAge)
}

// PupilRule is the rule of PupilsMay as words for a card.
func PupilRule() string {
	return fmt.Sprintf("Pupils handle no mineral acid and no alkali of any strength. Citric acid up to %g %%: from age %g, with goggles and an adult beside. The school's own rule goes before.", value(factAcidCitricPupil), value(factAcidCitricAge))
}

// Findings says what to know of an acid or base before it is used, with a
// lasting dose in mol/L.
func (r Reagent) Findings(field string, lastingMolL float64) []finding.Finding {
	var out []finding.Finding
	say := func(level finding.Level, code, text, hint string) {
		out = append(out, finding.Finding{Level: level, Code: code, Field: field, Text: text, Hint: hint})
	}
	if r.Burns() {
		say(finding.Warn, "acid-burns", fmt.Sprintf("%s of %.3g %% burns skin and eyes; a classroom should not hold it.", r.Name, 100*r.ByMass),
			"An adult thins it elsewhere, with goggles and gloves, acid into water and never the other way; or buy it ready thinned.")
	}
	if r.row.oxidises {
		say(finding.Warn, "acid-oxidises", "Nitric acid gives off toxic fumes and sets other things alight; above 3 % many countries restrict it.", "Take phosphoric acid instead, and keep to local rules.")
	}
	if r.Citric() {
		most := value(factAcidCitricMaxDose)
		if mgL := lastingMolL * r.MolarMass() * 1000; mgL > most {
			say(finding.Warn, "acid-citric", fmt.Sprintf("Citric acid for this water would be %.0f mg/L, and microbes eating it take %.0f mg/L of oxygen; then the pH comes back.", mgL, mgL*value(factAcidCitricOxygen)),
				fmt.Sprintf("Use it for trims of up to %g mg/L a week only.", most))
		}
	}
	return out
}

// restricted is the salt that many countries keep from private hands.
const restricted = "ammonium-nitrate"

// Findings says what a class should know of a fertiliser before it buys it.
func (f Fertiliser) Findings(field string) []finding.Finding {
	if f.Salt != restricted {
		return nil
	}
	return []finding.Finding{{
		Level: finding.Warn, Code: "salt-restricted", Field: field,
		Text: "Ammonium nitrate feeds fires and is a restricted explosives precursor in many countries (in the EU by Regulation 2019/1148).",
		Hint: "A classroom should not hold it: monoammonium phosphate or calcium nitrate brings the ammonium; keep to local rules.",
	}}
}
