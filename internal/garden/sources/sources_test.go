package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rootbell/internal/base/facts"
	"rootbell/internal/garden"
)

// notYet are the tables of packages on which no number of an assessment rests
// so far: what is not shown has no place in a list of what is shown.
var notYet = map[string]bool{}

// A facts.csv that nobody lists would be a figure without a visible source.
func TestEveryFactsFileIsListed(t *testing.T) {
	listed := map[string]bool{}
	for _, table := range garden.FactTables() {
		listed[table.Name] = true
	}
	found, whole := 0, string(page(garden.FactTables()))
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !isTable(path) {
			return err
		}
		found++
		name := filepath.Base(filepath.Dir(path)) + "/" + d.Name()
		if !listed[name] && !notYet[name] {
			t.Errorf("%s is not among garden.FactTables", path)
		}
		if listed[name] && notYet[name] {
			t.Errorf("%s is listed now: take it out of notYet", path)
		}
		if notYet[name] {
			return nil
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		table, err := facts.Parse(name, string(text))
		if err != nil {
			return err
		}
		for _, f := range table.Rows() {
			if !strings.Contains(whole, "| `"+string(f.ID)+"` | "+f.Word+" |") {
				t.Errorf("%s is not on the page with its value %s", f.ID, f.Word)
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if found == 0 {
		t.Fatal("no facts.csv found: is the test in its place?")
	}
}

// isTable tells a table of facts from another CSV by its first line.
func isTable(path string) bool {
	text, err := os.ReadFile(path)
	return err == nil && strings.HasSuffix(path, ".csv") && strings.HasPrefix(string(text), "id,value,unit,applies_to,status,source,note\n")
}

// What a cell holds must not end it.
func TestCells(t *testing.T) {
	cases := []struct{ text, want string }{
		{"", " |"},
		{"two\nlines", " two lines |"},
		{"a|b", ` a\|b |`},
		{"< 12 mm", " &lt; 12 mm |"},
	}
	for _, c := range cases {
		if got := cell(c.text); got != c.want {
			t.Errorf("cell(%q) = %q, want %q", c.text, got, c.want)
		}
	}
}
