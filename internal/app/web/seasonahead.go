package web

import (
	"fmt"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/term"
)

// lowAhead is a tub that may run low in closed days to come.
type lowAhead struct{ Tub, Says string }

// aheadDays is how far ahead the page Today looks: what can be done for a break
// is done in the days before it.
const aheadDays = 14

// runsLow tells which tubs may run low in the days to come, from seasons that
// were worked out with the readings of now. Where none was, it tells nothing:
// the page Today waits for no forecast.
func (s *Server) runsLow(o *opened) []lowAhead {
	a := s.seasonKept(o, o.rows)
	if a == nil {
		return nil
	}
	now := o.Now
	if !o.bound() {
		first, _ := a.Term.First()
		now = a.Term.Arrives(first, o.Now.Location())
	}
	at := func(t time.Time) string { return t.In(now.Location()).Format("Mon 2 Jan, 15:04") }
	var out []lowAhead
	for _, t := range a.Tubs {
		if t.Season == nil {
			continue
		}
		for _, c := range t.Season.Closed {
			if c.Risk < shortRisk || !c.To.After(now) || term.DateOf(c.From.In(now.Location())).Since(term.DateOf(now)) > aheadDays {
				continue
			}
			out = append(out, lowAhead{t.Name, fmt.Sprintf("%s may run low while nobody comes, from %s to %s: in %s cases.", t.Name, at(c.From), at(c.To), quantity.Chance(c.Risk))})
			break
		}
	}
	return out
}
