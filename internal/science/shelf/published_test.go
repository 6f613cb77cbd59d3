package shelf

import (
	"math"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
)

func tubsOf(b *working.Book, mm float64) working.Number {
	return b.Typed("tubs", "tubs", "c", quantity.Length, mm, 0)
}

// A load W spread over the middle c of a simply supported span L bends it with
// W/4·(L − c/2); over the whole span with W·L/8. The first is 2 − c/L of the
// second. The statics are worked here by adding up slices, not by the formula.
func TestABlockInTheMiddleBendsMore(t *testing.T) {
	for _, row := range []struct {
		source       string
		c, l, factor float64
		rated, bears float64
	}{
		{"beam formula, by hand: 2 - 540/1200; 100·1/1.55 kg", 540, 1200, 1.55, 100, 64.516},
		{"a load over the whole span is the rating's own", 1200, 1200, 1, 100, 100},
		{"a load at the very middle: PL/4 against WL/8", 1e-6, 1200, 2, 100, 50},
	} {
		if got := bending(row.c, row.l) / bending(row.l, row.l); math.Abs(got-row.factor) > 1e-5 {
			t.Errorf("%s: slices give %v, want %v", row.source, got, row.factor)
		}
		b := working.NewBook()
		allowed := Allowed(b, quantity.KG(row.rated), row.l, tubsOf(b, row.c))
		share := Facts.Get(factShelfUseShare).Value / 100
		if want := row.bears * share; math.Abs(allowed.Base-want) > 0.001 {
			t.Errorf("%s: %v kg, want %v of %v kg", row.source, allowed.Base, share, row.bears)
		}
		for _, system := range []quantity.System{quantity.Metric, quantity.US} {
			shown := allowed.Show(system)
			if got, err := pencil.Round(shown.PutIn, shown.Decimals); err != nil || got != shown.Value {
				t.Errorf("%s gives %v, %v; shown %v", shown.PutIn, got, err, shown.Value)
			}
		}
	}
}

// bending is the moment at mid-span of a unit load on the middle c of a span l
// on two supports: each slice's weight times its half distance to the nearer
// support, which is what a slice at x brings to the middle.
func bending(c, l float64) float64 {
	const slices = 20000
	sum := 0.0
	for i := range slices {
		x := (l-c)/2 + c*(float64(i)+0.5)/slices
		sum += min(x, l-x) / 2 / slices
	}
	return sum
}

// The numbers of a centred tub 540 mm long on a bay of 1200 mm rated for 100 kg:
// 64.5 kg by statics, 51.6 kg with a fifth kept back for bumps and ageing.
func TestTheWorkedShelf(t *testing.T) {
	b := working.NewBook()
	if got := quantity.Round(Allowed(b, 100, 1200, tubsOf(b, 540)).Base, 1); got != 51.6 {
		t.Errorf("%v kg", got)
	}
	if got := quantity.Round(100/(2-540.0/1200), 1); got != 64.5 {
		t.Errorf("%v kg", got)
	}
}
