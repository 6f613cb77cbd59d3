package solution

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
)

// same is how near a shown formula and the fast code must be: a few roundings.
const same = 1e-12

// The formulas that are shown are those that compute: each is tried against the
// fast code over its valid range.
func TestFormulasAreTheOnesThatCompute(t *testing.T) {
	citric, err := NewReagent("citric", 100, 0, true)
	if err != nil {
		t.Fatal(err)
	}
	kno3, _ := SaltNamed("potassium-nitrate")
	curve := lettuceCurve(t)
	rapid.Check(t, func(t *rapid.T) {
		b := working.NewBook()
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		litres := number("litres", 5, 120)
		tub := b.Typed("litres", "solution", "V", quantity.Volume, quantity.Litre.Base(litres), 0)
		check := func(what string, n working.Number, unit quantity.Unit, want float64) {
			if got := unit.From(n.Base); math.Abs(got-want) > same*(1+math.Abs(want)) {
				t.Fatalf("%s: the formula gives %v, the code %v", what, got, want)
			}
		}
		tempC := number("temperature", 5, 35)
		_, slope := Slopes()
		reading := number("reading", 0.1, 4)
		check("to 25 °C", ShowTo25(b, reading, tempC), quantity.MillisiemensPerCM, To25(reading, tempC, slope))
		band := ECBand(reading)
		low, high := band.Show(b)
		check("low", low, quantity.MillisiemensPerCM, band.Low)
		check("high", high, quantity.MillisiemensPerCM, band.High)
		scale := rapid.SampledFrom([]Scale{PPM500, PPM640, PPM700}).Draw(t, "scale")
		check("ppm", scale.Show(b, low), quantity.One, scale.PPM(band.Low))

		acid, err := NewReagent("phosphoric", number("percent", 1, 85), number("density", 1, 1.7), false)
		if err != nil {
			t.Fatal(err)
		}
		mol := number("mol", 1e-5, 5e-3)
		check("acid, mL", acid.Show(b, "acid", tub, mol), quantity.Millilitre, acid.Millilitres(mol*litres))
		check("acid, g", citric.Show(b, "citric", tub, mol), quantity.Gram, citric.Grams(mol*litres))

		percent := number("bleach", 1, 12)
		bleach, err := CleanDown(litres, percent, 0)
		if err != nil {
			t.Fatal(err)
		}
		check("bleach", ShowClean(b, tub, percent), quantity.Millilitre, bleach.Millilitres)
		chlorine := number("chlorine", 0, 4)
		check("ascorbic acid", ShowAscorbic(b, tub, chlorine), milligram, Dechlorinate(litres, chlorine, 0).AscorbicMg)
		check("top-up", ShowTopUp(b), quantity.MilligramPerL, TopUpMgL())
		used := number("used", 0, 200)
		check("build-up", ShowBuildUp(b, Sodium, 14, 30, b.Typed("used", "water used", "u", quantity.Volume, quantity.Litre.Base(used), 0), tub), quantity.MilligramPerL, BuildUp(14, 30, used, litres))

		now, then := number("now", 0.6, 2), number("then", 0.1, 0.55)
		room, swap := ShowThin(b, tub, now, then)
		water, _ := curve.ThinRoom(litres, curve.EC(now), curve.EC(then))
		out, _ := curve.ThinSwap(litres, curve.EC(now), curve.EC(then))
		for _, pair := range [][2]float64{{quantity.Litre.From(room.Base), water}, {quantity.Litre.From(swap.Base), out}} {
			// The curve finds a strength to a billionth, which 1/then makes larger.
			if math.Abs(pair[0]-pair[1]) > 1e-6*(1+pair[1]) {
				t.Fatalf("thinning: the formula gives %v, the curve %v", pair[0], pair[1])
			}
		}
		if s, ok := kno3.ShowSolubility(b, tempC); !ok {
			t.Fatal("no solubility")
		} else {
			check("solubility", s, gramPerLitre, saturatedGL(kno3.dissolves.at(tempC)))
		}
		stocks := Stocks{Strength: math.Round(number("strength", 10, 200)), LitresEach: 1}
		dose, fills := stocks.Show(b, tub)
		check("stock dose", dose, millilitrePer, 1000/stocks.Strength)
		check("fills", fills, quantity.One, stocks.Strength/litres)
	})
}

// Every number comes out with a pencil in both unit systems.
func TestPencil(t *testing.T) {
	o := order(t)
	mix, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	b := working.NewBook()
	tub := b.Typed("litres", "solution", "V", quantity.Volume, quantity.Litre.Base(o.Litres), 0)
	total := ShowNutrient(b, Potassium, o.Shelf, mix.Portions, o.Water.Content, tub)
	if got := quantity.MilligramPerL.From(total.Base); math.Abs(got-mix.MgL[Potassium]) > 1e-9 {
		t.Errorf("potassium summed by hand %v, by the mix %v", got, mix.MgL[Potassium])
	}
	a, _ := at25.Acidify(o.Water.Ions, *o.Acid, o.PH, o.Air)
	check := a.ShowLasting(b, o.Water.AlkalinityMgL)
	if got := 1000 * a.OpenMolL; math.Abs(millimolar.From(check.Base)/got-1) > 0.01 {
		t.Errorf("the lasting dose by the alkalinity %v, by the chemistry %v", millimolar.From(check.Base), got)
	}
	o.Acid.Show(b, "acid", tub, a.OpenMolL)
	liquid := Dosed{Fertiliser{Name: "grow", DensityKgL: 1.2}, 2}
	liquid.ShowDose(b.In("grow"), tub)
	Dosed{Fertiliser{Name: "bag"}, 1.1}.ShowDose(b.In("bag"), tub)
	ShowStrengthen(b.In("more"), tub, 2, 0.7, 0.9)
	ShowThin(b.In("less"), tub, 0.9, 0.7)
	ShowClean(b, tub, 4.5)
	ShowAscorbic(b, tub, 0.4)
	ShowTopUp(b)
	low, _ := mix.Band.Show(b)
	PPM500.Show(b, low)
	ShowTo25(b, 1.2, 18)
	worked := 0
	for _, n := range b.Numbers() {
		if n.Law == nil {
			continue
		}
		worked++
		for _, s := range []quantity.System{quantity.Metric, quantity.US} {
			shown := n.Show(s)
			if got, err := pencil.Round(shown.PutIn, shown.Decimals); err != nil || got != shown.Value {
				t.Errorf("%s is shown as %v, and %s gives %v, %v", n.Key, shown.Value, shown.PutIn, got, err)
			}
		}
	}
	if worked < 15 {
		t.Errorf("only %d numbers with a formula", worked)
	}
}
