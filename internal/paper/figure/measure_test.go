package figure

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/plane"
	"rootbell/internal/garden"
)

var bothWidths = []Width{Desk, Hand}

func TestNumbersBesideTheirRings(t *testing.T) {
	for _, c := range []struct {
		name   string
		svg    string
		rings  string
		others []string // numbers, in any order
	}{
		{"a tub", MeasureTub(TubMM{520, 360, 460, 300, 220}, garden.Metric, Desk), "ACEBD", []string{"52.0", "36.0", "46.0", "30.0", "22.0"}},
		{"a tub in inches", MeasureTub(TubMM{520.7, 355.6, 457.2, 292.1, 219.075}, garden.US, Desk), "ACEBD", []string{"20\u00a01/2", "14", "18", "11\u00a01/2", "8\u00a05/8"}},
		{"nothing typed yet", MeasureTub(TubMM{}, garden.Metric, Desk), "ACEBD", nil},
		{"half of it typed", MeasureTub(TubMM{TopLong: 520, Height: 220}, garden.Metric, Desk), "ACEBD", []string{"52.0", "22.0"}},
		{"no tub at all", MeasureTub(TubMM{520, 36, 460, 300, 220}, garden.Metric, Desk), "ACEBD", nil},
		{"wider at its base than at its top", MeasureTub(TubMM{300, 300, 520, 300, 220}, garden.Metric, Desk), "ACEBD", nil},
		{"a round tub", MeasureRound(RoundMM{288, 263, 362}, garden.Metric, Desk), "ACE", []string{"28.8", "26.3", "36.2"}},
		{"a lid", MeasureLid(LidMM{Long: 540, Wide: 380}, nil, garden.Metric, Desk), "FG", []string{"54.0", "38.0"}},
		{"a lid with G empty", MeasureLid(LidMM{Long: 540}, nil, garden.Metric, Desk), "FG", []string{"54.0"}},
		{"a round lid", MeasureLid(LidMM{Diameter: 304.8}, nil, garden.US, Desk), "F", []string{"12"}},
		{"a round lid to be measured", MeasureLid(LidMM{Round: true}, nil, garden.Metric, Desk), "F", nil},
		{"a cup", MeasureCup(CupMM{83, 72, 65}, garden.Metric, Desk), "HJK", []string{"8.3", "7.2", "6.5"}},
		{"a cup that is wider under its rim", MeasureCup(CupMM{72, 83, 65}, garden.Metric, Desk), "HJK", nil},
		{"poured", MeasurePoured([]Pouring{{"5 L", 41}, {"10 L", 80}, {"15 L", 117}}, garden.Metric, Desk), "BA", []string{"4.1", "5 L", "8.0", "10 L", "11.7", "15 L"}},
		{"poured, but it fell", MeasurePoured([]Pouring{{"5 L", 41}, {"10 L", 40}}, garden.Metric, Desk), "BA", []string{"4.1", "5 L"}},
		{"nothing poured yet", MeasurePoured(nil, garden.US, Desk), "BA", nil},
	} {
		all := elements(t, c.svg)
		legible(t, all)
		rings, others := "", []string(nil)
		for _, w := range words(all) {
			switch {
			case len(w) == 1 && w >= "A" && w <= "K":
				rings += w
			case !strings.HasPrefix(w, "cut "):
				others = append(others, w)
			}
		}
		slices.Sort(others)
		slices.Sort(c.others)
		if rings != c.rings || !slices.Equal(others, c.others) {
			t.Errorf("%s: rings %s with %q, want %s with %q", c.name, rings, others, c.rings, c.others)
		}
	}
}

func TestTheLabelNamesTheLetters(t *testing.T) {
	label := elements(t, MeasureCup(CupMM{Rim: 83}, garden.Metric, Hand))[0].attrs["aria-label"]
	want := "A net cup from the side. H: over the rim, 8.3 cm. J: the body, right under the rim. K: depth, from under the rim to the outside of the bottom."
	if label != want {
		t.Errorf("%q", label)
	}
}

// dimensions are how long the lines with strokes are drawn, in their order.
func dimensions(all []element) []float64 {
	var out []float64
	for _, e := range all {
		if e.attrs["class"] == "dim" {
			out = append(out, math.Hypot(e.number("x2")-e.number("x1"), e.number("y2")-e.number("y1")))
		}
	}
	return out
}

// A drawing has the shape of what was typed: its lines are as long to one
// another as the lengths are.
func TestShapesAreToScale(t *testing.T) {
	const halfLine = 2.0 // a height ends in the middle of the floor's line
	rapid.Check(t, func(t *rapid.T) {
		long := rapid.Float64Range(300, 900).Draw(t, "long")
		share := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		v := TubMM{TopLong: long, TopWide: long * share("wide", 0.5, 1.1), Height: long * share("high", 0.2, 0.7)}
		v.BaseLong, v.BaseWide = v.TopLong*share("base", 0.7, 1), v.TopWide*share("base wide", 0.7, 1)
		for _, w := range bothWidths {
			got := dimensions(elements(t, MeasureTub(v, garden.Metric, w)))
			scale := got[0] / v.TopLong
			for i, mm := range []float64{v.TopLong, v.BaseLong, v.Height, v.TopWide, v.BaseWide} {
				if math.Abs(got[i]-mm*scale) > halfLine {
					t.Fatalf("%s: line %d is %.1f px for %.0f mm at %.3f px a mm", w, i, got[i], mm, scale)
				}
			}
		}
		lid := dimensions(elements(t, MeasureLid(LidMM{Long: v.TopLong, Wide: v.TopWide}, nil, garden.US, Desk)))
		if math.Abs(lid[0]/lid[1]-v.TopLong/v.TopWide) > 0.01 {
			t.Fatalf("a lid of %.0f by %.0f is drawn %.1f by %.1f", v.TopLong, v.TopWide, lid[0], lid[1])
		}
	})
}

// Whatever is typed, the drawing can be read, says nothing that was not typed,
// and comes out the same again.
func TestAnythingTyped(t *testing.T) {
	odd := []float64{0, 0.4, -5, 12, 83, 300, 520, 9_999, 1e12, math.NaN(), math.Inf(1)}
	typed := rapid.OneOf(rapid.SampledFrom(odd), rapid.Float64Range(1, 1000))
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) float64 { return typed.Draw(t, name) }
		system := rapid.SampledFrom([]garden.System{garden.Metric, garden.US}).Draw(t, "system")
		tub := TubMM{mm("A"), mm("B"), mm("C"), mm("D"), mm("E")}
		round := RoundMM{mm("A"), mm("C"), mm("E")}
		lid := LidMM{Long: mm("F"), Wide: mm("G")}
		cup := CupMM{mm("H"), mm("J"), mm("K")}
		var pours []Pouring
		for i := range rapid.IntRange(0, 12).Draw(t, "pourings") {
			pours = append(pours, Pouring{fmt.Sprint(i+1, " L"), mm("depth")})
		}
		kept := []garden.Clear{{Shape: plane.Circle{Centre: plane.Point{X: mm("x"), Y: mm("y")}, Radius: 15}, Why: "vent"}}
		for _, w := range bothWidths {
			for _, draw := range []func() string{
				func() string { return MeasureTub(tub, system, w) },
				func() string { return MeasureRound(round, system, w) },
				func() string { return MeasureLid(lid, kept, system, w) },
				func() string { return MeasureLid(LidMM{Diameter: lid.Long, Round: true}, kept, system, w) },
				func() string { return MeasureCup(cup, system, w) },
				func() string { return MeasurePoured(pours, system, w) },
			} {
				svg := draw()
				all := elements(t, svg)
				legible(t, all)
				if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") || all[0].number("height") < 60 || all[0].number("height") > 320 {
					t.Errorf("%s", svg)
				}
				if draw() != svg {
					t.Errorf("drawn twice, it differs")
				}
			}
		}
	})
}
