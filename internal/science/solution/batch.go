package solution

import (
	"fmt"
	"math"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/working"
)

// Order is a tub to be mixed. EC in mS/cm at 25 °C and PH are what is wanted; an
// EC of 0 takes the target as it stands. Acid and Base are nil where the shelf
// has none.
// Planted tubs are dosed with more care than tubs that stand ready the day
// before.
type Order struct {
	Litres       float64
	Water        Water
	Shelf        []Fertiliser
	MgL          Content // target at full strength
	EC, PH       float64
	Acid, Base   *Reagent
	Air          Air
	TemperatureC float64
	Tools        Tools
	Planted      bool
	Field        string // of the fertilisers, for findings
}

// Batch is the tub as it will be mixed.
type Batch struct {
	Strength     float64 // of the target that the amounts are fitted to
	Target       Target  // the same, with its limits
	Aim          Target  // what the tub is held against: the whole recipe at the same EC
	Fit          Fit
	Portions     []Portion
	MgL          Content // as weighed, with water and acid
	Ions         Ions    // the same, mol/L
	Band         Band    // EC that the meter should show
	Acid         AcidPart
	PHAfterSalts float64
	BaseMmolL    float64 // that brings it up to the pH asked for; 0 where none is needed or there
	BaseML       float64 // for the tub; grams of a solid
	Misses       []Miss
	Gypsum       float64
	Brushite     float64
	Findings     []finding.Finding
}

// AcidPart is the acid of a tub. Without an acid on the shelf Missing says what
// is needed, and the millilitres are a worked example for phosphoric acid. Why
// says why there is no dose at all; then everything else is zero.
type AcidPart struct {
	Name                   string
	Why                    string
	Missing                string
	ClosedMmolL, OpenMmolL float64
	ClosedML, OpenML       float64 // for the tub; grams of a solid
	DoseTodayML, PHAtOnce  float64
	PHAfterAir             float64 // after the whole lasting dose and a day of air
	Adds                   Content // mg/L
	PHRebound              float64 // where the closed dose ends up under the air
	AlkalinityMeqL         float64
	openMolL               float64
	row                    Reagent
	whole                  Acidification
}

// ShowLasting enters the check that a pencil can do for the lasting dose; see
// Acidification.
func (a AcidPart) ShowLasting(b *working.Book, alkalinityMgL float64) working.Number {
	return a.whole.ShowLasting(b, alkalinityMgL)
}

// Reagent is the acid that the numbers are for: the shelf's, or the example.
func (a AcidPart) Reagent() Reagent { return a.row }

// Mix works out a tub: the acid that the water needs, the strength that gives
// the EC, the amounts that come nearest to the target, and what the class can
// weigh of them. An order that cannot be is a *Fault.
func Mix(o Order) (Batch, error) {
	if !(o.Litres > 0) || math.IsInf(o.Litres, 0) {
		return Batch{}, &Fault{"tub-empty", "", "the tub holds no solution", "look at its fill line"}
	}
	if len(o.Shelf) == 0 {
		return Batch{}, &Fault{"shelf-empty", "fertilisers", "no fertiliser stands on the shelf", "name a bottle, a bag or salts"}
	}
	var b Batch
	b.Acid = o.acid()
	acidIons, acidMgL := Ions{}, Content{}
	if b.Acid.openMolL > 0 {
		acidIons, acidMgL = b.Acid.row.Adds(b.Acid.openMolL)
	}
	base := o.Water.Content.Plus(acidMgL)
	before := o.Water.Ions.Plus(acidIons)
	if err := b.strength(o, before, base); err != nil {
		return Batch{}, err
	}
	b.Portions, b.MgL = b.Target.Weigh(o.Tools, o.Shelf, b.Fit.GramsPerLitre, o.Litres, base)
	b.Ions = before
	for j, p := range b.Portions {
		b.Ions = b.Ions.Plus(o.Shelf[j].Ions.Times(p.RoundedGrams / o.Litres))
	}
	b.Band = ECBand(EC25(b.Ions, o.Air))
	c, _ := At(o.TemperatureC)
	rest := c.Equilibrium(b.Ions, o.Air)
	b.PHAfterSalts, b.Gypsum, b.Brushite = rest.PH, rest.Gypsum(), rest.Brushite()
	b.correct(o, c, b.Ions.Plus(acidIons.Times(-1)))
	b.Misses = b.Aim.Misses(o.Shelf, base, Fit{GramsPerLitre: b.Fit.GramsPerLitre, MgL: b.MgL})
	b.judge(o, base)
	return b, nil
}

// correct brings in what the salts change: in a planted tub the dose of today
// meets them, and water that they turn sour wants a base.
func (b *Batch) correct(o Order, c *Chemistry, withoutAcid Ions) {
	if a := &b.Acid; o.Planted && a.openMolL > 0 {
		today, at := c.Planted(withoutAcid, a.row, a.openMolL)
		a.DoseTodayML, a.PHAtOnce = a.row.Amount(today*o.Litres), at
	}
	if o.Base != nil && o.PH > 0 && b.PHAfterSalts < o.PH {
		if mol, ok := c.DoseTo(b.Ions, *o.Base, o.PH, o.Air); ok {
			b.BaseMmolL, b.BaseML = 1000*mol, o.Base.Amount(mol*o.Litres)
		}
	}
}

// mostStrength bounds the search for an EC.
const mostStrength = 4

// strength finds how much of the target gives the EC that is wanted.
func (b *Batch) strength(o Order, before Ions, base Content) error {
	full, err := NewTarget(o.MgL)
	if err != nil {
		return err
	}
	b.Aim = full
	if o.EC > 0 {
		b.Aim = full.At(whole(full, o.EC, before, base, o.Air))
	}
	shelf, err := full.prepare(o.Shelf)
	if err != nil {
		return err
	}
	// A shelf that lacks a nutrient makes up the EC with more of the others. Its
	// strength says little then, and the limits do not grow with it.
	try := func(s float64) float64 {
		b.Target = full.At(s)
		for i, l := range b.Aim.Limits {
			b.Target.Limits[i].MostMgL = min(b.Target.Limits[i].MostMgL, l.MostMgL)
		}
		if b.Fit, err = shelf.fit(b.Target, base); err != nil {
			return 0
		}
		return EC25(before.Plus(b.Fit.Ions), o.Air)
	}
	b.Strength = 1
	if o.EC <= 0 {
		try(1)
		return err
	}
	least, most := try(0.01), 0.0
	if err != nil {
		return err
	}
	if o.EC < least {
		return &Fault{"feed-ec-low", "feed.ec", fmt.Sprintf("the water with its acid already has %.2f mS/cm; %.2f cannot be reached with it", least, o.EC), "blend the water with rain or deionised water, or aim higher"}
	}
	if most = try(mostStrength); err != nil {
		return err
	}
	if o.EC > most {
		return &Fault{"feed-ec-high", "feed.ec", fmt.Sprintf("%.2f mS/cm cannot be reached: at %d times the recipe, or where more would be poison, the shelf gives %.2f", o.EC, mostStrength, most), "aim lower: leafy crops want 1 to 2.5 mS/cm; or buy what the shelf lacks"}
	}
	b.Strength = root(func(s float64) float64 { return try(s) - o.EC }, 0.01, mostStrength, 1e-5)
	try(b.Strength)
	return err
}

// whole is the strength at which all of the recipe, the water's share of it
// included, has the EC that is wanted. What a shelf can do has no part in it.
func whole(full Target, ec float64, before Ions, base Content, air Air) float64 {
	return root(func(s float64) float64 {
		brought := full.MgL.Times(s)
		for n := range brought {
			brought[n] = max(brought[n]-base[n], 0)
		}
		return EC25(before.Plus(IonsOf(brought)), air) - ec
	}, 0.01, mostStrength, 1e-4)
}

// WholeAt is a recipe in a water at the strength that gives an EC in mS/cm, in
// mg/L: what to hold a mix against that was not made after it.
func WholeAt(mgL Content, ec float64, w Water, air Air) (Content, error) {
	full, err := NewTarget(mgL)
	if err != nil {
		return Content{}, err
	}
	return mgL.Times(whole(full, ec, w.Ions, w.Content, air)), nil
}

// acid is the lasting acid for the water alone: it goes in the day before the
// salts.
func (o Order) acid() AcidPart {
	least := value(factTapAlkalinityNoAcid)
	switch {
	case !o.Water.Known:
		return AcidPart{Why: "The alkalinity is not known, and no acid is dosed on a guess."}
	case o.Water.AlkalinityMgL < least:
		return AcidPart{Why: fmt.Sprintf("An alkalinity under %g mg/L needs no acid: the feed and the plants bring the pH down.", least)}
	case o.PH <= 0:
		return AcidPart{Why: "No pH is asked for."}
	}
	a := AcidPart{}
	if o.Acid != nil {
		a.row = *o.Acid
		a.Name = o.Acid.Name
	} else {
		a.row = ExampleAcid()
		a.Name = a.row.Name
		a.Missing = fmt.Sprintf("an acid with its strength in percent by mass and its density; phosphoric acid of %g %% is a worked example only", value(factAcidExampleMass))
	}
	c, _ := At(o.TemperatureC)
	d, ok := c.Acidify(o.Water.Ions, a.row, o.PH, o.Air)
	if !ok {
		return AcidPart{Why: fmt.Sprintf("%s does not bring this water to pH %g.", a.Name, o.PH)}
	}
	a.whole = d
	a.ClosedMmolL, a.OpenMmolL = 1000*d.ClosedMolL, 1000*d.OpenMolL
	a.ClosedML, a.OpenML = a.row.Amount(d.ClosedMolL*o.Litres), a.row.Amount(d.OpenMolL*o.Litres)
	a.PHRebound, a.AlkalinityMeqL = d.PHRebound, d.Alkalinity
	if a.Missing != "" {
		return a
	}
	today, at := d.OpenMolL, d.PHAtOnce
	if a.row.Citric() {
		today, at = o.trim(c, a.row, today)
	} else {
		a.openMolL, a.Adds = d.OpenMolL, d.AddsContent
	}
	a.DoseTodayML, a.PHAtOnce, a.PHAfterAir = a.row.Amount(today*o.Litres), at, d.PHAfterAir
	if a.row.Citric() {
		a.PHAfterAir = c.Equilibrium(o.Water.Ions, o.Air).PH // microbes eat it within days
	}
	return a
}

// trim holds citric acid to small doses.
func (o Order) trim(c *Chemistry, r Reagent, molL float64) (dose, phAtOnce float64) {
	dose = min(molL, value(factAcidCitricMaxDose)/1000/r.MolarMass())
	return dose, c.Equilibrium(o.Water.Ions.Plus(r.row.ions.Times(dose)), Closed).PH
}

func (b *Batch) judge(o Order, base Content) {
	for _, l := range b.Target.PassedBy(base) {
		b.Findings = append(b.Findings, l.finding(o.Field, base))
	}
	for j, f := range o.Shelf {
		field := fmt.Sprintf("%s[%d]", o.Field, j)
		b.Findings = append(append(b.Findings, f.Findings(field)...), f.assumptions(field)...)
	}
	for i := range b.Misses {
		m := &b.Misses[i]
		if acid := b.Acid.Adds[m.Of]; m.Have > m.Want && acid > m.Want/2 {
			m.byAcid = true
			m.InTheWay = fmt.Sprintf("the acid for this water brings %.3g mg/L by itself", acid)
		}
		b.Findings = append(b.Findings, m.Finding(o.Field))
	}
	if least := value(factAcidStepLeastPh); b.PHAfterSalts < least {
		b.Findings = append(b.Findings, finding.Finding{
			Level: finding.Note, Code: "mix-sour", Field: o.Field,
			Text: fmt.Sprintf("The salts alone bring this water to pH %.1f: soft water has nothing to hold against them.", b.PHAfterSalts),
			Hint: "Leave some tap water in the blend, or have an adult add a very little base, wait, and measure again.",
		})
	}
	if b.Brushite > 0 {
		hint := "Bring the pH under 6.5 before the salts go in."
		if b.PHAfterSalts < 6.5 { // it is: there is too much calcium and phosphate for any pH that plants like
			hint = "The pH is low enough: it is the calcium and the phosphate that are too much. Blend the tap with rain or deionised water, or take a feed with less of the two."
		}
		b.Findings = append(b.Findings, finding.Finding{
			Level: finding.Warn, Code: "mix-cloudy", Field: o.Field,
			Text: fmt.Sprintf("At pH %.1f calcium phosphate falls out: the tub turns cloudy.", b.PHAfterSalts),
			Hint: hint,
		})
	}
	if o.Acid != nil {
		b.Findings = append(b.Findings, o.Acid.Findings("acids", b.Acid.OpenMmolL/1000)...)
	}
}
