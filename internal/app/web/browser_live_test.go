//go:build !race

package web_test

import (
	"strings"
	"testing"
)

// follows keeps all that the status line says from now on, and a mark that a
// reload would lose.
func (b *tab) follows() {
	b.Helper()
	ask[any](b, `void (window.said = [], window.alive = true,
		new MutationObserver(() => window.said.push(document.getElementById("status").textContent))
			.observe(document.getElementById("status"), {childList: true, characterData: true, subtree: true}))`)
}

// full waits until the full answer to what is typed is shown.
func (b *tab) full() {
	b.Helper()
	b.until(`document.getElementById("status").textContent.startsWith("Not in the plan yet")`)
}

func TestWhatIsTypedIsWorkedOutAtOnce(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/build")
	before, drawing := b.text(".answer"), ask[string](b, `document.getElementById("lid").innerHTML`)
	b.follows()
	b.write("tubs[0].inside.height", "18")
	b.full()
	if !ask[bool](b, `window.alive === true`) {
		t.Error("the page was loaded anew")
	}
	said := strings.Join(ask[[]string](b, `window.said`), " | ")
	improving, whole := strings.Index(said, "Still improving the layout."), strings.LastIndex(said, "Not in the plan yet")
	if improving < 0 || whole < improving {
		t.Errorf("the status said %q, want that it still improves, then that it is done", said)
	}
	if after := b.text(".answer"); after == before {
		t.Errorf("a lower tub changes nothing in %q", after)
	}
	if ask[string](b, `document.getElementById("lid").innerHTML`) == drawing {
		t.Error("the drawing of the lid stayed as it was")
	}
	if got := o.value(id, "tubs[0].inside.height"); got != "26 cm" {
		t.Errorf("typing alone put %s in the plan", got)
	}
	if focus := ask[string](b, `document.activeElement.name`); focus != "tubs[0].inside.height" {
		t.Errorf("the focus went to %q", focus)
	}
}

func TestAnImpossibleValueIsSaidAtItsFieldAndMended(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/build")
	answer := b.text(".answer")
	b.write("tubs[0].inside.height", "18 kg")
	atField := fieldOf("tubs[0].inside.height") + `.closest(".q").querySelector(".err")?.textContent.includes("kg is not a unit of length")`
	b.until(atField)
	if got := b.value("tubs[0].inside.height"); got != "18 kg" {
		t.Errorf("what was typed became %q", got)
	}
	if got := b.text(".answer"); got != answer {
		t.Errorf("the last answer went: %q", got)
	}
	if !ask[bool](b, fieldOf("tubs[0].inside.height")+`.getAttribute("aria-invalid") === "true"`) {
		t.Error("the field is not told as wrong to a reader of the screen")
	}
	b.write("tubs[0].inside.height", "18")
	b.full()
	if ask[bool](b, `document.querySelector(".err:not([hidden]), [aria-invalid]") !== null`) {
		t.Error("the problem stays although it is mended")
	}
}
