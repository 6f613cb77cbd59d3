package garden_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// roundedMM is what a place loses by being written to a hundredth of a
// millimetre in x and in y.
const roundedMM = 0.0071

func TestEveryHoleKeepsEveryMargin(t *testing.T) {
	for _, name := range plans(t) {
		p, a := standing(t, name, quantity.Metric)
		for i, tub := range a.Tubs {
			if tub.Lid == nil || len(tub.Lid.Layouts) != 3 {
				t.Errorf("%s: %s has not all three layouts", name, tub.Name)
				continue
			}
			for _, l := range tub.Lid.Layouts {
				t.Run(fmt.Sprintf("%s/%s/%s", name, tub.Name, l.Name), func(t *testing.T) {
					kept(t, p, &p.Tubs[i], l)
				})
			}
		}
	}
}

// kept measures a layout again, hole by hole and pair by pair.
func kept(t teller, p *plan.Plan, tub *plan.Tub, l garden.Layout) {
	t.Helper()
	k := keepsOf(p, tub, l.Holes[0].DiameterMM)
	least, web, edge := math.Inf(1), math.Inf(1), math.Inf(1)
	for i, h := range l.Holes {
		at := spot{h.XMM, h.YMM}
		toEdge := inLid(tub.Lid, at)
		edge, web = min(edge, toEdge), min(web, toEdge-k.hole/2)
		for _, c := range tub.Lid.KeepClear {
			web = min(web, fromClear(c, at)-k.hole/2)
		}
		for _, other := range l.Holes[:i] {
			d := at.to(spot{other.XMM, other.YMM})
			least, web = min(least, d), min(web, d-k.hole)
		}
		if i >= len(tub.Lid.Holes) { // the first are there already and stay
			places(t, tub, k, h)
		}
	}
	stay(t, tub, l)
	if len(l.Holes) == 1 {
		least = 0 // as the document writes it where there is no pair
	}
	near := func(what string, said, measured float64) {
		if math.Abs(said-measured) > 2*roundedMM+0.005 {
			t.Errorf("%s is told as %v mm and measures %.3f", what, said, measured)
		}
	}
	near("the least spacing", l.SpacingMM, least)
	near("the least web", l.WebMM, web)
	near("the least edge distance", l.EdgeMM, edge)
	if len(l.Holes) > 1 && least < k.apart-2*roundedMM {
		t.Errorf("two holes are %.2f mm apart, %.2f is the least", least, k.apart)
	}
	if l.SpacingMM > l.BoundMM+roundedMM {
		t.Errorf("%v mm is above the bound %v, which nothing exceeds", l.SpacingMM, l.BoundMM)
	}
}

// stay holds that the holes which are there already come first, where they
// are; of more than are needed, that none but those is used.
func stay(t teller, tub *plan.Tub, l garden.Layout) {
	t.Helper()
	at := func(h plan.Hole, g garden.Hole) bool {
		return spot{mm(h.At[0]), mm(h.At[1])}.to(spot{g.XMM, g.YMM}) <= roundedMM
	}
	for i, h := range l.Holes {
		switch {
		case len(tub.Lid.Holes) > len(l.Holes):
			if !slices.ContainsFunc(tub.Lid.Holes, func(f plan.Hole) bool { return at(f, h) }) {
				t.Errorf("hole %d at %v, %v is none of those that are there", h.N, h.XMM, h.YMM)
			}
		case i < len(tub.Lid.Holes) && !at(tub.Lid.Holes[i], h):
			t.Errorf("the fixed hole %d moved to %v, %v", i+1, h.XMM, h.YMM)
		}
	}
}

func places(t teller, tub *plan.Tub, k keeps, h garden.Hole) {
	t.Helper()
	at := spot{h.XMM, h.YMM}
	if d := inLid(tub.Lid, at); d < k.edge-roundedMM {
		t.Errorf("hole %d lies %.2f mm from the lid's edge, %.2f is the least", h.N, d, k.edge)
	}
	if d := inWall(tub, k.cupBottom, at); d < k.wall-roundedMM {
		t.Errorf("hole %d lies %.2f mm from the inner wall, %.2f is the least", h.N, d, k.wall)
	}
	for _, c := range tub.Lid.KeepClear {
		if d := fromClear(c, at); d < k.clear-roundedMM {
			t.Errorf("hole %d lies %.2f mm from the %s, %.2f is the least", h.N, d, c.Why, k.clear)
		}
	}
}

// The margins with the numbers of the document format put in by hand:
// e = 2 + 1.5 = 3.5; edge max(60, 38+12+3.5) and max(50, 53.5);
// clear 38 + max(20, 15.5) and 38 + max(10, 15.5); wall 36 + 10;
// apart max(83+2, 76+12+7) and, with a cup of 100 mm rim, max(102, 95).
func TestMarginsByHand(t *testing.T) {
	cases := []struct {
		name  string
		edits []edit
		want  map[string]float64
	}{
		{"as wanted", nil, map[string]float64{"margin_edge": 60, "margin_clear": 58, "margin_wall": 46, "margin_apart": 95, "hole_error": 3.5}},
		{"less than is safe", []edit{{"tubs[0].spacing.edge", "5 cm"}, {"tubs[0].spacing.clear", "10 mm"}}, map[string]float64{"margin_edge": 53.5, "margin_clear": 53.5}},
		{"a wide lip", []edit{{"tubs[0].cup.rim", "100 mm"}}, map[string]float64{"margin_apart": 102}},
		{"a careful hand", []edit{{"tools.marking_error", "0 mm"}, {"tools.drilling_error", "0 mm"}}, map[string]float64{"margin_apart": 88, "hole_error": 0}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			a := edited(t, "testdata/clean.yaml", c.edits...)
			for key, want := range c.want {
				if got := number(t, a, "tubs.Plain."+key); got.Value != want || got.Unit != "mm" {
					t.Errorf("%s is %v %s, by hand %v mm", key, got.Value, got.Unit, want)
				}
			}
		})
	}
}

func TestRulerAndRowsLieOnTheRuler(t *testing.T) {
	for _, name := range plans(t) {
		p, a := standing(t, name, quantity.Metric)
		for i, tub := range a.Tubs {
			step := mmOr(p.Tools.RulerStep, 5)
			for _, l := range tub.Lid.Layouts[1:] {
				for _, h := range l.Holes[min(len(p.Tubs[i].Lid.Holes), len(l.Holes)):] {
					for _, v := range []float64{h.XMM, h.YMM} {
						if off := math.Abs(v - math.Round(v/step)*step); off > 0.0051 {
							t.Errorf("%s: %s: hole %d of %s at %v mm is %.3f off the marks of %v mm", name, tub.Name, h.N, l.Name, v, off, step)
						}
					}
				}
			}
		}
	}
}

// No layout is wider than the one called widest, and the loss says by how much.
func TestWidestIsWidest(t *testing.T) {
	for _, name := range plans(t) {
		_, a := standing(t, name, quantity.Metric)
		for _, tub := range a.Tubs {
			widest := tub.Lid.Layouts[0]
			for _, l := range tub.Lid.Layouts {
				if l.SpacingMM > widest.SpacingMM {
					t.Errorf("%s: %s: %s keeps %v mm, 'widest' %v", name, tub.Name, l.Name, l.SpacingMM, widest.SpacingMM)
				}
				if want := 1 - l.SpacingMM/widest.SpacingMM; len(l.Holes) > 1 && math.Abs(l.Loss-want) > 1e-5 {
					t.Errorf("%s: %s: %s loses %v of the spacing, told as %v", name, tub.Name, l.Name, want, l.Loss)
				}
			}
		}
	}
}

func TestTypedPlantsAreLaidAsFarApartAsPossible(t *testing.T) {
	best := edited(t, "testdata/clean.yaml")
	typed := edited(t, "testdata/clean.yaml", edit{"tubs[0].plants", "6"})
	if best.Tubs[0].Plants.Count != 6 {
		t.Fatalf("the plain tub has %d plants, not 6", best.Tubs[0].Plants.Count)
	}
	if got, want := fmt.Sprint(typed.Tubs[0].Lid.Layouts), fmt.Sprint(best.Tubs[0].Lid.Layouts); got != want {
		t.Errorf("six plants as typed lie otherwise than the best six:\n%s\n%s", got, want)
	}
	twelve := edited(t, "testdata/clean.yaml", edit{"tubs[0].plants", "12"})
	if n := len(twelve.Tubs[0].Lid.Layouts[0].Holes); n != 12 || twelve.Tubs[0].Plants.Count != 12 {
		t.Errorf("twelve plants as typed give %d holes and a count of %d", n, twelve.Tubs[0].Plants.Count)
	}
	for _, code := range []string{"over-limit", "closer-than-wanted"} {
		if _, ok := found(twelve, code); !ok {
			t.Errorf("twelve plants are laid closer than wanted without %s", code)
		}
	}
}

// More than fit: the most that fit at the least safe distance are drawn, and
// the plan's number is a stop.
func TestMoreThanFit(t *testing.T) {
	p := parsed(t, "testdata/clean.yaml", text(t, "testdata/clean.yaml", edit{"tubs[0].plants", "60"}))
	a := assessed(t, p)
	f, ok := found(a, "do-not-fit")
	if !ok {
		t.Fatal(codes(a))
	}
	fit := a.Tubs[0].Plants.Count
	if l := a.Tubs[0].Lid.Layouts[0]; len(l.Holes) != fit || fit >= 60 || fit < 12 {
		t.Fatalf("%d plants, %d holes drawn; %s", fit, len(l.Holes), f.Text)
	}
	for _, l := range a.Tubs[0].Lid.Layouts {
		kept(t, p, &p.Tubs[0], l)
	}
	more := parsed(t, "testdata/clean.yaml", text(t, "testdata/clean.yaml", edit{"tubs[0].plants", fmt.Sprint(fit)}))
	if b := assessed(t, more); b.Tubs[0].Plants.Count != fit {
		t.Errorf("%d do fit by the first answer, and %d by the second", fit, b.Tubs[0].Plants.Count)
	} else if _, stopped := found(b, "do-not-fit"); stopped {
		t.Errorf("%d do not fit after all", fit)
	}
}
