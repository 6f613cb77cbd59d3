package forecast

import (
	"math"
	"testing"
)

// A figure that nothing followed could explain moves no factor: water stands
// where it was read, and of anything else nothing is taken. A little nearer, it
// is learned from.
func TestAReadingFromNowhere(t *testing.T) {
	s := season(t, 12)
	without := run(t, s, Options{Members: 300, Seed: 4})
	band := without.Days[9].LevelMM
	at := 10 * 24.0
	for _, c := range []struct {
		name    string
		reading Reading
		learned bool
	}{
		{"a leak", Reading{AtHour: at, Of: Level, Value: band.P50 - 70, SD: 3}, false},
		{"a level that fits", Reading{AtHour: at, Of: Level, Value: band.P5, SD: 3}, true},
		{"another unit", Reading{AtHour: at, Of: Strength, Value: 1400, SD: 0.05}, false},
		{"a slip of the ruler", Reading{AtHour: at, Of: Height, Value: 2000, SD: 10}, false},
	} {
		s.Readings = []Reading{c.reading}
		f := run(t, s, Options{Members: 300, Seed: 4})
		if f.Expected[0].Learned != c.learned || f.Expected[0].Band.Far(c.reading.Value) == c.learned {
			t.Errorf("%s: %+v", c.name, f.Expected[0])
		}
		for k := range Leafing {
			if same := f.Learned(k) == without.Learned(k); same == c.learned && (k == Thirst || !c.learned) {
				t.Errorf("%s: factor %d is %+v, before %+v", c.name, k, f.Learned(k), without.Learned(k))
			}
		}
		if c.reading.Of == Level && !c.learned {
			if got := f.Days[10].LevelMM.P50; math.Abs(got-(c.reading.Value-(band.P50-without.Days[10].LevelMM.P50))) > 3 {
				t.Errorf("%s: the day after it stands at %.1f mm, read %.1f", c.name, got, c.reading.Value)
			}
			continue
		}
		if !c.learned && f.Days[11].CropG != without.Days[11].CropG {
			t.Errorf("%s moves the crop", c.name)
		}
	}
}
