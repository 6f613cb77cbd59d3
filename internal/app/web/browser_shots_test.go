//go:build shots && !race

package web_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestShots writes every page as pictures and as print into the folder that
// ROOTBELL_SHOTS names, to be looked at; 'make shots' runs it.
func TestShots(t *testing.T) {
	folder := os.Getenv("ROOTBELL_SHOTS")
	if folder == "" {
		t.Fatal("name the folder in ROOTBELL_SHOTS")
	}
	for _, units := range []string{"metric", "us"} {
		o := open(t)
		scenes := o.everyScene(units)
		b := o.inUnits(t, units)
		paper := map[string]chromedp.PaperSize{"metric": chromedp.PaperA4, "us": chromedp.PaperLetter}[units]
		for _, s := range scenes {
			if only := os.Getenv("ROOTBELL_SHOTS_ONLY"); only != "" && !strings.Contains(s.name, only) {
				continue
			}
			name := filepath.Join(folder, units, strings.ReplaceAll(s.name, "/", "-"))
			b.wide(deskWide, deskHigh)
			s.open(b)
			b.shot(name + "-desk.png")
			file, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper), chromedp.PDFPreferCSSPageSize()))
			if err != nil {
				t.Fatal(err)
			}
			b.keep(name+"-print.pdf", file)
			b.wide(handWide, handHigh)
			b.do(chromedp.Reload())
			b.settled()
			b.shot(name + "-hand.png")
		}
	}
}

// shot is the whole page as a picture.
func (b *tab) shot(path string) {
	b.Helper()
	picture, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
	if err != nil {
		b.Fatal(err)
	}
	b.keep(path, picture)
}

func (b *tab) keep(path string, content []byte) {
	b.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		b.Fatal(err)
	}
	if err := os.WriteFile(path, content, 0o644); err != nil {
		b.Fatal(err)
	}
}
