//go:build !race

package web_test

import (
	"strings"
	"testing"
)

// TestTwoTabsOfOneBrowser changes one plan in two tabs: the second to save sees
// what the first did, and nothing is overwritten unseen.
func TestTwoTabsOfOneBrowser(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	first := browse(t, o.base)
	second := first.second()
	for _, b := range []*tab{first, second} {
		b.log.mayHear("status of 409")
		b.visit("/g/" + id + "/build")
	}
	first.write("tubs[0].inside.height", "27")
	first.follow("#build .btn.first")
	second.write("tubs[0].lid.size[0]", "57")
	second.follow("#build .btn.first")
	if got := second.text("main"); !strings.Contains(got, "Another tab changed this plan") || !strings.Contains(got, "27 cm") || !strings.Contains(got, "57 cm") {
		t.Fatalf("the two changes are not shown side by side:\n%s", got)
	}
	if got := o.value(id, "tubs[0].lid.size[0]"); got != "58 cm" {
		t.Errorf("saved although nobody decided: %s", got)
	}
	second.follow("main form .btn.first")
	if o.value(id, "tubs[0].inside.height") != "27 cm" || o.value(id, "tubs[0].lid.size[0]") != "57 cm" {
		t.Errorf("not both are kept:\n%s", o.text(id))
	}
}

// TestATextTypedOnAnOlderPlanOverwritesNothing brings a kept text back after
// another tab has saved.
func TestATextTypedOnAnOlderPlanOverwritesNothing(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	first := browse(t, o.base)
	first.log.mayHear("status of 409")
	first.visit("/g/" + id + "/text")
	ask[any](first, `void document.getElementById("text").setSelectionRange(0, 0)`)
	ask[any](first, `document.getElementById("text").focus()`)
	first.keys("# mine ")
	second := first.second()
	second.visit("/g/" + id + "/build")
	second.write("tubs[0].inside.height", "27")
	second.follow("#build .btn.first")
	first.visit("/g/" + id + "/text")
	first.until(`document.getElementById("text").value.startsWith("# mine ")`)
	first.follow("#plan .btn.first")
	if got := first.text("main"); !strings.Contains(got, "Another tab changed this plan") || !strings.Contains(got, "27 cm") {
		t.Errorf("the other tab's change is not shown:\n%s", got)
	}
	if got := o.value(id, "tubs[0].inside.height"); got != "27 cm" {
		t.Errorf("the other tab's change was overwritten with %s", got)
	}
}
