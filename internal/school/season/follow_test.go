package season

import (
	"math"
	"testing"

	"rootbell/internal/forecast"
)

// whole is a course as one season without any cut at closed stretches.
func whole(c Course) forecast.Season {
	s := forecast.Season{Tub: c.Tub, NeedG: c.NeedG}
	for _, l := range c.legs() {
		leg := c.season(l)
		s.Days = append(s.Days, leg.Days...)
		for _, e := range leg.Events {
			e.AtHour += c.Clock().Hour(l.from)
			s.Events = append(s.Events, e)
		}
	}
	s.Readings = c.Readings
	return s
}

// Cutting a course where its members are kept changes nothing: the model's own
// course is that of one season in one piece.
func TestLegsChangeNothing(t *testing.T) {
	c := thirsty(t, 9)
	c.Care.Lower = true
	c.Bed = c.moved(c.MoveOn)
	got := follows(t, c, Effort{Members: 1})
	want, err := forecast.Run(t.Context(), whole(c), forecast.Options{Members: 1})
	if err != nil || len(want.Days) != len(got.Days) {
		t.Fatal(len(got.Days), len(want.Days), err)
	}
	for i, d := range got.Days {
		w := want.Days[i]
		if math.Abs(d.Litres.P50-w.Litres.P50) > 1e-6 || math.Abs(d.CropG.P50-w.CropG.P50) > 10*growthError*w.CropG.P50 || math.Abs(d.ECmS.P50-w.ECmS.P50) > 1e-6 {
			t.Fatalf("%s: %v L, %v g; in one piece %v L, %v g", got.Dates[i].Date, d.Litres.P50, d.CropG.P50, w.Litres.P50, w.CropG.P50)
		}
	}
	if got.Dates[0].Date != c.MoveOn || got.Dates[len(got.Dates)-1].Date != c.To {
		t.Errorf("from %v to %v", got.Dates[0], got.Dates[len(got.Dates)-1])
	}
}

// Readings of any leg keep their places, are learned from, and bring the
// thirst that they show: this class drinks twice as much.
func TestReadingsAreLearned(t *testing.T) {
	c, e := thirsty(t, 9), quick()
	c.Care.TopUpDropMM = 1000 // filled on the eve of closed days alone
	free := follows(t, c, e)
	clock := c.Clock()
	for i, d := range free.Dates {
		if d.Open && i > 12 && len(c.Readings) < 6 && !d.Filled {
			fall := free.Days[i].LevelMM
			c.Readings = append(c.Readings, forecast.Reading{AtHour: clock.Hour(c.leaves(d.Date)), Of: forecast.Level, Value: fall.P50 - 2*(free.Days[i-1].LevelMM.P50-fall.P50), SD: 2})
		}
	}
	got := follows(t, c, e)
	if len(got.Expected) != 6 {
		t.Fatalf("%d of 6 readings", len(got.Expected))
	}
	for i, x := range got.Expected {
		if x.Reading != i || !x.Learned {
			t.Errorf("reading %d: %+v", i, x)
		}
	}
	if got.WaterReadings(c.Readings) != 6 {
		t.Errorf("%d readings of the level", got.WaterReadings(c.Readings))
	}
	if before, after := free.Learned(forecast.Thirst).P50, got.Learned(forecast.Thirst).P50; after < 1.1*before {
		t.Errorf("thirst %v, before %v", after, before)
	}
}

// What was done and written down is followed, and care as a matter of course
// begins after it.
func TestDeeds(t *testing.T) {
	c := thirsty(t, 9)
	c.CareFrom = 24 * 10
	c.Deeds = []forecast.Event{{AtHour: 24*9 + 3, Kind: forecast.ChangeOut, LineMM: 150, ECmS: 1.2}}
	f := follows(t, c, Effort{Members: 1})
	for i, d := range f.Dates {
		if clock := c.Clock(); clock.Hour(c.leaves(d.Date)) < c.CareFrom && d.Filled != (d.Date == day(t, "2027-01-28")) {
			t.Errorf("%s filled: %v, %v mm", d.Date, d.Filled, f.Days[i].LevelMM.P50)
		}
	}
	if got := f.Days[9].LevelMM.P50; math.Abs(got-150) > 3 {
		t.Errorf("changed to %v mm", got)
	}
}

// growthError is how precisely a forecast follows growth, as a share of the mass.
const growthError = 1e-5

// Held water is held: no stretch has a risk, and no plant grows less.
func TestHeld(t *testing.T) {
	c, e := thirsty(t, 16), quick()
	left := follows(t, c, e)
	c.Held = true
	held := follows(t, c, e)
	worst := 0.0
	for i, s := range held.Standing {
		worst = max(worst, left.Standing[i].Dry.Risk)
		if s.Dry.Risk > 0 {
			t.Errorf("%s: %v", s.Stretch.From, s.Dry.Risk)
		}
	}
	if worst < 0.5 {
		t.Errorf("left alone its worst risk is %v", worst)
	}
	for i := range held.Days {
		if held.Days[i].CropG.P50 < (1-growthError)*left.Days[i].CropG.P50 {
			t.Fatalf("%s: %v g held, %v g left", held.Dates[i].Date, held.Days[i].CropG.P50, left.Days[i].CropG.P50)
		}
	}
}

// What cannot be followed is told.
func TestWhatCannotBeFollowed(t *testing.T) {
	good := thirsty(t, 6)
	for name, spoil := range map[string]func(c *Course){
		"no calendar":       func(c *Course) { c.Calendar = nil },
		"ends before":       func(c *Course) { c.To = c.MoveOn.Add(-1) },
		"a hundred years":   func(c *Course) { c.To = c.MoveOn.Add(36500) },
		"no such stand":     func(c *Course) { c.Crops = []Crop{{Stands: []int{3}}} },
		"a stand twice":     func(c *Course) { c.Crops = []Crop{{Stands: []int{0, 0}}} },
		"lamp out of hours": func(c *Course) { c.Lamp.ToMin = 3000 },
		"air of 60 °C":      func(c *Course) { c.Open.Room.TempC = 60 },
		"no water":          func(c *Course) { c.Tub.Start.Litres = 0 },
	} {
		c := good
		spoil(&c)
		if _, err := Follow(t.Context(), c, Effort{Members: 2}); err == nil {
			t.Errorf("%s is followed", name)
		}
		if _, err := Leave(t.Context(), c, Followed{}, Ways{}, Effort{}); err == nil && c.Calendar == nil {
			t.Errorf("%s is left", name)
		}
	}
}

// Seedlings are warmed from the day they show to the move, at the warmth of the
// plugs: lettuce shows after 3 days at 20 °C and 7 at 10 °C (Harrington & Minges
// 1954, as in crop's growth.csv). The sums are by hand.
func TestSeedlingsAreWarmed(t *testing.T) {
	for _, c := range []struct {
		plugsC  float64
		sown    int // days before the move
		degrees float64
	}{{20, 10, 7 * 20}, {20, 24, 21 * 20}, {10, 17, 10 * 10}, {20, 2, 0}, {50, 20, 0}} {
		course := thirsty(t, 6)
		course.Crops[0].Seed.TempC, course.Crops[0].SownOn = c.plugsC, course.MoveOn.Add(-c.sown)
		if got := course.warmed()[0].Warmed; math.Abs(got-c.degrees) > 1e-9 {
			t.Errorf("%v days at %v °C: %v °C·d, want %v", c.sown, c.plugsC, got, c.degrees)
		}
		if course.Tub.Stands[0].Warmed != 0 {
			t.Error("the bed itself is changed")
		}
	}
}
