package solution

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"rootbell/internal/base/facts"
)

// Recipe is a published solution at full strength: what it holds in mg/L, its
// ions in mol/L, and the salts it was published with, in mg/L, where it was.
// Iron comes as a chelate and has no charge here.
type Recipe struct {
	ID, Name string
	MgL      Content
	Ions     Ions
	Salts    []SaltAmount
	Fact     facts.Fact
}

// SaltAmount is so many mg of a salt in each litre.
type SaltAmount struct {
	Salt string
	MgL  float64
}

var recipeRows = map[string]facts.ID{
	"hoagland-arnon-1":           factRecipeHoaglandArnon1,
	"hoagland-arnon-2":           factRecipeHoaglandArnon2,
	"knop":                       factRecipeKnop,
	"lettuce-modified-sonneveld": factRecipeLettuceModifiedSonneveld,
	"steiner":                    factRecipeSteiner,
	"yamazaki-lettuce":           factRecipeYamazakiLettuce,
	"enshi":                      factRecipeEnshi,
	"sonneveld-straver-lettuce":  factRecipeSonneveldStraverLettuce,
}

// DefaultRecipe is taken for a leafy tub where the plan names none.
const DefaultRecipe = "lettuce-modified-sonneveld"

// RecipeNames are the recipes known, sorted.
func RecipeNames() []string {
	out := make([]string, 0, len(recipeRows))
	for id := range recipeRows {
		out = append(out, id)
	}
	sort.Strings(out)
	return out
}

// RecipeNamed is a published recipe. An unknown name is a *Fault.
func RecipeNamed(id string) (Recipe, error) {
	row, known := recipeRows[id]
	if !known {
		return Recipe{}, &Fault{"recipe-unknown", "recipe", fmt.Sprintf("%q is no recipe known here", id), "known are " + strings.Join(RecipeNames(), ", ") + "; or give a target in mg/L"}
	}
	f := Facts.Get(row)
	r := Recipe{ID: id, Name: f.AppliesTo, Fact: f}
	if err := r.read(f.Word); err != nil {
		panic("solution: " + string(f.ID) + ": " + err.Error())
	}
	return r, nil
}

// read takes in a row such as "1 L: potassium-nitrate 5 mmol; Fe 1 mg".
func (r *Recipe) read(text string) error {
	head, body, ok := strings.Cut(text, " L: ")
	litres, err := strconv.ParseFloat(head, 64)
	if !ok || err != nil {
		return fmt.Errorf("%q does not begin with its litres", text)
	}
	for _, part := range strings.Split(body, "; ") {
		words := strings.Fields(part)
		if len(words) != 3 {
			return fmt.Errorf("%q is no name, amount and unit", part)
		}
		amount, err := strconv.ParseFloat(words[1], 64)
		if err != nil {
			return err
		}
		if err := r.take(words[0], amount/litres, words[2]); err != nil {
			return err
		}
	}
	return nil
}

// take adds so much of a salt, an ion or an element to each litre.
func (r *Recipe) take(name string, amount float64, unit string) error {
	scale, moles := map[string]float64{"g": 1, "mg": 1e-3, "mmol": 1e-3, "umol": 1e-6}[unit], strings.HasSuffix(unit, "mol")
	if scale == 0 {
		return fmt.Errorf("%q is no unit of a recipe", unit)
	}
	amount *= scale
	if salt, ok := SaltNamed(name); ok {
		if moles {
			f, _, _ := SaltFormula(name)
			amount *= f.MolarMass()
		}
		r.Salts = append(r.Salts, SaltAmount{name, 1000 * amount})
		r.MgL = r.MgL.Plus(salt.MgL(amount))
		r.Ions = r.Ions.Plus(salt.Ions.Times(amount))
		return nil
	}
	f, err := ParseFormula(name)
	if err != nil {
		return err
	}
	if !moles {
		amount /= f.MolarMass()
	}
	r.addIon(name, f, amount)
	return nil
}

var recipeIonNames = map[string]Ion{"NO3": NO3, "H2PO4": PO4, "SO4": SO4, "K": K, "Ca": Ca, "Mg": Mg, "NH4": NH4, "B": Borate, "Na": Na, "Cl": Cl}

// addIon adds mol/L of an ion, or of an element that has no charge here.
func (r *Recipe) addIon(name string, f Formula, molL float64) {
	if ion, ok := recipeIonNames[name]; ok {
		w := Ions{}
		w[ion] = molL
		r.Ions = r.Ions.Plus(w)
		r.MgL = r.MgL.Plus(contentOf(w))
		return
	}
	if n, ok := NutrientNamed(name); ok {
		r.MgL[n] += molL * f.MolarMass() * 1000
	}
}

// IonsOf are the ions that go with a target in mg/L that names no salts:
// nitrogen as nitrate but for ammonium, the rest as feeds hold it. What charge
// is then missing is chloride or sodium.
func IonsOf(mgL Content) Ions {
	share := mgL.Times(1e-3)
	f := Fertiliser{Share: share}
	f.assumeIons()
	return f.Ions
}

// At is the recipe at another strength; 0.5 is half of everything.
func (r Recipe) At(strength float64) (Content, Ions) {
	return r.MgL.Times(strength), r.Ions.Times(strength)
}
