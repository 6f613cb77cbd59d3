package season

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/forecast"
)

// byHand is the break as somebody would write it down who knows the room: from
// Friday 12 Feb at half past three to Monday 22 Feb at half past eight, the
// lamp lit from six for so many hours, nobody there.
func byHand(c Course, lampHours float64) forecast.Season {
	span := func(hours float64, lit bool) forecast.Span {
		return forecast.Span{Hours: hours, Lit: lit, Room: c.Closed.Room, CO2PPM: c.Closed.CO2PPM, WaterC: c.Closed.WaterC}
	}
	s := forecast.Season{Tub: c.Tub, NeedG: c.NeedG, Watches: []forecast.Watch{{FromHour: 0, ToHour: 233}}}
	for d := range 10 {
		var one forecast.Day
		if late := lampHours - 9.5; late > 0 { // what is left of the lamp after half past three
			one = append(one, span(late, true))
		}
		one = append(one, span(24-6-max(9.5, lampHours), false))
		if d == 9 {
			s.Days = append(s.Days, append(one, span(6, false), span(2.5, true)))
			break
		}
		s.Days = append(s.Days, append(one, span(6, false), span(min(9.5, lampHours), true)))
	}
	return s
}

// The risk of each option, worked out again from a season written down by hand,
// is the one told.
func TestRisksOfOptionsByHand(t *testing.T) {
	done := map[string]bool{}
	rapid.Check(t, func(rt *rapid.T) {
		c := thirsty(t, rapid.SampledFrom([]int{11, 14, 18}).Draw(rt, "plants"))
		c.Care.Lower = rapid.Bool().Draw(rt, "lowered")
		c.Bed, c.To = c.moved(c.MoveOn), day(t, "2027-02-22")
		e := Effort{Members: 30, Search: 20}
		e.Seed = rapid.Uint64Range(0, 1).Draw(rt, "seed")
		if did(done, c.Bed.Tub.Stands[0].Plants, c.Care.Lower, e.Seed) {
			return
		}
		f := follows(t, c, e)
		tr := tryOf(t, c, f, Ways{MayVisit: true, VisitECmS: 0.36, StillLowestMM: 50}, e)
		for _, closed := range leaves(t, c, f, tr.ways, e) {
			if closed.Stretch.Why != "break" {
				continue
			}
			if again := riskByHand(t, c, tr, Option{}, e); again != closed.Risk {
				rt.Fatalf("as it stands %v, by hand %v", closed.Risk, again)
			}
			for _, o := range closed.Options {
				if again := riskByHand(t, c, tr, o, e); again != o.Risk {
					rt.Fatalf("%s: %v, by hand %v", o.Kind, o.Risk, again)
				}
			}
		}
	})
}

// did tells whether a case was drawn before, so that each is followed once.
func did(done map[string]bool, of ...any) bool {
	key := fmt.Sprint(of...)
	was := done[key]
	done[key] = true
	return was
}

// riskByHand follows an option with the members that stood there.
func riskByHand(t *testing.T, c Course, tr tries, o Option, e Effort) float64 {
	t.Helper()
	hours := 16.0
	if o.LampHours > 0 {
		hours = o.LampHours
	}
	s := byHand(c, hours)
	pick, fill := forecast.Event{Kind: forecast.Harvest}, forecast.Event{Kind: forecast.TopUp}
	if len(o.Plants) > 0 {
		pick.Plants = o.Plants[0]
	}
	if o.LineMM > 0 {
		fill = forecast.Event{Kind: forecast.FillTo, LineMM: o.LineMM, ECmS: c.Care.TopUpECmS}
	}
	s.Events = []forecast.Event{pick, fill}
	if strings.Contains(o.Kind, "still") {
		s.Tub.Still, s.Tub.LowestMM = true, 50
	}
	after := tr.State
	run := func(visit time.Time) float64 {
		with := s
		if !visit.IsZero() {
			with.Events = append(slices.Clone(s.Events), forecast.Event{AtHour: visit.Sub(tr.Stretch.Since).Hours(), Kind: forecast.TopUp, Litres: 10, ECmS: 0.36})
		}
		f, err := forecast.Run(t.Context(), with, forecast.Options{Seed: tr.seed, After: &after})
		if err != nil {
			t.Fatal(err)
		}
		return f.Stretches[0].Risk
	}
	switch {
	case o.VisitL <= 0:
		return run(time.Time{})
	case o.VisitFrom.IsZero():
		return run(day(t, "2027-02-17").At(8*60+30, tr.zone()))
	}
	return max(run(o.VisitFrom), run(o.VisitTo))
}

// What Follow tells of a stretch is what a try of it as it stands gives.
func TestStandingIsTheRiskAsThingsGo(t *testing.T) {
	c, e := thirsty(t, 13), quick()
	f := follows(t, c, e)
	some := 0.0
	for _, s := range f.Standing {
		tr := tries{Course: c, Standing: s, e: e, clock: f.Clock}
		got, err := tr.risk(t.Context(), attempt{}, e.Members, asTheyAre)
		if err != nil || got != s.Dry.Risk {
			t.Errorf("%s: %v, as followed %v, %v", s.Stretch.From, got, s.Dry.Risk, err)
		}
		some += got
	}
	if some == 0 {
		t.Error("no stretch has any risk")
	}
}

// More water never makes a tub fall sooner, nor fewer plants, nor fewer hours
// of lamp, with the same members.
func TestMoreWaterNeverMoreRisk(t *testing.T) {
	for _, lower := range []bool{false, true} {
		c, e := thirsty(t, 15), quick()
		c.Care.Lower = lower
		c.Bed = c.moved(c.MoveOn)
		f := follows(t, c, e)
		tr := tryOf(t, c, f, Ways{}, e)
		for _, way := range []string{"fill", "harvest", "fewer", "lamp"} {
			d := tr.dose(way)
			if d.most == 0 {
				if way != "fill" || lower {
					t.Errorf("%s cannot be done, lowered %v", way, lower)
				}
				continue
			}
			before, fell := math.Inf(1), false
			for n := 1; n <= d.most; n++ {
				var a attempt
				d.do(&a, &Option{}, n)
				p, err := tr.risk(t.Context(), a, e.Members, asTheyAre)
				if err != nil || p > before {
					t.Errorf("%s, dose %d: %v after %v, %v", way, n, p, before, err)
				}
				fell, before = fell || p < before, p
			}
			if !fell {
				t.Errorf("%s changes nothing", way)
			}
		}
	}
}

// No option fills a tub over the line of transplant day; at the end of the
// stretch no member stands over it by more than a hand misses a line by.
func TestNeverOverTheLine(t *testing.T) {
	done := map[string]bool{}
	rapid.Check(t, func(rt *rapid.T) {
		c, e := thirsty(t, rapid.SampledFrom([]int{9, 13, 20}).Draw(rt, "plants")), Effort{Members: 20, Search: 20}
		c.To = day(t, "2027-03-01")
		c.Care.Lower = rapid.Bool().Draw(rt, "lowered")
		visit := rapid.Bool().Draw(rt, "visit")
		if did(done, c.Tub.Stands[0].Plants, c.Care.Lower, visit) {
			return
		}
		f := follows(t, c, e)
		for _, closed := range leaves(t, c, f, Ways{MayVisit: visit}, e) {
			for _, o := range closed.Options {
				if o.LineMM > c.Tub.LineMM || o.PourL < 0 || o.VisitL > VisitLitres() {
					rt.Fatalf("%+v", o)
				}
				if strings.Contains(o.Kind, "fill") && !(o.LineMM > 0 && o.PourL > 0) {
					rt.Fatalf("fills nothing: %+v", o)
				}
			}
		}
	})
}

// The option to take is the first in the order of burden that is enough, and
// an option is the least of its kind: a little less is not enough.
func TestLeastThatIsEnough(t *testing.T) {
	c, e := thirsty(t, 14), quick()
	c.Care.Lower = true
	c.Bed = c.moved(c.MoveOn)
	f := follows(t, c, e)
	taken := 0
	for _, closed := range leaves(t, c, f, Ways{MayVisit: true, VisitECmS: 0.36, StillLowestMM: 50}, e) {
		for i, o := range closed.Options {
			if i > 0 && burden(o.Kind) <= burden(closed.Options[i-1].Kind) {
				t.Errorf("%s stands after %s", o.Kind, closed.Options[i-1].Kind)
			}
			if closed.Take >= 0 && i < closed.Take && o.enough() {
				t.Errorf("%s is enough, but %s is taken", o.Kind, closed.Options[closed.Take].Kind)
			}
		}
		if closed.Needed != (closed.Risk >= 0.05) {
			t.Errorf("risk %v, needed %v", closed.Risk, closed.Needed)
		}
		if closed.Take < 0 {
			continue
		}
		if taken++; closed.Options[closed.Take].Risk >= 0.05 {
			t.Errorf("taken: %+v", closed.Options[closed.Take])
		}
	}
	if taken == 0 {
		t.Error("nothing was taken")
	}
	tr := tryOf(t, c, f, Ways{}, e)
	o, ok, err := tr.least(t.Context(), []string{"harvest"})
	if err != nil || !ok || o.taken() < 2 {
		t.Fatal(o, ok, err)
	}
	p, err := tr.risk(t.Context(), attempt{out: []int{o.taken() - 1}}, e.Members, asTheyAre)
	if err != nil || p < MostRisk() {
		t.Errorf("%d plants fewer are enough too: %v, %v", o.taken()-1, p, err)
	}
}

// The still way is open only ten days after the line was lowered.
func TestStillWayNeedsTenDays(t *testing.T) {
	c, e := thirsty(t, 14), quick()
	f := follows(t, c, e)
	for on, want := range map[string]int{"2027-02-02": 1, "2027-02-03": 0} { // the break begins on Fri 12 Feb
		tr := tryOf(t, c, f, Ways{LoweredOn: day(t, on)}, e)
		if got := tr.dose("still").most; got != want {
			t.Errorf("lowered on %s: %d", on, got)
		}
	}
	if got := tryOf(t, c, f, Ways{}, e).dose("still").most; got != 0 {
		t.Error("never lowered, and still")
	}
}

// A visit's window lies in the stretch, between hours at which somebody can
// come, and any day within serves a class that drinks 30 % more.
func TestWindowOfAVisit(t *testing.T) {
	e := quick()
	found := 0
	for _, plants := range []int{9, 10, 11, 12} {
		c := thirsty(t, plants)
		c.Care.Lower = true
		c.Bed = c.moved(c.MoveOn)
		f := follows(t, c, e)
		tr := tryOf(t, c, f, Ways{MayVisit: true, VisitFromMin: 600, VisitToMin: 720}, e)
		first, last, err := tr.window(t.Context(), attempt{})
		if err != nil {
			t.Fatal(err)
		}
		days := tr.visits()
		for d := first; d <= last; d++ {
			for _, at := range days[d] {
				found++
				if at.Before(tr.Stretch.Since) || at.After(tr.Stretch.Until) || at.Hour() < 10 || at.Hour() > 12 {
					t.Errorf("a visit at %v", at)
				}
				p, err := tr.risk(t.Context(), attempt{visit: at, visitL: 10}, e.Search, more(1.3))
				if err != nil || p >= MostRisk() {
					t.Errorf("%d plants, %v: %v, %v", plants, at, p, err)
				}
			}
		}
	}
	if found == 0 {
		t.Error("no window was found")
	}
}

// Thirst made greater is greater by as much, and 90 % thirst is that of the
// nine hundredth of a thousand.
func TestThirstier(t *testing.T) {
	var all []forecast.Factors
	for i := range 1001 {
		all = append(all, forecast.Factors{forecast.Thirst: float64(i-500) / 250})
	}
	for i, f := range more(1.3)(all) {
		if got := f.Value(forecast.Thirst) / all[i].Value(forecast.Thirst); math.Abs(got-1.3) > 1e-12 {
			t.Fatalf("%v times the thirst", got)
		}
	}
	for _, f := range high(all) {
		if math.Abs(f[forecast.Thirst]-1.6) > 1e-12 { // the 901st of 1,001
			t.Fatalf("90 %% thirst at %v", f[forecast.Thirst])
		}
	}
}

// A failure harms the sooner the larger the roots; a power cut saves water.
func TestFailures(t *testing.T) {
	c, e := thirsty(t, 13), quick()
	f := follows(t, c, e)
	all := leaves(t, c, f, Ways{}, e)
	for i, closed := range all {
		p, cut, left := closed.Pump, closed.PowerCut, closed.Risk
		if closed.Take >= 0 { // the tub is left in the way to take
			left = closed.Options[closed.Take].Risk
		}
		if p == nil || cut == nil || !(p.To4.P50 < p.To3.P50 && p.To3.P50 < p.To2.P50) || cut.Risk > left || p.Risk != left {
			t.Fatalf("%+v %+v", p, cut)
		}
		if cut.Hours != 24 || p.Hours != closed.Stretch.Hours() {
			t.Errorf("a cut of %v h, a pump that fails for %v h", cut.Hours, p.Hours)
		}
		if i > 0 && closed.Stretch.From.Before(day(t, "2027-02-14")) && p.To4.P50 > all[i-1].Pump.To4.P50 {
			t.Errorf("%s: %v h to 4 mg/L, before %v", closed.Stretch.From, p.To4.P50, all[i-1].Pump.To4.P50)
		}
	}
	c.Tub.Still = true
	for _, closed := range leaves(t, c, follows(t, c, e), Ways{}, e) {
		if closed.Pump != nil || closed.PowerCut != nil {
			t.Fatal("the pump of a tub without one fails")
		}
	}
}

// Any number of workers gives the same answer.
func TestWorkersChangeNothing(t *testing.T) {
	bytes := func(workers int) string {
		c, e := thirsty(t, 14), quick()
		c.Care.Lower, e.Workers = true, workers
		f := follows(t, c, e)
		all := leaves(t, c, f, Ways{MayVisit: true}, e)
		for i := range all {
			all[i].Pump, all[i].PowerCut = nil, nil // JSON has no infinity
		}
		text, err := json.Marshal(all)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	one := bytes(1)
	for _, workers := range []int{2, 3, 8} {
		if bytes(workers) != one {
			t.Errorf("%d workers leave a tub otherwise", workers)
		}
	}
}
