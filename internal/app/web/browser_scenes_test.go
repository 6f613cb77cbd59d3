//go:build !race

package web_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// scene is one page in one state, and the way to it.
type scene struct {
	name  string
	says  string // a part of what the page must say, so that no other was reached
	reach func(*tab)
}

func page(name, address string) scene {
	return scene{name, "", func(b *tab) { b.visit(address) }}
}

// open goes there as one who has nothing typed and not saved.
func (s scene) open(b *tab) {
	b.Helper()
	ask[any](b, `void localStorage.clear()`)
	s.reach(b)
	b.settled()
	if text := b.text("main"); !strings.Contains(text, s.says) {
		b.Fatalf("the way to %s led to a page without %q:\n%s", s.name, s.says, head(text))
	}
}

// stopped is a plan that must not be drilled: its hole is wider than the cup's
// rim can bear.
const stopped = `rootbell: 1
garden: Not to be drilled
units: %s
paper: A4
tubs:
  - name: Tub 1
    inside: {top: [55 cm, 37 cm], base: [48 cm, 31.5 cm], height: 26 cm}
    lid: {size: [58 cm, 39 cm]}
    cup: {body: 7.4 cm, rim: 8.6 cm, depth: 7 cm}
    hole: 8.4 cm
`

// ownGardens makes a garden with earlier plans, and one that must not be
// drilled.
func (o *opened) ownGardens(units string) (own, stop string) {
	o.Helper()
	own = o.beginGarden(units)
	for i, height := range []string{"10.5", "12"} {
		if units == "metric" {
			height = fmt.Sprint(27 + i)
		}
		o.post("/g/"+own+"/build", form(fmt.Sprint(i+1), "tubs[0].inside.height", height), 200)
	}
	g, err := o.store.Create(context.Background(), "Not to be drilled", fmt.Appendf(nil, stopped, units), "read from a file", moment)
	if err != nil {
		o.Fatal(err)
	}
	return own, g.ID
}

// exampleTubs are the read-only gardens with a tub of each.
var exampleTubs = map[string][]string{"example-fernhollow": {"Heron", "Otter"}, "example-saltbrook": {"Tern", "Plover"}}

// everyScene is every page in every state, in a unit system.
func (o *opened) everyScene(units string) []scene {
	o.Helper()
	own, stop := o.ownGardens(units)
	out := []scene{
		page("start", "/"), page("start-round", "/?shape=round"), page("start-poured", "/?shape=poured"),
		page("safety", "/safety"), page("stored", "/stored"), page("refusal", "/nowhere"),
		{"start-to-mend", "Not drawn yet", func(b *tab) { b.visit("/"); b.follow("#begin .btn.first") }},
		{"build-to-mend", "Not saved yet", func(b *tab) {
			b.visit("/g/" + own + "/build")
			b.write("tubs[0].inside.height", "5 kg")
			b.follow("#build .btn.first")
		}},
		{"mix-to-mend", "Not saved yet", func(b *tab) {
			b.visit("/g/" + own + "/mix")
			b.write("bottle.name", "grow")
			b.write("bottle.label.N", "5 kg")
			b.follow(`#mix [value="shelf"]`)
		}},
		page("offered", "/offered"),
		{"offered-to-mend", "Not done yet", func(b *tab) { b.visit("/offered"); b.follow("#offered .btn.first") }},
		{"choose-to-mend", "Not saved yet", func(b *tab) {
			b.visit("/g/" + own + "/choose")
			b.write("kit.name", "kit")
			b.write("kit.volume", "5 kg")
			b.follow(`#choose [value="offer"]`)
		}},
		{"choose-more", "One big tub or several small ones", func(b *tab) {
			b.visit("/g/example-fernhollow/choose")
			b.click("#choose-more > summary")
		}},
		{"mix-more", "Half the dose does not give half the EC", func(b *tab) {
			b.visit("/g/example-fernhollow/mix")
			b.click("#mix-more > summary")
		}},
		{"class-to-mend", "Not saved yet", func(b *tab) {
			b.visit("/g/" + own + "/class")
			b.click("#class details > summary")
			b.write("class.never", "Robin and 7")
			b.follow("#class .btn.first")
		}},
		{"class-more", "Which pair adopts which hole", func(b *tab) {
			b.visit("/g/example-saltbrook/class")
			b.click("#work details.more > summary")
			b.click("#class fieldset details > summary")
		}},
		{"wipe", "This cannot be taken back", func(b *tab) {
			b.visit("/stored")
			b.follow(`form[action$="/wipe"] button`)
		}},
		page("trouble", "/g/example-fernhollow/trouble?tub=Heron&seen=edges-old&seen=wet-floor"), page("trouble-empty", "/g/"+own+"/trouble"),
		page("lessons", "/g/example-fernhollow/lessons"), page("lesson", "/g/example-saltbrook/lessons/fit-line?band=9-12&graph=filled"), page("lesson-none", "/g/"+own+"/lessons/scale?number=none"),
		page("meal", "/g/example-saltbrook/meal?unknown=yes&cold=yes"),
		{"season-to-mend", "Not saved yet", func(b *tab) {
			b.visit("/g/" + own + "/season")
			b.write("school.meal.eaters", "all of them")
			b.follow("#season .btn.first")
		}},
		{"season-days", "Each day when the last one leaves", func(b *tab) {
			b.visit("/g/example-saltbrook/season")
			b.click("#day-by-day > summary")
		}},
		{"text-to-mend", "Not saved yet", func(b *tab) {
			b.visit("/g/" + own + "/text")
			b.click("#text")
			b.keys("zz: ")
			b.follow("#plan .btn.first")
		}},
		page("build-stop", "/g/"+stop+"/build"), page("papers-stop", "/g/"+stop+"/papers"),
		page("history", "/g/"+own+"/history"), page("revision", "/g/"+own+"/history/2"),
		{"conflict", "Another tab changed this plan", func(b *tab) { o.collide(b, own, "#build .btn.first", "build") }},
		{"conflict-text", "Another tab changed this plan", func(b *tab) { o.collide(b, own, "#plan .btn.first", "text") }},
	}
	out = append(out, o.papersOf(own)...)
	out = append(out, o.papersOf(map[string]string{"metric": "example-fernhollow", "us": "example-saltbrook"}[units])...)
	for _, id := range []string{own, "example-fernhollow", "example-saltbrook"} {
		out = append(out, o.ofGarden(id)...)
	}
	return out
}

// collide saves in one tab what another tab has changed since.
func (o *opened) collide(b *tab, id, button, address string) {
	b.visit("/g/" + id + "/" + address)
	rev, err := o.store.Revision(context.Background(), id, 0)
	if err != nil {
		o.Fatal(err)
	}
	text := strings.Replace(string(rev.Text), "Classroom garden", fmt.Sprintf("Room of %d plans", rev.Number), 1)
	if text == string(rev.Text) {
		text = strings.Replace(text, "Room of ", "A room of ", 1)
	}
	if _, err := o.store.Save(context.Background(), id, rev.Number, "Room", []byte(text), "typed as text", moment); err != nil {
		o.Fatal(err)
	}
	if address == "text" {
		ask[any](b, `void (document.getElementById("text").focus(), document.getElementById("text").setSelectionRange(0, 0))`)
		b.keys("# ")
	} else {
		b.write("tubs[0].spacing.between", "20 cm")
	}
	b.follow(button)
}

// shortName is what a garden is called among the scenes.
func shortName(id string) string {
	if name, ok := strings.CutPrefix(id, "example-"); ok {
		return name
	}
	return "own"
}

// ofGarden are the pages that each garden has: those of its navigation, those of
// each tub, and one number.
func (o *opened) ofGarden(id string) []scene {
	o.Helper()
	var out []scene
	short := shortName(id)
	body, _ := o.get("/g/"+id+"/build", 200)
	_, nav, _ := strings.Cut(body, `<nav class="pages"`)
	nav, _, _ = strings.Cut(nav, "</nav>")
	for _, link := range linkPattern.FindAllStringSubmatch(nav, -1) {
		out = append(out, page(short+link[1][strings.LastIndex(link[1], "/"):], link[1]))
	}
	for _, tub := range exampleTubs[id] {
		out = append(out, page(short+"/build-"+tub, "/g/"+id+"/build?tub="+tub), page(short+"/mix-"+tub, "/g/"+id+"/mix?tub="+tub), page(short+"/season-"+tub, "/g/"+id+"/season?tub="+tub))
	}
	tub := append(exampleTubs[id], "Tub-1")[0]
	number := "/g/" + id + "/working/tubs." + tub + ".volume_solution"
	out = append(out, page(short+"/light", "/g/"+id+"/light?tub="+tub))
	out = append(out, page(short+"/number", number), page(short+"/blanks", number+"/blanks"), page(short+"/working-garden", "/g/"+id+"/working?of=garden"))
	return out
}

// papersOf is each paper of a garden as a page.
func (o *opened) papersOf(id string) []scene {
	o.Helper()
	var out []scene
	short := shortName(id)
	body, _ := o.get("/g/"+id+"/papers", 200)
	for _, link := range linkPattern.FindAllStringSubmatch(body, -1) {
		if name, ok := strings.CutSuffix(link[1], "/page"); ok {
			out = append(out, page(short+"/paper-"+name[strings.LastIndex(name, "/")+1:], link[1]))
		}
	}
	return out
}

// inUnits opens a tab in which the examples too are shown in a unit system.
func (o *opened) inUnits(t *testing.T, units string) *tab {
	t.Helper()
	b := browse(t, o.base)
	for _, status := range []string{"404", "409", "422"} {
		b.log.mayHear("status of " + status)
	}
	b.visit("/safety")
	for _, word := range []string{"us", units} { // what was never chosen leaves each example in its own
		if other := `.set [name="units"][value="` + word + `"]`; ask[bool](b, one(other)+" !== null") {
			b.follow(other)
		}
	}
	return b
}

// wide makes the screen as wide and high as asked.
func (b *tab) wide(width, height int64) {
	b.Helper()
	b.do(chromedp.EmulateViewport(width, height))
}
