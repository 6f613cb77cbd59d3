//go:build !race

package web_test

import (
	"strings"
	"testing"
)

func TestAMixFollowsWhatIsTyped(t *testing.T) {
	o := open(t)
	id := o.copied("example-saltbrook")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/mix")
	before := b.text(".answer")
	ask[any](b, `void (window.alive = true, document.querySelector("details.bag").open = true)`)
	b.write("fertilisers[0].dose", "4 g/gal")
	b.full()
	if after := b.text(".answer"); after == before || !strings.Contains(after, "of calcium nitrate") {
		t.Errorf("twice the dose is answered with %q, as before with %q", after, before)
	}
	b.write("fertilisers[0].dose", "4 apples")
	b.until(fieldOf("fertilisers[0].dose") + `.closest(".q").querySelector(".err") !== null`)
	if !ask[bool](b, `window.alive === true`) || o.value(id, "fertilisers[0].dose") != "2 g/gal" {
		t.Error("typing alone loaded the page anew, or put something in the plan")
	}
}

func TestABottleIsPutOnTheShelfWithoutScript(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	b.log.mayHear("status of 422")
	b.withoutScript()
	b.visit("/g/" + id + "/mix")
	b.write("bottle.name", "grow")
	b.write("bottle.dose", "4 mL/L")
	b.follow(`#mix [value="shelf"]`)
	if got := b.text("main"); !strings.Contains(got, "Nothing is told of what is in it") || b.value("bottle.dose") != "4 mL/L" {
		t.Fatalf("half a bottle is answered with\n%s", head(got))
	}
	b.write("bottle.label.N", "5")
	b.follow(`#mix [value="shelf"]`)
	if got := b.text(".answer"); !strings.Contains(got, "Pour ") || !strings.Contains(got, "of grow") {
		t.Errorf("one bottle is answered with %q", got)
	}
}
