package steering

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
	"rootbell/internal/science/reading"
)

type mS = quantity.MSPerCM

func sure(ec mS) reading.Range[mS] { return reading.Range[mS]{Low: ec - 0.1, High: ec + 0.1} }

// heron is the invented tub of these tests: full, in its band, a soft tap.
func heron(change func(*Tub)) Tub {
	t := Tub{
		NowL: 24, FillL: 24, MostL: 26, LowestL: 10, DropMM: 0, TriggerMM: 20,
		EC: sure(1.4), Readings: 2, Low: 1.2, High: 1.8, Target: 1.4, Tap: Tap{EC: 0.4, Told: true, Safe: true}, FeedEC: 2.8,
	}
	change(&t)
	return t
}

func in(n working.Number) float64 { return quantity.Litre.From(n.Base) }

func TestStrengthAndLevel(t *testing.T) {
	for _, c := range []struct {
		name      string
		tub       Tub
		do        Do
		code      string
		out, pour float64 // litres, by hand
		says      string
	}{
		{"all well", heron(func(*Tub) {}), Nothing, "all-well", 0, 0, "do nothing"},
		{"level not read", heron(func(t *Tub) { t.NowL = 0 }), Measure, "level-unknown", 0, 0, "level"},
		{"leak first", heron(func(t *Tub) { t.Leak, t.NowL = true, 12 }), SeekLeak, "leak", 0, 0, "before topping up"},
		{"too full", heron(func(t *Tub) { t.NowL = 27.5 }), TakeOut, "too-full", 1.5, 0, "1.5\u00a0kg"},
		{"out of the band by what the meter leaves open", heron(func(t *Tub) { t.EC = sure(2.09) }), Nothing, "ec-left-alone", 0, 0, "look tomorrow"},
		{"strong, one reading", heron(func(t *Tub) { t.EC, t.Readings = sure(2.4), 1 }), ReadAgain, "ec-once", 0, 0, "2.40"},
		{"strong, room: 20 × (2.4 − 1.4)/(1.4 − 0.4) = 20, room 6", heron(func(t *Tub) { t.EC, t.NowL = sure(2.4), 20 }), Thin, "too-strong", 20 - 26*1.0/2, 13, "Take out"},
		{"strong, little to do: 20 × 0.25/1.2 = 4.17", heron(func(t *Tub) { t.EC, t.NowL, t.Target, t.High = sure(1.85), 20, 1.6, 1.5 }), Thin, "too-strong", 0, 20 * 0.25 / 1.2, "Pour in 4.2"},
		{"strong, no more than half at once", heron(func(t *Tub) { t.EC, t.MostL = sure(4.2), 24 }), Thin, "too-strong", 12, 12, "no more than half"},
		{"strong, chlorine not known: 6 L", heron(func(t *Tub) { t.EC, t.Tap.Safe, t.MostL = sure(2.4), false, 24 }), Thin, "too-strong", 6, 6, "chlorine"},
		{"strong, poured in already", heron(func(t *Tub) { t.EC, t.Tap.Safe, t.PouredL = sure(2.4), false, 6 }), Wait, "poured-enough", 0, 0, "tomorrow"},
		{"strong tap", heron(func(t *Tub) { t.EC, t.Tap.EC = sure(2.4), 1.5 }), CannotReach, "tap-too-strong", 0, 0, "cannot reach the target"},
		{"tap not measured", heron(func(t *Tub) { t.EC, t.Tap.Told = sure(2.4), false }), Measure, "tap-ec-unknown", 0, 0, "tap"},
		{"weak: to 1.0 by 24 × 0.3/1.8 = 4, room 2", heron(func(t *Tub) { t.EC = sure(0.7) }), Strengthen, "too-weak", 24 - 26*1.8/2.1, 2 + 24 - 26*1.8/2.1, "tomorrow"},
		{"weak, room: 18 × 0.3/1.8 = 3", heron(func(t *Tub) { t.EC, t.NowL = sure(0.7), 18 }), Strengthen, "too-weak", 0, 3, "solution"},
		{"weak, no solution made up", heron(func(t *Tub) { t.EC, t.FeedEC = sure(0.7), 0 }), Measure, "feed-ec-unknown", 0, 0, "bucket"},
		{"weak solution", heron(func(t *Tub) { t.EC, t.FeedEC = sure(0.7), 0.9 }), CannotReach, "feed-too-weak", 0, 0, "cannot"},
		{"low line", heron(func(t *Tub) { t.NowL, t.DropMM = 21, 20 }), TopUp, "top-up", 0, 3, "half-strength"},
		{"low line, strong half of the band", heron(func(t *Tub) { t.NowL, t.DropMM, t.EC = 21, 20, sure(1.6) }), TopUp, "top-up", 0, 3, "of water"},
		{"low line, EC not read", heron(func(t *Tub) { t.NowL, t.DropMM, t.EC = 21, 20, reading.Range[mS]{} }), TopUp, "top-up", 0, 3, "of water"},
		{"line not low enough", heron(func(t *Tub) { t.NowL, t.DropMM = 22, 13 }), Nothing, "all-well", 0, 0, ""},
		{"nobody comes tomorrow", heron(func(t *Tub) { t.NowL, t.DropMM, t.Closing = 22, 13, true }), TopUp, "top-up", 0, 2, "tomorrow"},
		{"under two thirds", heron(func(t *Tub) { t.NowL, t.TriggerMM = 16, 0 }), TopUp, "top-up", 0, 8, "two thirds"},
		{"under the lowest line, chlorine not known", heron(func(t *Tub) { t.NowL, t.Tap.Safe = 9, false }), TopUp, "top-up", 0, 6, "lowest safe line"},
		{"still: the line falls", heron(func(t *Tub) { t.Still, t.NowL, t.DropMM = true, 14, 70 }), Nothing, "still-falls", 0, 0, "meant to fall"},
		{"still: under the lowest line, 20 mm", heron(func(t *Tub) { t.Still, t.NowL, t.StillRoomL = true, 9, 2.8 }), TopUp, "top-up", 0, 2.8, "20 mm"},
		{"still and strong: no higher than 20 mm", heron(func(t *Tub) { t.Still, t.NowL, t.StillRoomL, t.EC = true, 14, 2.8, sure(2.4) }), Thin, "too-strong", 14 - 16.8*1.0/2, 16.8 / 2, "20 mm"},
		{"target beyond the band", heron(func(t *Tub) { t.EC, t.Target = sure(2.4), 2.6 }), Nothing, "target-out-of-band", 0, 0, ""},
		{"no target: the middle of the band", heron(func(t *Tub) { t.EC, t.Target, t.NowL, t.MostL = sure(2.4), 0, 10, 26 }), Thin, "too-strong", 0, 10 * 0.9 / 1.1, ""},
	} {
		a := Strength(working.NewBook(), c.tub)
		if a.Do != c.do || a.Code != c.code {
			t.Errorf("%s: %s, %s: %s", c.name, a.Do, a.Code, a.Text)
			continue
		}
		if c.do != Wait && (math.Abs(in(a.TakeOut)-c.out) > 1e-9 || math.Abs(in(a.PourIn)-c.pour) > 1e-9) {
			t.Errorf("%s: takes out %v and pours in %v L, want %v and %v", c.name, in(a.TakeOut), in(a.PourIn), c.out, c.pour)
		}
		if said := a.Text + " " + a.Hint; !strings.Contains(said, c.says) || a.Source == "" {
			t.Errorf("%s: %q does not say %q; source %q", c.name, said, c.says, a.Source)
		}
	}
}

// power is a curve that bends as those of feeds do.
type power struct{ water, full float64 }

func (p power) EC(parts float64) float64 { return p.water + p.full*math.Pow(max(parts, 0), 0.93) }

func (p power) Strength(ec float64) (float64, bool) {
	return math.Pow(max(ec-p.water, 0)/p.full, 1/0.93), ec >= p.water && ec < p.EC(4)
}

// tubs draws any tub that can be steered.
var tubs = rapid.Custom(func(t *rapid.T) Tub {
	l := func(label string, low, high float64) quantity.L {
		return quantity.L(rapid.Float64Range(low, high).Draw(t, label))
	}
	ec := func(label string, low, high float64) mS { return mS(rapid.Float64Range(low, high).Draw(t, label)) }
	fill := l("fill", 5, 60)
	low := ec("low", 0.8, 2)
	high := low + ec("band", 0.2, 1)
	tap := ec("tap", 0, 1.2)
	var feed Curve
	var refill working.Number
	if rapid.Bool().Draw(t, "curved") {
		feed = power{float64(tap), rapid.Float64Range(0.5, 3).Draw(t, "full")}
		if rapid.Bool().Draw(t, "refilled") {
			refill = working.NewBook().Found("refill", "strength of a top-up", "W", parts, rapid.Float64Range(0.2, 1).Draw(t, "refill"), "the test")
		}
	}
	return Tub{
		Curve: feed, Refill: refill, Drinks: rapid.SampledFrom([]Liquid{"", Water, Feed}).Draw(t, "drinks"),
		NowL: l("now", 1, 1.2*float64(fill)), FillL: fill, MostL: fill * quantity.L(rapid.Float64Range(1, 1.2).Draw(t, "most")),
		LowestL: l("lowest", 0, float64(fill)/2), Still: rapid.Bool().Draw(t, "still"), StillRoomL: l("room", 0.5, 4),
		DropMM: 30, TriggerMM: 20, EC: sure(ec("EC", 0.15, 6)), Readings: 2, Low: low, High: high, Target: low + (high-low)/2,
		Tap: Tap{EC: tap, Told: true, Safe: rapid.Bool().Draw(t, "safe")}, FeedEC: ec("feed", 0.5, 6),
		PouredL: l("poured", 0, 3), System: rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.US}).Draw(t, "system"),
	}
})

// Whatever the tub: never overfilled, never past the target, no limit passed.
func TestPoursKeepTheirLimits(t *testing.T) {
	const slack = 1e-6 // L and mS/cm: sums of a few products in float64
	rapid.Check(t, func(t *rapid.T) {
		tub := tubs.Draw(t, "tub")
		a := Strength(working.NewBook(), tub)
		out, pour, rest := in(a.TakeOut), in(a.PourIn), in(a.Rest)
		level := float64(tub.NowL) - out + pour + rest
		if a.Do != TakeOut && level > max(float64(tub.MostL), float64(tub.NowL))+slack {
			t.Errorf("filled to %v of %v L: %s", level, tub.MostL, a.Text)
		}
		if tub.Still && level > float64(tub.NowL+tub.StillRoomL)+slack {
			t.Errorf("a still tub rises to %v L from %v, by more than %v: %s", level, tub.NowL, tub.StillRoomL, a.Text)
		}
		if allowed := max(0.25*float64(tub.FillL)-float64(tub.PouredL), 0); !tub.Tap.Safe && pour+rest > allowed+slack {
			t.Errorf("%v L are poured in of a tap with unknown chlorine; %v may be: %s", pour+rest, allowed, a.Text)
		}
		if a.Do != TakeOut && out > float64(tub.NowL)/2+slack {
			t.Errorf("%v of %v L are taken out at once", out, tub.NowL)
		}
		if out < 0 || pour < 0 || rest < 0 {
			t.Errorf("takes out %v, pours in %v, rest %v", out, pour, rest)
		}
		now, after := float64(tub.EC.Mid()), quantity.MillisiemensPerCM.From(a.After.Base)
		switch a.Do {
		case Thin:
			if after < float64(tub.target())-slack || after > now {
				t.Errorf("thinned from %v to %v past %v", now, after, tub.target())
			}
		case Strengthen:
			if after > min(float64(tub.target()), now+0.3)+slack || after < now {
				t.Errorf("strengthened from %v to %v past %v", now, after, tub.target())
			}
		}
		if kept := level - rest; rest > 0 && (a.Do == Thin || a.Do == Strengthen) {
			filled := (kept*after + rest*float64(a.RestEC)) / level
			if filled > max(after, 0)+slack || filled < min(after, float64(tub.target()))-slack {
				t.Errorf("filling up moves EC from %v to %v", after, filled)
			}
		}
		if Has(a.TakeOut) && math.Abs(quantity.Kilogram.From(a.Mass.Base)-out) > slack {
			t.Errorf("%v L weigh %v kg", out, quantity.Kilogram.From(a.Mass.Base))
		}
		if a.Text == "" || a.Code == "" || a.Source == "" || strings.ContainsAny(a.Text, "!–") || strings.Contains(a.Text, "NaN") {
			t.Errorf("says %q (%s, %q)", a.Text, a.Code, a.Source)
		}
	})
}

// Day after day the advice brings a tub to its target, or says that it cannot.
func TestDaysOfAdviceReachTheTarget(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tub := tubs.Draw(t, "tub")
		tub.Still, tub.PouredL, tub.NowL = false, 0, min(tub.NowL, tub.MostL)
		for range 60 {
			a := Strength(working.NewBook(), tub)
			switch a.Do {
			case Thin, Strengthen, TopUp:
				tub.NowL += quantity.L(in(a.PourIn) - in(a.TakeOut))
				if Has(a.After) {
					tub.EC = sure(quantity.FromBase[mS](a.After.Base))
				}
				tub.DropMM = 0
			case Nothing, CannotReach, Measure:
				return
			default:
				t.Fatalf("%s: %s", a.Do, a.Text)
			}
		}
		t.Errorf("after 60 days still at %v, target %v", tub.EC, tub.target())
	})
}

// Every number that is shown can be worked out with a pencil, in both systems.
func TestPencilReachesTheSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		book := working.NewBook()
		tub := tubs.Draw(t, "tub")
		Strength(book.In("today"), tub)
		Drank(book.In("uptake"), Span{ThenL: tub.FillL, NowL: tub.NowL, ThenEC: tub.EC, NowEC: sure(1.5), PouredL: 2, PouredEC: 0.4, ErrorL: 0.5})
		for _, n := range book.Numbers() {
			for _, system := range []quantity.System{quantity.Metric, quantity.US} {
				s := n.Show(system)
				if got, err := pencil.Round(s.PutIn, s.Decimals); err != nil || got != s.Value {
					t.Errorf("%s is shown as %v, and %s gives %v, %v", n.Key, s.Value, s.PutIn, got, err)
				}
			}
		}
	})
}

func TestTodayIsShort(t *testing.T) {
	some := []Advice{{Do: ChangeOut, Code: "d"}, nothing("n", "n"), {Do: TopUp, Code: "c"}, {Do: SeekLeak, Code: "a"}, {Do: ReadAgain, Code: "b"}}
	got := Today(some...)
	var codes []string
	for _, a := range got {
		codes = append(codes, a.Code)
	}
	if !slices.Equal(codes, []string{"a", "b", "c"}) {
		t.Errorf("today: %v", codes)
	}
	for _, all := range [][]Advice{nil, {nothing("x", "Write it down, do nothing.")}, {{}, {}}} {
		if got := Today(all...); len(got) != 1 || got[0].Do != Nothing {
			t.Errorf("nothing to do: %+v", got)
		}
	}
}
