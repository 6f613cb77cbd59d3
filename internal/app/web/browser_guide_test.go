//go:build shots && !race

package web_test

import (
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// mostPicture keeps the repository small.
const mostPicture = 150_000

// TestGuide writes the pictures of docs/guide.md into the folder that
// ROOTBELL_GUIDE names, going the guide's own way; 'tools/pictures.sh' runs it.
func TestGuide(t *testing.T) {
	folder := os.Getenv("ROOTBELL_GUIDE")
	if folder == "" {
		t.Fatal("name the folder in ROOTBELL_GUIDE")
	}
	o := open(t)
	b := browse(t, o.base)
	b.log.mayHear("422") // a question comes back with that status
	b.do(chromedp.EmulateViewport(deskWide, 840, chromedp.EmulateScale(0.66)))
	picture := func(name, top string) {
		t.Helper()
		ask[any](b, `void (document.activeElement.blur(), window.scrollTo(0, `+top+`))`)
		file, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
		if err != nil {
			t.Fatal(err)
		}
		if len(file) > mostPicture {
			t.Errorf("the picture %s has %d bytes, more than %d", name, len(file), mostPicture)
		}
		b.keep(filepath.Join(folder, "guide-"+name+".png"), file)
	}
	above := func(selector string) string { return one(selector) + ".getBoundingClientRect().top + scrollY - 12" }

	b.visit("/")
	for _, name := range []string{"tubs[0].inside.top[0]", "tubs[0].inside.top[1]", "tubs[0].inside.base[0]", "tubs[0].inside.base[1]", "tubs[0].inside.height", "tubs[0].lid.size[0]", "tubs[0].lid.size[1]", "tubs[0].cup.rim", "tubs[0].cup.body", "tubs[0].cup.depth"} {
		b.write(name, begun["metric"].Get(name))
	}
	b.until(`document.getElementById("cup-picture").textContent.includes("7.0")`)
	picture("start", above("#begin .sect"))
	b.follow("#begin .btn.first")
	picture("build", "0")
	b.dragged(2, -60, 20)
	b.full()
	picture("hole", above("#lid"))
	b.follow("#build .btn.first")
	b.follow(`nav.pages a[href$="/papers"]`)
	picture("papers", "0")
	b.visit("/g/" + o.garden() + "/working/tubs.Tub-1.volume_solution")
	ask[any](b, `document.querySelector("details.working").open = true`)
	b.until(`document.querySelector("details.working table")`)
	picture("working", "0")
	b.follow(`nav.pages a[href$="/text"]`)
	picture("text", "0")
	b.follow(`a[href$="/history"]`)
	picture("history", "0")

	logbook := "/g/" + o.garden() + "/logbook"
	for i, ph := range []string{"6.9", "6.1", "6.2"} {
		v := entry(fmt.Sprint("guide-", i), "tub", "Tub 1", "by", "", "ph", ph, "at", fmt.Sprintf("2027-02-0%dT09:30:00Z", 5+i))
		if i == 1 {
			v.Set("corrects", "guide-0")
			v.Set("at", "2027-02-05T09:30:00Z")
		}
		o.post(logbook, v, http.StatusOK)
	}
	b.visit(logbook)
	b.write("level", "24.5")
	b.write("ph", "61")
	b.follow("#entry .btn.first")
	picture("logbook", "0")

	b.visit("/g/example-fernhollow/season")
	picture("season", above("#season-level"))
}
