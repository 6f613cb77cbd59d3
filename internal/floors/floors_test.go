package floors

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "rootbell/"

// root is the module's folder seen from this package.
const root = "../.."

// source is one Go file that ships: tests may look anywhere.
type source struct {
	pkg  string // folder from the module's root, with slashes
	name string
	file *ast.File
}

func TestEveryPackageIsKnown(t *testing.T) {
	for _, s := range sources(t) {
		if _, known := arrows[s.pkg]; !known {
			t.Errorf("%s is in no row of arrows: say there what it may import", s.pkg)
		}
	}
}

func TestImportsGoDownwards(t *testing.T) {
	for _, s := range sources(t) {
		for _, problem := range wrongArrows(s) {
			t.Error(problem)
		}
	}
}

func TestOnlyTheAppTouchesTheWorld(t *testing.T) {
	for _, s := range sources(t) {
		if belowApp(s) {
			for _, problem := range worldlyUses(s) {
				t.Error(problem)
			}
		}
	}
}

// The database is C turned into Go, and runs on the C library's Go half that it
// was made for: another version of that may corrupt a file without a word.
func TestTheDatabasesHalvesAgree(t *testing.T) {
	const sqlite, libc = "modernc.org/sqlite", "modernc.org/libc"
	ours := required(t, filepath.Join(root, "go.mod"))
	out, err := exec.Command("go", "list", "-m", "-f", "{{.GoMod}}", sqlite).Output()
	if err != nil {
		t.Fatal(err)
	}
	theirs := required(t, strings.TrimSpace(string(out)))
	if ours[sqlite] == "" || theirs[libc] == "" {
		t.Fatalf("go.mod names %s %q, and its own go.mod names %s %q", sqlite, ours[sqlite], libc, theirs[libc])
	}
	if ours[libc] != theirs[libc] {
		t.Errorf("go.mod names %s %s, and %s %s was made for %s", libc, ours[libc], sqlite, ours[sqlite], theirs[libc])
	}
}

// required gives the versions that a go.mod names, by module.
func required(t *testing.T, name string) map[string]string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	versions := map[string]string{}
	for line := range strings.Lines(string(text)) {
		words := strings.Fields(strings.TrimPrefix(strings.TrimSpace(line), "require "))
		if len(words) >= 2 && strings.HasPrefix(words[1], "v") {
			versions[words[0]] = words[1]
		}
	}
	return versions
}

// The guards themselves are tried on sources that break every rule, so that a
// guard that sees nothing cannot pass for a clean tree.
func TestTheGuardsBite(t *testing.T) {
	cases := []struct {
		name, pkg, text string
		arrows, world   int
	}{
		{"upwards", "internal/base/plane", `import "rootbell/internal/garden"`, 1, 0},
		{"sideways", "internal/science/lid", `import "rootbell/internal/science/tub"`, 1, 0},
		{"a foreign module", "internal/base/plane", `import "gonum.org/v1/gonum/mat"`, 1, 0},
		{"a foreign module where it is at home", "internal/science/lid", `import "gonum.org/v1/gonum/mat"`, 0, 0},
		{"downwards", "internal/science/lid", `import "rootbell/internal/base/plane"`, 0, 0},
		{"only the app below main", "cmd/rootbell", `import "rootbell/internal/garden"`, 1, 0},
		{"disk", "internal/garden", `import "os"`, 0, 1},
		{"another program", "internal/garden", `import "os/exec"`, 0, 1},
		{"network", "internal/garden", `import "net/http"`, 0, 1},
		{"old random numbers", "internal/garden", `import "math/rand"`, 0, 1},
		{"clock", "internal/garden", "import \"time\"\nvar t = time.Now()", 0, 1},
		{"clock under another name", "internal/garden", "import clock \"time\"\nvar t = clock.Now()", 0, 1},
		{"everything of a package at once", "internal/garden", `import . "time"`, 0, 1},
		{"the machine's zone", "internal/garden", "import \"time\"\nvar z = time.Local", 0, 1},
		{"shared randomness", "internal/science/lid", "import \"math/rand/v2\"\nvar n = rand.IntN(6)", 0, 1},
		{"seeded randomness", "internal/science/lid", "import \"math/rand/v2\"\nvar r = rand.New(rand.NewPCG(1, 2))", 0, 0},
		{"a moment passed in", "internal/garden", "import \"time\"\nfunc next(t time.Time) time.Time { return t.AddDate(0, 0, 1) }", 0, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			file, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\n"+c.text, 0)
			if err != nil {
				t.Fatal(err)
			}
			s := source{pkg: c.pkg, name: "x.go", file: file}
			if got := len(wrongArrows(s)); got != c.arrows {
				t.Errorf("%d wrong arrows, want %d: %v", got, c.arrows, wrongArrows(s))
			}
			if got := len(worldlyUses(s)); got != c.world {
				t.Errorf("%d worldly uses, want %d: %v", got, c.world, worldlyUses(s))
			}
		})
	}
}

// sources parses every shipped file under internal and cmd.
func sources(t *testing.T) []source {
	t.Helper()
	var found []source
	for _, top := range []string{"internal", "cmd"} {
		err := filepath.WalkDir(filepath.Join(root, top), func(file string, d fs.DirEntry, err error) error {
			if err != nil {
				return err
			}
			if d.IsDir() && d.Name() == "testdata" {
				return filepath.SkipDir
			}
			if !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
				return nil
			}
			parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			inside, err := filepath.Rel(root, file)
			if err != nil {
				return err
			}
			inside = filepath.ToSlash(inside)
			found = append(found, source{pkg: path.Dir(inside), name: inside, file: parsed})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(found) == 0 {
		t.Fatal("no source found: is the test in its place?")
	}
	return found
}

// belowApp leaves out the app itself, main, and generators, which are programs
// of their own that go generate runs.
func belowApp(s source) bool {
	return !strings.HasPrefix(s.pkg, "internal/app") && s.file.Name.Name != "main"
}

func wrongArrows(s source) []string {
	var problems []string
	for _, imported := range imports(s.file) {
		inside, ours := strings.CutPrefix(imported.path, module)
		switch {
		case ours && !fits(inside, arrows[s.pkg]):
			problems = append(problems, fmt.Sprintf("%s imports %s, which its row of arrows does not allow", s.name, inside))
		case !ours && strings.Contains(strings.Split(imported.path, "/")[0], ".") && !fits(imported.path, outsideOf(s.pkg)):
			problems = append(problems, fmt.Sprintf("%s imports %s, which is not on its floor's list of outside modules", s.name, imported.path))
		}
	}
	return problems
}

func worldlyUses(s source) []string {
	var problems []string
	watched := map[string][]string{}
	for _, imported := range imports(s.file) {
		names, partly := forbiddenNames[imported.path]
		if fits(imported.path, worldly) || partly && imported.name == "." {
			problems = append(problems, fmt.Sprintf("%s imports %s: only internal/app may", s.name, imported.path))
		} else if partly {
			watched[imported.name] = names
		}
	}
	ast.Inspect(s.file, func(n ast.Node) bool {
		selector, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		if pkg, ok := selector.X.(*ast.Ident); ok && slices.Contains(watched[pkg.Name], selector.Sel.Name) {
			problems = append(problems, fmt.Sprintf("%s uses %s.%s: only internal/app may", s.name, pkg.Name, selector.Sel.Name))
		}
		return true
	})
	return problems
}

type imported struct{ path, name string }

// imports gives each import with the name it has in the file.
func imports(file *ast.File) []imported {
	var list []imported
	for _, spec := range file.Imports {
		p, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			continue
		}
		name := path.Base(p)
		if name == "v2" {
			name = path.Base(path.Dir(p))
		}
		if spec.Name != nil {
			name = spec.Name.Name
		}
		list = append(list, imported{path: p, name: name})
	}
	return list
}

func fits(p string, allowed []string) bool {
	for _, a := range allowed {
		tree, whole := strings.CutSuffix(a, "/...")
		if p == tree || whole && strings.HasPrefix(p, tree+"/") {
			return true
		}
	}
	return false
}

func outsideOf(pkg string) []string {
	longest := ""
	for floor := range outside {
		if len(floor) > len(longest) && strings.HasPrefix(pkg+"/", floor) {
			longest = floor
		}
	}
	return outside[longest]
}
