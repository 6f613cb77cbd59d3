package lid

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"rootbell/internal/base/plane"
)

// The distances of this file are the test's own: plain formulas and dense
// points along each outline, nothing of base/plane but the corner lists.

type trialLid struct {
	outline plane.Polygon
	edge    float64
	circles []plane.Circle
	ribs    []plane.Capsule
	clear   float64
}

// trial makes a random lid that is not convex: a star-shaped outline, a round
// vent and a rib.
func trial(seed uint64) trialLid {
	rng := rand.New(rand.NewPCG(seed, 11))
	t := trialLid{edge: 20 + 15*rng.Float64(), clear: 15 + 15*rng.Float64()}
	n := 7 + rng.IntN(5)
	for k := range n {
		r := 170 + 160*rng.Float64()
		a := 2 * math.Pi * float64(k) / float64(n)
		t.outline = append(t.outline, plane.Point{X: 300 + r*math.Cos(a), Y: 250 + r*math.Sin(a)})
	}
	at := func() plane.Point {
		return plane.Point{X: 220 + 160*rng.Float64(), Y: 170 + 160*rng.Float64()}
	}
	t.circles = append(t.circles, plane.Circle{Centre: at(), Radius: 10 + 20*rng.Float64()})
	t.ribs = append(t.ribs, plane.Capsule{Segment: plane.Segment{A: at(), B: at()}, Width: 6})
	return t
}

func (t trialLid) region(tb testing.TB) *Region {
	tb.Helper()
	var keep []KeepOut
	for _, c := range t.circles {
		keep = append(keep, KeepOut{c, t.clear})
	}
	for _, c := range t.ribs {
		keep = append(keep, KeepOut{c, t.clear})
	}
	r, err := NewRegion([]Inset{{t.outline, t.edge}}, keep)
	if err != nil {
		tb.Fatal(err)
	}
	return r
}

// room is the slack at p by sampling: each side and rib as many points.
func (t trialLid) room(p plane.Point) float64 {
	const samples = 4000
	toLine := func(a, b plane.Point) float64 {
		best := math.Inf(1)
		for k := range samples + 1 {
			f := float64(k) / samples
			best = math.Min(best, math.Hypot(p.X-a.X-f*(b.X-a.X), p.Y-a.Y-f*(b.Y-a.Y)))
		}
		return best
	}
	border, turns := math.Inf(1), 0.0
	for k, a := range t.outline {
		b := t.outline[(k+1)%len(t.outline)]
		border = math.Min(border, toLine(a, b))
		d := math.Atan2(b.Y-p.Y, b.X-p.X) - math.Atan2(a.Y-p.Y, a.X-p.X)
		turns += math.Remainder(d, 2*math.Pi)
	}
	if math.Abs(turns) < math.Pi {
		border = -border
	}
	s := border - t.edge
	for _, c := range t.circles {
		s = math.Min(s, math.Hypot(p.X-c.Centre.X, p.Y-c.Centre.Y)-c.Radius-t.clear)
	}
	for _, c := range t.ribs {
		s = math.Min(s, toLine(c.A, c.B)-c.Width/2-t.clear)
	}
	return s
}

func TestTenRandomLidsAreFeasible(t *testing.T) {
	for seed := range uint64(10) {
		lid := trial(seed)
		r := lid.region(t)
		for _, n := range []int{5, 9} {
			l, err := r.Spread(context.Background(), n, Search{Effort: 6, Seed: seed})
			if err != nil {
				t.Fatal(err)
			}
			least := math.Inf(1)
			for i, p := range l.Points {
				// Sampled distances lie above the true ones by under 0.001 mm
				// at 30 mm and more from a side.
				if s := lid.room(p); s < 0 {
					t.Errorf("lid %d: hole %d at %v oversteps by %g", seed, i, p, -s)
				}
				if s := lid.room(l.Exact[i]); s < -1e-9 {
					t.Errorf("lid %d: hole %d before rounding oversteps by %g", seed, i, -s)
				}
				for _, q := range l.Points[:i] {
					least = math.Min(least, math.Hypot(p.X-q.X, p.Y-q.Y))
				}
			}
			if math.Abs(least-l.Measured.Spacing) > 1e-9 {
				t.Errorf("lid %d: holes lie %g apart, said %g", seed, least, l.Measured.Spacing)
			}
			if l.Measured.Spacing < l.ExactSpacing-4*grainMM || l.Measured.Spacing > r.Bound(n).Distance {
				t.Errorf("lid %d: spacing %g, before rounding %g, bound %g", seed, l.Measured.Spacing, l.ExactSpacing, r.Bound(n).Distance)
			}
		}
	}
}

func TestSlackOfRegionAgainstSampling(t *testing.T) {
	for seed := range uint64(10) {
		lid := trial(seed)
		r := lid.region(t)
		rng := rand.New(rand.NewPCG(seed, 12))
		for range 40 {
			p := plane.Point{X: 600 * rng.Float64(), Y: 500 * rng.Float64()}
			if a, b := r.Slack(p), lid.room(p); math.Abs(a-b) > 0.01 {
				t.Errorf("lid %d at %v: slack %g, sampled %g", seed, p, a, b)
			}
		}
	}
}

// The search sees a polygon as half-planes and convex pieces; both views must
// agree wherever a hole could go.
func TestRulesAgreeWithShapes(t *testing.T) {
	regions := []*Region{heron(t), domains()["lidA_circle"].region(t), domains()["lidB_rect"].region(t)}
	for seed := range uint64(10) {
		regions = append(regions, trial(seed).region(t))
	}
	round, err := NewRegion([]Inset{{plane.Circle{Centre: plane.Point{X: 150, Y: 150}, Radius: 150}, 40}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	for k, r := range append(regions, round) {
		s := newSolver(r, 5, nil, 1)
		rng := rand.New(rand.NewPCG(uint64(k), 13))
		box := r.box.Grown(20)
		for range 400 {
			p := plane.Point{X: box.Min.X + rng.Float64()*box.Width(), Y: box.Min.Y + rng.Float64()*box.Height()}
			q := s.inward(p)
			a, b := r.Slack(p), s.slack(q.X, q.Y)*s.unit
			if (a > feasibleMM) != (b > feasibleMM) || a > 0 && math.Abs(a-b) > 1e-9*1000 {
				t.Errorf("region %d at %v: slack %g by shapes, %g by rules", k, p, a, b)
			}
		}
	}
}

func TestImpossibleRegionsAreNamed(t *testing.T) {
	box := Inset{plane.Box(0, 0, 300, 200), 40}
	for name, c := range map[string]struct {
		bounds []Inset
		keep   []KeepOut
		says   string
	}{
		"nothing":             {nil, nil, "needs an outline"},
		"no shape":            {[]Inset{{nil, 3}}, nil, "outline 1: no shape"},
		"margin not a number": {[]Inset{{plane.Box(0, 0, 1, 1), math.NaN()}}, nil, "zero or more"},
		"crossing outline":    {[]Inset{{plane.Polygon{{X: 0, Y: 0}, {X: 9, Y: 9}, {X: 9, Y: 0}, {X: 0, Y: 9}}, 1}}, nil, "outline 1: the side"},
		"flat keep-clear":     {[]Inset{box}, []KeepOut{{plane.Box(0, 0, 0, 5), 3}}, "keep-clear 1"},
		"arcs as outline":     {[]Inset{{plane.RoundedRect{Rect: plane.Box(0, 0, 9, 9), Radius: 2}.Outline(), 1}}, nil, "cannot bound"},
		"arcs as keep-clear":  {[]Inset{box}, []KeepOut{{plane.RoundedRect{Rect: plane.Box(0, 0, 9, 9), Radius: 2}.Outline(), 1}}, "cannot be kept clear"},
		"as wide as a town":   {[]Inset{{plane.Box(0, 0, 1e7, 1), 0}}, nil, "kilometre"},
		"round lid too small": {[]Inset{{plane.Circle{Radius: 50}, 51}}, nil, ErrNoRoom.Error()},
	} {
		_, err := NewRegion(c.bounds, c.keep)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want a message with %q", name, err, c.says)
		}
	}
}

func TestRoomForExactlyOneHole(t *testing.T) {
	for name, b := range map[string]Inset{
		"rectangle": {plane.Box(0, 0, 100, 100), 50},
		"circle":    {plane.Circle{Centre: plane.Point{X: 50, Y: 50}, Radius: 50}, 50},
	} {
		r, err := NewRegion([]Inset{b}, nil)
		if err != nil {
			t.Fatal(name, err)
		}
		l, err := r.Spread(context.Background(), 1, Search{})
		if err != nil || l.Points[0] != (plane.Point{X: 50, Y: 50}) {
			t.Errorf("%s: %v %v, want the middle", name, l.Points, err)
		}
		if _, err := r.Spread(context.Background(), 2, Search{}); err != nil && !errors.Is(err, ErrNoRoom) {
			t.Errorf("%s, two holes: %v", name, err)
		}
	}
}

// A ring is equally deep all round; looking for its deepest point must end,
// and eight holes stand evenly on its outer border.
func TestRing(t *testing.T) {
	c := plane.Point{X: 150, Y: 150}
	r, err := NewRegion([]Inset{{plane.Circle{Centre: c, Radius: 150}, 30}}, []KeepOut{{plane.Circle{Centre: c, Radius: 40}, 30}})
	if err != nil {
		t.Fatal(err)
	}
	if s := r.Slack(r.deepest()); s < 25-0.5 {
		t.Errorf("deepest point has room %g, by hand 25", s)
	}
	l, err := r.Spread(context.Background(), 8, Search{})
	if want := 2 * 120 * math.Sin(math.Pi/8); err != nil || math.Abs(l.ExactSpacing/want-1) > 1e-6 {
		t.Errorf("eight holes: %.9f, by hand %.9f, %v", l.ExactSpacing, want, err)
	}
}
