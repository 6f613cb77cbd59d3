package garden

import (
	"fmt"
	"slices"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/forecast"
	"rootbell/internal/school/season"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// growing are how many plants move into each stand.
func (s *tubSeason) growing() []int {
	out := make([]int, len(s.stood))
	for j, one := range s.stood {
		out[j] = one.Plants
	}
	return out
}

// harvest is what an entry tells of plants that were picked: of one crop the
// largest first, as a class does. left is how many stand in each stand, and is
// brought down.
func (s *tubSeason) harvest(c *season.Course, e reading.Entry, at float64, left []int) {
	if !e.CountsPicked() {
		if e.Did(reading.Harvested) || e.Picked.Mass.Set() {
			s.once(finding.Note, "reading-harvested", s.t.name+": plants were harvested on "+s.stamp(e.At)+", and the logbook does not say how many. The forecast goes on with all of them.",
				"Correct that entry: write under 'More' how many plants were picked, and what they weigh.")
		}
		return
	}
	picked, all := int(e.Picked.Plants.Value), sum(left)
	switch {
	case picked > all:
		s.once(finding.Warn, "reading-picked-many", fmt.Sprintf("%s: %d plants were picked on %s, and %d stood there. The forecast takes out all of them.", s.t.name, picked, s.stamp(e.At), all),
			"Correct the entry, or write under plants how many there were.")
	case picked < all && s.mixed():
		s.once(finding.Note, "reading-picked-which", fmt.Sprintf("%s: %d plants were picked on %s, and the logbook does not say of which crop. The forecast goes on with all of them.", s.t.name, picked, s.stamp(e.At)),
			"Write under plants how many of each crop stand now.")
		return
	}
	taken := make([]int, len(left))
	for _, j := range s.largestFirst() {
		taken[j] = min(picked, left[j])
		left[j] -= taken[j]
		picked -= taken[j]
	}
	if each, ok := e.EachG(); ok && !s.mixed() && picked == 0 {
		c.Readings = append(c.Readings, s.weighed(each, at, taken)...)
	}
	if term.DateOf(e.At.In(s.zone)).Since(s.end) >= -season.MealKeepsDays() {
		return // picked for the meal: they are there to be eaten
	}
	for j, n := range taken {
		if n > 0 {
			c.Deeds = append(c.Deeds, forecast.Event{AtHour: at, Kind: forecast.Harvest, Stand: j, Plants: n})
		}
	}
	s.once(finding.Note, "reading-picked", fmt.Sprintf("%s: plants picked on %s: %d; standing since: %d. The chance for the meal counts those that stand.", s.t.name, s.stamp(e.At), sum(taken), sum(left)),
		"Where what was picked is kept for the meal, take it off what the meal needs.")
}

// weighed is the mass of one plant as a reading of each stand that it came from.
// Plants of a darker and of a lighter half that were weighed together are told
// apart by their light.
func (s *tubSeason) weighed(eachG, at float64, taken []int) (out []forecast.Reading) {
	light := 0.0
	for j, n := range taken {
		light += s.stood[j].PPFD * float64(n)
	}
	light /= float64(sum(taken))
	for j, n := range taken {
		if n > 0 && n == sum(taken) {
			return []forecast.Reading{{AtHour: at, Of: forecast.Picked, Stand: j, Value: eachG, SD: forecast.PickedSDG(eachG, n)}}
		}
		if g := quantity.Round(eachG*s.stood[j].PPFD/light, 1); n > 0 && g > 0 {
			out = append(out, forecast.Reading{AtHour: at, Of: forecast.Picked, Stand: j, Value: g, SD: forecast.PickedSDG(g, 1)})
		}
	}
	return out
}

func sum(all []int) (n int) {
	for _, one := range all {
		n += one
	}
	return n
}

// leaves are a count of the leaves on one plant, of a tub of lettuces.
func (s *tubSeason) leaves(e reading.Entry, at float64) []forecast.Reading {
	if !e.Counted.Set() || e.Doubts(reading.FieldLeaves) {
		return nil
	}
	for _, one := range s.stood {
		if !forecast.CountsLeaves(one.Crop) {
			s.once(finding.Note, "leaves-not-learned", s.t.name+": the leaves counted on "+s.stamp(e.At)+" are kept and not learned from. The forecast follows the leaves of leaf lettuce, butterhead and romaine, and "+one.Crop.Name+" grows here.",
				"Read its height with a ruler: that is learned from.")
			return nil
		}
	}
	return []forecast.Reading{{AtHour: at, Of: forecast.Leaves, Stand: s.largestFirst()[0], Value: float64(e.Counted.Value), SD: forecast.LeavesSD()}}
}

// mixed tells whether more than one crop stands in the tub.
func (s *tubSeason) mixed() bool {
	return slices.ContainsFunc(s.stood, func(one stand) bool { return one.grows != s.stood[0].grows })
}

// largestFirst are the stands by the light on them, the brightest first.
func (s *tubSeason) largestFirst() []int {
	out := make([]int, len(s.stood))
	for j := range out {
		out[j] = j
	}
	slices.SortStableFunc(out, func(a, b int) int {
		switch {
		case s.stood[a].PPFD > s.stood[b].PPFD:
			return -1
		case s.stood[a].PPFD < s.stood[b].PPFD:
			return 1
		}
		return 0
	})
	return out
}
