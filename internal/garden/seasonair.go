package garden

import (
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/oxygen"
)

// shortOfAir says where half the runs come under the oxygen that roots should
// have, on days on which the water stands as it should: the plants of a forecast
// grow on all the same.
func (s *tubSeason) shortOfAir() {
	if s.t.setup.Still {
		return
	}
	_, warn, _, _ := oxygen.Levels()
	first, least := "", warn
	for _, d := range s.out.Days {
		if d.DOBand.P50 >= warn || d.LevelMM.P50 < s.bed.Tub.LowestMM {
			continue
		}
		if first == "" {
			first = d.Date
		}
		least = min(least, d.DOBand.P50)
	}
	if first == "" {
		return
	}
	mgL := func(x float64) string { return quantity.FormatNumber(x, 1) }
	s.warn("season-oxygen", s.field, fmt.Sprintf("%s: from %s on half the runs come under %s mg/L of oxygen in the water, and down to %s. Roots suffer then; the plants of this forecast grow on as if they had enough.", s.t.name, words(first), mgL(warn), mgL(least)),
		"Give it more air or a finer stone, fewer plants, cooler water, or more water before nobody comes. Build says how much air it needs.")
}
