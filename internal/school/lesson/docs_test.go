package lesson

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

// row is a template as docs/lessons.md lists it.
func row(p Template) string {
	var bands, codes []string
	for _, b := range p.Bands {
		bands = append(bands, string(b))
	}
	for _, s := range p.Standards() {
		codes = append(codes, s.Code)
	}
	from := "plan"
	if p.Log {
		from = "logbook, else plan"
	}
	if p.Graph {
		from += "; graph"
	}
	return fmt.Sprintf("| %d | %s | %s | %s | %s | %s |", p.Number, p.Title, p.Concept, strings.Join(bands, ", "), from, strings.Join(codes, ", "))
}

// The list of templates in docs/lessons.md is the one that there is.
func TestTheListInTheDocsIsTrue(t *testing.T) {
	text, err := os.ReadFile("../../../docs/lessons.md")
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, p := range Templates() {
		want = append(want, row(p))
	}
	_, list, ok := strings.Cut(string(text), "|---|---|---|---|---|---|\n")
	list, _, _ = strings.Cut(list, "\n\n")
	if !ok || list != strings.Join(want, "\n") {
		t.Errorf("docs/lessons.md has another list; it should be\n%s", strings.Join(want, "\n"))
	}
}
