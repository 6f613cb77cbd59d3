package solution

import (
	"sort"

	"rootbell/internal/base/facts"
)

// saltRow is one salt of the trade: its formula and solubility among the
// facts, and what one formula unit gives to the water.
type saltRow struct {
	id                  string
	formula, solubility facts.ID
	ions                Ions
	ligand              bool // the nitrogen belongs to a chelate and feeds no plant
}

var saltRows = []saltRow{
	{"calcium-nitrate-double-salt", factSaltCalciumNitrateDoubleSalt, factSolubilityCalciumNitrateDoubleSalt, Ions{Ca: 5, NH4: 1, NO3: 11}, false},
	{"calcium-nitrate", factSaltCalciumNitrate, factSolubilityCalciumNitrate, Ions{Ca: 1, NO3: 2}, false},
	{"calcium-nitrate-anhydrous", factSaltCalciumNitrateAnhydrous, factSolubilityCalciumNitrate, Ions{Ca: 1, NO3: 2}, false},
	{"potassium-nitrate", factSaltPotassiumNitrate, factSolubilityPotassiumNitrate, Ions{K: 1, NO3: 1}, false},
	{"potassium-dihydrogen-phosphate", factSaltPotassiumDihydrogenPhosphate, factSolubilityPotassiumDihydrogenPhosphate, Ions{K: 1, PO4: 1}, false},
	{"dipotassium-phosphate", factSaltDipotassiumPhosphate, factSolubilityDipotassiumPhosphate, Ions{K: 2, PO4: 1}, false},
	{"ammonium-dihydrogen-phosphate", factSaltAmmoniumDihydrogenPhosphate, factSolubilityAmmoniumDihydrogenPhosphate, Ions{NH4: 1, PO4: 1}, false},
	{"potassium-sulfate", factSaltPotassiumSulfate, factSolubilityPotassiumSulfate, Ions{K: 2, SO4: 1}, false},
	{"magnesium-sulfate", factSaltMagnesiumSulfate, factSolubilityMagnesiumSulfate, Ions{Mg: 1, SO4: 1}, false},
	{"magnesium-nitrate", factSaltMagnesiumNitrate, factSolubilityMagnesiumNitrate, Ions{Mg: 1, NO3: 2}, false},
	{"ammonium-nitrate", factSaltAmmoniumNitrate, factSolubilityAmmoniumNitrate, Ions{NH4: 1, NO3: 1}, false},
	{"ammonium-sulfate", factSaltAmmoniumSulfate, factSolubilityAmmoniumSulfate, Ions{NH4: 2, SO4: 1}, false},
	{"potassium-chloride", factSaltPotassiumChloride, factSolubilityPotassiumChloride, Ions{K: 1, Cl: 1}, false},
	{"calcium-chloride", factSaltCalciumChloride, factSolubilityCalciumChloride, Ions{Ca: 1, Cl: 2}, false},
	{"boric-acid", factSaltBoricAcid, factSolubilityBoricAcid, Ions{Borate: 1}, false},
	{"manganese-sulfate", factSaltManganeseSulfate, factSolubilityManganeseSulfate, Ions{Metal: 1, SO4: 1}, false},
	{"manganese-sulfate-tetrahydrate", factSaltManganeseSulfateTetrahydrate, factSolubilityManganeseSulfate, Ions{Metal: 1, SO4: 1}, false},
	{"manganese-chloride", factSaltManganeseChloride, "", Ions{Metal: 1, Cl: 2}, false},
	{"zinc-sulfate", factSaltZincSulfate, factSolubilityZincSulfate, Ions{Metal: 1, SO4: 1}, false},
	{"copper-sulfate", factSaltCopperSulfate, factSolubilityCopperSulfate, Ions{Metal: 1, SO4: 1}, false},
	{"sodium-molybdate", factSaltSodiumMolybdate, factSolubilitySodiumMolybdate, Ions{Na: 2, Other: 2}, false},
	{"ammonium-molybdate", factSaltAmmoniumMolybdate, factSolubilityAmmoniumMolybdate, Ions{NH4: 6, Other: 6}, false},
	{"molybdic-acid", factSaltMolybdicAcid, "", Ions{Other: 2}, false},
	{"iron-edta", factSaltIronEdta, "", Ions{Na: 1, Other: 1}, true},
	{"potassium-bicarbonate", factSaltPotassiumBicarbonate, "", Ions{K: 1, CO3: 1}, false},
}

// catalogue are the salts as fertilisers, sorted by name.
var catalogue = func() []Fertiliser {
	out := make([]Fertiliser, len(saltRows))
	for i, r := range saltRows {
		out[i] = r.fertiliser()
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Salt < out[j].Salt })
	return out
}()

// SaltNames are the salts known by name, sorted.
func SaltNames() []string {
	out := make([]string, len(catalogue))
	for i, f := range catalogue {
		out[i] = f.Salt
	}
	return out
}

// SaltNamed is the salt as a fertiliser. ok is false for a name not in
// SaltNames.
func SaltNamed(id string) (f Fertiliser, ok bool) {
	for _, f := range catalogue {
		if f.Salt == id {
			return f, true
		}
	}
	return Fertiliser{}, false
}

// SaltFormula is the formula of a salt known by name, with its source.
func SaltFormula(id string) (Formula, facts.Fact, bool) {
	for _, r := range saltRows {
		if r.id == id {
			f := Facts.Get(r.formula)
			return formulaOf(f), f, true
		}
	}
	return Formula{}, facts.Fact{}, false
}

// formulaOf reads a row of facts, which is part of the program.
func formulaOf(f facts.Fact) Formula {
	formula, err := ParseFormula(f.Word)
	if err != nil {
		panic("solution: " + string(f.ID) + ": " + err.Error())
	}
	return formula
}

func (r saltRow) fertiliser() Fertiliser {
	row := Facts.Get(r.formula)
	f := r.of(formulaOf(row))
	f.Name = row.AppliesTo
	return f
}

// of is the salt with the crystal water of a formula.
func (r saltRow) of(formula Formula) Fertiliser {
	f := Fertiliser{Salt: r.id, Ions: r.ions.Times(1 / formula.MolarMass())}
	for n, symbol := range map[Nutrient]string{
		Phosphorus: "P", Potassium: "K", Calcium: "Ca", Magnesium: "Mg", Sulfur: "S", Iron: "Fe", Manganese: "Mn", Boron: "B",
		Zinc: "Zn", Copper: "Cu", Molybdenum: "Mo", Sodium: "Na", Chlorine: "Cl",
	} {
		f.Share[n] = formula.Content(symbol)
	}
	if !r.ligand {
		f.Share[Nitrogen] = formula.Content("N")
		f.Share[NitrateN] = f.Ions[NO3] * weight("N")
		f.Share[AmmoniumN] = f.Ions[NH4] * weight("N")
	}
	if r.solubility != "" {
		f.dissolves = solubilityOf(Facts.Get(r.solubility), anhydrousShare(formula, r))
	}
	return f
}

// anhydrousShare is the share of the salt that solubility tables count. The
// double salt's own figure is for the salt as it is sold.
func anhydrousShare(f Formula, r saltRow) float64 {
	if r.id == "calcium-nitrate-double-salt" || r.ions[Borate] > 0 || r.ions[PO4] > 0 {
		return 1
	}
	water := 0.0
	for _, part := range hydrateWater(plain(f.Text)) {
		water += part
	}
	water *= 2*weight("H") + weight("O")
	return 1 - water/f.MolarMass()
}
