package crop

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Every crop has every row asked for, of a sensible size, in the unit in which
// it is taken.
func TestEveryCropHasEveryRow(t *testing.T) {
	names := Names()
	if len(names) < 10 || !slices.IsSorted(names) {
		t.Fatalf("%v", names)
	}
	for _, name := range names {
		c, known := Find(name)
		if !known {
			t.Errorf("%s is not found", name)
			continue
		}
		for what, row := range map[string]struct {
			unit      string
			low, high float64
		}{
			"litres.refill": {"L per plant", 0.5, 20}, "litres.once": {"L per plant", 0.5, 30},
			"spacing": {"mm", 50, 600}, "height": {"cm above lid", 5, 100}, "harvest_mass": {"g", 1, 2000},
		} {
			f := c.fact(what)
			if f.ID == "" || f.Unit != row.unit || f.Value < row.low || f.Value > row.high {
				t.Errorf("%s: %s is %v %s", name, what, f.Value, f.Unit)
			}
		}
		if c.fact("litres.once").Value < c.fact("litres.refill").Value {
			t.Errorf("%s wants less filled once than topped up", name)
		}
	}
	for _, f := range Facts.Rows() {
		if parts := strings.Split(string(f.ID), "."); parts[0] != "crop" || !slices.Contains(names, strings.ReplaceAll(parts[1], "_", " ")) {
			t.Errorf("%s is a row of no crop", f.ID)
		}
	}
}

func TestFindTakesANameAsTyped(t *testing.T) {
	for name, want := range map[string]bool{
		"leaf lettuce": true, "Swiss chard": true, " PAK CHOI ": true, "dwarf cherry tomato": true,
		"lettuce": false, "": false, "leaf_lettuce": true, "crop": false, "basil.litres": false,
	} {
		if _, ok := Find(name); ok != want {
			t.Errorf("%q: %v", name, ok)
		}
	}
	if _, ok := Find(Default); !ok {
		t.Errorf("the default, %s, is no crop", Default)
	}
}

func grams(b *working.Book, g float64) working.Number {
	return b.Typed("wanted", "wanted", "g", quantity.SmallMass, quantity.Gram.Base(g), 0)
}

// Constant yield: the same mass from each square centimetre, so that the spacing
// goes with the root of the mass, between a quarter and twice the usual area.
func TestSpacingFollowsTheMass(t *testing.T) {
	for _, row := range []struct {
		name, crop string
		grams, mm  float64
	}{
		{"lettuce at its usual 100 g", "leaf lettuce", 100, 150},
		{"lettuce at 120 g: 150·√1.2", "leaf lettuce", 120, 164.317},
		{"lettuce over 120 g takes its final spacing", "leaf lettuce", 121, 200},
		{"lettuce at 25 g: half", "leaf lettuce", 25, 75},
		{"lettuce at 5 g: no less than a quarter of the area", "leaf lettuce", 5, 75},
		{"basil at its usual 30 g", "basil", 30, 200},
		{"basil at 60 g: 200·√2", "basil", 60, 282.843},
		{"basil at 600 g: no more than twice the area", "basil", 600, 282.843},
	} {
		b := working.NewBook()
		c, _ := Find(row.crop)
		if got := c.Spacing(b, grams(b, row.grams)); math.Abs(got.Base-row.mm) > 0.001 {
			t.Errorf("%s: %v mm, want %v", row.name, got.Base, row.mm)
		}
	}
}

// A plant of an eighth of the mass and the same shape is half as high.
func TestHeightFollowsTheMass(t *testing.T) {
	b := working.NewBook()
	c, _ := Find("romaine") // 200 g, 35 cm
	if got := c.Height(b, grams(b, 25)); math.Abs(got.Base-175) > 1e-9 {
		t.Errorf("25 g of romaine stand %v mm high", got.Base)
	}
	b = working.NewBook()
	if got := c.Height(b, grams(b, 200)); got.Base != 350 {
		t.Errorf("200 g of romaine stand %v mm high", got.Base)
	}
}

// More wanted of a plant never lets it stand closer or lower.
func TestBiggerPlantsWantMoreRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, _ := Find(rapid.SampledFrom(Names()).Draw(t, "crop"))
		small := rapid.Float64Range(5, 2000).Draw(t, "small")
		big := rapid.Float64Range(small, 2000).Draw(t, "big")
		room := func(g float64) (spacing, height float64) {
			b := working.NewBook()
			w := grams(b, g)
			return c.Spacing(b, w).Base, c.Height(b, w).Base
		}
		s1, h1 := room(small)
		s2, h2 := room(big)
		if s2 < s1-1e-9 || h2 < h1-1e-9 {
			t.Fatalf("%s: %v g want %v and %v mm, %v g %v and %v", c.Name, small, s1, h1, big, s2, h2)
		}
	})
}

// What a plant wants and weighs, by the rows: in litres and grams.
func TestNumbersOfACrop(t *testing.T) {
	b := working.NewBook()
	c, _ := Find("basil")
	if got := quantity.Litre.From(c.Litres(b, false).Base); math.Abs(got-3.8) > 1e-12 {
		t.Errorf("%v L topped up", got)
	}
	if got := quantity.Litre.From(c.Litres(b, true).Base); math.Abs(got-5.6) > 1e-12 {
		t.Errorf("%v L filled once", got)
	}
	if got := quantity.Gram.From(c.Mass(b).Base); math.Abs(got-30) > 1e-12 {
		t.Errorf("%v g", got)
	}
}
