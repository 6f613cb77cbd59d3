package lid

import (
	"context"
	"math"
	"testing"

	"rootbell/internal/base/plane"
)

// published are values printed by others, or that follow from a proof in one
// line. status says how far each was followed.
var published = []struct {
	n      int
	d      float64
	source string
	status string
}{
	{2, math.Sqrt2, "diagonal", "proved in one line"},
	{3, math.Sqrt(6) - math.Sqrt2, "Schaer 1965, quoted by Nurmela & Östergård, Discrete Comput. Geom. 22 (1999)", "read, quoted"},
	{4, 1, "Schaer 1965, quoted there", "read, quoted"},
	{5, math.Sqrt2 / 2, "Schaer 1965, quoted there", "read, quoted"},
	{6, math.Sqrt(13) / 6, "Nurmela & Östergård 1999, table 3", "read"},
	{7, 4 - 2*math.Sqrt(3), "Nurmela & Östergård 1999, table 3", "read"},
	{8, (math.Sqrt(6) - math.Sqrt2) / 2, "Nurmela & Östergård 1999, table 3", "read"},
	{9, 0.5, "Nurmela & Östergård 1999, table 3", "read"},
	{10, 0.421279543983903, "copy of Specht's table; 7 digits in Nurmela & Östergård 1999", "read"},
	{11, 0.398207310236844, "copy of Specht's table; 7 digits in Nurmela & Östergård 1999", "read"},
	{12, math.Sqrt(34) / 15, "Nurmela & Östergård 1999, table 3", "read"},
	{13, 0.366096007696425, "copy of Specht's table; 7 digits in Nurmela & Östergård 1999", "read"},
	{14, 2 / (4 + math.Sqrt(3)), "Nurmela & Östergård 1999, table 3", "read"},
	{15, 2 / (2 + math.Sqrt2 + math.Sqrt(6)), "Nurmela & Östergård 1999, table 3", "read"},
	{16, 1.0 / 3, "Wengerodt 1983, quoted by Nurmela & Östergård 1999", "read, quoted"},
	{17, 0.306153985300333, "copy of Specht's table; 7 digits in Nurmela & Östergård 1999", "read"},
	{18, math.Sqrt(13) / 12, "Nurmela & Östergård 1999, table 3", "read"},
	{19, 0.289541991994982, "copy of Specht's table; 7 digits in Nurmela & Östergård 1999", "read"},
	{20, 0.286611652351682, "copy of Specht's table; 7 digits in Nurmela & Östergård 1999", "read"},
	{21, 0.271812255359307, "Nurmela & Östergård 1999, table 2; Graham & Lubachevsky, arXiv math/0406394", "read"},
	{22, 0.267958401550717, "Nurmela & Östergård 1999, table 2; Graham & Lubachevsky, arXiv math/0406394", "read"},
	{23, (math.Sqrt(6) - math.Sqrt2) / 4, "Nurmela & Östergård 1999, table 2", "read"},
	{24, math.Sqrt2 / (1 + 2*math.Sqrt2 + math.Sqrt(3)), "Nurmela & Östergård 1999, table 2", "read"},
	{25, 0.25, "Nurmela & Östergård 1999, table 2", "read"},
	{26, 0.238734757241217, "Nurmela & Östergård 1999, table 2 (10 digits); copy of Specht's table", "read"},
	{27, math.Sqrt(89) / 40, "Nurmela & Östergård 1999, table 2", "read"},
	{28, 0.230535493642667, "copies of Specht's table; optimal: Markót, Numer. Algorithms 37 (2004)", "read, enclosures not seen"},
	{29, 0.226882900744209, "copies of Specht's table; optimal: Markót & Csendes, SIAM J. Optim. 16 (2005)", "read, enclosures not seen"},
	{30, 0.224502964531088, "copies of Specht's table; optimal: Markót & Csendes, SIAM J. Optim. 16 (2005)", "read, enclosures not seen"},
}

// publishedTolerance is the relative distance from the optimum that is asked.
const publishedTolerance = 1e-6

func TestSquareReachesPublishedOptima(t *testing.T) {
	r := rectangle(1).region(t)
	for _, p := range published {
		l, err := r.Spread(context.Background(), p.n, Search{Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		if got := l.ExactSpacing / unitSide; math.Abs(got/p.d-1) > publishedTolerance {
			t.Errorf("n=%d: %.12f, published %.12f (%s; %s)", p.n, got, p.d, p.source, p.status)
		}
	}
}

// The distances that fully converged repulsion or soft discs end on are
// symmetric saddles; every seed must get past them.
func TestSaddlesDoNotHold(t *testing.T) {
	r := rectangle(1).region(t)
	for _, n := range []int{3, 7, 8, 10, 12} {
		for seed := range uint64(6) {
			l, err := r.Spread(context.Background(), n, Search{Seed: 100 + seed})
			if err != nil {
				t.Fatal(err)
			}
			if got := l.ExactSpacing / unitSide; math.Abs(got/published[n-2].d-1) > publishedTolerance {
				t.Errorf("n=%d, seed %d: %.9f, published %.9f", n, seed, got, published[n-2].d)
			}
		}
	}
}

// Formulas for few points in a rectangle a by b, a >= b; the argument for each
// is that some pair, or some three, share a piece of the rectangle.
var formulas = []struct {
	n     int
	holds func(a, b float64) bool
	d     func(a, b float64) float64
}{
	{2, always, math.Hypot},
	{3, always, equilateralOrIsosceles},
	{4, func(a, b float64) bool { return a >= math.Sqrt(3)*b }, func(a, b float64) float64 { return math.Hypot(a/3, b) }},
	{4, func(a, b float64) bool { return a <= math.Sqrt(3)*b }, func(a, b float64) float64 { return (a*a + b*b) / (2 * a) }},
	{5, func(a, b float64) bool { return a <= math.Sqrt(3)*b }, func(a, b float64) float64 { return math.Hypot(a, b) / 2 }},
	{
		5, func(a, b float64) bool { return a >= math.Sqrt(3)*b && a <= 4*b/math.Sqrt(3) },
		func(a, b float64) float64 { return 2 * math.Sqrt(a*a/4+b*b-math.Sqrt(3)/2*a*b) },
	},
	{5, func(a, b float64) bool { return a >= 4*b/math.Sqrt(3) }, func(a, b float64) float64 { return math.Hypot(a/4, b) }},
	{6, func(a, b float64) bool { return a >= 5*b/math.Sqrt(3) }, func(a, b float64) float64 { return math.Hypot(a/5, b) }},
}

func always(float64, float64) bool { return true }

func equilateralOrIsosceles(a, b float64) float64 {
	if a >= 2*b/math.Sqrt(3) {
		return math.Hypot(a/2, b)
	}
	return 2 * math.Sqrt(a*a+b*b-math.Sqrt(3)*a*b)
}

func TestFewPointsFollowTheirFormulas(t *testing.T) {
	for _, a := range []float64{1, 1.1, 4.0 / 3, 1.5, 2, 32.0 / 17, 2.2, 3} {
		r := rectangle(a).region(t)
		for _, f := range formulas {
			if !f.holds(a, 1) {
				continue
			}
			l, err := r.Spread(context.Background(), f.n, Search{Seed: 3})
			if err != nil {
				t.Fatal(err)
			}
			if got, want := l.ExactSpacing/unitSide, f.d(a, 1); math.Abs(got/want-1) > 1e-9 {
				t.Errorf("n=%d in %g by 1: %.12f, formula %.12f", f.n, a, got, want)
			}
		}
	}
}

// Circles of radius r in [0,1]×[0,1/2] are points 2r apart in the rectangle
// less r all round. Radii: table for aspect ratio 0.5 by E. Specht, quoted in
// a public repository of formal statements (read second hand).
func TestCirclesInAHalfSquare(t *testing.T) {
	for n, radius := range map[int]float64{
		3: (3 - math.Sqrt(7)) / 2, 4: (11 - 6*math.Sqrt(3)) / 4, 5: 4.5 - math.Sqrt(19),
		6: (27 - 10*math.Sqrt(7)) / 4, 7: 1 / (4 + math.Sqrt(6) + math.Sqrt2),
	} {
		const mm = 600
		r, err := NewRegion([]Inset{{plane.Box(0, 0, mm, mm/2), mm * radius}}, nil)
		if err != nil {
			t.Fatal(err)
		}
		l, err := r.Spread(context.Background(), n, Search{})
		if err != nil {
			t.Fatal(err)
		}
		if got := l.ExactSpacing / mm; math.Abs(got/(2*radius)-1) > 1e-9 {
			t.Errorf("n=%d: distance %.12f, twice the radius is %.12f", n, got, 2*radius)
		}
	}
}

// Two proofs in print say that at most six points at distance d fit into d by
// 2d (closest pair of points, divide and conquer; McGill University course
// notes, read), so six reach the short side and seven do not. Five points in
// 17 by 32 reach about 17.19 (a published puzzle answer, read).
func TestPublishedStatements(t *testing.T) {
	two := rectangle(2).region(t)
	six, err := two.Spread(context.Background(), 6, Search{})
	if err != nil {
		t.Fatal(err)
	}
	seven, err := two.Spread(context.Background(), 7, Search{})
	if err != nil {
		t.Fatal(err)
	}
	if six.ExactSpacing < unitSide*(1-1e-9) || seven.ExactSpacing >= unitSide {
		t.Errorf("2 by 1: six reach %g, seven %g short sides", six.ExactSpacing/unitSide, seven.ExactSpacing/unitSide)
	}
	r, err := NewRegion([]Inset{{Shape: plane.Box(0, 0, 320, 170)}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	five, err := r.Spread(context.Background(), 5, Search{})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(five.ExactSpacing-171.9) > 0.05 {
		t.Errorf("17 by 32: five points reach %g, published 17.19", five.ExactSpacing/10)
	}
}
