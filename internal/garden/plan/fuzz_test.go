package plan

import (
	"slices"
	"testing"
	"unicode/utf8"
)

func FuzzParse(f *testing.F) {
	for _, text := range []string{
		least, whole, Starter(0), Starter(1), "", "a: [1, 2\nb: 3\n", "rootbell: 1\r\ngarden: &a x\n", "? a\n: b\n", "- - - 1\n", "a: |\n  b\n",
		"\ufeffa: {b: 5,5 cm}\n", "a: 'x\n", "%YAML 1.2\n---\na: 1\n", "<<: *a\n", "a: !!str b\n", "{a: {b: [c, {d: ]}}}\n", "a:\u00a01\n", "\"a\\\nb\": c\n",
	} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		p, problems := Parse("plan", text)
		if (p == nil) != (len(problems) > 0) {
			t.Fatalf("plan %v with %d problems", p != nil, len(problems))
		}
		at := place{}
		for _, problem := range problems {
			here := place{problem.Line, problem.Column}
			if here.line < 1 || here.column < 1 || here.before(at) || problem.What == "" || !utf8.ValidString(problem.What+problem.Hint) {
				t.Fatalf("problem out of order or without words: %+v", problem)
			}
			at = here
		}
		if p == nil {
			return
		}
		for i := range p.Tubs {
			if tub := p.Tubs[i]; tub.Inside == nil && tub.Round == nil && len(tub.Poured) == 0 || !tub.Cup.Body.Set() || !tub.Cup.Rim.Set() || !tub.Cup.Depth.Set() {
				t.Fatalf("a tub without shape or cup was taken: %+v", tub)
			}
		}
		edited, err := p.With("tubs[0].hole", "3 in")
		if err != nil {
			return
		}
		again, problems := Parse("plan", edited)
		if again == nil || again.Tubs[0].Hole.Text != "3 in" {
			t.Fatalf("edited into %q: %v", edited, problems)
		}
		if !slices.Equal(p.Text(), text) {
			t.Fatal("the text is not kept")
		}
	})
}
