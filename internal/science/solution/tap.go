package solution

import (
	"fmt"
	"math"
)

// Figure is one value of a report or a strip. Low and High are the ends of the
// colours between which a strip was read; of a report they are the value. The
// zero Figure is not known.
type Figure struct {
	Value, Low, High float64
	Known            bool
}

// Exactly is a figure of a report.
func Exactly(v float64) Figure { return Figure{v, v, v, true} }

// Between is a figure read off a strip; the middle is counted with.
func Between(low, high float64) Figure { return Figure{(low + high) / 2, low, high, true} }

// Tap is what is known of the water, in mg/L: Alkalinity as CaCO3, Sulfate as
// SO4, NitrateN as N, PhosphateP as P. EC is in mS/cm at 25 °C. The zero value
// is water of which nothing is known.
type Tap struct {
	PH, Alkalinity, EC   Figure
	Calcium, Magnesium   Figure
	Sodium, Potassium    Figure
	Chloride, Sulfate    Figure
	NitrateN, PhosphateP Figure
	Iron, Boron          Figure
	Chlorine, Chloramine Figure
	Softened             bool
}

// Water is a tap's water made whole: its components with carbonate, so that it
// has the alkalinity, the pH and no charge left over.
type Water struct {
	Ions          Ions
	Content       Content // mg/L
	AlkalinityMgL float64 // as CaCO3
	PH            float64
	Known         bool     // the alkalinity is known
	ECKnown       bool     // the EC was measured
	GapEqL        float64  // cations less anions of the report, before it was made whole
	GapShare      float64  // the same over the sum of both; 0 where ions are missing
	Assumed       []string // what was taken for granted
	CalciumTaken  bool     // nobody measured its calcium: it is taken from the alkalinity
}

// perMeq is mg/L of CaCO3 for each meq/L.
func perMeq() float64 { return value(factAlkalinityPerMeq) }

// molar mass of a formula that is part of the program.
func molarMass(text string) float64 {
	f, err := ParseFormula(text)
	if err != nil {
		panic("solution: " + err.Error())
	}
	return f.MolarMass()
}

// Water makes the tap's water whole. What is not known is taken as the facts
// say, and told. Figures that cannot be are a *Fault.
func (t Tap) Water() (Water, error) {
	if err := t.check(); err != nil {
		return Water{}, err
	}
	w := Water{Known: t.Alkalinity.Known, AlkalinityMgL: t.Alkalinity.Value, PH: t.PH.Value}
	if !w.Known {
		w.AlkalinityMgL = value(factTapAlkalinityUnknown)
		w.assume("an alkalinity of %g mg/L is assumed: a strip or a drop test tells more", w.AlkalinityMgL)
	}
	if !t.PH.Known {
		w.PH = value(factTapPhUnknown)
		w.assume("a pH of %g is assumed for the tap", w.PH)
	}
	milli := func(f Figure, formula string) float64 { return f.Value / 1000 / molarMass(formula) }
	w.Ions = Ions{
		Ca: milli(t.Calcium, "Ca"), Mg: milli(t.Magnesium, "Mg"), Na: milli(t.Sodium, "Na"), K: milli(t.Potassium, "K"),
		Cl: milli(t.Chloride, "Cl"), SO4: milli(t.Sulfate, "SO4"), NO3: milli(t.NitrateN, "N"), PO4: milli(t.PhosphateP, "P"),
		Borate: milli(t.Boron, "B"),
	}
	w.fill(t)
	w.Content = contentOf(w.Ions)
	w.Content[Iron] = t.Iron.Value
	w.carbonate()
	if w.ECKnown = t.EC.Known; w.ECKnown && !t.anyIon() {
		w.thinTo(t.EC.Value)
	}
	return w, nil
}

// anyIon tells whether anything beside pH and EC is known of the ions.
func (t Tap) anyIon() bool {
	for _, f := range []Figure{t.Alkalinity, t.Calcium, t.Magnesium, t.Sodium, t.Potassium, t.Chloride, t.Sulfate, t.NitrateN, t.PhosphateP} {
		if f.Known {
			return true
		}
	}
	return false
}

// thinTo makes the water assumed as strong as its measured EC tells.
func (w *Water) thinTo(ec float64) {
	most := 20.0
	share := root(func(f float64) float64 { return at25.AtPH(w.Ions.Times(f), w.PH, Closed).Conductivity() - ec }, 0, most, 1e-9)
	w.Ions, w.Content = w.Ions.Times(share), w.Content.Times(share)
	w.AlkalinityMgL *= share
	w.assume("it is taken as lime water of the EC that was measured")
}

// Ends are the tap with the least and with the most alkalinity that a strip
// allows: a dose of acid is for the first, a warning for the second.
func (t Tap) Ends() (least, most Tap) {
	least, most = t, t
	if a := t.Alkalinity; a.Known {
		least.Alkalinity, most.Alkalinity = Exactly(a.Low), Exactly(a.High)
	}
	return least, most
}

// DropTest is the alkalinity in mg/L as CaCO3 of so many degrees of a
// carbonate-hardness drop test; usual kits take one drop for each degree.
func DropTest(degrees float64) float64 { return degrees * value(factTapKhDrop) }

func (w *Water) assume(text string, values ...any) {
	w.Assumed = append(w.Assumed, fmt.Sprintf(text, values...))
}

// fill closes the balance of charges with the ions that were not reported, as
// most waters have them; with all reported, with sodium or chloride.
func (w *Water) fill(t Tap) {
	alkalinity := w.AlkalinityMgL / perMeq() / 1000
	w.GapEqL = w.Ions.strongCharge() - w.Ions[PO4] - alkalinity
	cations := w.Ions[K] + w.Ions[Na] + 2*w.Ions[Ca] + 2*w.Ions[Mg]
	if t.Calcium.Known && t.Magnesium.Known && t.Sodium.Known && t.Chloride.Known && t.Sulfate.Known && t.Alkalinity.Known {
		if all := 2*cations - w.GapEqL; all > 0 {
			w.GapShare = math.Abs(w.GapEqL) / all
		}
	}
	if w.GapEqL > 0 {
		w.Ions[Cl] += w.GapEqL
		return
	}
	hard := numbers(factTapHard, 3)
	missing := []struct {
		ion   Ion
		known bool
		part  float64
	}{{Ca, t.Calcium.Known, hard[0]}, {Mg, t.Magnesium.Known, hard[1]}, {Na, t.Sodium.Known, hard[2]}}
	sum := 0.0
	for _, m := range missing {
		if !m.known {
			sum += m.part
		}
	}
	if sum == 0 {
		w.Ions[Na] -= w.GapEqL
		return
	}
	for _, m := range missing {
		if !m.known {
			w.Ions[m.ion] -= w.GapEqL * m.part / sum / charges[m.ion]
		}
	}
	if -w.GapEqL > 1e-4 {
		w.CalciumTaken = !t.Calcium.Known
		w.assume("calcium, magnesium and sodium that no report names are taken as most hard waters have them")
	}
}

// carbonate finds how much of it gives the water its pH.
func (w *Water) carbonate() {
	alkalinity := max(w.AlkalinityMgL/perMeq()/1000, 1e-7)
	s := at25.start(w.Ions)
	w.Ions[CO3] = root(func(total float64) float64 {
		v := w.Ions
		v[CO3] = total
		at25.settle(v, w.PH, Closed, &s)
		return s.charge
	}, 0, 60*alkalinity, 1e-16)
	if rest := at25.Equilibrium(w.Ions, Closed).PH; math.Abs(rest-w.PH) > 0.1 {
		w.assume("pH %.1f and an alkalinity of %g mg/L do not go together; such water has pH %.1f", w.PH, w.AlkalinityMgL, rest)
		w.PH = rest
	}
}

// contentOf is what the ions are in mg/L of each nutrient.
func contentOf(w Ions) Content {
	var c Content
	for ion, n := range map[Ion]Nutrient{
		NO3: NitrateN, NH4: AmmoniumN, K: Potassium, Na: Sodium, Ca: Calcium, Mg: Magnesium, Cl: Chlorine, SO4: Sulfur, PO4: Phosphorus, Borate: Boron,
	} {
		symbol := n.Symbol()
		if n == NitrateN || n == AmmoniumN {
			symbol = "N"
		}
		c[n] = w[ion] * weight(symbol) * 1000
	}
	c[Nitrogen] = c[NitrateN] + c[AmmoniumN]
	return c
}

// Blend is the water with a share of rain or deionised water in it, 0 to 1.
// Carbonate is thinned like the rest, so its pH hardly moves.
func (w Water) Blend(rain float64) Water {
	keep := 1 - min(max(rain, 0), 1)
	w.Ions = w.Ions.Times(keep)
	w.Content = w.Content.Times(keep)
	w.AlkalinityMgL *= keep
	w.PH = at25.Equilibrium(w.Ions, Closed).PH
	return w
}
