package scene_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/paper/scene"
)

var faces = []scene.Face{scene.Sans, scene.SansBold, scene.Serif, scene.SerifBold, scene.SerifItalic}

// A glyph that is missing leaves a silent gap on paper, so every character that
// the papers' own texts use must be in every face.
func TestEveryFaceHasEveryCharacterOfThePapers(t *testing.T) {
	runes := map[rune]string{}
	files, err := filepath.Glob("../*/*.go")
	if err != nil || len(files) == 0 {
		t.Fatal("no sources found", err)
	}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		source, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		tree, err := parser.ParseFile(token.NewFileSet(), file, source, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(tree, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok && text.Kind == token.STRING {
				value, _ := strconv.Unquote(text.Value)
				for _, r := range value {
					runes[r] = file
				}
			}
			return true
		})
	}
	for r, file := range runes {
		if r < ' ' {
			continue
		}
		for _, face := range faces {
			// U+FFFE and the like stand in code that drops them.
			if r < 0xFFF0 && r != '□' && strings.Contains(face.Clean(string(r)), "□") {
				t.Errorf("face %d has no %q (%U), used in %s", face, r, r, file)
			}
		}
	}
}

func TestEveryFaceHasTheSignsOfUnits(t *testing.T) {
	for _, face := range faces {
		for _, r := range "⌀±·×≤≥°²³µ−–…½¼éÉüßåøñç□" {
			if r != '□' && face.Clean(string(r)) == "□" {
				t.Errorf("face %d has nothing for %q", face, r)
			}
		}
		if face.Has('𝄞') || face.Has('\uE000') {
			t.Error("a character beyond the face is said to be there")
		}
	}
}

func TestWrappedLinesFitAndLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		face := faces[rapid.IntRange(0, len(faces)-1).Draw(t, "face")]
		text := rapid.StringMatching(`[a-zA-Zéü⌀ ,.0-9]{0,200}`).Draw(t, "text")
		size := rapid.Float64Range(1, 12).Draw(t, "size")
		width := rapid.Float64Range(15, 200).Draw(t, "width")
		lines := face.Wrap(text, size, width)
		for _, line := range lines {
			if w := face.Width(line, size); w > width+1e-9 {
				t.Fatalf("%q is %g mm wide in %g", line, w, width)
			}
		}
		strip := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if strip(strings.Join(lines, "")) != strip(face.Clean(text)) {
			t.Fatalf("%q became %q", text, lines)
		}
	})
}

func TestFittedTextFits(t *testing.T) {
	if got := scene.Sans.Fitted("short", 3, 100); got != "short" {
		t.Errorf("a text that fits became %q", got)
	}
	got := scene.Sans.Fitted(strings.Repeat("long ", 50), 3, 20)
	if w := scene.Sans.Width(got, 3); w > 20 || !strings.HasSuffix(got, "…") {
		t.Errorf("%q is %g mm wide", got, w)
	}
}
