//go:build !race

package web_test

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"rootbell/internal/garden/plan"
)

// TestEveryFormWorksWithoutScript goes a teacher's whole way in a browser whose
// scripts are off.
func TestEveryFormWorksWithoutScript(t *testing.T) {
	o := open(t)
	b := browse(t, o.base)
	b.log.mayHear("status of 422")
	b.withoutScript()

	b.visit("/")
	b.write("tubs[0].inside.top[0]", "55")
	b.follow("#begin .btn.first")
	if got := b.text("main"); !strings.Contains(got, "Not drawn yet") || b.value("tubs[0].inside.top[0]") != "55" {
		t.Fatalf("an unfinished form is answered with\n%s", head(got))
	}
	for name, entry := range begun["metric"] {
		if strings.HasPrefix(name, "tubs") && name != "tubs[0].crop" {
			b.write(name, entry[0])
		}
	}
	b.follow("#begin .btn.first")
	id := o.garden()

	b.write("tubs[0].inside.height", "25")
	b.follow("#build .btn.first")
	if got := o.value(id, "tubs[0].inside.height"); got != "25 cm" {
		t.Errorf("height is %q in the plan", got)
	}

	b.click(`[name="tubs[0].layout"][value="rows"]`)
	b.follow("#build .btn.first")
	if got := o.value(id, "tubs[0].layout"); got != "rows" {
		t.Errorf("the layout is %q in the plan", got)
	}

	b.write("hole.1.x", "14")
	b.write("hole.1.y", "9.5 apples")
	b.click(`[name="hole.1.fixed"]`)
	b.follow("#build .btn.first")
	if got := b.text("main"); !strings.Contains(got, "apples") || b.value("hole.1.x") != "14" || b.value("hole.1.y") != "9.5 apples" || len(b.fixed()) != 1 {
		t.Errorf("a hole that cannot be read loses what was typed, or says nothing:\n%s", head(got))
	}
	if !ask[bool](b, `document.getElementById("hole-1-err") !== null && `+fieldOf("hole.1.y")+`.getAttribute("aria-invalid") === "true"`) {
		t.Error("the problem does not stand at the hole's field")
	}
	b.write("hole.1.y", "9.5")
	b.follow("#build .btn.first")
	if !strings.Contains(o.text(id), "holes: [{at: [14 cm, 9.5 cm]}]") {
		t.Errorf("the hole is not fixed:\n%s", o.text(id))
	}
	b.follow(`#build .btn[name="do"][value="free"]`)
	if plan.Items([]byte(o.text(id)), "tubs[0].lid.holes") != 0 {
		t.Error("the hole is not freed")
	}

	b.unfold("More")
	for name, entry := range map[string]string{"keep.right": "0", "keep.up": "15", "keep.long": "3", "keep.wide": "8", "keep.why": "handle"} {
		b.write(name, entry)
	}
	b.follow(`[name="do"][value="keep"]`)
	if !strings.Contains(o.text(id), `rectangle: [0 cm, 15 cm, 3 cm, 23 cm]`) {
		t.Errorf("the shape is not kept clear:\n%s", o.text(id))
	}
	b.unfold("More")
	b.follow(`[name="do"][value="drop-0"]`)
	if strings.Contains(o.text(id), "rectangle") {
		t.Error("the shape is not taken out")
	}

	b.follow(`.set [name="units"][value="us"]`)
	if got := o.value(id, "units"); got != "us" {
		t.Errorf("the units are %q", got)
	}
	b.follow(`.set [name="units"][value="metric"]`)

	b.follow(`nav.pages a[href$="/text"]`)
	b.click("#text")
	ask[any](b, `document.getElementById("text").setSelectionRange(0, 0)`)
	b.keys("# by hand ")
	b.follow("#plan .btn.first")
	if !strings.Contains(o.text(id), "# by hand ") {
		t.Errorf("the text is not saved:\n%s", o.text(id))
	}

	b.follow(`a[href$="/history"]`)
	b.follow(`form[action$="/history/1/back"] .btn`)
	if got := o.value(id, "tubs[0].inside.height"); got != "26 cm" {
		t.Errorf("the first plan did not come back: height %q", got)
	}

	folder := b.downloads()
	b.follow(`nav.pages a[href$="/text"]`)
	b.click(`a[href$="/export"]`)
	file := b.arrived(folder, "*.garden.txt")
	b.visit("/")
	b.unfold("Read in")
	b.do(chromedp.SetUploadFiles(chromedp.CSS("#garden-file"), []string{file}))
	b.follow(`form[action="/import"] .btn`)
	if got := b.text("main"); !strings.Contains(got, "was read in") {
		t.Errorf("the import says\n%s", head(got))
	}

	b.visit("/g/" + id + "/build")
	b.follow(`nav.pages a[href$="/working"]`)
	b.follow(`.unfold a`)
	if got := b.text("main"); !strings.Contains(got, "=") {
		t.Errorf("a number does not unfold without script:\n%s", head(got))
	}
}

// unfold opens the part whose head begins with a word, as a press on it does.
func (b *tab) unfold(head string) {
	b.Helper()
	mark := `[...document.querySelectorAll("summary")].find((s) => s.textContent.startsWith("` + head + `"))`
	if ask[bool](b, mark+`.parentElement.open`) {
		return
	}
	at := ask[[]float64](b, `(() => { const e = `+mark+`; e.scrollIntoView({block: "center"}); const r = e.getBoundingClientRect(); return [r.x + 20, r.y + r.height / 2]; })()`)
	b.do(chromedp.MouseClickXY(at[0], at[1]))
	b.until(mark + `.parentElement.open`)
}
