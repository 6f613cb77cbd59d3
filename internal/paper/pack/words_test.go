package pack_test

import (
	"bytes"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/pack"
)

// shown are the words of a text as they are compared: in small letters, without
// the stops at their ends, and with what the papers' typeface shows instead of
// two signs that it lacks.
func shown(text string) []string {
	text = strings.NewReplacer("⌀", "Ø", "−", "–", "_", " ").Replace(text)
	var out []string
	for _, word := range strings.Fields(strings.ToLower(text)) {
		if word = strings.Trim(word, ".,;:()?'"); word != "" {
			out = append(out, word)
		}
	}
	return out
}

// pageText is all that a page says in words, apart from the lettering of its
// figures.
func pageText(p pack.Page) string {
	var out strings.Builder
	say := func(texts ...string) {
		for _, text := range texts {
			out.WriteString(text + "\n")
		}
	}
	say(p.Heading(), p.About)
	for _, sheet := range p.Sheets {
		b := sheet.Block
		say(sheet.Title, sheet.Stop, "garden", b.Garden, "drawing", b.Drawing, "units", b.Units, "revision", b.Revision, "date", b.Date, "paper", b.Paper)
		for _, s := range sheet.Sections {
			say(s.Heading)
			say(s.Cautions...)
			say(s.Paragraphs...)
			say(numbered(s.Steps)...)
			for _, f := range s.Figures {
				say(f.Caption, f.Desc)
			}
			for _, a := range s.Asks {
				say(a.Letter, a.Words, a.Unit)
			}
			for _, l := range s.Lines {
				say(string(l))
			}
			for _, t := range s.Tables {
				say(t.Caption)
				for _, c := range t.Columns {
					say(c.Head)
				}
				for _, row := range t.Rows {
					say(rowText(row))
				}
			}
			say(s.List...)
		}
	}
	return out.String()
}

func numbered(s content.Steps) []string {
	var out []string
	for i, item := range s.Items {
		out = append(out, itoa(s.First+i)+". "+item)
	}
	return out
}

func rowText(row []string) string {
	return strings.ReplaceAll(strings.Join(row, " "), content.Blank, "")
}

// pdfText is what a reader of PDF finds on the pages, in the order in which it
// was written.
func pdfText(t *testing.T, pdf []byte) string {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftotext is missing; run make tools")
		}
		t.Skip("pdftotext is missing; run make tools")
	}
	run := exec.Command(tool, "-raw", "-", "-")
	run.Stdin = bytes.NewReader(pdf)
	text, err := run.Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	return string(text)
}

// apart are what stands on a printed sheet alone, each with its reason.
var apart = []struct {
	paper, words *regexp.Regexp
	reason       string
}{
	{regexp.MustCompile(`^(lid|dipstick)-`), regexp.MustCompile(`^[a-z]{1,2}[12]$`), "names of the crosses where pages are laid on each other"},
	{regexp.MustCompile(`^dipstick-`), regexp.MustCompile(`^\d{1,2}$`), "numbers along the strip's ruler: the picture has them"},
	{regexp.MustCompile(`^lid-`), regexp.MustCompile(`^\d{4,}$`), "numbers of the page map, which stand close together"},
}

// scaleWords are the scale of a drawing that is true on paper and not on a page.
var scaleWords = regexp.MustCompile(`1 : [0-9.]+`)

// unsaid are the words of one printed page that the page on the screen lacks
// and that do not belong to the printed sheet alone.
func unsaid(paper, printed string, onPage map[string]bool) []string {
	// A drawn page of the lid sheet cuts the words at its edge.
	drawn := strings.HasPrefix(paper, "lid-") && !strings.Contains(printed, "what to do")
	var out []string
	printed = dashesOfLists.ReplaceAllString(printed, " ") // a page has its own marks before the items of a list
	for _, word := range shown(scaleWords.ReplaceAllString(printed, " ")) {
		if onPage[word] || isApart(paper, word) || cut(word, onPage, drawn) {
			continue
		}
		out = append(out, word)
	}
	return out
}

var dashesOfLists = regexp.MustCompile(`(?m)^\s*–\s`)

// isApart says whether a word belongs to the printed sheet alone.
func isApart(paper, word string) bool {
	for _, a := range apart {
		if a.paper.MatchString(paper) && a.words.MatchString(word) {
			return true
		}
	}
	return false
}

// cut says whether a word is the beginning of one on the page, with the
// ellipsis of a line that is too narrow on paper; or a piece of one, where the
// sheet's edge may cut it.
func cut(word string, onPage map[string]bool, atEdge bool) bool {
	head, short := strings.CutSuffix(word, "…")
	for w := range onPage {
		if short && strings.HasPrefix(w, head) || atEdge && strings.Contains(w, word) {
			return true
		}
	}
	return false
}
