package working

import (
	"math"
	"testing"

	"rootbell/internal/base/quantity"
)

func volumeLaw() *Law {
	return Must(Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "h/6*(A0+4*Am+Ah)", Basis: OfNature, Source: "prismoidal formula",
		Where: []Symbol{
			{Name: "h", Meaning: "depth", Kind: quantity.Length},
			{Name: "A0", Meaning: "area at the floor", Kind: quantity.Area},
			{Name: "Am", Meaning: "area at half depth", Kind: quantity.Area},
			{Name: "Ah", Meaning: "area at the water", Kind: quantity.Area},
		},
	})
}

func TestShowWritesConversionsAsFactorsInBothSystems(t *testing.T) {
	b := NewBook()
	n := b.Work(volumeLaw(), "v", "volume",
		b.Typed("h", "depth", "h", quantity.Length, 167, 0), b.Typed("a0", "a", "A0", quantity.Area, 136600, 0),
		b.Typed("am", "a", "Am", quantity.Area, 154500, 0), b.Typed("ah", "a", "Ah", quantity.Area, 173300, 0))
	metric := n.Show(quantity.Metric)
	if metric.Formula != "h/6*(A0+4*Am+Ah)/1000" || metric.PutIn != "16.7/6*(1366+4*1545+1733)/1000" || metric.Value != 25.8 || metric.Unit != "L" {
		t.Errorf("metric %+v", metric)
	}
	us := n.Show(quantity.US)
	if us.Formula != "h/6*(A0+4*Am+Ah)/231" || us.Value != 6.82 || us.Unit != "gal" {
		t.Errorf("us %+v", us)
	}
}

func TestMustRefusesWrongDimensions(t *testing.T) {
	for name, law := range map[string]Law{
		"adds length to area": {Symbol: "x", Kind: quantity.Length, Formula: "a+b", Where: []Symbol{{Name: "a", Kind: quantity.Length}, {Name: "b", Kind: quantity.Area}}},
		"unknown symbol":      {Symbol: "x", Kind: quantity.Length, Formula: "a", Where: nil},
		"wrong result":        {Symbol: "x", Kind: quantity.Length, Formula: "a^2", Where: []Symbol{{Name: "a", Kind: quantity.Length}}},
		"root of a volume":    {Symbol: "x", Kind: quantity.Length, Formula: "sqrt(a)", Where: []Symbol{{Name: "a", Kind: quantity.Volume}}},
		"bracket":             {Symbol: "x", Kind: quantity.Count, Formula: "(1+2"},
		"function":            {Symbol: "x", Kind: quantity.Count, Formula: "sin(1)"},
	} {
		if err := law.prepare(); err == nil {
			t.Errorf("%s: taken", name)
		}
	}
}

func TestFloorSeesAWholeNumberThroughAChangeOfUnits(t *testing.T) {
	law := Must(Law{
		Symbol: "n", Kind: quantity.Count, Formula: "floor(V/p)", Basis: OfNature,
		Where: []Symbol{{Name: "V", Kind: quantity.Volume}, {Name: "p", Kind: quantity.Volume}},
	})
	b := NewBook()
	n := b.Work(law, "n", "plants", b.Typed("v", "v", "V", quantity.Volume, quantity.USGallon.Base(6), 0), b.Typed("p", "p", "p", quantity.Volume, quantity.USGallon.Base(0.75), 0))
	if n.Base != 8 {
		t.Errorf("6 gal at 0.75 gal gives %v", n.Base)
	}
	if s := n.Show(quantity.US); s.PutIn != "floor(6/0.75)" || s.Formula != "floor(V/p)" {
		t.Errorf("shown as %+v", s)
	}
}

func TestEmpiricalLawTakesItsOwnUnits(t *testing.T) {
	law := Must(Law{
		Symbol: "r", Kind: quantity.Density, Unit: quantity.KilogramPerLitre, Formula: "1-t/100", Empirical: true, Basis: OfNature,
		Where: []Symbol{{Name: "t", Kind: quantity.Temperature, Unit: quantity.Celsius}},
	})
	b := NewBook()
	n := b.Work(law, "r", "density", b.Typed("t", "temperature", "t", quantity.Temperature, quantity.Celsius.Base(20), 0))
	if got := quantity.KilogramPerLitre.From(n.Base); math.Abs(got-0.8) > 1e-12 {
		t.Errorf("at 20 °C %v", got)
	}
	if s := n.Show(quantity.US); s.Formula != "(1-(t-32)/1.8/100)*8.34540445202" {
		t.Errorf("us formula %q", s.Formula)
	}
}

func TestErrorsOfMeasuresCombine(t *testing.T) {
	law := Must(Law{Symbol: "a", Kind: quantity.Area, Formula: "x*y", Where: []Symbol{{Name: "x", Kind: quantity.Length}, {Name: "y", Kind: quantity.Length}}})
	b := NewBook()
	x := b.Typed("x", "x", "x", quantity.Length, 100, 2)
	y := b.Typed("y", "y", "y", quantity.Length, 50, 2)
	if got, want := b.Work(law, "xy", "", x, y).Error(), math.Hypot(100, 200); math.Abs(got-want) > 1e-9 {
		t.Errorf("error of x*y %v, want %v", got, want)
	}
	if got, want := b.Work(law, "xx", "", x, x).Error(), 400.0; math.Abs(got-want) > 1e-9 {
		t.Errorf("a measure used twice: error %v, want %v", got, want)
	}
}
