package lid

import (
	"context"
	"errors"
	"math"
	"reflect"
	"testing"

	"rootbell/internal/base/plane"
)

// The cases are those for which a study of this project measured the loss of
// ruler marks (computed: mean 1.02 % at 5 mm, 1.84 % at a quarter inch with
// the border lines).
var ruledCases = []struct {
	domain string
	n      []int
}{{"lidA_circle", []int{5, 8, 11, 14, 18}}, {"lidB_rect", []int{7, 12, 17}}}

func meanLoss(t *testing.T, u Ruler) float64 {
	t.Helper()
	sum, count := 0.0, 0
	for _, c := range ruledCases {
		r := domains()[c.domain].region(t)
		for _, n := range c.n {
			s, err := snap(r, n, u, Search{Seed: 1})
			if err != nil {
				t.Fatal(err)
			}
			onMarks(t, r, u, s.Layout.Points)
			if d := s.Layout.Measured.Spacing; math.Abs(1-d/s.Widest.ExactSpacing-s.Loss) > 1e-9 {
				t.Errorf("%s, n=%d: said to lose %g, loses %g", c.domain, n, s.Loss, 1-d/s.Widest.ExactSpacing)
			}
			t.Logf("%s n=%d step %g: loss %.2f %%, symmetric %v (cost %.2f %%)", c.domain, n, u.Step, 100*s.Loss, s.Symmetric, 100*s.SymmetryCost)
			sum += s.Loss
			count++
		}
	}
	return sum / float64(count)
}

func onMarks(t *testing.T, r *Region, u Ruler, points []plane.Point) {
	t.Helper()
	on := func(v, lo, hi float64) bool {
		off := math.Abs(math.Remainder(v, u.Step))
		return off < 1e-9 || u.Borders && (v == lo || v == hi)
	}
	b := r.Box()
	for k, p := range points {
		if !on(p.X, b.Min.X, b.Max.X) || !on(p.Y, b.Min.Y, b.Max.Y) {
			t.Errorf("hole %d at %v is on no mark of %g", k, p, u.Step)
		}
		if r.Slack(p) < -feasibleMM {
			t.Errorf("hole %d at %v oversteps by %g", k, p, -r.Slack(p))
		}
	}
}

func TestRulerCostsLittle(t *testing.T) {
	for _, c := range []struct {
		u    Ruler
		goal float64
	}{
		{Ruler{Step: 5}, 0.011},
		{Ruler{Step: 6.35, Borders: true}, 0.02},
		{Ruler{Step: 1}, 0.004},
	} {
		if loss := meanLoss(t, c.u); loss > c.goal {
			t.Errorf("step %g: mean loss %.2f %%, goal %.2f %%", c.u.Step, 100*loss, 100*c.goal)
		}
	}
}

func TestRulerLayoutIsSymmetricWhereThatIsCheap(t *testing.T) {
	r := domains()["lidA_circle"].region(t)
	s, err := snap(r, 8, Ruler{Step: 5}, Search{})
	if err != nil {
		t.Fatal(err)
	}
	if !s.Symmetric || s.SymmetryCost > dearSymmetry {
		t.Fatalf("symmetric %v at a cost of %g", s.Symmetric, s.SymmetryCost)
	}
	c := r.Box().Centre()
	images := 0
	for _, m := range allSymmetries[:3] {
		img := make([]plane.Point, len(s.Layout.Points))
		for k, p := range s.Layout.Points {
			img[k] = m.about(c, p)
		}
		sortByRows(img)
		if reflect.DeepEqual(img, s.Layout.Points) {
			images++
		}
	}
	if images == 0 {
		t.Errorf("%v is no image of itself", s.Layout.Points)
	}
	// The hatch in a corner leaves no symmetry.
	s, err = snap(domains()["lidB_rect"].region(t), 8, Ruler{Step: 5}, Search{})
	if err != nil || s.Symmetric {
		t.Errorf("a lop-sided lid: symmetric %v, %v", s.Symmetric, err)
	}
}

func TestRulerFindsTheSameWidestLayout(t *testing.T) {
	r := heron(t)
	s, err := snap(r, 9, Ruler{Step: 5}, Search{Seed: 4})
	if err != nil {
		t.Fatal(err)
	}
	if w := spread(t, r, 9, Search{Seed: 4}); !reflect.DeepEqual(w, s.Widest) {
		t.Errorf("Snap's widest layout %v, Spread's %v", s.Widest, w)
	}
}

func TestRulerKeepsFixedHoles(t *testing.T) {
	r := heron(t)
	fixed := []plane.Point{{X: 123.4, Y: 91.7}}
	s, err := snap(r, 7, Ruler{Step: 5}, Search{Fixed: fixed})
	if err != nil {
		t.Fatal(err)
	}
	if s.Layout.Points[0] != fixed[0] || s.Symmetric {
		t.Errorf("fixed hole at %v, symmetric %v", s.Layout.Points[0], s.Symmetric)
	}
	onMarks(t, r, Ruler{Step: 5}, s.Layout.Points[1:])
}

func TestRulerTooCoarse(t *testing.T) {
	r := heron(t)
	if _, err := snap(r, 3, Ruler{Step: 500}, Search{}); !errors.Is(err, ErrNoMark) {
		t.Errorf("steps of half a metre: %v", err)
	}
	for _, step := range []float64{0, -5, math.NaN(), math.Inf(1), 1e-9} {
		if _, err := snap(r, 3, Ruler{Step: step}, Search{}); err == nil || errors.Is(err, ErrNoMark) {
			t.Errorf("step %g: %v", step, err)
		}
	}
}

func TestRowsAreRows(t *testing.T) {
	r := heron(t)
	for n := 2; n <= 20; n++ {
		rows, err := r.Rows(context.Background(), n, Ruler{Step: 5}, nil)
		if err != nil {
			t.Fatal(err)
		}
		onMarks(t, r, Ruler{Step: 5}, rows.Layout.Points)
		lines := map[float64][]float64{}
		for _, p := range rows.Layout.Points {
			if rows.Upright {
				p.X, p.Y = p.Y, p.X
			}
			lines[p.Y] = append(lines[p.Y], p.X)
		}
		for y, xs := range lines {
			for _, x := range xs {
				if off := math.Abs(math.Remainder(x-xs[0], rows.Pitch)); off > 1e-9 {
					t.Errorf("n=%d: row at %g: %v is not at a pitch of %g", n, y, xs, rows.Pitch)
				}
			}
			for z := range lines {
				if off := math.Abs(math.Remainder(y-z, rows.Apart)); off > 1e-9 {
					t.Errorf("n=%d: rows at %g and %g are not a multiple of %g apart", n, y, z, rows.Apart)
				}
			}
		}
		if len(rows.Layout.Points) != n || rows.Left < 0 {
			t.Errorf("n=%d: %d points, %d places left", n, len(rows.Layout.Points), rows.Left)
		}
	}
	// Twelve holes on a plain lid of 5 by 4 pitches: by hand, 4 by 3 at 100 mm.
	plain, err := NewRegion([]Inset{{plane.Box(0, 0, 400, 300), 50}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := plain.Rows(context.Background(), 12, Ruler{Step: 10}, nil)
	if err != nil || rows.Layout.Measured.Spacing != 100 || rows.Layout.Measured.Marks != 7 || rows.Staggered {
		t.Errorf("4 by 3 at 100 mm: %+v %v", rows, err)
	}
}

func snap(r *Region, n int, u Ruler, o Search) (Ruled, error) {
	f, err := r.Optima(context.Background(), n, o)
	if err != nil {
		return Ruled{}, err
	}
	return f.Snap(context.Background(), u)
}
