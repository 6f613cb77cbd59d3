package content_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

func TestALineIsWordsAndBlanks(t *testing.T) {
	for line, want := range map[content.Line][]content.Span{
		"":                          nil,
		"no blank":                  {{Text: "no blank"}},
		"____":                      {{Width: 4}},
		"long ____ wide __ ; other": {{Text: "long "}, {Width: 4}, {Text: " wide "}, {Width: 2}, {Text: " ; other"}},
		"at the end _":              {{Text: "at the end "}, {Width: 1}},
	} {
		if got := line.Spans(); !slices.Equal(got, want) {
			t.Errorf("%q is %v, want %v", line, got, want)
		}
	}
}

// The pieces of a line make the line again, and none of them is empty.
func TestNothingOfALineIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.StringMatching(`[ a-zé_]{0,40}`).Draw(t, "line")
		var again strings.Builder
		for _, s := range content.Line(line).Spans() {
			if s.Text == "" && s.Width == 0 || s.Text != "" && s.Width > 0 {
				t.Fatalf("%q has the piece %+v", line, s)
			}
			again.WriteString(s.Text + strings.Repeat("_", s.Width))
		}
		if again.String() != line {
			t.Fatalf("%q became %q", line, again.String())
		}
	})
}

func TestATableForThePageAndForTheSheet(t *testing.T) {
	table := content.Table{
		Columns: []content.Column{{Head: "holes"}, {Head: "plan", Number: true}, {Head: "drilled", Number: true}},
		Rows:    [][]string{{"1 to 2", "14.5", content.Blank}},
	}
	want := []content.Cell{
		{Head: "holes", Text: "1 to 2"},
		{Head: "plan", Text: "14.5", Number: true},
		{Head: "drilled", Number: true, Blank: true},
	}
	if got := table.Cells(0); !slices.Equal(got, want) {
		t.Errorf("cells %+v, want %+v", got, want)
	}
	set := table.Set(3, 5, 2, 1, 1)
	if set.Fields[0].Face != scene.SansBold || set.Fields[0].Share != 2 || set.Fields[1].Anchor != scene.End || set.Rows[0][2] != scene.Blank {
		t.Errorf("set as %+v", set)
	}
}
