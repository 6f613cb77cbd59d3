//go:build !race

package web_test

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestThePagesPrint prints Build and a paper's page as the browser would, and
// reads the print back with a program that is not ours.
func TestThePagesPrint(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal(err)
		}
		t.Skip("pdftotext is not there ('make tools' installs poppler-utils)")
	}
	o := open(t)
	b := browse(t, o.base)
	for _, c := range []struct {
		name, address string
		paper         chromedp.PaperSize
		want          []string
	}{
		{"build on A4", "/g/example-fernhollow/build", chromedp.PaperA4, []string{"Eight plants", "16.7 cm", "What decides the number"}},
		{"build on Letter", "/g/example-saltbrook/build", chromedp.PaperLetter, []string{"plants", "What decides the number"}},
		{"helper card", "/g/example-fernhollow/papers/helper-card.pdf/page", chromedp.PaperA4, []string{"Heron", "drill"}},
		{"safety", "/safety", chromedp.PaperA4, []string{"An adult drills", "licensed"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			b.visit(c.address)
			b.settled()
			file, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(c.paper), chromedp.PDFPreferCSSPageSize()))
			if err != nil {
				t.Fatal(err)
			}
			text := pdfText(t, file)
			for _, part := range c.want {
				if !strings.Contains(text, part) {
					t.Errorf("%q is not in the print:\n%s", part, head(text))
				}
			}
			for _, part := range []string{"Plan as text", "What is stored", "Make it mine", "Skip to the page", "in, gal or"} {
				if strings.Contains(text, part) {
					t.Errorf("the navigation's %q is in the print", part)
				}
			}
		})
	}
}

// pdfText is what a print says, its words parted by single blanks.
func pdfText(t *testing.T, file []byte) string {
	t.Helper()
	if !bytes.HasPrefix(file, []byte("%PDF-")) {
		t.Fatalf("no print: %q", head(string(file)))
	}
	path := filepath.Join(t.TempDir(), "print.pdf")
	if err := os.WriteFile(path, file, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", path, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(strings.Fields(string(out)), " ")
}
