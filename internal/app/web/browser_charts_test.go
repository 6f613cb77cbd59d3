//go:build !race

package web_test

import "testing"

// TestChartsServeEveryone opens charts with every kind of mark in both unit
// systems: axe-core finds nothing, nothing has to be scrolled sideways, and one
// of the two drawings of each chart is seen, no wider than the screen.
func TestChartsServeEveryone(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		o := open(t)
		id := o.beginGarden(units)
		o.written(id, "Tub 1", everyMark()...)
		b := browse(t, o.base)
		s := page("charts", "/g/"+id+"/logbook/charts")
		s.reach(b)
		ask[any](b, `document.querySelectorAll("details").forEach((d) => { d.open = true; })`)
		for _, width := range []int64{deskWide, deskWide / 2, 320} {
			b.wide(width, handHigh)
			if n := ask[int](b, `[...document.querySelectorAll("svg.chart")].filter((c) => { const r = c.getBoundingClientRect(); return r.width > 200 && r.right <= innerWidth; }).length`); n != 4 {
				t.Errorf("%s: %d charts are seen whole at %d px, want 4", units, n, width)
			}
		}
		b.serves(s, map[string]bool{}, deskWide, deskWide/2, 320)
	}
}
