package quantity

import (
	"fmt"
	"math"
)

// odds are the chances that people know by name, from small to large.
var odds = [][2]int{
	{1, 100},
	{1, 50},
	{1, 30},
	{1, 20},
	{1, 15},
	{1, 10},
	{1, 8},
	{1, 6},
	{1, 5},
	{1, 4},
	{1, 3},
	{2, 5},
	{1, 2},
	{3, 5},
	{2, 3},
	{3, 4},
	{4, 5},
	{5, 6},
	{9, 10},
	{19, 20},
	{49, 50},
	{99, 100},
}

// Below and above these a chance is no longer told apart.
const leastChance, mostChance = 0.005, 0.995

// Chance says a chance of 0 to 1 as a sentence has it: 'about 1 in 4', 'less
// than 1 in 100', 'more than 99 in 100'. It is the nearest by log odds of the
// chances that people know by name; one that is no chance shows as a dash.
func Chance(p float64) string {
	switch {
	case !(p >= 0 && p <= 1):
		return "–"
	case p < leastChance:
		return "less than 1 in 100"
	case p > mostChance:
		return "more than 99 in 100"
	}
	best, least := odds[0], math.Inf(1)
	for _, o := range odds {
		q := float64(o[0]) / float64(o[1])
		if off := math.Abs(math.Log(p/(1-p)) - math.Log(q/(1-q))); off < least {
			best, least = o, off
		}
	}
	return fmt.Sprintf("about %d in %d", best[0], best[1])
}

// InHundred says a chance of 0 to 1 as a table has it under the head 'in 100':
// '23', 'under 1', 'over 99'.
func InHundred(p float64) string {
	switch {
	case !(p >= 0 && p <= 1):
		return "–"
	case p < leastChance:
		return "under 1"
	case p > mostChance:
		return "over 99"
	}
	return FormatNumber(100*p, 0)
}
