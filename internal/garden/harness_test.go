package garden_test

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// teller is a test, drawn or written, that is told what is wrong.
type teller interface {
	Helper()
	Errorf(format string, args ...any)
}

// edit is one value typed over another in a plan's text; an empty one takes the
// value back.
type edit struct{ path, typed string }

// text reads a plan from testdata, or from examples, and types the edits.
func text(t testing.TB, name string, edits ...edit) []byte {
	t.Helper()
	body, err := os.ReadFile(filepath.FromSlash(name))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range edits {
		if body, err = plan.Edit(body, e.path, e.typed); err != nil {
			t.Fatalf("%s: %s: %v", name, e.path, err)
		}
	}
	return body
}

func parsed(t testing.TB, name string, body []byte) *plan.Plan {
	t.Helper()
	p, problems := plan.Parse(name, body)
	if len(problems) > 0 {
		t.Fatalf("%s: %v", name, problems)
	}
	return p
}

// assessed is the plan's assessment with little effort, which is enough for
// everything that is not about how wide a layout is.
func assessed(t testing.TB, p *plan.Plan) *garden.Assessment {
	t.Helper()
	return assessedWith(t, p, lid.Quick)
}

func assessedWith(t testing.TB, p *plan.Plan, effort lid.Effort) *garden.Assessment {
	t.Helper()
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: effort, Seed: 1, Stages: garden.StageMix | garden.StageChoose})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// edited is the assessment of a plan of testdata with values typed over.
func edited(t testing.TB, name string, edits ...edit) *garden.Assessment {
	t.Helper()
	return assessed(t, parsed(t, name, text(t, name, edits...)))
}

// number is the assessment's number of a key.
func number(t testing.TB, a *garden.Assessment, key string) garden.Number {
	t.Helper()
	for _, n := range a.Numbers {
		if n.Key == key {
			return n
		}
	}
	t.Fatalf("no number %s", key)
	return garden.Number{}
}

// found is the first finding of a code.
func found(a *garden.Assessment, code string) (finding.Finding, bool) {
	for _, f := range a.Findings {
		if f.Code == code {
			return f, true
		}
	}
	return finding.Finding{}, false
}

func codes(a *garden.Assessment) []string {
	var out []string
	for _, f := range a.Findings {
		out = append(out, f.Level.String()+" "+f.Code+" at "+f.Field)
	}
	return out
}

func document(t testing.TB, a *garden.Assessment) []byte {
	t.Helper()
	b, err := json.Marshal(a)
	if err != nil {
		t.Fatalf("the assessment has no JSON: %v", err)
	}
	return b
}

// plans are the documents every general law is tried on.
func plans(t testing.TB) []string {
	t.Helper()
	var out []string
	for _, pattern := range []string{"testdata/*.yaml", "../../examples/*.yaml"} {
		names, err := filepath.Glob(pattern)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: no plans, %v", pattern, err)
		}
		out = append(out, names...)
	}
	return out
}

// standing is the plan of a name as it is, shown in a system, with its
// assessment. The general laws share them: none changes what it is given.
func standing(t testing.TB, name string, system quantity.System) (*plan.Plan, *garden.Assessment) {
	t.Helper()
	key := name + " " + system.String()
	if _, done := stood[key]; !done {
		p := parsed(t, name, text(t, name))
		p.Units = system
		stood[key] = assessed(t, p)
	}
	return stood[key].Plan, stood[key]
}

var stood = map[string]*garden.Assessment{}

var systems = []quantity.System{quantity.Metric, quantity.US}
