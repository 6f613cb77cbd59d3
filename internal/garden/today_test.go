package garden_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/school/steering"
)

const (
	contract = "the project's own rule"
	practice = "common practice, no source"
)

// well is the other tub, about which nothing is to be said.
var well = []string{"Otter 2027-02-09 09:00 level=24.9 EC=1.55 pH=6.0", "Otter 2027-02-10 09:00 level=24.8 EC=1.55 pH=6.0"}

// What is due at Heron on Wed 10 Feb, from its readings.
func TestWhatIsDueAtATub(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml")
	cases := []struct {
		name, source string
		on           string
		wrote        []string
		do           steering.Do
		code         string
		says         []string // among the words
	}{
		{"all is well", practice, "2027-02-10", []string{"Heron 2027-02-10 09:00 level=25.5 EC=1.5 pH=6.0"}, steering.Nothing, "all-well", nil},
		{"too strong, read once", practice, "2027-02-10", []string{"Heron 2027-02-10 09:00 level=25 EC=2.4 pH=6.0"}, steering.ReadAgain, "ec-once", []string{"read the EC of Heron again"}},
		{
			"too strong, read twice", "mass balance", "2027-02-10",
			[]string{"Heron 2027-02-10 09:00 level=20 EC=2.4 pH=6.0", "Heron 2027-02-10 09:10 level=20 EC=2.4"},
			steering.Thin, "too-strong",
			[]string{"Thin Heron with water.", "of water"},
		},
		{
			"too weak, and nobody knows how strong the solution is", practice, "2027-02-10",
			[]string{"Heron 2027-02-10 09:00 level=24 EC=0.7 pH=6.0", "Heron 2027-02-10 09:10 level=24 EC=0.7"},
			steering.Measure, "feed-ec-unknown",
			[]string{"measure its EC"},
		},
		{
			"too weak, with solution made up on Monday", "mass balance", "2027-02-10",
			[]string{"Heron 2027-02-08 09:00 level=24 added=1 of=2.8 done=fed", "Heron 2027-02-10 09:00 level=24 EC=0.7 pH=6.0", "Heron 2027-02-10 09:10 level=24 EC=0.7"},
			steering.Strengthen, "too-weak",
			[]string{"of solution"},
		},
		{"too full", contract, "2027-02-10", []string{"Heron 2027-02-10 09:00 level=27.5 EC=1.5 pH=6.0"}, steering.TakeOut, "too-full", []string{"take out", "which weighs"}},
		{"fallen by more than 20 mm", practice, "2027-02-10", []string{"Heron 2027-02-10 09:00 level=21 EC=1.6 pH=6.0"}, steering.TopUp, "top-up", []string{"Top up Heron.", "of water"}},
		{"strips whose colours lie across the edge of the band", contract, "2027-02-10", []string{"Heron 2027-02-10 09:00 level=25.5 EC=1.5_to_2.5 EC-with=strip pH=6.0", "Heron 2027-02-10 09:10 level=25.5 EC=1.5_to_2.5 EC-with=strip"}, steering.Nothing, "ec-left-alone", nil},
		{
			"the meter was never checked", contract, "2027-02-10",
			[]string{"Heron 2027-02-10 09:00 level=20 EC=2.4 checked=2026-12-01 pH=6.0", "Heron 2027-02-10 09:10 level=20 EC=2.4 checked=2026-12-01"},
			steering.Measure, "ec-meter-due",
			[]string{"Check the EC meter first."},
		},
		{
			"too strong, but read last week", practice, "2027-02-10",
			[]string{"Heron 2027-02-05 09:00 level=20 EC=2.4 pH=6.0", "Heron 2027-02-05 09:10 level=20 EC=2.4", "Heron 2027-02-10 09:10 level=25.5"},
			steering.ReadAgain, "ec-old",
			[]string{"too long ago"},
		},
		{
			"far more gone overnight than in the week before", "twice the thirst and over 2 L: common practice, no source", "2027-02-10",
			[]string{"Heron 2027-02-05 09:00 level=25.5", "Heron 2027-02-08 09:00 level=24", "Heron 2027-02-09 09:00 level=23.5 EC=1.5 pH=6.0", "Heron 2027-02-10 09:00 level=17"},
			steering.SeekLeak, "leak",
			[]string{"Look for a leak at Heron before anything else."},
		},
		{
			"three weeks after planting", practice, "2027-02-10",
			[]string{"Heron 2027-01-18 09:00 level=25.5 done=planted", "Heron 2027-02-10 09:00 level=14 EC=1.5 pH=6.0"},
			steering.ChangeOut, "changeout-days",
			[]string{"Change the water of Heron."},
		},
		{
			"solution poured in ten minutes ago", practice, "2027-02-10",
			[]string{"Heron 2027-02-10 09:00 level=25 EC=1.5 pH=6.0", "Heron 2027-02-10 09:05 added=0.5 of=2.8 done=fed"},
			steering.Wait, "settling",
			[]string{"Wait before measuring Heron."},
		},
		{"the pH low, once", practice, "2027-02-10", []string{"Heron 2027-02-10 09:00 level=25.5 EC=1.5 pH=4.6"}, steering.ReadAgain, "ph-low-once", []string{"read the pH of Heron again"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := morningOf(t, a, c.on, append(slices.Clone(well), c.wrote...)...)
			advice := got.Tubs[0].Today.Advice
			if !slices.ContainsFunc(advice, func(x garden.Advised) bool { return x.Do == c.do && x.Code == c.code }) {
				t.Errorf("advised %+v, want %s %s", advice, c.do, c.code)
			}
			text := told(got)
			for _, say := range c.says {
				if !strings.Contains(text, say) {
					t.Errorf("%q is not said in\n%s", say, text)
				}
			}
			safe(t, got)
			balanced(t, got)
		})
	}
}

// balanced holds what is expected after a pour against the mass balance, worked
// out here: what stays at its strength and what comes at its own.
func balanced(t *testing.T, a *garden.Assessment) {
	t.Helper()
	for _, tub := range a.Tubs {
		for _, x := range tub.Today.Advice {
			if x.ECAfter == nil || x.PourInL == nil || x.RestL != nil {
				continue
			}
			at := func(key string) float64 { return number(t, a, "tubs."+tub.Name+".today."+key).Value }
			strength := "tap_ec"
			if x.Do == steering.Strengthen {
				strength = "feed_ec"
			}
			if x.Do == steering.TopUp {
				continue // half strength is a number of its own
			}
			out := 0.0
			if x.TakeOutL != nil {
				out = *x.TakeOutL
			}
			v := at("in_tub")
			want := ((v-out)*at("ec_now") + *x.PourInL*at(strength)) / (v - out + *x.PourInL)
			const shownDigits = 0.02 // the numbers are shown to 0.1 L and 0.01 mS/cm
			if math.Abs(*x.ECAfter-want) > shownDigits {
				t.Errorf("%s expects EC %.2f after it, the balance gives %.2f", x.Code, *x.ECAfter, want)
			}
		}
	}
}

// safe holds what no morning may advise: more in a tub than it may hold, or two
// things that both change its water.
func safe(t teller, a *garden.Assessment) {
	t.Helper()
	if len(a.Today.Steps) == 0 {
		t.Errorf("a morning without a step")
	}
	for _, tub := range a.Tubs {
		if tub.Today == nil {
			continue
		}
		if len(tub.Today.Advice) == 0 {
			t.Errorf("%s: nothing is said", tub.Name)
		}
		changes := 0
		for _, x := range tub.Today.Advice {
			if x.PourInL != nil || x.TakeOutL != nil || x.Do == steering.ChangeOut {
				changes++
			}
			if x.PourInL == nil && x.RestL == nil {
				continue
			}
			litres := map[string]float64{}
			for _, n := range a.Numbers {
				litres[n.Key] = n.Value
			}
			sum, most := litres["tubs."+garden.Slug(tub.Name)+".today.in_tub"], litres["tubs."+garden.Slug(tub.Name)+".today.most"]
			if a.Plan.Units == garden.US {
				sum, most = sum*3.785411784, most*3.785411784
			}
			for _, l := range []*float64{x.PourInL, x.RestL} {
				if l != nil {
					sum += *l
				}
			}
			if x.TakeOutL != nil {
				sum -= *x.TakeOutL
			}
			const rounding = 0.15 // L: each number is shown to 0.1 L or 0.01 gal
			if sum > most+rounding && !(x.PourInL != nil && *x.PourInL == 0) {
				t.Errorf("%s: %s brings it to %.2f L, and it may hold %.2f", tub.Name, x.Code, sum, most)
			}
		}
		if changes > 1 {
			t.Errorf("%s: %d things change its water on one day: %+v", tub.Name, changes, tub.Today.Advice)
		}
	}
}

// The calendar's part of a morning.
func TestTheDayOfTheMorning(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml")
	cases := []struct {
		name, on string
		wrote    []string
		says     []string
		not      []string
	}{
		{"without readings all comes from the plan", "2027-02-10", nil, []string{"Read the level of both tubs.", "line at 16.7 cm", "Not measured yet.", "at 14.7 cm or lower fill it up"}, []string{"Top up"}},
		{"the day before nobody comes", "2027-02-12", nil, []string{"Top up both tubs.", "up to the line, 16.7 cm", "no more than 6.4 L straight from the tap", "From Fri 12 Feb, 15:30 nobody comes for nine days, until Mon 22 Feb, 08:30."}, nil},
		{"two days before the break", "2027-02-10", nil, []string{"Fri 12 Feb has its own list"}, nil},
		{"a closed day", "2027-02-17", nil, []string{"Nobody comes today. The next list is for Mon 22 Feb."}, []string{"Read the level", "Top up"}},
		{"the week's readings are due", "2027-02-10", []string{"Heron 2027-02-03 09:00 level=25.5 pH=6.0 EC=1.5", "Otter 2027-02-09 09:00 level=25 pH=6.0 EC=1.5"}, []string{"Then read pH and EC of Heron."}, []string{"Otter 2027"}},
		{
			"how long the water lasts", "2027-02-12",
			[]string{"Heron 2027-02-08 09:00 level=25.5", "Heron 2027-02-09 09:00 level=24.5", "Heron 2027-02-10 09:00 level=23.5", "Heron 2027-02-11 09:00 level=22.5", "Heron 2027-02-12 09:00 level=21.5"},
			[]string{"Top up both tubs.", "pour in"},
			nil,
		},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := morningOf(t, a, c.on, c.wrote...)
			text := told(got)
			for _, say := range c.says {
				if !strings.Contains(text, say) {
					t.Errorf("%q is not said in\n%s", say, text)
				}
			}
			for _, say := range c.not {
				if strings.Contains(text, say) {
					t.Errorf("%q is said in\n%s", say, text)
				}
			}
			safe(t, got)
		})
	}
}

// The first day after a break is told apart from a Monday.
func TestTheFirstDayBack(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml")
	for on, want := range map[string]bool{"2027-02-22": true, "2027-02-08": false, "2027-03-09": true, "2027-02-23": false} {
		if got := morningOf(t, a, on).Today.Back != nil; got != want {
			t.Errorf("%s: %v", on, got)
		}
	}
}

// A litre a day for four days, then nine days and a bit of nobody: 9.7 days at
// 1 L (233 h from Fri 15:30 to Mon 8:30, as a clock counts them).
func TestHowFarTheWaterGoes(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml")
	got := morningOf(t, a, "2027-02-12", "Heron 2027-02-08 09:00 level=25.5", "Heron 2027-02-09 09:00 level=24.5", "Heron 2027-02-10 09:00 level=23.5", "Heron 2027-02-11 09:00 level=22.5", "Heron 2027-02-12 09:00 level=21.5")
	if n := number(t, got, "tubs.Heron.today.use"); n.Value != 1 {
		t.Errorf("%v %s a day", n.Value, n.Unit)
	}
	if n := number(t, got, "tubs.Heron.today.closed.use"); n.Value != 9.7 {
		t.Errorf("%v %s gone by the end of the break", n.Value, n.Unit)
	}
	if len(got.Today.Ahead.Lines) != 1 || got.Today.Ahead.Lines[0].Tub != "Heron" {
		t.Errorf("of Otter nothing is known: %+v", got.Today.Ahead.Lines)
	}
}

// Once roots hang the line is lowered: ten days after planting, in a tub with a
// pump. Nobody wrote down the planting: it stays.
func TestTheLineOfTheDay(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml")
	upper, lower := *a.Tubs[0].FillDepthMM, number(t, a, "tubs.Heron.lowered_depth").Value*10
	for _, c := range []struct {
		on   string
		when []string
		want float64
	}{
		{"2027-02-10", nil, upper},
		{"2027-02-10", []string{"Heron 2027-02-01 09:00 level=25 done=planted"}, upper},
		{"2027-02-11", []string{"Heron 2027-02-01 09:00 level=25 done=planted"}, lower},
	} {
		if got := *morningOf(t, a, c.on, c.when...).Tubs[0].Today.LineMM; math.Abs(got-c.want) > 0.05 {
			t.Errorf("%s, %v: line at %v, want %v", c.on, c.when, got, c.want)
		}
	}
}

// A still tub is never raised by more than 20 mm above the lowest line it has
// had (Kratky, Acta Hort. 648:83-89, 2004, abstract), and small rises do not add up.
func TestAStillTubIsHardlyRaised(t *testing.T) {
	a := edited(t, "testdata/round-still.yaml")
	falls := morningOf(t, a, "2027-02-10", "Drum 2027-02-10 09:00 depth=150")
	if got := falls.Tubs[0].Today.Advice[0]; got.Do != steering.Nothing {
		t.Errorf("a line that falls as it should: %+v", got)
	}
	low := morningOf(t, a, "2027-02-10", "Drum 2027-02-10 09:00 depth=60")
	poured := low.Tubs[0].Today.Advice[0].PourInL
	if poured == nil {
		t.Fatalf("%+v", low.Tubs[0].Today.Advice)
	}
	shape := a.Tubs[0].Shape
	if room := float64(shape.Volume(80) - shape.Volume(60)); *poured > room+0.01 {
		t.Errorf("%v L raise it by more than 20 mm, which are %v L", *poured, room)
	}
	again := morningOf(t, a, "2027-02-10", "Drum 2027-02-08 09:00 depth=60", "Drum 2027-02-10 09:00 depth=72")
	if p := again.Tubs[0].Today.Advice[0].PourInL; p != nil && *p > float64(shape.Volume(80)-shape.Volume(72))+0.01 {
		t.Errorf("two small rises add up: %v L", *p)
	}
}

// A tap of which nothing is known: it thins nothing by a sum.
func TestATapOfWhichNothingIsKnown(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml", edit{"tap", "unknown"})
	got := morningOf(t, a, "2027-02-10", "Heron 2027-02-10 09:00 level=20 EC=2.4", "Heron 2027-02-10 09:10 level=20 EC=2.4")
	if text := told(got); !strings.Contains(text, "Measure the EC of the tap water.") {
		t.Error(text)
	}
	clean := edited(t, "../../examples/fernhollow.yaml", edit{"tap.chlorine", "0 mg/L"})
	friday := morningOf(t, clean, "2027-02-12")
	if text := told(friday); strings.Contains(text, "straight from the tap;") {
		t.Errorf("a tap without chlorine has no limit:\n%s", text)
	}
}

// Five things that a stranger may not do, with the real mass of the heavier tub.
func TestFiveThingsNotToDo(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml")
	donts := a.Today.Donts
	if len(donts) != 5 || !slices.Contains(donts, "lift a tub: Heron weighs 27.3\u00a0kg") {
		t.Errorf("%q", donts)
	}
	if mass := *a.Tubs[0].MassFilledKG; math.Abs(mass-27.3) > 0.05 {
		t.Errorf("it weighs %v", mass)
	}
}
