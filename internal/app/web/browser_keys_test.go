//go:build !race

package web_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// focusable are the elements that a keyboard must reach, in the page's order.
// Of radios with one name one press of Tab reaches the chosen one.
const focusable = `[...document.querySelectorAll("a[href], button:not(:disabled), input:not([type=hidden]):not(:disabled), select:not(:disabled), textarea, summary, [tabindex='0']")]
	.filter((e) => !e.disabled && e.tabIndex >= 0 && e.checkVisibility({visibilityProperty: true}) && e.getClientRects().length > 0)
	.filter((e) => e.type !== "radio" || e.checked || !document.querySelector('[name="' + CSS.escape(e.name) + '"]:checked'))`

// TestTheKeyboardAloneReachesEverything presses Tab through pages: each control
// is met in the order of the page, and one sees where the focus is.
func TestTheKeyboardAloneReachesEverything(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	for _, address := range []string{
		"/", "/g/" + id + "/build", "/g/" + id + "/mix", "/g/" + id + "/season", "/g/" + id + "/text", "/g/" + id + "/history", "/g/" + id + "/papers",
		"/g/" + id + "/working/tubs.Tub-1.volume_solution", "/g/example-fernhollow/build", "/g/example-fernhollow/mix", "/g/example-saltbrook/season", "/g/" + id + "/choose", "/g/example-fernhollow/choose", "/offered", "/stored",
	} {
		t.Run(address, func(t *testing.T) {
			b.visit(address)
			b.settled()
			ask[any](b, `void (document.activeElement.blur(), window.scrollTo(0, 0))`)
			controls := ask[int](b, `(window.controls = `+focusable+`).length`)
			if controls < 5 {
				t.Fatalf("only %d controls", controls)
			}
			for i := range controls {
				b.keys(kb.Tab)
				for range 3 { // Tab walks through day, month, year and calendar of a date
					if !ask[bool](b, `document.activeElement.type === "date" && window.controls.indexOf(document.activeElement) === `+strconv.Itoa(i-1)) {
						break
					}
					b.keys(kb.Tab)
				}
				at := ask[[]string](b, `(() => {
					const e = document.activeElement, s = getComputedStyle(e), field = e.closest(".field"), f = field && getComputedStyle(field);
					const outline = (s) => s && s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2;
					const thick = [...e.querySelectorAll("svg .k, .k")].some((k) => parseFloat(getComputedStyle(k).strokeWidth) >= 4);
					return [String(window.controls.indexOf(e)), String(outline(s) || outline(f) || thick), e.outerHTML.slice(0, 150)];
				})()`)
				if at[0] != strconv.Itoa(i) {
					t.Fatalf("press %d of Tab leads to control %s: %s", i+1, at[0], at[2])
				}
				if at[1] != "true" {
					t.Errorf("the focus cannot be seen at %s", at[2])
				}
			}
		})
	}
}

// TestTheSkipLinkSkips begins at the head of the page and lands at the work.
func TestTheSkipLinkSkips(t *testing.T) {
	o := open(t)
	b := browse(t, o.base)
	b.visit("/g/example-fernhollow/build")
	b.settled()
	b.keys(kb.Tab)
	if got := ask[string](b, `document.activeElement.textContent`); got != "Skip to the page" {
		t.Fatalf("the first press of Tab leads to %q", got)
	}
	if x := ask[float64](b, `document.activeElement.getBoundingClientRect().x`); x < 0 {
		t.Error("the skip link cannot be seen when it has the focus")
	}
	b.keys(kb.Enter)
	b.until(`document.activeElement.id === "main"`)
	b.keys(kb.Tab)
	if !ask[bool](b, `document.getElementById("main").contains(document.activeElement)`) {
		t.Error("the next press of Tab leaves the work")
	}
}

// TestAFormIsFilledAndSentWithoutAMouse changes a measure, a choice and an
// unfolded part by keys alone.
func TestAFormIsFilledAndSentWithoutAMouse(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/build")
	b.settled()
	ask[any](b, fieldOf("tubs[0].layout")+`.focus()`)
	ask[any](b, `document.querySelector('[name="tubs[0].layout"]:checked').focus()`)
	b.follows()
	b.keys(kb.ArrowRight)
	b.full()
	if got := ask[string](b, `document.activeElement.value + document.activeElement.checked`); got != "widesttrue" {
		t.Errorf("an arrow key chose %q and the focus went there, want the second layout", got)
	}
	ask[any](b, fieldOf("tubs[0].inside.height")+`.focus()`)
	b.keys(kb.Home)
	b.keys("1")
	b.until(fieldOf("tubs[0].inside.height") + `.value === "126"`)
	b.keys(kb.Backspace)
	b.keys(kb.Delete)
	b.keys("3")
	b.full()
	ask[any](b, `void (window.here = true)`)
	b.keys(kb.Enter)
	b.until(`!window.here && document.readyState === "complete"`)
	if got := o.value(id, "tubs[0].inside.height") + ", " + o.value(id, "tubs[0].layout"); got != "36 cm, widest" {
		t.Errorf("in the plan are %s, want 36 cm, widest", got)
	}
	// Enter in a field must do what the button with the plan's name does, and no
	// other button of the form: a fixed hole stays fixed.
	b.click(`[name="hole.1.fixed"]`)
	b.full()
	b.follow(`#build .btn.first`)
	ask[any](b, fieldOf("tubs[0].inside.height")+`.focus()`)
	ask[any](b, `void (window.here = true)`)
	b.keys(kb.Enter)
	b.until(`!window.here && document.readyState === "complete"`)
	if len(b.fixed()) != 1 {
		t.Errorf("Enter in a field freed the hole: fixed are %v", b.fixed())
	}
	if said := b.text(".saidbar"); !strings.Contains(said, "in the plan") {
		t.Errorf("the page says %q", said)
	}
}
