package solution

import (
	"strings"

	"rootbell/internal/base/facts"
)

// Statement is one hazard of a chemical: the code that labels print, and what
// it says, shortly. The label in hand and the safety data sheet rule.
type Statement struct{ Code, Says string }

var statements = map[string]string{
	"H272": "makes fire worse: keep away from fuels, sugar, paper dust and metal powder", "H302": "harmful if swallowed",
	"H314": "burns skin and eyes", "H318": "seriously damages eyes", "H319": "irritates eyes", "H360FD": "may harm fertility and the unborn: weighed by an adult",
	"H373": "may harm organs when breathed in over a long time", "H410": "very poisonous to water life: never down a drain in strength",
	"EUH031": "gives off poisonous gas with acid",
}

var saltHazards = map[string]facts.ID{
	"potassium-nitrate": factHazardPotassiumNitrate, "ammonium-nitrate": factHazardAmmoniumNitrate,
	"calcium-nitrate": factHazardCalciumNitrate, "calcium-nitrate-anhydrous": factHazardCalciumNitrate, "calcium-nitrate-double-salt": factHazardCalciumNitrate,
	"boric-acid": factHazardBoricAcid, "copper-sulfate": factHazardCopperSulfate, "zinc-sulfate": factHazardZincSulfate,
	"manganese-sulfate": factHazardManganeseSulfate, "manganese-sulfate-tetrahydrate": factHazardManganeseSulfate,
}

// Hazards are what the bag of a salt warns of, as far as it is known here; of a
// labelled product nothing is known but its own label.
func (f Fertiliser) Hazards() []Statement {
	id, known := saltHazards[f.Salt]
	if !known {
		return nil
	}
	return statementsOf(id)
}

// BleachHazards are what a bottle of bleach warns of.
func BleachHazards() []Statement { return statementsOf(factHazardHypochlorite) }

func statementsOf(id facts.ID) []Statement {
	var out []Statement
	for _, code := range strings.Fields(Facts.Get(id).Word) {
		out = append(out, Statement{code, statements[code]})
	}
	return out
}
