package booklet_test

import (
	"context"
	"math"
	"os"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/booklet"
	"rootbell/internal/science/lid"
)

func assessed(t *testing.T, name string) *garden.Assessment {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(name, text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Each kind of tub comes to a section, in both unit systems; what was not
// measured is said.
func TestSectionOfEachKindOfTub(t *testing.T) {
	const plans, examples = "../../garden/testdata/", "../../../examples/"
	for _, c := range []struct {
		plan  string
		tub   int
		has   []string
		lacks []string
	}{
		{examples + "fernhollow.yaml", 0, []string{"check valve", "drip loop", "lamp", "85.0 clear height"}, []string{"not measured"}},
		{examples + "saltbrook.yaml", 0, []string{"check valve", "32 clear height", "9\u00a01/4 to the lid"}, nil},
		{examples + "saltbrook.yaml", 1, []string{"lowest safe line", "lamp"}, []string{"air pump", "air stone"}},
		{plans + "poured.yaml", 0, []string{"wall was not measured", "outside was not measured"}, nil},
		{plans + "polygon-rib.yaml", 0, []string{"outside was not measured", "check valve"}, []string{"clear height", "lamp"}},
		{plans + "foam.yaml", 0, []string{"Trough"}, []string{"lamp"}},
	} {
		a := assessed(t, c.plan)
		s, ok := booklet.SectionOf(a, c.tub)
		if !ok {
			t.Errorf("%s has no section", a.Tubs[c.tub].Name)
			continue
		}
		svg, err := booklet.SectionSVG(s)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, words := range c.has {
			if !strings.Contains(string(svg), words) {
				t.Errorf("%s does not say %q", s.Tub, words)
			}
		}
		for _, words := range c.lacks {
			if strings.Contains(string(svg), words) {
				t.Errorf("%s says %q", s.Tub, words)
			}
		}
		if len(s.CupsAtMM) == 0 || s.CupsAtMM[0] < s.Cup.RimMM/2 || s.CupsAtMM[len(s.CupsAtMM)-1] > s.LidWidthMM-s.Cup.RimMM/2 {
			t.Errorf("%s: cups at %v on a lid %g mm long", s.Tub, s.CupsAtMM, s.LidWidthMM)
		}
		for i := 1; i < len(s.CupsAtMM); i++ {
			if s.CupsAtMM[i]-s.CupsAtMM[i-1] < s.Cup.RimMM {
				t.Errorf("%s: two cups overlap in the drawing: %v", s.Tub, s.CupsAtMM)
			}
		}
	}
}

// The six-cornered lid of testdata/polygon-rib.yaml by hand: 400 mm high, cut
// above 40 mm, it is 600 mm long, and its middle lies over the tub's.
func TestSectionOfAPolygon(t *testing.T) {
	s, _ := booklet.SectionOf(assessed(t, "../../garden/testdata/polygon-rib.yaml"), 0)
	if math.Abs(s.LidWidthMM-600) > 0.01 || math.Abs(s.LidShiftMM) > 0.01 || s.LidFaceMM != 307 {
		t.Errorf("%g mm long, %g aside, face at %g", s.LidWidthMM, s.LidShiftMM, s.LidFaceMM)
	}
}
