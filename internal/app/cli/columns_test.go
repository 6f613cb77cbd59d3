package cli

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"rootbell/internal/base/working"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// Formulas are the longest lines there are, and none may run over the edge.
func TestEveryWorkingFits(t *testing.T) {
	for _, name := range []string{"fernhollow.yaml", "saltbrook.yaml"} {
		text, err := os.ReadFile(filepath.Join("../../../examples", name))
		if err != nil {
			t.Fatal(err)
		}
		p, problems := plan.Parse(name, text)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Seed: 1, Stages: garden.StageMix | garden.StageChoose})
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range a.Book.Numbers() {
			var b bytes.Buffer
			explainOne(&b, n, p.Units)
			for line := range strings.Lines(b.String()) {
				if width := utf8.RuneCountInString(strings.TrimRight(line, "\n")); width > columns {
					t.Errorf("%s, %s: %d columns: %s", name, n.Key, width, line)
				}
			}
		}
	}
}

// A number's working leads to the end: each number that went in is told too,
// and each once.
func TestUnfoldTellsEachNumberOnce(t *testing.T) {
	leaf := working.Number{Key: "leaf"}
	left := working.Number{Key: "left", Inputs: []working.Number{leaf}}
	right := working.Number{Key: "right", Inputs: []working.Number{left, leaf}}
	var keys []string
	for _, n := range unfold(working.Number{Key: "top", Inputs: []working.Number{left, right}}, map[string]bool{}) {
		keys = append(keys, n.Key)
	}
	if got := strings.Join(keys, " "); got != "top left right leaf" {
		t.Errorf("told: %s", got)
	}
}

// Breaking text over lines loses no letter and no line is too wide, whatever
// the text.
func TestBrokenLosesNothing(t *testing.T) {
	blanks := strings.NewReplacer(" ", "", "\n", "", "\t", "")
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.SampledFrom([]rune("ab +*/(),éß²\u00a0\n\t—"))).Draw(t, "text")
		width := rapid.IntRange(1, 30).Draw(t, "width")
		lines := broken(text, width)
		for _, line := range lines {
			if utf8.RuneCountInString(line) > width {
				t.Fatalf("%q is wider than %d", line, width)
			}
		}
		if got, want := blanks.Replace(strings.Join(lines, "")), blanks.Replace(text); got != want {
			t.Fatalf("%q became %q", want, got)
		}
	})
}

func TestBroken(t *testing.T) {
	cases := []struct {
		text  string
		width int
		want  string
	}{
		{"", 10, ""},
		{"one two three", 8, "one two|three"},
		{"5\u00a0cm and 6\u00a0cm", 9, "5\u00a0cm and|6\u00a0cm"},
		{"16.7/6*(1366+4*1545)", 14, "16.7/6*(1366+|4*1545)"},
		{"abcdefghij", 4, "abcd|efgh|ij"},
	}
	for _, c := range cases {
		if got := strings.Join(broken(c.text, c.width), "|"); got != c.want {
			t.Errorf("broken(%q, %d) = %q, want %q", c.text, c.width, got, c.want)
		}
	}
}

// A word typed by somebody cannot move the cursor, ring the bell or turn the
// direction of the line.
func TestPlain(t *testing.T) {
	for _, r := range "\x00\x07\x08\x1b\r\n\u007f\u009b\u202e\u2066\u2028" {
		if got := plain("a" + string(r) + "b"); got != "a b" {
			t.Errorf("%U became %q", r, got)
		}
	}
	if got := plain("Käthes Beet, ½ m²"); got != "Käthes Beet, ½ m²" {
		t.Errorf("harmless text became %q", got)
	}
}
