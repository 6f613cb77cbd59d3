package figure_test

import (
	"context"
	"math"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/figure"
	"rootbell/internal/science/lid"
)

// mixes are the mixes of the examples, and of one whose scale shows ppm.
func mixes(t *testing.T) map[string]*garden.Mix {
	t.Helper()
	out := map[string]*garden.Mix{}
	for _, name := range []string{"fernhollow", "saltbrook"} {
		p, problems := plan.Parse(name, []byte(read(t, "../../../examples/"+name+".yaml")))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageMix})
		if err != nil {
			t.Fatal(err)
		}
		for i := range a.Tubs {
			out[a.Tubs[i].Name] = a.Tubs[i].Mix
		}
	}
	return out
}

func TestWordsOfAMixKeepApart(t *testing.T) {
	drawn := 0
	for tub, m := range mixes(t) {
		for kind, draw := range map[string]func(*garden.Mix) (string, bool){"bars": figure.Bars, "curve": figure.ECCurve, "titration": figure.Titration} {
			svg, ok := draw(m)
			if !ok {
				continue
			}
			drawn++
			root := parsed(t, svg)
			words := wordsOf(root)
			for i, w := range words {
				for _, p := range w.quad {
					if p.X < -0.01 || p.Y < -0.01 || p.X > root.num("width")+0.01 || p.Y > root.num("height")+0.01 {
						t.Errorf("%s, %s: %q is cut off", tub, kind, w.words)
						break
					}
				}
				for _, o := range words[:i] {
					if w.words != "" && o.words != "" && !apart(w.quad[:], o.quad[:]) {
						t.Errorf("%s, %s: %q and %q overlap", tub, kind, w.words, o.words)
					}
				}
			}
		}
	}
	if drawn < 8 { // bars and curve of four tubs, titration where acid is dosed
		t.Errorf("only %d figures were drawn", drawn)
	}
}

// The ring on the curve stands over the whole dose, and as high as the EC says
// by the numbers at the level lines.
func TestTheRingOfTheCurveStandsAtItsEC(t *testing.T) {
	for tub, m := range mixes(t) {
		svg, ok := figure.ECCurve(m)
		if !ok {
			t.Fatalf("%s has no curve", tub)
		}
		root := parsed(t, svg)
		var ring *node
		var levels []float64
		root.walk(func(n *node) {
			switch {
			case n.name == "circle":
				ring = n
			case n.name == "line" && n.has("g5"):
				levels = append(levels, n.num("y1"))
			}
		})
		if ring == nil || len(levels) < 4 {
			t.Fatalf("%s: ring %v, %d level lines", tub, ring, len(levels))
		}
		step := 0.5 // mS/cm: what the level lines of these curves are apart
		high := step * float64(len(levels)-1)
		got := high * (levels[0] - ring.num("cy")) / (levels[0] - levels[len(levels)-1])
		const drawnTo = 0.01 // mS/cm: a hundredth of a pixel is less
		if math.Abs(got-*m.EC) > drawnTo {
			t.Errorf("%s: the ring stands at %.3f, the EC is %.3f", tub, got, *m.EC)
		}
	}
}
