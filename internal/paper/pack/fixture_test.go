package pack_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/science/lid"
)

// plans are every plan of the program's examples and of the garden's tests.
func plans(t *testing.T) []string {
	t.Helper()
	var out []string
	for _, pattern := range []string{"../../../examples/*.yaml", "../../garden/testdata/*.yaml"} {
		found, err := filepath.Glob(pattern)
		if err != nil || len(found) == 0 {
			t.Fatalf("no plans under %s: %v", pattern, err)
		}
		out = append(out, found...)
	}
	return out
}

// worked keeps the assessments, which are the same each time.
var worked = map[[2]string]*garden.Assessment{}

// assessed works a plan out with little effort, in a unit system.
func assessed(t *testing.T, path, units string) *garden.Assessment {
	t.Helper()
	if a := worked[[2]string{path, units}]; a != nil {
		return a
	}
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if text, err = plan.Edit(text, "units", units); err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(path, text)
	if len(problems) > 0 {
		t.Fatalf("%s: %v", path, problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageMix | garden.StageChoose})
	if err != nil {
		t.Fatal(err)
	}
	worked[[2]string{path, units}] = a
	return a
}

// asked is one way to ask for a pack.
type asked struct {
	plan, units string
	size        scene.Size
}

// everyPack calls with the examples in both unit systems and on both papers,
// and with every other plan in cm on A4 and in inches on Letter.
func everyPack(t *testing.T, check func(t *testing.T, a *garden.Assessment, size scene.Size)) {
	t.Helper()
	var all []asked
	for _, path := range plans(t) {
		all = append(all, asked{path, "metric", scene.A4}, asked{path, "us", scene.Letter})
		if strings.Contains(path, "examples") {
			all = append(all, asked{path, "metric", scene.Letter}, asked{path, "us", scene.A4})
		}
	}
	for _, way := range all {
		name := strings.TrimSuffix(filepath.Base(way.plan), ".yaml") + "/" + way.units + "/" + sheet.PaperName(way.size)
		t.Run(name, func(t *testing.T) { check(t, assessed(t, way.plan, way.units), way.size) })
	}
}
