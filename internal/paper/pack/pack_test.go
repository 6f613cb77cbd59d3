package pack_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/pack"
	"rootbell/internal/paper/scene"
)

func itoa(n int) string { return strconv.Itoa(n) }

// pages are all papers of a pack with their pages.
func pages(t *testing.T, a *garden.Assessment, size scene.Size) []pack.Page {
	t.Helper()
	var out []pack.Page
	for _, p := range slices.Concat(pack.Build(a), pack.Today(a), pack.Mix(a), pack.Choose(a)) {
		page, err := p.Page(size)
		if err != nil {
			t.Fatalf("%s: %v", p.Name, err)
		}
		out = append(out, page)
	}
	return out
}

func TestEachPaperHasItsNameTitleAndPage(t *testing.T) {
	everyPack(t, func(t *testing.T, a *garden.Assessment, size scene.Size) {
		seen := map[string]bool{}
		for _, p := range pages(t, a, size) {
			if seen[p.Name] || p.Title == "" || !strings.HasSuffix(p.About, ".") && !strings.HasSuffix(p.About, "?") {
				t.Errorf("%s: named twice, or without title or purpose", p.Name)
			}
			seen[p.Name] = true
			if !strings.HasSuffix(p.Name, "."+string(p.Kind)) {
				t.Errorf("%s: is a %s", p.Name, p.Kind)
			}
			if len(p.Sheets) == 0 || p.Heading() == "" {
				t.Errorf("%s: its page is empty", p.Name)
			}
			if again, ok := pack.PageOf(a, p.Name); !ok || again.Heading() != p.Heading() {
				t.Errorf("%s: not found by its name", p.Name)
			}
		}
		if _, ok := pack.PageOf(a, "lid-Nobody.pdf"); ok {
			t.Error("a paper of a tub that is not there was found")
		}
	})
}

// The words of the printed sheet all stand on the page; the steps and cautions
// of the page stand on the sheet word by word, and so does every row of the lid
// sheet's tables.
func TestSheetAndPageSayTheSame(t *testing.T) {
	everyPack(t, func(t *testing.T, a *garden.Assessment, size scene.Size) {
		for _, p := range pages(t, a, size) {
			if p.Kind == pack.PDF {
				sameSaid(t, p, size)
			}
		}
	})
}

// sameSaid holds a printed paper against its page.
func sameSaid(t *testing.T, p pack.Page, size scene.Size) {
	t.Helper()
	pdf, err := p.Draw(size)
	if err != nil {
		t.Fatalf("%s: %v", p.Name, err)
	}
	text := pdfText(t, pdf)
	onPage := map[string]bool{}
	for _, word := range shown(pageText(p)) {
		onPage[word] = true
	}
	var missing []string
	for _, printed := range strings.Split(text, "\f") {
		missing = append(missing, unsaid(p.Name, printed, onPage)...)
	}
	if len(missing) > 0 {
		t.Errorf("%s: on the sheet and not on the page: %q", p.Name, missing)
	}
	onSheet := " " + strings.Join(shown(text), " ") + " "
	for _, said := range inOrder(p) {
		if words := strings.Join(shown(said), " "); !strings.Contains(onSheet, " "+words+" ") {
			t.Errorf("%s: on the page and not on the sheet: %s", p.Name, said)
		}
	}
}

// inOrder are the sentences that stand on the sheet as on the page.
func inOrder(p pack.Page) []string {
	var out []string
	for _, sheet := range p.Sheets {
		for _, s := range sheet.Sections {
			out = append(append(out, s.Cautions...), numbered(s.Steps)...)
			if !strings.HasPrefix(p.Name, "lid-") {
				continue
			}
			for _, table := range s.Tables {
				for _, row := range table.Rows {
					out = append(out, rowText(row))
				}
			}
		}
	}
	return out
}

// lettering is the text in a drawing's text elements.
var lettering = regexp.MustCompile(`<text[^>]*>(?:<title>[^<]*</title>)?([^<]*)</text>`)

// The drawings that are files say in words on their page what they are
// lettered with, but for rulers and the scale.
func TestThePageSaysWhatTheDrawingSays(t *testing.T) {
	everyPack(t, func(t *testing.T, a *garden.Assessment, size scene.Size) {
		for _, p := range pages(t, a, size) {
			if p.Kind != pack.SVG {
				continue
			}
			file, err := p.Draw(size)
			if err != nil {
				t.Fatal(err)
			}
			onPage := shown(pageText(p))
			var missing []string
			for _, found := range lettering.FindAllStringSubmatch(string(file), -1) {
				for _, word := range shown(scaleWords.ReplaceAllString(unescaped(found[1]), " ")) {
					if !slices.Contains(onPage, word) && !ruler.MatchString(word) {
						missing = append(missing, word)
					}
				}
			}
			if len(missing) > 0 {
				t.Errorf("%s: on the drawing and not on the page: %q", p.Name, missing)
			}
		}
	})
}

// ruler is a number along the rulers of the lid's drawing.
var ruler = regexp.MustCompile(`^\d{1,3}$`)

func unescaped(text string) string {
	return strings.NewReplacer("&#39;", "'", "&quot;", `"`, "&lt;", "<", "&gt;", ">", "&amp;", "&").Replace(text)
}

// A stop stands on every page that holds places of holes, or how to make them.
func TestAStopStandsOnEachPageConcerned(t *testing.T) {
	stopped := 0
	for _, path := range plans(t) {
		a := assessed(t, path, "metric")
		for _, p := range pages(t, a, scene.A4) {
			for _, sheet := range p.Sheets {
				i := slices.IndexFunc(a.Tubs, func(tub garden.Tub) bool { return sheet.Block.Drawing != "" && about(p, sheet.Title, tub.Name) })
				if i < 0 || strings.HasPrefix(p.Name, "dipstick-") {
					continue
				}
				want := ""
				if reason := a.StopOf(i); reason != "" {
					want = "do not drill: " + reason
					stopped++
				}
				if sheet.Stop != want {
					t.Errorf("%s, %s: stop %q, want %q", path, p.Name, sheet.Stop, want)
				}
			}
		}
	}
	if stopped < 5 {
		t.Errorf("only %d sheets were stopped; the plans must hold a stop", stopped)
	}
}

// about says whether a sheet is about a tub.
func about(p pack.Page, title, tub string) bool {
	return p.Tub == tub || p.Tub == "" && strings.HasSuffix(title, " of "+tub)
}

// What a page may hold: figures without script or style, named and described;
// tables with a head and a name for each row.
func TestPagesCanBeReadWithoutSeeing(t *testing.T) {
	everyPack(t, func(t *testing.T, a *garden.Assessment, size scene.Size) {
		for _, p := range pages(t, a, size) {
			for _, sheet := range p.Sheets {
				for _, s := range sheet.Sections {
					if s.Heading == "" {
						t.Errorf("%s: a section without a heading", p.Name)
					}
					for _, f := range s.Figures {
						checkFigure(t, p.Name, f)
					}
					for _, table := range s.Tables {
						checkTable(t, p.Name, table)
					}
				}
			}
		}
	})
}

func checkFigure(t *testing.T, paper string, f content.Figure) {
	t.Helper()
	if f.Caption == "" || f.Desc == "" || !strings.Contains(f.Caption, "not to scale") && !strings.Contains(f.Caption, "what to measure") {
		t.Errorf("%s: a figure with the caption %q and the description %q", paper, f.Caption, f.Desc)
	}
	d := xml.NewDecoder(bytes.NewReader([]byte(f.SVG)))
	var names []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%s: %v", paper, err)
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		names = append(names, start.Name.Local)
		for _, attr := range start.Attr {
			if attr.Name.Local == "style" || strings.HasPrefix(attr.Name.Local, "on") {
				t.Errorf("%s: the attribute %s, which the pages' policy forbids", paper, attr.Name.Local)
			}
		}
	}
	if len(names) < 3 || names[0] != "svg" || names[1] != "title" || names[2] != "desc" {
		t.Errorf("%s: a figure must begin with its title and description, not %q", paper, names[:min(3, len(names))])
	}
	if slices.Contains(names, "style") || slices.Contains(names, "script") {
		t.Errorf("%s: a figure with a style or script of its own", paper)
	}
}

func checkTable(t *testing.T, paper string, table content.Table) {
	t.Helper()
	if table.Caption == "" || len(table.Columns) < 2 {
		t.Errorf("%s: a table %q of %d columns", paper, table.Caption, len(table.Columns))
	}
	for _, c := range table.Columns {
		if c.Head == "" {
			t.Errorf("%s: a column without a head in %q", paper, table.Caption)
		}
	}
	for i, row := range table.Rows {
		if len(row) != len(table.Columns) || row[0] == "" || row[0] == content.Blank {
			t.Errorf("%s: row %d of %q: %q", paper, i, table.Caption, row)
		}
	}
}

// The same assessment gives the same pages, whatever was drawn before.
func TestPagesAreTheSameEachTime(t *testing.T) {
	a := assessed(t, "../../../examples/fernhollow.yaml", "metric")
	first := pages(t, a, scene.A4)
	for i, p := range pages(t, a, scene.A4) {
		if pageText(p) != pageText(first[i]) {
			t.Errorf("%s: other words the second time", p.Name)
		}
	}
}

// A revision stands in every title block that is drawn or shown.
func TestTheRevisionStandsInTheTitleBlock(t *testing.T) {
	a := assessed(t, "../../../examples/fernhollow.yaml", "metric")
	for _, p := range slices.Concat(pack.BuildOf(a, "7"), pack.TodayOf(a, "7"), pack.MixOf(a, "7"), pack.ChooseOf(a, "7")) {
		page, err := p.Page(scene.A4)
		if err != nil {
			t.Fatal(err)
		}
		for _, sheet := range page.Sheets {
			if sheet.Block.Revision != "7" {
				t.Errorf("%s: revision %q", p.Name, sheet.Block.Revision)
			}
		}
	}
}

// A lid longer than any table is refused by the file and by the page alike.
func TestWhatCannotBeDrawnHasNoPage(t *testing.T) {
	a := assessed(t, "../../../examples/fernhollow.yaml", "metric")
	p, ok := pack.Find(a, "lid-Heron.pdf")
	if !ok {
		t.Fatal("no lid sheet")
	}
	odd := scene.Size{Width: 100, Height: 100}
	if _, err := p.Draw(odd); err == nil {
		t.Error("a lid sheet of 100 × 100 mm was drawn")
	}
	if _, err := p.Page(odd); err == nil {
		t.Error("a lid sheet of 100 × 100 mm has a page")
	}
}
