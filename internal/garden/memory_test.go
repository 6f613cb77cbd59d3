package garden_test

import (
	"context"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// shelf of answers, with a count of those that were taken from it.
type counting struct {
	kept map[string]any
	hits int
}

func (c *counting) Find(key string) (any, bool) {
	found, ok := c.kept[key]
	if ok {
		c.hits++
	}
	return found, ok
}

func (c *counting) Keep(key string, found any) { c.kept[key] = found }

// TestMemoryChangesNoAnswer assesses plans that differ in one measure each,
// with one memory for all of them, against assessments without.
func TestMemoryChangesNoAnswer(t *testing.T) {
	text, err := os.ReadFile("../../examples/fernhollow.yaml")
	if err != nil {
		t.Fatal(err)
	}
	memory := &counting{kept: map[string]any{}}
	for _, change := range []struct{ from, to string }{
		{"", ""},
		{"", ""},
		{"litres_per_plant: 3 L", "litres_per_plant: 2 L"},
		{"holes: []", "holes: [{at: [12 cm, 9 cm]}]"},
		{"between: 14.5 cm", "between: 15 cm"},
		{"circle: [27 cm, 36 cm, 1.5 cm]", "circle: [27 cm, 36 cm, 2 cm]"},
		{"height: 22 cm", "height: 21 cm"},
		{"ruler_step: 5 mm", "ruler_step: 1 mm"},
	} {
		changed := strings.Replace(string(text), change.from, change.to, 1)
		for _, effort := range []lid.Effort{lid.Quick, lid.Full} {
			with, without := assessWith(t, changed, effort, memory), assessWith(t, changed, effort, nil)
			if d := cmp.Diff(without.Tubs, with.Tubs, cmpopts.IgnoreFields(garden.Tub{}, "Shape"), cmpopts.IgnoreUnexported(garden.TubToday{}), cmpopts.IgnoreFields(garden.Lid{}, "Outline", "Clear", "Wall")); d != "" {
				t.Errorf("%q: the memory changed the answer:\n%s", change.to, d)
			}
		}
	}
	if memory.hits < 60 {
		t.Errorf("only %d searches were remembered", memory.hits)
	}
}

func assessWith(t *testing.T, text string, effort lid.Effort, m garden.Memory) *garden.Assessment {
	t.Helper()
	p, problems := plan.Parse("plan", []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: effort, Seed: 1, Memory: m})
	if err != nil {
		t.Fatal(err)
	}
	return a
}
