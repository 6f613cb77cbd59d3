package choose

import (
	"strconv"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Size is the same water in so many tubs.
type Size struct {
	Words   string
	Tubs    int
	Litres  working.Number // in one
	Mass    working.Number // of its water
	Pumps   int
	Lost    working.Number // plants that one failure costs
	Planned bool
}

// sizes sets one big tub beside the tubs of the plan and twice as many.
func sizes(b *working.Book, q *Question) []Size {
	tubs := q.Build.Tubs
	if len(tubs) == 0 || q.Build.Plants == 0 {
		return nil
	}
	all := tubs[0].Solution
	pumps := 0
	for i, t := range tubs {
		if i > 0 {
			all = b.Work(addLitres, "water_"+strconv.Itoa(i+1), "water of the tubs so far", all, t.Solution)
		}
		if !t.Still {
			pumps = 1
		}
	}
	plants := b.Typed("plants", "plants of all tubs", "n", quantity.Count, float64(q.Build.Plants), 0)
	density := waterDensity(b)
	split := func(words string, n int) Size {
		s := b.In("in_" + strconv.Itoa(n))
		tubs := s.Typed("tubs", "tubs", "t", quantity.Count, float64(n), 0)
		out := Size{Words: words, Tubs: n, Pumps: n * pumps, Litres: s.Work(splitLaw, "litres", "water in one tub", all, tubs), Lost: s.Work(lostLaw, "lost", "plants that one failure costs", plants, tubs)}
		out.Mass = s.Work(massLaw, "mass", "water in one tub, its mass", out.Litres, density)
		return out
	}
	var out []Size
	if len(tubs) > 1 {
		out = append(out, split("all in one tub", 1))
	}
	out = append(out, planned(b, tubs, pumps, density))
	if twice := 2 * len(tubs); twice <= q.Build.Plants {
		out = append(out, split("twice as many, half as big", twice))
	}
	return out
}

// planned are the tubs as they are: the one with most water, and the one with
// most plants.
func planned(b *working.Book, tubs []Tub, pumps int, density working.Number) Size {
	big, most := tubs[0].Solution, 0
	for _, t := range tubs {
		if t.Solution.Base > big.Base {
			big = t.Solution
		}
		most = max(most, t.Plants)
	}
	b = b.In("planned")
	return Size{
		Words: "as planned", Tubs: len(tubs), Pumps: len(tubs) * pumps, Planned: true, Litres: big,
		Mass: b.Work(massLaw, "mass", "water of the biggest tub, its mass", big, density),
		Lost: b.Typed("lost", "plants of the fullest tub", "l", quantity.Count, float64(most), 0),
	}
}
