package steering

import (
	"math"
	"strings"
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

var monday = time.Date(2027, 1, 11, 8, 40, 0, 0, time.UTC)

// at is a pH read with a meter calibrated that day, so many hours after Monday.
func at(hours float64, ph float64, change ...func(*reading.Row)) reading.Entry {
	when := monday.Add(time.Duration(hours * float64(time.Hour)))
	r := reading.Row{
		At: when, PH: reading.PH{
			Read: quantity.Interval[quantity.PH]{Low: quantity.PH(ph), High: quantity.PH(ph), Text: "typed"},
			With: reading.Meter, Calibrated: when.Truncate(24 * time.Hour),
		},
	}
	for _, c := range change {
		c(&r)
	}
	return reading.Entry{Row: r}
}

func strip(r *reading.Row)     { r.PH.With, r.PH.Calibrated = reading.Strip, time.Time{} }
func doubt(r *reading.Row)     { r.Doubtful = []reading.Field{reading.FieldPH} }
func corrected(r *reading.Row) { r.Done = []reading.Deed{reading.Corrected} }

// A crop with a band of its own.
func TestPHOfACrop(t *testing.T) {
	chard := reading.Range[quantity.PH]{Low: 6, High: 6.5}
	a := PH([]reading.Entry{at(0, 5.7)}, monday, chard, true)
	if a.Code != "ph-left-alone" || !strings.Contains(a.Text, "out of 6.0 to 6.5") {
		t.Errorf("%s: %s", a.Code, a.Text)
	}
}

// What to do about a pH. The bounds are common practice, no source.
func TestPH(t *testing.T) {
	for _, c := range []struct {
		name       string
		readings   []reading.Entry
		alkalinity bool
		do         Do
		code       string
	}{
		{"not read", nil, true, Nothing, "ph-unread"},
		{"well", []reading.Entry{at(0, 6)}, true, Nothing, "ph-well"},
		{"well as far as the meter tells", []reading.Entry{at(0, 6.69)}, true, Nothing, "ph-well"},
		{"a little high", []reading.Entry{at(0, 6.9)}, true, Nothing, "ph-left-alone"},
		{"a little low", []reading.Entry{at(0, 5.1)}, true, Nothing, "ph-left-alone"},
		{"low once", []reading.Entry{at(0, 4.7)}, true, ReadAgain, "ph-low-once"},
		{"low twice within the hour", []reading.Entry{at(0, 4.7), at(0.5, 4.7)}, true, ReadAgain, "ph-low-once"},
		{"low twice, an hour apart", []reading.Entry{at(0, 4.7), at(1, 4.7)}, true, AskAdult, "ph-low-act"},
		{"low twice, not far", []reading.Entry{at(0, 4.9), at(1, 4.9)}, true, Watch, "ph-low-watch"},
		{"low twice, alkalinity unknown", []reading.Entry{at(0, 4.7), at(1, 4.7)}, false, Measure, "alkalinity-unknown"},
		{"high once", []reading.Entry{at(0, 7.6)}, true, ReadAgain, "ph-high-once"},
		{"high twice on one day", []reading.Entry{at(0, 7.6), at(5, 7.6)}, true, ReadAgain, "ph-high-once"},
		{"high on two days", []reading.Entry{at(0, 7.6), at(24, 7.6)}, true, AskAdult, "ph-high-act"},
		{"high on two days, not far", []reading.Entry{at(0, 7.3), at(24, 7.3)}, true, Watch, "ph-high-watch"},
		{"high, well between", []reading.Entry{at(0, 7.6), at(24, 6), at(48, 7.6)}, true, ReadAgain, "ph-high-once"},
		{"the other reading is doubtful", []reading.Entry{at(0, 7.6, doubt), at(24, 7.6)}, true, ReadAgain, "ph-high-once"},
		{"the last reading is doubtful", []reading.Entry{at(0, 6), at(24, 7.6, doubt)}, true, Nothing, "ph-well"},
		{"a strip of 7.0 may be 6.5", []reading.Entry{at(0, 7, strip), at(24, 7, strip)}, true, Nothing, "ph-well"},
		{"a strip of 7.5 may be 7.0", []reading.Entry{at(0, 7.5, strip), at(24, 7.5, strip)}, true, Nothing, "ph-left-alone"},
		{"a strip of 8.0 is out, and twice", []reading.Entry{at(0, 8, strip), at(24, 8, strip)}, true, AskAdult, "ph-high-act"},
		{"a correction still settles", []reading.Entry{at(0, 7.6), at(24, 7.6, corrected), at(30, 7.6)}, true, Wait, "ph-settling"},
		{"half a day after it", []reading.Entry{at(0, 7.6), at(24, 7.6, corrected), at(36, 7.6)}, true, AskAdult, "ph-high-act"},
	} {
		now := monday
		if n := len(c.readings); n > 0 {
			now = c.readings[n-1].At
		}
		a := PH(c.readings, now, reading.Range[quantity.PH]{}, c.alkalinity)
		if a.Do != c.do || a.Code != c.code {
			t.Errorf("%s: %s, %s: %s", c.name, a.Do, a.Code, a.Text)
		}
		if a.Text == "" || a.Source == "" || strings.Contains(a.Text+a.Hint, " mL") {
			t.Errorf("%s: %q; no dose is ever given here", c.name, a.Text)
		}
	}
}

func TestPHTrend(t *testing.T) {
	for _, c := range []struct {
		name     string
		readings []reading.Entry
		course   Course
		perDay   float64
	}{
		{"none", nil, NotEnough, 0},
		{"one", []reading.Entry{at(0, 6)}, NotEnough, 0},
		{"two on a day", []reading.Entry{at(0, 6), at(6, 7)}, NotEnough, 0},
		{"rising by 0.8 in two days", []reading.Entry{at(0, 5.8), at(24, 6.1), at(48, 6.6)}, Rising, 0.4},
		{"falling", []reading.Entry{at(0, 6.6), at(96, 5.8)}, Falling, -0.2},
		{"within what a meter leaves open", []reading.Entry{at(0, 6), at(24, 6.35)}, Steady, 0.35},
		{"within what strips leave open", []reading.Entry{at(0, 6, strip), at(24, 7, strip)}, Steady, 1},
		{"older than two weeks", []reading.Entry{at(0, 4.6), at(15*24, 6), at(16*24, 6)}, Steady, 0},
		{"before the water was changed", []reading.Entry{at(0, 4.6, func(r *reading.Row) { r.Done = []reading.Deed{reading.ChangedOut} }), at(24, 6), at(48, 6)}, Steady, 0},
	} {
		got := PHTrend(working.NewBook(), c.readings)
		perDay := perDay.From(got.PerDay.Base)
		if got.Course != c.course || c.course != NotEnough && math.Abs(perDay-c.perDay) > 1e-9 || got.Text == "" {
			t.Errorf("%s: %s, %v a day, want %s, %v", c.name, got.Course, perDay, c.course, c.perDay)
		}
	}
}

func TestSettling(t *testing.T) {
	fed := at(0, 6, func(r *reading.Row) { r.Done = []reading.Deed{reading.Fed} })
	for minutes, waits := range map[int]bool{-1: false, 0: true, 29: true, 30: false} {
		until, a := Settling([]reading.Entry{fed}, monday.Add(time.Duration(minutes)*time.Minute))
		if waits != (a.Do == Wait) || waits && !until.Equal(monday.Add(30*time.Minute)) {
			t.Errorf("%d minutes after: %v, %+v", minutes, until, a)
		}
	}
}

// When the water is changed. All common practice, no source.
func TestChangeOut(t *testing.T) {
	for _, c := range []struct {
		name    string
		filling Filling
		days    int
		do      Do
		code    string
	}{
		{"13 days", Filling{Meter: true}, 13, Nothing, "changeout-later"},
		{"14 days", Filling{Meter: true}, 14, ChangeOut, "changeout-days"},
		{"first filling, 20 days", Filling{Meter: true, First: true}, 20, Nothing, "changeout-later"},
		{"first filling, 21 days", Filling{Meter: true, First: true}, 21, ChangeOut, "changeout-days"},
		{"no meter, 9 days", Filling{First: true}, 9, Nothing, "changeout-later"},
		{"no meter, 10 days", Filling{First: true}, 10, ChangeOut, "changeout-days"},
		{"litres first", Filling{Meter: true, UsedL: 24}, 6, ChangeOut, "changeout-litres"},
		{"not quite", Filling{Meter: true, UsedL: 23.9}, 6, Nothing, "changeout-later"},
		{"still", Filling{Still: true, UsedL: 99}, 60, Nothing, "still-once"},
	} {
		c.filling.Since, c.filling.FillL = monday, 24
		got := DueOut(working.NewBook(), c.filling, monday.Add(time.Duration(c.days)*24*time.Hour))
		if got.Do != c.do || got.Code != c.code {
			t.Errorf("%s: %s, %s: %s", c.name, got.Do, got.Code, got.Text)
		}
		if got.Do == ChangeOut && !strings.Contains(got.Hint, "never started by mouth") {
			t.Errorf("%s: %q", c.name, got.Hint)
		}
	}
	midnight := monday.Truncate(24*time.Hour).AddDate(0, 0, 14)
	if got := DueOut(working.NewBook(), Filling{Since: monday, Meter: true, FillL: 24}, midnight); got.Do != ChangeOut || !got.On.Equal(midnight) {
		t.Errorf("due from the first minute of its day: %+v", got)
	}
	if got := DueOut(working.NewBook(), Filling{FillL: 24}, monday); got.Do != Measure {
		t.Errorf("nobody knows since when: %+v", got)
	}
}
