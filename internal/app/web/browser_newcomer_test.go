//go:build !race

package web_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// The bounds on the newcomer's way from an empty database to a lid
// sheet; they stand for three minutes, which no test can measure.
const (
	mostFields  = 20
	mostPresses = 12
)

// TestTheNewcomersWay types the first measures as a person would, with the
// keyboard from field to field, and ends with the lid sheet on the disk.
func TestTheNewcomersWay(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		t.Run(units, func(t *testing.T) {
			o := open(t)
			b := browse(t, o.base)
			folder := b.downloads()
			b.visit("/")
			fields, presses := 0, 0
			if units == "us" {
				b.click(`#begin [name="units"][value="us"]`)
				presses++
			}
			b.click(`[name="tubs[0].inside.top[0]"]`)
			presses++
			for {
				name := ask[string](b, "document.activeElement.name ?? ''")
				entry := begun[units].Get(name)
				if entry == "" || name == "tubs[0].crop" {
					break
				}
				b.keys(entry)
				fields++
				b.keys(kb.Tab)
				if fields == 5 || fields == 7 { // past the other shapes' buttons, to the next measure
					for ask[string](b, "document.activeElement.tagName") != "INPUT" {
						b.keys(kb.Tab)
					}
				}
			}
			for _, name := range []string{"tubs[0].inside.height", "tubs[0].lid.size[1]", "tubs[0].cup.depth"} {
				if got, want := b.value(name), begun[units].Get(name); got != want {
					t.Fatalf("%s is %q, want %q: the keyboard did not lead there", name, got, want)
				}
			}
			if units == "us" { // Enter in a field presses the form's button, and none of the other shapes'
				ask[any](b, `void (window.here = true)`)
				ask[any](b, fieldOf("tubs[0].cup.depth")+`.focus()`)
				b.keys(kb.Enter)
				b.until(`!window.here && document.readyState === "complete" && document.querySelector("#build")`)
			} else {
				b.follow("#begin .btn.first")
			}
			presses++
			if got := b.text(".answer"); !strings.Contains(got, "plants") {
				t.Errorf("the answer is %q", got)
			}
			b.click(`a[href$="/papers/lid-Tub-1.pdf"]`)
			presses++
			sheet, err := os.ReadFile(b.arrived(folder, "lid-Tub-1.pdf"))
			if err != nil {
				t.Fatal(err)
			}
			if !strings.HasPrefix(string(sheet), "%PDF-") || len(sheet) < 10_000 {
				t.Errorf("the lid sheet is %d bytes that begin %q", len(sheet), head(string(sheet)))
			}
			t.Logf("%d fields filled, %d presses", fields, presses)
			if fields > mostFields || presses > mostPresses {
				t.Errorf("%d fields and %d presses, more than %d and %d", fields, presses, mostFields, mostPresses)
			}
		})
	}
}

// downloads lets the tab's downloads arrive in a folder of the test's own.
func (b *tab) downloads() string {
	b.Helper()
	folder := b.TempDir()
	id := chromedp.FromContext(b.ctx).BrowserContextID
	if _, err := chromedp.CallBrowser(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, BrowserContextID: id, DownloadPath: folder,
	}); err != nil {
		b.Fatal(err)
	}
	return folder
}

// arrived waits for a file to arrive whole, under its own name only then, and
// gives its path.
func (b *tab) arrived(folder, pattern string) string {
	b.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if found, _ := filepath.Glob(filepath.Join(folder, pattern)); len(found) == 1 {
			if info, err := os.Stat(found[0]); err == nil && info.Size() > 0 {
				return found[0]
			}
		}
	}
	there, _ := filepath.Glob(filepath.Join(folder, "*"))
	b.Fatalf("%s never arrived; there is %v", pattern, there)
	return ""
}

// garden is the id of the one garden of a server.
func (o *opened) garden() string {
	o.Helper()
	gardens, err := o.store.Gardens(context.Background())
	if err != nil || len(gardens) != 1 {
		o.Fatalf("%d gardens, want one: %v", len(gardens), err)
	}
	return gardens[0].ID
}
