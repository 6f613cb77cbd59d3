package floors

import (
	"go/ast"
	"go/token"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// generated is the ending of a file that a generator writes.
const generated = "_gen.go"

// Every row of a facts.csv has a constant, and every constant is used where it
// is at home: a row that nothing reads is no fact of the program.
func TestEveryFactIsUsed(t *testing.T) {
	all := sources(t)
	rows := 0
	for _, s := range all {
		if !strings.HasSuffix(s.name, generated) {
			continue
		}
		used, words := written(all, s.pkg)
		for name, id := range constants(s.file) {
			rows++
			if !used[name] && !spelled(id, words) {
				t.Errorf("%s: %s (%s) is used nowhere in its package: use the row or take it out of facts.csv", s.name, name, id)
			}
		}
	}
	if rows < 50 {
		t.Errorf("only %d rows found: does the test look in the right place?", rows)
	}
}

// The guard is tried on rows that nothing uses.
func TestTheFactGuardBites(t *testing.T) {
	words := []string{"litres.refill", "crop.", ".spacing.young"}
	for id, want := range map[string]bool{
		"crop.basil.litres.refill": true, "crop.leaf_lettuce.spacing.young": true,
		"crop.basil.litres": false, "crop.basil.colour": false, "water.litres.refill": false, "crop": false,
	} {
		if got := spelled(id, words); got != want {
			t.Errorf("%s: %v", id, got)
		}
	}
}

// written gives the names and the words in quotes of a package's own files.
func written(all []source, pkg string) (names map[string]bool, words []string) {
	names = map[string]bool{}
	for _, s := range all {
		if s.pkg != pkg || strings.HasSuffix(s.name, generated) {
			continue
		}
		ast.Inspect(s.file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.Ident:
				names[n.Name] = true
			case *ast.BasicLit:
				if text, err := strconv.Unquote(n.Value); err == nil && n.Kind == token.STRING {
					words = append(words, text)
				}
			}
			return true
		})
	}
	return names, words
}

// constants gives the ids of a generated file by the names of their constants.
func constants(file *ast.File) map[string]string {
	found := map[string]string{}
	ast.Inspect(file, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok || len(spec.Names) != 1 || len(spec.Values) != 1 {
			return true
		}
		if lit, ok := spec.Values[0].(*ast.BasicLit); ok && lit.Kind == token.STRING && strings.HasPrefix(spec.Names[0].Name, "fact") {
			found[spec.Names[0].Name], _ = strconv.Unquote(lit.Value)
		}
		return true
	})
	return found
}

// spelled tells whether an id is made from a name, such as a crop's: a
// beginning like 'crop.', the name, and an ending, of which the first and the
// last stand in quotes in the package.
func spelled(id string, words []string) bool {
	family, rest, ok := strings.Cut(id, ".")
	_, ending, named := strings.Cut(rest, ".")
	if !ok || !named || !slices.Contains(words, family+".") {
		return false
	}
	for _, w := range words {
		if strings.TrimPrefix(w, ".") == ending {
			return true
		}
	}
	return false
}
