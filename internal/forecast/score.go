package forecast

import "math"

// Score is how well earlier forecasts of one quantity did.
type Score struct {
	Of      Quantity
	Count   int     // readings scored
	InWide  int     // of them in the band of nine in ten
	InHalf  int     // in the band of one in two
	MeanOff float64 // of the middle from the figure read, without its sign, in its unit
}

// Scores are those of the readings at or after an hour, for each quantity that
// was read, in the order of the quantities.
func (f Forecast) Scores(readings []Reading, fromHour float64) []Score {
	var all [quantityCount]Score
	for _, x := range f.Expected {
		if x.Reading < 0 || x.Reading >= len(readings) || readings[x.Reading].AtHour < fromHour {
			continue
		}
		r := readings[x.Reading]
		s := &all[r.Of]
		s.MeanOff = (s.MeanOff*float64(s.Count) + math.Abs(x.Band.P50-r.Value)) / float64(s.Count+1)
		s.Count++
		if x.Band.Wide(r.Value) {
			s.InWide++
		}
		if x.Band.Half(r.Value) {
			s.InHalf++
		}
	}
	var out []Score
	for k, s := range all {
		if s.Count > 0 {
			s.Of = Quantity(k)
			out = append(out, s)
		}
	}
	return out
}

// WaterReadings is how many readings of the water's level were learned from.
func (f Forecast) WaterReadings(readings []Reading) int {
	n := 0
	for _, x := range f.Expected {
		if x.Learned && x.Reading >= 0 && x.Reading < len(readings) && readings[x.Reading].Of == Level {
			n++
		}
	}
	return n
}

// Guess tells whether the rate at which water goes is still the model's guess,
// because too few readings of the level were learned from, and what is said
// then.
func (f Forecast) Guess(readings []Reading) (says string, guess bool) {
	if f.WaterReadings(readings) >= int(value(factLearnReadingsLeast)) {
		return "The rate is the class's own.", false
	}
	return "The rate is the model's guess. Read the water line today.", true
}

// Learned is the band of a factor over the members: how this class's tub
// differs from the model.
func (f Forecast) Learned(k Factor) Band {
	if k < 0 || k >= factorCount {
		return Band{}
	}
	e := ensemble{members: make([]member, len(f.Factors)), column: make([]float64, len(f.Factors))}
	for i := range e.members {
		e.members[i].factors = f.Factors[i]
	}
	return e.band(func(m *member) float64 { return m.factors.Value(k) })
}
