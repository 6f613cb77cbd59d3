package sheet_test

import (
	"math"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// A ring is 2 mm wider than the cup's rim and its band 5 mm; heron's rims are
// 83 mm, so by hand 85 and 95 mm. Two rings of 95 mm abreast are 192 mm with
// their gap, which both papers take.
func TestRingsByHand(t *testing.T) {
	for _, paper := range []scene.Size{scene.A4, scene.Letter} {
		r, err := sheet.RingsOf(heron(), paper)
		if err != nil || r.InnerMM != 85 || r.OuterMM != 95 || !r.Tab {
			t.Errorf("%+v, %v", r, err)
		}
		if _, err := sheet.RingsPDF(heron(), paper); err != nil {
			t.Error(err)
		}
	}
}

func TestNoRingsWhereTheyMakeNoSense(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*sheet.Lid)
		says   string
	}{
		"no holes":        {func(l *sheet.Lid) { l.Holes = nil }, "no holes"},
		"96 mm apart":     {func(l *sheet.Lid) { l.Holes[1].XMM = l.Holes[0].XMM + 96 }, "too close"},
		"47 mm from edge": {func(l *sheet.Lid) { l.Holes[0].XMM = 47 }, "too close"},
		"a rim of 20 cm":  {func(l *sheet.Lid) { l.Holes, l.Cup.RimMM = l.Holes[:1], 200; l.Holes[0].XMM, l.Holes[0].YMM = 270, 190 }, "does not fit on A4"},
	} {
		l := heron()
		c.change(&l)
		_, err := sheet.RingsOf(l, scene.A4)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
		if data, err := sheet.RingsPDF(l, scene.A4); err != nil || len(data) == 0 {
			t.Errorf("%s: no page says so: %v", name, err)
		}
	}
	tight := heron()
	tight.Holes[1].XMM = tight.Holes[0].XMM + 98
	if r, err := sheet.RingsOf(tight, scene.A4); err != nil || r.Tab {
		t.Errorf("98 mm apart: %+v, %v", r, err)
	}
}

// The outline of a ring with its tab runs on two circles and on nothing else.
func TestTabJoinsTheRing(t *testing.T) {
	at, tab := scene.Point{X: 3, Y: 7}, scene.Point{X: 47.5 + 2}.Turned(45)
	path := sheet.TabbedRing(at, 47.5, 45)
	const slack = 0.06 // of the flattened arcs
	onTab := 0
	for _, p := range path.Flat(0.05) {
		ring, small := math.Abs(p.Distance(at)-47.5), math.Abs(p.Distance(at.Plus(tab))-8)
		if min(ring, small) > slack {
			t.Errorf("%v lies on neither circle: %g, %g mm off", p, ring, small)
		}
		if p.Distance(at) > 48 {
			onTab++
		}
	}
	if reach := path.Bounds(); onTab == 0 || math.Abs(reach.Width()-95) > slack || math.Abs(reach.Height()-95) > slack {
		t.Errorf("the tab takes room beside the ring: %v, %d points", reach, onTab)
	}
}

// A length that must stay at least is never shown shorter: 40 mm are 1 37/64 in
// by division, 1 9/16 in would be 39.7 mm.
func TestLeastLengthsAreRoundedUp(t *testing.T) {
	for mm, want := range map[float64]string{40: "1\u00a05/8", 50: "2", 30: "1\u00a03/16", 25.4: "1"} {
		if got := sheet.MarkUp(mm, garden.US); got != want {
			t.Errorf("%v mm: %s in, want %s", mm, got, want)
		}
	}
	if got := sheet.MarkUp(40, garden.Metric); got != "4.0" {
		t.Errorf("40 mm: %s cm", got)
	}
}
