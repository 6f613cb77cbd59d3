package solution

import (
	"fmt"
	"math"
	"strings"
)

// Label is what a bag or bottle declares. A liquid needs its density. Where
// ByVolume is set the percentages are grams in 100 mL, else grams in 100 g.
// Chelate nitrogen belongs to the chelate and is not to be declared as N.
type Label struct {
	Name       string
	Declares   []Declared
	Liquid     bool
	DensityKgL float64
	ByVolume   bool
	Part       string
}

// Densities that a fertiliser can have, in kg/L.
const (
	lightestKgL = 0.9
	densestKgL  = 2.0
)

// Read turns the label into a fertiliser, or says as a *Fault what is wrong.
func (l Label) Read() (Fertiliser, error) {
	f := Fertiliser{Name: l.Name, Part: l.Part}
	if l.Liquid {
		if l.DensityKgL == 0 {
			return f, &Fault{"liquid-density", "density", l.Name + " is a liquid without a density", "weigh 100 mL of it: 118 g is 1.18 kg/L"}
		}
		if !(l.DensityKgL >= lightestKgL && l.DensityKgL <= densestKgL) {
			return f, &Fault{"liquid-density", "density", fmt.Sprintf("a density of %g kg/L is none that a liquid feed has", l.DensityKgL), "weigh 100 mL of it: 118 g is 1.18 kg/L"}
		}
		f.DensityKgL = l.DensityKgL
	}
	scale := 1.0 / 100
	if l.ByVolume {
		if !l.Liquid {
			return f, &Fault{"label-by-volume", "label", "percent by volume is for liquids only", "say that it is a liquid and give its density"}
		}
		scale /= l.DensityKgL
	}
	if err := l.check(); err != nil {
		return f, err
	}
	for _, d := range l.Declares {
		name := labelNames[d.Name]
		factor, _ := ElementShare(d.Name)
		f.Share[name.nutrient] = d.Percent * scale * factor
	}
	if err := l.forms(&f.Share); err != nil {
		return f, err
	}
	f.assumeIons()
	return f, nil
}

// check finds what cannot be: unknown names, figures below nought, one
// nutrient told twice, more than the whole.
func (l Label) check() error {
	sum, seen := 0.0, map[Nutrient]string{}
	for _, d := range l.Declares {
		field := "label." + d.Name
		name, known := labelNames[d.Name]
		switch {
		case !known:
			return &Fault{"label-name", field, fmt.Sprintf("%q is no name of a label", d.Name), "names are " + strings.Join(LabelNames(), ", ")}
		case !(d.Percent >= 0 && d.Percent <= 100):
			return &Fault{"label-percent", field, fmt.Sprintf("%g %% of %s cannot be", d.Percent, d.Name), "a label's figures lie between 0 and 100 %"}
		case seen[name.nutrient] != "":
			return &Fault{"label-twice", field, fmt.Sprintf("%s and %s are the same nutrient told twice", seen[name.nutrient], d.Name), "keep the one that the label prints in front"}
		}
		seen[name.nutrient] = d.Name
		if name.nutrient != NitrateN && name.nutrient != AmmoniumN && name.nutrient != UreaN {
			sum += d.Percent
		}
	}
	most := 100.0
	if l.ByVolume {
		most *= l.DensityKgL
	}
	if sum > most*(1+1e-9) {
		return &Fault{"label-over-100", "label", fmt.Sprintf("what the label declares adds up to %.3g %%", sum), "look for a slipped decimal point, or for P2O5 typed as P"}
	}
	if len(l.Declares) == 0 {
		return &Fault{"label-empty", "label", l.Name + " declares nothing", "copy N, P2O5, K2O and what else is printed"}
	}
	return nil
}

// forms brings nitrogen and its forms together: the forms are part of N, and
// where N is not printed they are N.
func (l Label) forms(c *Content) error {
	told := c[NitrateN] + c[AmmoniumN] + c[UreaN]
	if c[Nitrogen] == 0 {
		c[Nitrogen] = told
		return nil
	}
	// Labels round to a tenth of a percent, each form by itself.
	if told > c[Nitrogen]+0.002 {
		return &Fault{
			"label-nitrogen", "label.N",
			fmt.Sprintf("nitrate, ammonium and urea are %.3g %% together, more than the %.3g %% of N", told*100, c[Nitrogen]*100), "N is all of it: copy the figures again",
		}
	}
	c[Nitrogen] = math.Max(c[Nitrogen], told)
	return nil
}

// assumeIons gives a label's nutrients the ions that a complete fertiliser
// has: phosphate, sulfate, micronutrients without a charge of their own. What
// nitrogen is not told apart is split into nitrate and ammonium so that the
// charges balance; what is still missing is taken as chloride or sodium. All of
// that is told in Assumed, because EC and pH rest on it.
func (f *Fertiliser) assumeIons() {
	c := &f.Share
	mol := func(n Nutrient, element string) float64 { return c[n] / weight(element) }
	w := Ions{
		NH4: mol(AmmoniumN, "N"), NO3: mol(NitrateN, "N"), K: mol(Potassium, "K"), Na: mol(Sodium, "Na"), Ca: mol(Calcium, "Ca"),
		Mg: mol(Magnesium, "Mg"), Cl: mol(Chlorine, "Cl"), SO4: mol(Sulfur, "S"), PO4: mol(Phosphorus, "P"), Borate: mol(Boron, "B"),
	}
	// Dihydrogen phosphate is what feeds hold: one charge for each phosphate.
	gap := func() float64 { return w.strongCharge() - w[PO4] }
	if free := c[Nitrogen] - c[NitrateN] - c[AmmoniumN] - c[UreaN]; free > 1e-9 {
		n := free / weight("N")
		nitrate := min(max((gap()+n)/2, 0), n)
		w[NO3] += nitrate
		w[NH4] += n - nitrate
		c[NitrateN] += nitrate * weight("N")
		c[AmmoniumN] += (n - nitrate) * weight("N")
		f.Assumed = append(f.Assumed, fmt.Sprintf("%.0f %% of the nitrogen whose form is not printed is taken as nitrate, the rest as ammonium, so that the charges balance", 100*nitrate/n))
	}
	const worthTelling = 1e-5 // mol/g: 1 g/L of it moves EC by 1 µS/cm
	switch g := gap(); {
	case g > 0:
		w[Cl] += g
		if g > worthTelling {
			f.Assumed = append(f.Assumed, "the label leaves negative charges out; they are taken as chloride")
		}
	case g < 0:
		w[Na] -= g
		if -g > worthTelling {
			f.Assumed = append(f.Assumed, "the label leaves positive charges out; they are taken as sodium")
		}
	}
	f.Ions = w
}
