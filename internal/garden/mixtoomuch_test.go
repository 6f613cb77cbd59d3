package garden_test

import (
	"math"
	"strings"
	"testing"

	"rootbell/internal/garden"
)

// A dose that went in twice: half the water is swapped, whatever the salts, and
// the meter shows less than twice the EC of the feed. Mass balance by hand.
func TestADoseThatWentInTwice(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml")
	m := a.Tubs[0].Mix
	if len(m.TooMuch) != 3 {
		t.Fatalf("%+v", m.TooMuch)
	}
	for _, x := range m.TooMuch {
		if want := m.SolutionL * (1 - 1/x.Times); math.Abs(x.SwapL-want) > 0.02 {
			t.Errorf("%v times: %v L are swapped, by hand %.2f", x.Times, x.SwapL, want)
		}
		water := m.Water.EC
		straight := water + x.Times*(*m.EC-water)
		if x.EC >= straight || x.EC < 0.85*straight {
			t.Errorf("%v times: EC %v, a straight line gives %.2f and reads high", x.Times, x.EC, straight)
		}
	}
	if says := strings.Join(m.TooMuchWords(garden.Metric), " "); !strings.Contains(says, "went in twice") || !strings.Contains(says, "no more than half") {
		t.Error(says)
	}
}
