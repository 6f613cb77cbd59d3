package lid

import (
	"math"
	"testing"

	"rootbell/internal/base/plane"
)

func TestExtraHoleGoesToTheBestFreePlace(t *testing.T) {
	outline := plane.RoundedRect{Rect: plane.Box(0, 0, 300, 200), Radius: 30}
	cups := []KeepOut{
		{plane.Circle{Centre: plane.Point{X: 80, Y: 100}, Radius: 41}, 15},
		{plane.Circle{Centre: plane.Point{X: 220, Y: 100}, Radius: 41}, 15},
		{plane.Box(0, 0, 60, 40), 10},
	}
	r, err := NewRegion([]Inset{{outline, 15}}, cups)
	if err != nil {
		t.Fatal(err)
	}
	for name, cost := range map[string]func(plane.Point) float64{
		"near the outline": NearOutline(outline), "roomiest": r.Roomiest(), "near a point": plane.Point{X: 150, Y: 90}.To,
	} {
		got, ok := r.Seat(1, cost)
		if !ok || r.Slack(got) < -feasibleMM {
			t.Fatalf("%s: %v %v, slack %g", name, got, ok, r.Slack(got))
		}
		best := math.Inf(1)
		for y := 0.0; y <= 200; y++ {
			for x := 0.0; x <= 300; x++ {
				if p := (plane.Point{X: x, Y: y}); r.Slack(p) >= -feasibleMM {
					best = math.Min(best, cost(p))
				}
			}
		}
		if math.Abs(cost(got)-best) > 1e-9 {
			t.Errorf("%s: %v costs %g, the best node %g", name, got, cost(got), best)
		}
	}
}

func TestNoPlaceForAnExtraHole(t *testing.T) {
	r, err := NewRegion([]Inset{{plane.Box(0.2, 0.2, 0.8, 0.8), 0}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if p, ok := r.Seat(1, plane.Point{}.To); ok {
		t.Errorf("no whole millimetre in the region, yet %v", p)
	}
}
