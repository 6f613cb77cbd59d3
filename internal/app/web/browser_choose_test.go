//go:build !race

package web_test

import (
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// The bounds on the way from 'we have been offered this kit' to a decision page
// and a budget, with an empty database and no manual.
const (
	mostOfferFields  = 14
	mostOfferPresses = 8
)

// TestTheWayOfAKitOnOffer goes as somebody new would: the first page's own
// words, the fields in their order with the Tab key, the decision, the budget on
// the disk.
func TestTheWayOfAKitOnOffer(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		t.Run(units, func(t *testing.T) {
			o := open(t)
			b := browse(t, o.base)
			folder := b.downloads()
			b.visit("/")
			fields, presses := 0, 0
			if units == "us" {
				b.follow(`.set [name="units"][value="us"]`)
				presses++
			}
			if !strings.Contains(b.text("main"), "We have been offered a kit") {
				t.Fatal("the first page says nothing of a kit")
			}
			b.follow(`a[href="/offered"]`)
			presses++
			b.click(`[name="kit.name"]`)
			presses++
			for range 20 {
				name := ask[string](b, "document.activeElement.name ?? ''")
				entry := offeredKit[units].Get(name)
				if entry == "" {
					break
				}
				b.keys(entry)
				fields++
				b.keys(kb.Tab)
			}
			if got, want := b.value("kit.includes"), "pump, stone, cups"; got != want || fields != len(offeredKit[units])-1 {
				t.Fatalf("%d fields were filled, the last with %q: the keyboard did not lead there", fields, got)
			}
			b.follow("#offered .btn.first")
			presses++
			answer := b.text(".answer")
			if !strings.Contains(answer, "of its 15 holes") || !strings.Contains(answer, "For each plant harvested") {
				t.Errorf("the answer is %q", answer)
			}
			for _, name := range []string{"decision.pdf", "budget.xlsx"} {
				b.click(`a[href$="/papers/` + name + `"]`)
				presses++
				file, err := os.ReadFile(b.arrived(folder, name))
				if err != nil {
					t.Fatal(err)
				}
				if len(file) < 4000 {
					t.Errorf("%s has %d bytes", name, len(file))
				}
			}
			t.Logf("%d fields filled, %d presses", fields, presses)
			if fields > mostOfferFields || presses > mostOfferPresses {
				t.Errorf("%d fields and %d presses, more than %d and %d", fields, presses, mostOfferFields, mostOfferPresses)
			}
		})
	}
}

func TestADecisionFollowsWhatIsTyped(t *testing.T) {
	o := open(t)
	id, _ := o.offeredGarden("metric")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/choose")
	ask[any](b, `void (window.alive = true, document.querySelector("details.bag").open = true)`)
	b.write("offers[0].volume", "24")
	b.until(`document.querySelector(".answer").textContent.includes("plant 8 of its 15 holes")`)
	b.write("offers[0].volume", "24 kg")
	b.until(fieldOf("offers[0].volume") + `.closest(".q").querySelector(".err") !== null`)
	if !ask[bool](b, `window.alive === true`) || o.value(id, "offers[0].volume") != "17 L" {
		t.Error("typing alone loaded the page anew, or put something in the plan")
	}
}

func TestAnOfferIsAddedWithoutScript(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	b := browse(t, o.base)
	b.log.mayHear("status of 422")
	b.withoutScript()
	b.visit("/g/" + id + "/choose")
	b.write("kit.name", "kit")
	b.write("kit.volume", "17")
	b.write("kit.sites", "nine")
	b.follow(`#choose [value="offer"]`)
	if got := b.text("main"); !strings.Contains(got, "Not saved yet") || b.value("kit.volume") != "17" {
		t.Fatalf("a hole count in letters is answered with\n%s", head(got))
	}
	b.write("kit.sites", "9")
	b.follow(`#choose [value="offer"]`)
	if got := b.text(".answer"); !strings.Contains(got, "Kit: plant 5 of its 9 holes") {
		t.Errorf("the offer is answered with %q", got)
	}
}

// The decision of a garden with an offer of its own, in the states that no
// example shows, is for everybody: at a desk, on a phone, in both unit systems.
func TestTheDecisionServesEveryone(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		t.Run(units, func(t *testing.T) {
			o := open(t)
			id, _ := o.offeredGarden(units)
			o.post("/g/"+id+"/choose", form("1", "offers[0].past", "unknown", "prices.electricity", "0.3", "school.adult_drills", "yes"), 200)
			b := o.inUnits(t, units)
			seen := map[string]bool{}
			for _, s := range []scene{
				page("offered", "/offered"), page("choose", "/g/"+id+"/choose"), page("working-choose", "/g/"+id+"/working?of=choose"),
				{"offered-to-mend", "Not done yet", func(b *tab) { b.visit("/offered"); b.follow("#offered .btn.first") }},
				{"choose-to-mend", "Not saved yet", func(b *tab) {
					b.visit("/g/" + id + "/choose")
					ask[any](b, `document.querySelectorAll("details.bag, details.bag details").forEach((d) => { d.open = true; })`)
					b.write("offers[0].includes", "pump, "+strings.Repeat("x", 90))
					b.write("kit.name", "another")
					b.write("kit.volume", "5 kg")
					b.follow(`#choose [value="offer"]`)
				}},
				page("decision", "/g/"+id+"/papers/decision.pdf/page"), page("budget", "/g/"+id+"/papers/budget.pdf/page"),
				page("permission", "/g/"+id+"/papers/permission.pdf/page"), page("tags", "/g/"+id+"/papers/caretaker-tag.pdf/page"), page("letter", "/g/"+id+"/papers/parents-letter.pdf/page"),
			} {
				s.open(b)
				ask[any](b, `document.querySelectorAll("details:not([data-part])").forEach((d) => { d.open = true; })`)
				b.serves(s, seen, deskWide/2, handWide, 320)
			}
		})
	}
}
