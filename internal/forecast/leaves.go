package forecast

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/science/crop"
)

// leafRates are the crops whose leaves are followed. Herbs, chards and
// strawberries branch or are picked leaf by leaf: no count of theirs is one.
var leafRates = map[string]facts.ID{
	"leaf lettuce": factLeavesLeafLettuce, "romaine": factLeavesRomaine, "butterhead": factLeavesButterhead,
}

// CountsLeaves tells whether the forecast learns from the leaves of a crop.
func CountsLeaves(c crop.Crop) bool { return leafRates[c.Name] != "" }

// leavesOf is how many leaves a plant of a stand has: so many for each
// day-degree over 0 °C since its seedling showed.
func (m *member) leavesOf(c *course, stand int) float64 {
	s := &c.Tub.Stands[stand]
	id, counted := leafRates[s.Crop.Name]
	if !counted {
		return 0
	}
	return value(id) * (s.Warmed + m.Warmed) * m.factors.Value(Leafing)
}
