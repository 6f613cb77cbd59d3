//go:build !race

package web_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"rootbell/internal/garden/plan"
)

// hole is where the drawing shows a hole, in mm of the lid.
type hole struct {
	N    int
	X, Y float64
}

func (b *tab) holes() []hole {
	b.Helper()
	return ask[[]hole](b, `[...document.querySelectorAll("#lid-figure .desk .hole")].map((h) => ({N: +h.dataset.n, X: +h.dataset.x, Y: +h.dataset.y}))`)
}

// fixed are the numbers of the holes that are ticked.
func (b *tab) fixed() []int {
	b.Helper()
	return ask[[]int](b, `[...document.querySelectorAll(".holes tr[data-n]")].filter((r) => r.querySelector("[type=checkbox]").checked).map((r) => +r.dataset.n)`)
}

func at(holes []hole, x, y float64) bool {
	for _, h := range holes {
		if math.Hypot(h.X-x, h.Y-y) < 0.06 {
			return true
		}
	}
	return false
}

func ofHole(n int) string { return fmt.Sprintf("#lid-figure .desk .hole[data-n=\"%d\"]", n) }

// dragged is a hole moved with the mouse by a way in mm.
func (b *tab) dragged(n int, rightMM, upMM float64) {
	b.Helper()
	x, y := b.middle(ofHole(n))
	perMM := ask[float64](b, `(() => { const s = document.querySelector("#lid-figure .desk svg"); return +s.dataset.scale * s.getBoundingClientRect().width / s.viewBox.baseVal.width; })()`)
	b.do(chromedp.DragAndDropXY(x, y, x+rightMM*perMM, y-upMM*perMM))
}

func TestAHoleIsDraggedToAMarkOfTheRuler(t *testing.T) {
	for _, c := range []struct {
		units        string
		stepMM       float64 // the ruler's step that a plan has by default
		right, up    float64 // not marks: the hole must find the next one
		wantX, wantY float64 // where that is, counted in steps from where it was
	}{
		{"metric", 5, 33, 21, 7, 4},
		{"us", 25.4 / 4, 33, 21, 5, 3},
	} {
		t.Run(c.units, func(t *testing.T) {
			o := open(t)
			id := o.beginGarden(c.units)
			b := browse(t, o.base)
			b.visit("/g/" + id + "/build")
			before := b.holes()
			wantX, wantY := before[0].X+c.wantX*c.stepMM, before[0].Y+c.wantY*c.stepMM
			b.follows()
			b.dragged(before[0].N, c.right, c.up)
			b.full()
			after := b.holes()
			if !at(after, wantX, wantY) {
				t.Fatalf("no hole at (%g, %g): %v", wantX, wantY, after)
			}
			fixed := b.fixed()
			if len(fixed) != 1 || math.Hypot(after[fixed[0]-1].X-wantX, after[fixed[0]-1].Y-wantY) > 0.06 {
				t.Errorf("fixed are %v of %v, want the one that was dragged", fixed, after)
			}
			moved := 0
			for _, h := range before[1:] {
				if !at(after, h.X, h.Y) {
					moved++
				}
			}
			if moved == 0 {
				t.Error("no other hole moved to a better place")
			}
			b.follow(`#build .btn.first`)
			if n := plan.Items([]byte(o.text(id)), "tubs[0].lid.holes"); n != 1 {
				t.Fatalf("%d holes are fixed in the plan, want 1:\n%s", n, o.text(id))
			}
			if now := b.holes(); !at(now, wantX, wantY) || len(b.fixed()) != 1 {
				t.Errorf("after saving the holes are %v, fixed %v", now, b.fixed())
			}
			b.follow(`#build [name="do"][value="free"]`)
			if n := plan.Items([]byte(o.text(id)), "tubs[0].lid.holes"); n != 0 || len(b.fixed()) != 0 {
				t.Errorf("%d holes are still fixed", n)
			}
			for _, h := range before {
				if !at(b.holes(), h.X, h.Y) {
					t.Errorf("freed, hole %d is not back at its best place: %v", h.N, b.holes())
				}
			}
		})
	}
}

func TestAHoleIsMovedWithTheArrowKeys(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/build")
	start := b.holes()[1]
	b.follows()
	ask[any](b, one(ofHole(start.N))+`.focus()`)
	b.keys(kb.ArrowRight)
	b.full()
	// The drawing was made anew: the next key must still move the same hole.
	b.keys(kb.ArrowUp, chromedp.KeyModifiers(chromedp.ModifierShift))
	wantX, wantY := start.X+5, start.Y+25
	b.until(fmt.Sprintf(`[...document.querySelectorAll("#lid-figure .desk .hole")].some((h) => Math.hypot(h.dataset.x - %g, h.dataset.y - %g) < 0.06)`, wantX, wantY))
	b.full()
	after := b.holes()
	if !at(after, wantX, wantY) || len(b.fixed()) != 1 {
		t.Errorf("hole %d was to be at (%g, %g) alone: %v, fixed %v", start.N, wantX, wantY, after, b.fixed())
	}
	if label := ask[string](b, `document.activeElement.getAttribute("aria-label") ?? ""`); !strings.Contains(label, "Hole") {
		t.Errorf("the focus is at %q, not at the hole", label)
	}
	b.keys(" ") // frees it again
	b.until(`document.querySelectorAll(".holes [type=checkbox]:checked").length === 0`)
}

// TestAHoleIsPlacedByTyping types slowly enough for an answer to come between
// the keys: what is typed, and where, must stay.
func TestAHoleIsPlacedByTyping(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/build")
	b.follows()
	last := len(b.holes())
	x, y := fmt.Sprintf("hole.%d.x", last), fmt.Sprintf("hole.%d.y", last)
	b.write(x, "1")
	for _, key := range []string{"4", ".", "5"} {
		b.full()
		b.keys(key)
		b.until(`document.getElementById("status").textContent.startsWith("Working it out")`)
	}
	b.write(y, "12")
	b.full()
	if gotX, gotY := b.value(x), b.value(y); gotX != "14.5" || gotY != "12" {
		t.Fatalf("typed 14.5 and 12, the fields have %q and %q", gotX, gotY)
	}
	b.click("h1")
	b.until(`[...document.querySelectorAll("#lid-figure .desk .hole")].some((h) => Math.hypot(h.dataset.x - 145, h.dataset.y - 120) < 0.06)`)
	if fixed := b.fixed(); len(fixed) != 1 {
		t.Errorf("fixed are %v, want the one that was typed", fixed)
	}
	b.follow(`#build .btn.first`)
	if want := "holes: [{at: [14.5 cm, 12.0 cm]}]"; !strings.Contains(o.text(id), want) {
		t.Errorf("the plan has no %s:\n%s", want, o.text(id))
	}
}
