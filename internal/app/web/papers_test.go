package web_test

import (
	"bytes"
	"context"
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"rootbell/examples"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/pack"
	"rootbell/internal/science/lid"
)

// exampleOf is the assessment behind an example's pages.
func exampleOf(t *testing.T, name string) *garden.Assessment {
	t.Helper()
	text, err := examples.Plans.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(name, text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	on := plan.Date{Year: moment.Year(), Month: moment.Month(), Day: moment.Day()}
	if book, err := examples.Logbooks.ReadFile(name + ".csv"); err == nil {
		on = lastDayOf(t, book)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, On: on, Effort: lid.Full, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// lastDayOf is the day of the last reading of an invented logbook, on which its
// example stands.
func lastDayOf(t *testing.T, book []byte) (last plan.Date) {
	t.Helper()
	for _, day := range regexp.MustCompile(`,(\d{4})-(\d\d)-(\d\d)T`).FindAllSubmatch(book, -1) {
		var d plan.Date
		if _, err := fmt.Sscanf(string(day[0]), ",%d-%d-%dT", &d.Year, &d.Month, &d.Day); err != nil {
			t.Fatal(err)
		}
		if d.String() > last.String() {
			last = d
		}
	}
	return last
}

// The list leads to every paper of the pack, as a file of its kind and as a
// page; the file is the one that the pack draws.
func TestEveryPaperIsAFileAndAPage(t *testing.T) {
	o := open(t)
	for _, name := range []string{"fernhollow", "saltbrook"} {
		a := exampleOf(t, name)
		base := "/g/example-" + name + "/papers"
		list, _ := o.get(base, http.StatusOK)
		for _, p := range pack.Build(a) {
			if !strings.Contains(list, `"`+base+"/"+p.Name+`"`) || !strings.Contains(list, base+"/"+p.Name+"/page") {
				t.Errorf("%s: %s is not on the list", name, p.Name)
			}
			// Without a size the plan's own is meant.
			other := map[string]string{"A4": "Letter", "Letter": "A4"}[a.Paper()]
			for _, size := range []string{"", other} {
				address, asked := base+"/"+p.Name, size
				if size != "" {
					address += "?paper=" + size
				} else {
					asked = a.Paper()
				}
				file, header := o.get(address, http.StatusOK)
				if got := header.Get("Content-Type"); got != p.Kind.MediaType() {
					t.Errorf("%s: %s", address, got)
				}
				if got := header.Get("Content-Disposition"); got != "attachment; filename="+p.Name {
					t.Errorf("%s: %s", address, got)
				}
				sheet, _ := pack.Size(asked)
				want, err := p.Draw(sheet)
				if err != nil {
					t.Fatal(err)
				}
				if !bytes.Equal([]byte(file), want) {
					t.Errorf("%s is not what the pack draws", address)
				}
			}
		}
	}
	for address, status := range map[string]int{
		"/g/example-fernhollow/papers/lid-Nobody.pdf":           http.StatusNotFound,
		"/g/example-fernhollow/papers/lid-Nobody.pdf/page":      http.StatusNotFound,
		"/g/example-fernhollow/papers/lid-Heron.pdf?paper=A5":   http.StatusBadRequest,
		"/g/example-fernhollow/papers/..%2Fplan.yaml":           http.StatusNotFound,
		"/g/nobody/papers/lid-Heron.pdf":                        http.StatusNotFound,
		"/g/example-fernhollow/papers/lid-Heron.pdf/page?paper": http.StatusOK,
	} {
		o.get(address, status)
	}
}

// All that a paper says stands on its page, and can be read without seeing.
func TestThePageOfAPaperSaysAllOfIt(t *testing.T) {
	o := open(t)
	for _, name := range []string{"fernhollow", "saltbrook"} {
		a := exampleOf(t, name)
		for _, p := range pack.Build(a) {
			for _, size := range []string{"A4", "Letter"} {
				address := "/g/example-" + name + "/papers/" + p.Name + "/page?paper=" + size
				body, _ := o.get(address, http.StatusOK)
				sheet, _ := pack.Size(size)
				page, err := p.Page(sheet)
				if err != nil {
					t.Fatal(err)
				}
				doc, err := html.Parse(strings.NewReader(body))
				if err != nil {
					t.Fatal(err)
				}
				seen := words(readable(doc))
				for _, said := range everything(page) {
					if !strings.Contains(seen, words(said)) {
						t.Errorf("%s does not say: %s", address, said)
					}
				}
				tablesAndFigures(t, address, doc)
			}
		}
	}
}

// words are a text with one space between two of them.
func words(text string) string { return strings.Join(strings.Fields(text), " ") }

// readable is the text of a page without the lettering of its drawings.
func readable(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	if n.Data == "svg" || n.Data == "head" {
		return ""
	}
	var b strings.Builder
	for c := range n.ChildNodes() {
		b.WriteString(readable(c))
		if c.Data != "span" && c.Data != "b" {
			b.WriteString(" ")
		}
	}
	return b.String()
}

// everything is each text of a page; cells and spans of lines one by one.
func everything(p pack.Page) []string {
	out := []string{p.Heading(), p.About}
	for _, sheet := range p.Sheets {
		b := sheet.Block
		out = append(out, sheet.Title, sheet.Stop, b.Garden, b.Drawing, b.Revision, b.Date, b.Paper)
		for _, s := range sheet.Sections {
			out = append(append(append(append(append(out, s.Heading), s.Cautions...), s.Paragraphs...), s.Steps.Items...), s.List...)
			for _, f := range s.Figures {
				out = append(out, f.Caption)
			}
			for _, a := range s.Asks {
				out = append(out, a.Words)
			}
			for _, l := range s.Lines {
				for _, span := range l.Spans() {
					out = append(out, span.Text)
				}
			}
			for _, t := range s.Tables {
				out = append(out, t.Caption)
				for _, row := range t.Rows {
					for _, cell := range row {
						out = append(out, strings.ReplaceAll(cell, content.Blank, "to fill in"))
					}
				}
			}
		}
	}
	return out
}

// tablesAndFigures checks that each head says what it is the head of, that
// each row has one, and that each drawing is an image with a name.
func tablesAndFigures(t *testing.T, address string, doc *html.Node) {
	t.Helper()
	for n := range doc.Descendants() {
		switch n.Data {
		case "table":
			var captions, columns int
			for d := range n.Descendants() {
				switch {
				case d.Data == "caption":
					captions++
				case d.Data == "th" && of(d, "scope") == "col":
					columns++
				case d.Data == "th" && of(d, "scope") != "row":
					t.Errorf("%s: a head of a table without a scope", address)
				}
			}
			if captions != 1 || columns < 2 {
				t.Errorf("%s: a table with %d captions and %d heads", address, captions, columns)
			}
		case "figure":
			for d := range n.Descendants() {
				if d.Data == "svg" && (of(d, "role") != "img" || named(d) == "") {
					t.Errorf("%s: a drawing without role or name", address)
				}
			}
		}
	}
}

// of is an attribute's value.
func of(n *html.Node, key string) string {
	i := slices.IndexFunc(n.Attr, func(a html.Attribute) bool { return a.Key == key })
	if i < 0 {
		return ""
	}
	return n.Attr[i].Val
}

// named is what a drawing is called: its label, or its title.
func named(svg *html.Node) string {
	for c := range svg.ChildNodes() {
		if c.Data == "title" {
			return readable(c)
		}
	}
	return of(svg, "aria-label")
}

// Where a stop stands, the list and each paper concerned say it, and the plan's
// revision stands on each paper.
func TestAStopStandsOnThePapersOfAGarden(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	text, _ := o.get("/g/"+id+"/plan.yaml", http.StatusOK)
	// A hole as wide as the rim: the cup falls through.
	hole := regexp.MustCompile(`(?m)^(\s+)cup:.*$`)
	if !hole.MatchString(text) {
		t.Fatalf("no cup in the plan:\n%s", head(text))
	}
	stopped := hole.ReplaceAllString(text, "$0\n${1}hole: 86 mm")
	o.post("/g/"+id+"/text", url.Values{"base": {"1"}, "text": {stopped}}, http.StatusOK)

	list, _ := o.get("/g/"+id+"/papers", http.StatusOK)
	if !strings.Contains(list, "do not drill: ") {
		t.Error("the list of papers does not say the stop")
	}
	pages := regexp.MustCompile(`"(/g/[^"]*/papers/[^"]*/page)"`).FindAllStringSubmatch(list, -1)
	concerned := regexp.MustCompile(`/(lid|section|rings)-|/helper-card`)
	stops := 0
	for _, m := range pages {
		body, _ := o.get(m[1], http.StatusOK)
		if !strings.Contains(body, "<dt>revision</dt><dd>2</dd>") {
			t.Errorf("%s does not name revision 2", m[1])
		}
		if !concerned.MatchString(m[1]) {
			continue
		}
		stops++
		if !strings.Contains(body, `<p class="stopbar">`) || !strings.Contains(body, "do not drill: ") {
			t.Errorf("%s does not say the stop", m[1])
		}
	}
	if stops == 0 {
		t.Errorf("of %d papers none is concerned", len(pages))
	}
}
