package garden_test

import (
	"fmt"
	"math"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// An opening keeps its plastic from the outline, from what is kept clear, from
// each cup's hole and from the other opening, and stays from under the lips.
func TestOpeningsKeepTheirPlastic(t *testing.T) {
	for _, name := range plans(t) {
		p, a := standing(t, name, quantity.Metric)
		for i, tub := range a.Tubs {
			t.Run(name+"/"+tub.Name, func(t *testing.T) {
				opened(t, p, &p.Tubs[i], tub.Lid)
			})
		}
	}
}

func opened(t teller, p *plan.Plan, tub *plan.Tub, l *garden.Lid) {
	t.Helper()
	chosen, _ := l.Layout(l.Chosen)
	k := keepsOf(p, tub, l.HoleMM)
	var others []garden.Opening
	check := func(what string, o garden.Opening) {
		at, half := spot{o.XMM, o.YMM}, o.DiameterMM/2
		if d := inLid(tub.Lid, at); d < half+k.web+k.err-roundedMM {
			t.Errorf("the %s lies %.2f mm from the lid's edge", what, d)
		}
		for _, c := range tub.Lid.KeepClear {
			if d := fromClear(c, at); d < half+k.web+k.err-roundedMM {
				t.Errorf("the %s lies %.2f mm from the %s", what, d, c.Why)
			}
		}
		if d := inWall(tub, k.height, at); d < half+k.err-roundedMM {
			t.Errorf("the %s does not open into the tub: %.2f mm to the wall", what, d)
		}
		for _, h := range chosen.Holes {
			d := at.to(spot{h.XMM, h.YMM})
			if d < half+h.DiameterMM/2+k.web+2*k.err-roundedMM || d < half+mm(tub.Cup.Rim)/2+2-roundedMM {
				t.Errorf("the %s lies %.2f mm from hole %d", what, d, h.N)
			}
		}
		for _, other := range others {
			if d := at.to(spot{other.XMM, other.YMM}); d < half+other.DiameterMM/2+k.web+2*k.err-roundedMM {
				t.Errorf("the %s lies %.2f mm from the other opening", what, d)
			}
		}
		others = append(others, o)
	}
	if a := l.AirLine; a != nil && a.On == "lid" {
		check("air line", garden.Opening{XMM: a.XMM, YMM: a.YMM, DiameterMM: a.DiameterMM})
	}
	if l.Service != nil {
		check("service hole", *l.Service)
		if l.Service.DiameterMM != 32 {
			t.Errorf("the service hole is %v mm across", l.Service.DiameterMM)
		}
	}
	if tub.Method == "still" && l.AirLine != nil {
		t.Errorf("a tub without a pump has an air line at %v", *l.AirLine)
	}
}

// A lid so full that nothing else goes through it: the air line moves to the
// wall or is left out, the service hole is left out, and no cup has moved.
func TestNoRoomForOpenings(t *testing.T) {
	p := parsed(t, "testdata/crammed.yaml", text(t, "testdata/crammed.yaml"))
	a := assessed(t, p)
	l := a.Tubs[0].Lid
	if l.Service != nil {
		t.Errorf("a service hole at %v, %v in a lid that has no room", l.Service.XMM, l.Service.YMM)
	}
	if f, ok := found(a, "no-service-hole"); !ok || f.Level.String() != "warn" || f.Field != "tubs[0].lid" {
		t.Errorf("no room for the service hole: %v", codes(a))
	}
	if l.AirLine == nil || l.AirLine.On != "wall" {
		t.Fatalf("the air line is %v, not in the wall", l.AirLine)
	}
	onWall(t, &p.Tubs[0], *l.AirLine, *a.Tubs[0].FillDepthMM)
}

// On a wall x, y is the nearest point of the lid's outline, and the hole's edge
// lies over the fill line and under the rim.
func onWall(t *testing.T, tub *plan.Tub, a garden.AirLine, fill float64) {
	t.Helper()
	if d := inLid(tub.Lid, spot{a.XMM, a.YMM}); math.Abs(d) > roundedMM {
		t.Errorf("the hole in the wall is told %.3f mm off the lid's outline", d)
	}
	for _, c := range tub.Lid.KeepClear {
		if d := fromClear(c, spot{a.XMM, a.YMM}); d < a.DiameterMM/2 {
			t.Errorf("the hole in the wall goes through the %s", c.Why)
		}
	}
	rim := mm(tub.Inside.Height)
	if a.HeightMM-a.DiameterMM/2 <= fill || a.HeightMM+a.DiameterMM/2 >= rim {
		t.Errorf("the hole in the wall is at %v mm: the water is at %v, the rim at %v", a.HeightMM, fill, rim)
	}
}

// Without room over the water there is none in the wall either.
func TestNoRoomForTheAirLineAtAll(t *testing.T) {
	a := edited(t, "testdata/crammed.yaml", edit{"tubs[0].fill_depth", "18.9 cm"})
	if l := a.Tubs[0].Lid; l.AirLine != nil {
		t.Errorf("an air line at %v", *l.AirLine)
	}
	if f, ok := found(a, "no-air-hole"); !ok || f.Level.String() != "warn" || f.Field != "tubs[0].air" {
		t.Error(codes(a))
	}
}

// The cups lie where they lie: with an air pump, with a thick air line, and
// without one.
func TestOpeningsMoveNoCup(t *testing.T) {
	want := fmt.Sprint(edited(t, "testdata/clean.yaml").Tubs[0].Lid.Layouts)
	for _, e := range []edit{{"tubs[0].air.tube", "25 mm"}, {"tubs[0].air.tube", "2 mm"}, {"tubs[0].air.stones", "0"}} {
		if got := fmt.Sprint(edited(t, "testdata/clean.yaml", e).Tubs[0].Lid.Layouts); got != want {
			t.Errorf("%s %s moves the cups", e.path, e.typed)
		}
	}
	still := edited(t, "testdata/clean.yaml", edit{"tubs[0].method", "still"}, edit{"tubs[0].plants", "6"})
	if got := fmt.Sprint(still.Tubs[0].Lid.Layouts); got != want {
		t.Error("six plants without an air pump lie otherwise than with one")
	}
	if still.Tubs[0].Lid.AirLine != nil {
		t.Error("a tub without a pump has an air line")
	}
}

// Holes that are there already and carry no cup are no place for an opening.
func TestOpeningsKeepFromUnusedHoles(t *testing.T) {
	p := parsed(t, "testdata/kit.yaml", text(t, "testdata/kit.yaml"))
	a := assessed(t, p)
	l := a.Tubs[0].Lid
	if n := len(l.Layouts[0].Holes); n != 4 || a.Tubs[0].Plants.Count != 4 {
		t.Fatalf("%d of eight holes are used", n)
	}
	if f, ok := found(a, "holes-chosen"); !ok || f.Field != "tubs[0].lid.holes" {
		t.Error(codes(a))
	}
	if l.Service == nil || l.AirLine == nil {
		t.Fatalf("service %v, air line %v: %v", l.Service, l.AirLine, codes(a))
	}
	for _, h := range p.Tubs[0].Lid.Holes {
		at := spot{mm(h.At[0]), mm(h.At[1])}
		for what, o := range map[string]garden.Opening{"service hole": *l.Service, "air line": {XMM: l.AirLine.XMM, YMM: l.AirLine.YMM, DiameterMM: l.AirLine.DiameterMM}} {
			if d := at.to(spot{o.XMM, o.YMM}); d < o.DiameterMM/2+l.HoleMM/2+12+2*3.5-roundedMM {
				t.Errorf("the %s lies %.2f mm from the hole at %v", what, d, at)
			}
		}
	}
}
