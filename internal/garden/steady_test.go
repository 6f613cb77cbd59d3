package garden_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"runtime"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

func TestSameInputsGiveTheSameBytes(t *testing.T) {
	for _, name := range plans(t) {
		_, a := standing(t, name, quantity.Metric)
		want := document(t, a)
		for _, cores := range []int{1, 2} {
			before := runtime.GOMAXPROCS(cores)
			p := parsed(t, name, text(t, name))
			p.Units = quantity.Metric
			got := document(t, assessed(t, p))
			runtime.GOMAXPROCS(before)
			if !bytes.Equal(got, want) {
				t.Errorf("%s: other bytes on %d cores", name, cores)
			}
		}
	}
}

// Units change what is shown, and nothing of what is computed.
func TestUnitsChangeOnlyWhatIsShown(t *testing.T) {
	for _, name := range plans(t) {
		var tubs [2]string
		for i, system := range systems {
			p, a := standing(t, name, system)
			if !p.Tools.RulerStep.Set() {
				continue // the ruler itself goes by the units
			}
			for _, tub := range a.Tubs {
				tubs[i] += fmt.Sprint(tub.Name, *tub.FillDepthMM, *tub.VolumeFillL, *tub.MassFilledKG, tub.Plants.Limits, tub.Lid.Layouts)
			}
		}
		if tubs[0] != tubs[1] {
			t.Errorf("%s:\n%s\n%s", name, tubs[0], tubs[1])
		}
	}
}

func TestAssessEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := parsed(t, "clean", text(t, "testdata/clean.yaml"))
	if a, err := garden.Assess(ctx, garden.Inputs{Plan: p}); !errors.Is(err, context.Canceled) {
		t.Errorf("%v, %v", a, err)
	}
}

// tubOf draws the plan of one tub, plausible or not quite: measures that any
// teacher may type, in any combination.
func tubOf(t *rapid.T) string {
	mm := func(lo, hi int, what string) int { return rapid.IntRange(lo, hi).Draw(t, what) }
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("rootbell: 1\ngarden: drawn")
	line("units: %s", rapid.SampledFrom([]string{"metric", "us"}).Draw(t, "units"))
	if rapid.Bool().Draw(t, "has a shelf") {
		line("shelf: {width: %d mm, depth: %d mm, clear_height: %d mm, rated_load: %d kg}", mm(200, 2000, "shelf"), mm(150, 900, "shelf depth"), mm(200, 1500, "clear height"), mm(1, 300, "rating"))
	}
	line("tubs:\n  - name: Drawn")
	line("    crop: %s", rapid.SampledFrom(plan.Crops()).Draw(t, "crop"))
	line("    plants: %s", rapid.SampledFrom([]string{"best", "1", "3", "17"}).Draw(t, "plants"))
	line("    method: %s", rapid.SampledFrom([]string{"aerated", "still"}).Draw(t, "method"))
	width, deep, height := mm(220, 600, "width"), mm(200, 450, "deep"), mm(120, 450, "height")
	switch rapid.IntRange(0, 2).Draw(t, "shape") {
	case 0:
		line("    inside: {top: [%d mm, %d mm], base: [%d mm, %d mm], height: %d mm, corner_radius: %d mm}", width, deep, width-mm(-20, 60, "taper"), deep-mm(0, 60, "taper"), height, mm(0, 60, "corner"))
	case 1:
		line("    round: {top: %d mm, base: %d mm, height: %d mm}", width, max(width-mm(0, 60, "taper"), 50), height)
	default:
		line("    poured: [{volume: 3 L, depth: %d mm}, {volume: %d L, depth: %d mm}]", mm(10, 60, "first"), mm(4, 40, "last"), height)
	}
	if rapid.Bool().Draw(t, "has an outside") {
		line("    outside: {size: [%d mm, %d mm], height: %d mm, empty_mass: 2 kg}", width+mm(0, 60, "wider"), deep+mm(0, 60, "deeper"), height+mm(0, 40, "higher"))
	}
	line("    lid:\n      size: [%d mm, %d mm]\n      corner_radius: %d mm", width+mm(-10, 30, "lid"), deep+mm(-10, 30, "lid"), mm(0, 50, "lid corner"))
	if rapid.Bool().Draw(t, "has a handle") {
		line("      keep_clear: [{circle: [%d mm, %d mm, %d mm]}]", mm(-50, 600, "x"), mm(-50, 450, "y"), mm(1, 120, "radius"))
	}
	if rapid.Bool().Draw(t, "has a hole") {
		line("      holes: [{at: [%d mm, %d mm]}]", mm(0, width, "x"), mm(0, deep, "y"))
	}
	body := mm(30, 80, "body")
	line("    cup: {body: %d mm, rim: %d mm, depth: %d mm}", body, body+mm(6, 20, "lip"), mm(40, 130, "cup depth"))
	if rapid.IntRange(0, 4).Draw(t, "has a fill line") == 4 {
		line("    fill_depth: %d mm", mm(10, 450, "fill"))
	}
	return b.String()
}

// No plan, sensible or not, panics, gives a number that is none, or a count
// below nought or above what a plan may have.
func TestAnyTubIsAnswered(t *testing.T) {
	drawn, laid := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		drawn++
		p, problems := plan.Parse("drawn", []byte(tubOf(r)))
		if len(problems) > 0 {
			r.Skip("not a plan")
		}
		a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: 1})
		if err != nil {
			r.Fatal(err)
		}
		r.Logf("%s", p.Text())
		finite(r, document(t, a))
		for _, n := range a.Numbers {
			walked(r, n)
		}
		for _, f := range a.Findings {
			if f.Text == "" || f.Hint == "" || f.Line < 1 || f.Column < 1 {
				r.Fatalf("%+v", f)
			}
		}
		answered(r, p, a)
		if l := a.Tubs[0].Lid; l != nil {
			laid++
			for _, each := range l.Layouts {
				kept(r, p, &p.Tubs[0], each)
			}
			opened(r, p, &p.Tubs[0], l)
		}
	})
	if inFull(drawn) && laid*5 < drawn {
		t.Errorf("holes in only %d of %d drawn lids: the test draws too little that works", laid, drawn)
	}
}

// inFull tells whether so many draws are a full run of rapid's, of which a test
// may ask that it met every case it is there for. Under the race detector fewer
// are drawn (tools/test.sh), and by chance any of them can be missing.
func inFull(drawn int) bool {
	return drawn >= 100
}

func answered(t *rapid.T, p *plan.Plan, a *garden.Assessment) {
	tub := a.Tubs[0]
	if tub.Plants == nil {
		if tub.Lid != nil {
			t.Fatalf("holes without a number of plants\n%s", p.Text())
		}
		return
	}
	for name, n := range tub.Plants.Limits {
		if n < 0 || n > 200 {
			t.Fatalf("the %s allows %d\n%s", name, n, p.Text())
		}
	}
	if n := tub.Plants.Count; n < 0 || n > 200 {
		t.Fatalf("%d plants\n%s", n, p.Text())
	}
	if tub.Lid == nil {
		return
	}
	for _, l := range tub.Lid.Layouts {
		if len(l.Holes) != tub.Plants.Count {
			t.Fatalf("%d holes of '%s' for %d plants\n%s", len(l.Holes), l.Name, tub.Plants.Count, p.Text())
		}
	}
}

// More water never feeds fewer plants, millimetre by millimetre from the cups'
// bottom to the freeboard: cups push some aside, but less than came with it.
func TestMoreWaterNeverFeedsFewer(t *testing.T) {
	before := 0
	for fill := 157; fill <= 190; fill++ {
		a := edited(t, "testdata/clean.yaml", edit{"tubs[0].plants", "1"}, edit{"tubs[0].fill_depth", fmt.Sprintf("%d mm", fill)})
		now := a.Tubs[0].Plants.Limits[garden.ByWater]
		if now < before {
			t.Errorf("%d mm feeds %d, one millimetre less %d", fill, now, before)
		}
		before = now
	}
	if before < 6 {
		t.Errorf("a full tub feeds %d", before)
	}
}

// A bigger spacing never lets the lid take more holes. The search is no proof,
// so at spacings within searchNoiseMM of each other it may find one more for
// the wider.
func TestWiderSpacingNeverTakesMoreHoles(t *testing.T) {
	const searchNoiseMM = 1
	at := func(between float64) int {
		p := parsed(t, "clean", text(t, "testdata/clean.yaml", edit{"tubs[0].spacing.between", fmt.Sprintf("%.1f mm", between)}, edit{"tubs[0].plants", "1"}))
		return assessedWith(t, p, lid.Quick).Tubs[0].Plants.Limits[garden.ByLid]
	}
	before, where := at(95), 95.0
	for between := 100.0; between <= 400; between += 12.5 {
		now := at(between)
		if now > before && between-where > searchNoiseMM {
			t.Errorf("%v mm takes %d holes, %v mm takes %d", where, before, between, now)
		}
		before, where = now, between
	}
	if before != 2 { // two on the long side, 40 cm apart, but not three
		t.Errorf("at 40 cm the lid takes %d", before)
	}
}
