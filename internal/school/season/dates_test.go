package season

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
)

// By hand on the invented spring term: three open days lie between what is done
// and a closed stretch of three days or more, or the term's end.
func TestDaysThatSuit(t *testing.T) {
	cal := spring(t)
	for text, want := range map[string]bool{
		"2027-01-10": false, // before the term
		"2027-01-11": true,
		"2027-01-15": true, // a Friday before a weekend
		"2027-01-16": false,
		"2027-02-08": true,
		"2027-02-09": true, // 10, 11 and 12 Feb are open
		"2027-02-10": false,
		"2027-02-12": false, // the eve of the break
		"2027-02-17": false, // in the break
		"2027-02-22": true,
		"2027-03-02": true, // 3, 4 and 5 Mar are open
		"2027-03-03": false,
		"2027-03-05": false, // the staff day makes a weekend of three days
		"2027-03-08": false,
		"2027-03-09": true,
		"2027-03-30": true, // 31 Mar, 1 and 2 Apr are open
		"2027-03-31": false,
		"2027-04-02": false,
	} {
		if got := Settles(cal, day(t, text)); got != want {
			t.Errorf("%s: %v", text, got)
		}
	}
}

// A club that meets on Wednesdays alone is used to six closed days, and one that
// meets on Mondays, Wednesdays and Fridays to two: those are no break.
func TestClubsHaveDaysThatSuit(t *testing.T) {
	for _, c := range []struct {
		open []time.Weekday
		day  string
		want bool
	}{
		{[]time.Weekday{time.Wednesday}, "2027-01-13", true},
		{[]time.Weekday{time.Wednesday}, "2027-03-10", true},  // 17, 24 and 31 Mar
		{[]time.Weekday{time.Wednesday}, "2027-01-27", false}, // the meeting of 17 Feb falls out
		{[]time.Weekday{time.Monday, time.Wednesday, time.Friday}, "2027-02-05", true},
		{[]time.Weekday{time.Monday, time.Wednesday, time.Friday}, "2027-02-08", false}, // two meetings before the break
	} {
		cal := term.New(term.Given{OpenDays: c.open, Terms: []term.Span{{From: day(t, "2027-01-11"), To: day(t, "2027-04-02")}}, Closed: []term.Closure{{Span: term.Span{From: day(t, "2027-02-15"), To: day(t, "2027-02-19")}}}})
		if got := Settles(cal, day(t, c.day)); got != c.want {
			t.Errorf("%v on %s: %v", c.open, c.day, got)
		}
	}
}

// By hand: which day lettuce of 14 nursery days is sown for a move, when it
// shows (3 days) and when it is thinned (5 days later or the next day that
// suits).
func TestSowingForAMove(t *testing.T) {
	lettuce, _ := crop.Find("leaf lettuce")
	c := Crop{Kind: lettuce, SeedsInACell: 2, Seed: crop.Seed{Germination: 0.8, TempC: 20}}
	for _, w := range []struct{ move, sow, up, thin string }{
		{"2027-03-02", "2027-02-09", "2027-02-12", "2027-02-22"}, // 15 Feb is in the break: the last day before that suits
		{"2027-03-09", "2027-02-22", "2027-02-25", "2027-03-02"}, // 22.8 Feb
		{"2027-02-09", "2027-01-25", "2027-01-28", "2027-02-02"},
	} {
		got, ok := c.dates(spring(t), day(t, w.move), day(t, "2027-01-11"), 8)
		if !ok || got.SowOn.String() != w.sow || got.UpOn.String() != w.up || got.ThinOn.String() != w.thin {
			t.Errorf("%+v: %v %v %v", w, got.SowOn, got.UpOn, got.ThinOn)
		}
	}
	if _, ok := c.dates(spring(t), day(t, "2027-01-22"), day(t, "2027-01-11"), 8); ok {
		t.Error("sown before the term")
	}
}

// By hand: two weeks after the move the line of 165 mm goes down by 10 mm on
// each open day to 25 mm under the cups at 155 mm.
func TestLoweringByStages(t *testing.T) {
	got := Lowering(bed(t, "leaf lettuce", 8), day(t, "2027-01-19"))
	want := []Line{{day(t, "2027-01-29"), 155}, {day(t, "2027-02-01"), 145}, {day(t, "2027-02-02"), 135}, {day(t, "2027-02-03"), 130}}
	if !slices.Equal(got, want) {
		t.Errorf("%v", got)
	}
	b := bed(t, "leaf lettuce", 8)
	b.Care.Lines = got
	if on, ok := b.Lowered(); !ok || on != day(t, "2027-02-03") || b.Line(day(t, "2027-02-01")) != 145 || b.Line(day(t, "2027-01-20")) != 165 {
		t.Errorf("lowered on %v", on)
	}
	b.Tub.LowestMM = 140
	if got := Lowering(b, day(t, "2027-01-19")); got != nil {
		t.Errorf("lowered under the lowest line: %v", got)
	}
}

// By hand: the first change after 21 days, then every 14, on the last open day
// that is not late, and not in the last days.
func TestChanges(t *testing.T) {
	c := thirsty(t, 6)
	want := []term.Date{day(t, "2027-02-09"), day(t, "2027-02-23"), day(t, "2027-03-09")} // 23 Mar is the eve of the meal
	if got := c.changes(); !slices.Equal(got, want) {
		t.Errorf("%v", got)
	}
	c.MoveOn = day(t, "2027-01-25") // 15 Feb is in the break
	if got := c.changes(); got[0] != day(t, "2027-02-12") {
		t.Errorf("%v", got)
	}
	c.Deeds = []forecast.Event{{AtHour: c.Clock().At(day(t, "2027-02-03"), 600), Kind: forecast.ChangeOut}}
	if got := c.changes(); got[0] != day(t, "2027-02-12") || got[1] != day(t, "2027-02-26") { // 17 Feb is in the break
		t.Errorf("after a change on 3 Feb: %v", got)
	}
	c.Deeds[0].AtHour = c.Clock().At(day(t, "2027-02-11"), 600)
	if got := c.changes(); got[0] != day(t, "2027-02-25") {
		t.Errorf("after a change on 11 Feb: %v", got)
	}
}

// drawCalendar is a school year of any kind.
func drawCalendar(t *rapid.T) *term.Calendar {
	from := term.Date{Year: 2026, Month: time.Month(rapid.IntRange(1, 12).Draw(t, "month")), Day: 1}
	g := term.Given{ArriveMin: rapid.IntRange(0, 700).Draw(t, "arrive"), LeaveMin: rapid.IntRange(720, 1440).Draw(t, "leave")}
	for range rapid.IntRange(0, 3).Draw(t, "terms") {
		to := from.Add(rapid.IntRange(0, 120).Draw(t, "days"))
		g.Terms = append(g.Terms, term.Span{From: from, To: to})
		from = to.Add(rapid.IntRange(1, 40).Draw(t, "gap"))
	}
	for range rapid.IntRange(0, 4).Draw(t, "closures") {
		at := term.Date{Year: 2026, Month: 1, Day: 1}.Add(rapid.IntRange(0, 700).Draw(t, "at"))
		g.Closed = append(g.Closed, term.Closure{Span: term.Span{From: at, To: at.Add(rapid.IntRange(0, 20).Draw(t, "for"))}})
	}
	for d := time.Sunday; d <= time.Saturday; d++ {
		if rapid.Bool().Draw(t, "open") {
			g.OpenDays = append(g.OpenDays, d)
		}
	}
	return term.New(g)
}

// A day that suits is open, and the three open days after it come without a
// long closed stretch between: counted here day by day.
func TestDaysThatSuitAreFollowedByOpenDays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cal := drawCalendar(t)
		d := term.Date{Year: 2026, Month: 1, Day: 1}.Add(rapid.IntRange(0, 700).Draw(t, "day"))
		open, shut, suits := 0, 0, cal.Open(d)
		long := 3 // or more than the longest gap of a usual week, counted over a fortnight
		for i, gap := 0, 0; i < 14; i++ {
			if slices.Contains(cal.Weekdays(), time.Weekday(i%7)) {
				gap = 0
			} else if gap++; gap < 7 {
				long = max(long, gap+1)
			}
		}
		for at := d.Add(1); suits && open < 3; at = at.Add(1) {
			if cal.Open(at) {
				open, shut = open+1, 0
			} else if shut++; shut >= long || shut > 400 {
				suits = false
			}
		}
		if got := Settles(cal, d); got != suits {
			t.Fatalf("%s: %v, counted %v", d, got, suits)
		}
		if on, ok := settleFrom(cal, d); ok && (on.Before(d) || !Settles(cal, on)) {
			t.Fatalf("from %s: %s", d, on)
		}
		if on, ok := settleUntil(cal, d, d.Add(-30)); ok && (on.After(d) || on.Before(d.Add(-30)) || !Settles(cal, on)) {
			t.Fatalf("until %s: %s", d, on)
		}
	})
}

// Hours and moments are each other's way back, in any zone.
func TestClockGoesBothWays(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		z := zone(t, rapid.SampledFrom([]string{"UTC", "Europe/Dublin", "America/New_York", "Australia/Lord_Howe", "Pacific/Apia"}).Draw(rt, "zone"))
		start := time.Unix(rapid.Int64Range(1_700_000_000, 1_900_000_000).Draw(rt, "start"), 0)
		c := Clock{Start: start, Zone: z}
		seconds := rapid.Int64Range(-1e8, 1e8).Draw(rt, "seconds")
		at, ok := c.Moment(float64(seconds) / 3600)
		if !ok || at.Unix()-start.Unix() != seconds || int64(c.Hour(at)*3600+0.5*sign(seconds)) != seconds {
			rt.Fatalf("%v s: %v, %v h", seconds, at, c.Hour(at))
		}
		if d, ok := c.Date(c.Hour(at)); !ok || d != term.DateOf(at) {
			rt.Fatalf("%v is on %v", at, d)
		}
	})
}

func sign(n int64) float64 {
	if n < 0 {
		return -1
	}
	return 1
}

// A day of spans has its hours, and its lamp the hours of the timer, also when
// the timer is set over midnight; a day of 23 hours has an hour less of one.
func TestSpansAddUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := room(t)
		p.Lamp = Lamp{rapid.IntRange(0, 1440).Draw(rt, "on"), rapid.IntRange(0, 1440).Draw(rt, "off")}
		d := day(t, "2027-01-04").Add(rapid.IntRange(0, 70).Draw(rt, "day"))
		lit, all, open := 0.0, 0.0, 0.0
		for _, s := range p.Spans(d.At(0, p.zone()), d.Add(1).At(0, p.zone())) {
			all += s.Hours
			if s.Lit {
				lit += s.Hours
			}
			if s.CO2PPM == p.Open.CO2PPM {
				open += s.Hours
			}
		}
		wantOpen := 0.0
		if p.Calendar.Open(d) {
			wantOpen = 7
		}
		if !near(all, 24) || !near(lit, p.Lamp.Hours()) || !near(open, wantOpen) {
			rt.Fatalf("%s %+v: %v h, lit %v of %v, open %v", d, p.Lamp, all, lit, p.Lamp.Hours(), open)
		}
		short := p.Lamp.Shorter(8)
		if got := short.Hours(); got > 8 || got != min(8, p.Lamp.Hours()) || short.FromMin != p.Lamp.FromMin {
			rt.Fatalf("%+v shorter is %+v", p.Lamp, short)
		}
	})
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }
