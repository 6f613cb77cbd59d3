package shelf

import (
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func kilograms(b *working.Book, key string, v float64) working.Number {
	return b.Typed(key, key, "m", quantity.Mass, v, 0)
}

// A shelf that bears 60 kg with two tubs of 560 and 440 mm: the first has 33.6 kg
// of it, less the filled tub, for cups of 0.15 kg and plants of 0.1 kg.
func TestPlantsByHand(t *testing.T) {
	for _, row := range []struct {
		name   string
		filled float64
		want   float64
	}{
		{"6 kg to spare: 24 of 0.25 kg", 27.6, 24},
		{"just under one", 33.351, 0},
		{"just one", 33.349, 1},
		{"the tub alone is too heavy", 40, 0},
	} {
		b := working.NewBook()
		length := func(key string, mm float64) working.Number {
			return b.Typed(key, key, "c", quantity.Length, mm, 0)
		}
		got := Plants(b, kilograms(b, "allowed", 60), length("one", 560), length("all", 1000),
			kilograms(b, "filled", row.filled), kilograms(b, "cup", 0.15), b.Typed("plant", "plant", "g", quantity.SmallMass, 0.1, 0))
		if got.Base != row.want {
			t.Errorf("%s: %v plants, want %v", row.name, got.Base, row.want)
		}
	}
}

func TestRoomUnderTheLamp(t *testing.T) {
	for _, row := range []struct {
		name string
		lit  bool
		want float64
	}{
		{"85 cm, a tub of 24 cm, 15 cm to the lamp", true, 460},
		{"no lamp: up to the board", false, 610},
	} {
		b := working.NewBook()
		tub := b.Typed("tub", "tub", "t", quantity.Length, 240, 0)
		if got := Room(b, 850, tub, row.lit); got.Base != row.want {
			t.Errorf("%s: %v mm, want %v", row.name, got.Base, row.want)
		}
	}
}

func TestWholeTubsSideBySide(t *testing.T) {
	for _, row := range []struct{ width, length, want float64 }{
		{1200, 560, 2}, {1120, 560, 2}, {1119, 560, 1}, {500, 560, 0}, {3 * 25.4 * 19.5, 25.4 * 19.5, 3},
	} {
		b := working.NewBook()
		if got := Abreast(b, row.width, tubsOf(b, row.length)); got.Base != row.want {
			t.Errorf("%v mm takes %v tubs of %v mm, want %v", row.width, got.Base, row.length, row.want)
		}
	}
}

// Tubs that take more of the shelf's length may weigh more; none may weigh more
// than the rating.
func TestLongerTubsMayWeighMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := rapid.Float64Range(200, 5000).Draw(t, "width")
		short := rapid.Float64Range(0, 1).Draw(t, "short") * width
		long := short + rapid.Float64Range(0, 1).Draw(t, "more")*(width-short)
		rated := rapid.Float64Range(1, 2000).Draw(t, "rated")
		bears := func(mm float64) float64 {
			b := working.NewBook()
			return Allowed(b, quantity.KG(rated), width, tubsOf(b, mm)).Base
		}
		if a, b := bears(short), bears(long); a > b*(1+1e-12) || b > rated || a < 0 {
			t.Fatalf("%v mm may weigh %v kg, %v mm %v kg, rated %v", short, a, long, b, rated)
		}
	})
}

func TestWhereToStandWithoutARating(t *testing.T) {
	if got := Unrated(); got != "floor" {
		t.Errorf("%q", got)
	}
}
