package seasonal_test

import (
	"bytes"
	"encoding/xml"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/seasonal"
	"rootbell/internal/paper/sheet"
)

// ways are the examples in both unit systems.
func ways(t *testing.T) []*garden.Assessment {
	t.Helper()
	var out []*garden.Assessment
	for _, name := range []string{"fernhollow", "saltbrook"} {
		for _, units := range []garden.System{garden.Metric, garden.US} {
			out = append(out, example(t, name, units))
		}
	}
	return out
}

// said is all that a paper says, a line for each sentence, cell and blank.
func said(c card.Card) string {
	var b strings.Builder
	for _, s := range c.Sheets(scene.A4) {
		for _, x := range s.Sections {
			for _, part := range [][]string{{s.Title, x.Heading}, x.Cautions, x.Paragraphs, x.Steps.Items, x.List} {
				b.WriteString(strings.Join(part, "\n") + "\n")
			}
			for _, l := range x.Lines {
				b.WriteString(string(l) + "\n")
			}
			for _, table := range x.Tables {
				b.WriteString(table.Caption + "\n")
				for _, row := range table.Rows {
					b.WriteString(strings.ReplaceAll(strings.Join(row, " | "), content.Blank, "__") + "\n")
				}
			}
		}
	}
	return strings.ReplaceAll(b.String(), "\u00a0", " ")
}

// box is a word on a page, in points from the upper left, as pdftotext finds it.
type box struct {
	XMin float64 `xml:"xMin,attr"`
	YMin float64 `xml:"yMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	YMax float64 `xml:"yMax,attr"`
	Word string  `xml:",chardata"`
}

type printed struct {
	Pages []struct {
		Width  float64 `xml:"width,attr"`
		Height float64 `xml:"height,attr"`
		Words  []box   `xml:"word"`
	} `xml:"body>doc>page"`
}

// boxes reads where a PDF's words stand, with poppler, which the program does
// not use.
func boxes(t *testing.T, pdf []byte) printed {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftotext is missing; run make tools")
		}
		t.Skip("pdftotext is missing; run make tools")
	}
	run := exec.Command(tool, "-bbox", "-", "-")
	run.Stdin = bytes.NewReader(pdf)
	out, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	var p printed
	d := xml.NewDecoder(bytes.NewReader(out))
	d.Strict = false
	d.Entity = xml.HTMLEntity
	if err := d.Decode(&p); err != nil {
		t.Fatal(err)
	}
	return p
}

// Each paper is drawn on both sizes of paper, with every
// word inside margins of 12 mm; every page says that it is invented.
func TestEveryPaperStaysInsideItsMargins(t *testing.T) {
	for i, a := range ways(t) {
		for _, c := range seasonal.Cards(a, "3") {
			if c.Title == "" || !strings.HasSuffix(c.About, ".") || c.Points < 11 {
				t.Errorf("%s: title %q, about %q, %v points", c.Name, c.Title, c.About, c.Points)
			}
			// Each example on both papers, and in both unit systems.
			for _, size := range []scene.Size{sizes[i%2], sizes[(i/2+1)%2]} {
				pdf, err := c.PDF(size)
				if err != nil {
					t.Fatal(err)
				}
				inside(t, a, c, size, boxes(t, pdf))
			}
		}
	}
}

func inside(t *testing.T, a *garden.Assessment, c card.Card, size scene.Size, p printed) {
	t.Helper()
	name := a.Garden + ", " + c.Name + ", " + sheet.PaperName(size)
	const margin, hair = 12 / 25.4 * 72, 0.6
	// Lists to tick off may run on; what one holds in hand is one page.
	n, runsOn := len(c.Sheets(size)), strings.HasPrefix(c.Name, "leave-it-") || c.Name == "wall-calendar.pdf"
	if got := len(p.Pages); got < n || got > n && !runsOn || got > 2*n {
		t.Errorf("%s has %d pages for %d sheets", name, got, n)
	}
	for i, page := range p.Pages {
		invented := false
		for _, w := range page.Words {
			invented = invented || w.Word == "(invented)"
			if w.XMin < margin-hair || w.XMax > page.Width-margin+hair || w.YMax > page.Height-margin+hair || w.YMin < margin-hair {
				t.Errorf("%s, page %d: %q stands outside, at %.0f to %.0f by %.0f to %.0f of %.0f by %.0f", name, i+1, w.Word, w.XMin, w.XMax, w.YMin, w.YMax, page.Width, page.Height)
			}
		}
		if !invented {
			t.Errorf("%s, page %d does not say that it is invented", name, i+1)
		}
	}
}

// The same assessment gives the same bytes, whatever was drawn before.
func TestTheSameBytesEachTime(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	for _, c := range seasonal.Cards(a, "3") {
		first, err := c.PDF(scene.A4)
		if err != nil {
			t.Fatal(err)
		}
		if again, err := c.PDF(scene.A4); err != nil || !bytes.Equal(first, again) {
			t.Errorf("%s: other bytes the second time, %v", c.Name, err)
		}
	}
}

// What is drawn is drawn in type that a wall is read from, and nothing but the
// title block is smaller than 11 points.
func TestTypeOfWhatIsDrawn(t *testing.T) {
	const least, titleBlock = 11 * scene.PointMM, 24.0 // mm over the paper's edge
	for _, a := range ways(t) {
		for _, c := range seasonal.Cards(a, "3") {
			for _, size := range sizes {
				if c.Drawn == nil {
					continue
				}
				for _, pages := range c.Drawn(size) {
					for _, page := range pages {
						for _, e := range page.Elements {
							text, ok := e.(scene.Text)
							if ok && text.At.Y > titleBlock && text.SizeMM < least-1e-9 {
								t.Errorf("%s: %q in %.1f points", c.Name, text.Text, text.SizeMM/scene.PointMM)
							}
						}
					}
				}
			}
		}
	}
}

// Without a season there is no paper; a tub without one is on none.
func TestWithoutASeason(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	a.Tubs[1].Season = nil
	for _, c := range seasonal.Cards(a, "") {
		if strings.Contains(c.Name, "Otter") || strings.Contains(said(c), "Otter") {
			t.Errorf("%s speaks of Otter", c.Name)
		}
	}
	a.Tubs[0].Season = nil
	if got := seasonal.Cards(a, ""); len(got) > 0 {
		t.Errorf("%d papers", len(got))
	}
	if _, ok := seasonal.Agenda(a, ""); ok {
		t.Error("there is a calendar file")
	}
	a.Tubs[0].Season = &garden.Season{}
	for _, c := range seasonal.Cards(a, "") {
		for _, size := range sizes {
			if _, err := c.PDF(size); err != nil {
				t.Errorf("%s of an empty season: %v", c.Name, err)
			}
		}
	}
}

// Phones and places are blanks: nothing of a person is printed.
func TestPhonesAreBlanks(t *testing.T) {
	for _, a := range ways(t) {
		for _, c := range seasonal.Cards(a, "") {
			for _, s := range c.Sheets(scene.A4) {
				for _, x := range s.Sections {
					if i := slices.IndexFunc(x.Lines, func(l content.Line) bool { return !strings.Contains(string(l), "____") }); i >= 0 {
						t.Errorf("%s: a line without a blank: %s", c.Name, x.Lines[i])
					}
				}
			}
		}
	}
}
