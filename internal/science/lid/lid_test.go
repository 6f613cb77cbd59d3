package lid

import (
	"context"
	"math"
	"testing"

	"rootbell/internal/base/plane"
)

// heron is an ordinary lid: rounded, over a tapering tub, with a handle and a
// vent to keep clear of.
func heron(tb testing.TB) *Region {
	tb.Helper()
	r, err := NewRegion(
		[]Inset{
			{plane.RoundedRect{Rect: plane.Box(0, 0, 540, 380), Radius: 40}, 60},
			{plane.RoundedRect{Rect: plane.Box(20, 20, 520, 360), Radius: 38}, 46},
		},
		[]KeepOut{
			{plane.Box(0, 150, 30, 230), 58},
			{plane.Circle{Centre: plane.Point{X: 270, Y: 360}, Radius: 15}, 58},
		},
	)
	if err != nil {
		tb.Fatal(err)
	}
	return r
}

func TestThreeLayoutsOfOneLid(t *testing.T) {
	r := heron(t)
	ctx := context.Background()
	for n := 1; n <= 12; n++ {
		w, err := r.Spread(ctx, n, Search{})
		if err != nil {
			t.Fatal(err)
		}
		ruled, err := snap(r, n, Ruler{Step: 5}, Search{})
		if err != nil {
			t.Fatal(err)
		}
		rows, err := r.Rows(ctx, n, Ruler{Step: 5}, nil)
		if err != nil {
			t.Fatal(err)
		}
		b := r.Bound(n)
		t.Logf("n %d: bound %.1f (%s) widest %.2f/%d ruler %.2f/%d (loss %.2f%%, symmetric %v cost %.2f%%) rows %.2f/%d stag %v up %v left %d",
			n, b.Distance, b.Kind, w.Measured.Spacing, w.Measured.Marks, ruled.Layout.Measured.Spacing, ruled.Layout.Measured.Marks,
			100*ruled.Loss, ruled.Symmetric, 100*ruled.SymmetryCost, rows.Layout.Measured.Spacing, rows.Layout.Measured.Marks, rows.Staggered, rows.Upright, rows.Left)
		for name, l := range map[string]Layout{"widest": w, "ruler": ruled.Layout, "rows": rows.Layout} {
			if len(l.Points) != n {
				t.Errorf("%s: %d points instead of %d", name, len(l.Points), n)
			}
			if l.Measured.Slack < -feasibleMM {
				t.Errorf("%s, n=%d: slack %g", name, n, l.Measured.Slack)
			}
			if n > 1 && l.Measured.Spacing > b.Distance {
				t.Errorf("%s, n=%d: spacing %g above the proved bound %g", name, n, l.Measured.Spacing, b.Distance)
			}
			if name != "widest" {
				for _, p := range l.Points {
					if math.Mod(p.X, 5) != 0 || math.Mod(p.Y, 5) != 0 {
						t.Errorf("%s, n=%d: %v is on no mark", name, n, p)
					}
				}
			}
		}
	}
}

func TestMostAtWantedDistance(t *testing.T) {
	r := heron(t)
	for _, d := range []float64{80, 120, 145, 200, 1000} {
		m, err := r.MostAt(context.Background(), d, Search{})
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%g mm: %d holes, at most %d, spacing %.2f", d, m.Count, m.Proved, m.Layout.Measured.Spacing)
		if m.Count != len(m.Layout.Points) || m.Count > m.Proved {
			t.Errorf("%g mm: count %d, points %d, proved %d", d, m.Count, len(m.Layout.Points), m.Proved)
		}
		if m.Count > 1 && m.Layout.Measured.Spacing < d {
			t.Errorf("%g mm: spacing %g", d, m.Layout.Measured.Spacing)
		}
	}
}

func TestNoRoomIsSaid(t *testing.T) {
	_, err := NewRegion([]Inset{{plane.Box(0, 0, 100, 100), 51}}, nil)
	if err != ErrNoRoom {
		t.Errorf("margins that meet: %v", err)
	}
	_, err = NewRegion([]Inset{{plane.Box(0, 0, 300, 200), 40}}, []KeepOut{{plane.Box(100, 50, 200, 150), 100}})
	if err != ErrNoRoom {
		t.Errorf("keep-clear over everything: %v", err)
	}
}
