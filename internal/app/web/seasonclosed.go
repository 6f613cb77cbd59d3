package web

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/school/term"
)

// closedView is one stretch in which nobody comes.
type closedView struct {
	Name, From, To, Hours string
	Risk, High            string // in 100
	Chance                string // in words
	Dry                   string // when it reaches the lowest line
	Act                   bool
	Options               []optionView
	First                 bool // with something to do: the others are folded away
	None                  bool // no option brings it under the limit
	Cases                 []caseView
}

type optionView struct {
	Do, Risk, When string
	Take           bool
}

type caseView struct{ Name, Says string }

// closed puts the stretches in which nobody comes in words: those for which
// something is to be done and those longer than a weekend each by itself, the
// others in one sentence.
func (v *seasonOf) closed(o *opened) {
	quiet, hours, most := 0, 0.0, 0.0
	for i := range v.s.Closed {
		c := &v.s.Closed[i]
		if c.Risk < shortRisk && c.RiskHigh < shortRisk && c.Hours <= longWeekend {
			quiet, hours, most = quiet+1, max(hours, c.Hours), max(most, c.Risk)
			continue
		}
		view := v.closedView(c)
		view.First = len(c.Options) > 0 && !slices.ContainsFunc(v.Closed, func(c closedView) bool { return c.First })
		v.Closed = append(v.Closed, view)
		if one := numberOf(o, v.a, c.Key); one != nil {
			v.Workings = append(v.Workings, *one)
		}
	}
	if quiet > 0 {
		v.Quiet = fmt.Sprintf("%s short ones, of %.0f hours at most: in each it runs low in %s of 100 cases. Nothing is needed.", capital(quantity.InWords(quiet)), hours, atMost(most))
		if quiet == 1 {
			v.Quiet = fmt.Sprintf("A short one, of %.0f hours: it runs low in %s of 100 cases. Nothing is needed.", hours, quantity.InHundred(most))
		}
	}
}

// atMost is a chance that several keep under, as a table has it.
func atMost(p float64) string {
	if words := quantity.InHundred(p); strings.HasPrefix(words, "under") {
		return words
	}
	return "at most " + quantity.InHundred(p)
}

// longWeekend is how many hours a weekend has, from the last lesson on Friday
// to the first on Monday, and some to spare.
const longWeekend = 70

func (v *seasonOf) closedView(c *garden.LeaveIt) closedView {
	out := closedView{
		From: v.at(c.From), To: v.at(c.To), Hours: fmt.Sprintf("%.0f", c.Hours),
		Risk: quantity.InHundred(c.Risk), High: quantity.InHundred(c.RiskHigh), Chance: quantity.Chance(c.Risk), Act: c.Risk >= shortRisk,
	}
	out.Name = fmt.Sprintf("%s to %s", term.DateOf(c.From.In(v.zone)).Words(), term.DateOf(c.To.In(v.zone)).Words())
	if c.Why != "" {
		out.Name += ": " + c.Why
	}
	out.Dry = v.dry(c)
	for i, o := range c.Options {
		view := optionView{Do: sentence(o.Do), Risk: quantity.InHundred(o.Risk), Take: i == c.Take}
		if o.VisitA != nil && o.VisitB != nil {
			view.When = fmt.Sprintf("%s to %s", v.at(*o.VisitA), v.window(*o.VisitA, *o.VisitB))
		}
		out.Options = append(out.Options, view)
	}
	out.None = out.Act && c.Take < 0
	for _, one := range []struct {
		name string
		is   *garden.LeaveCase
	}{{"If the power fails", c.PowerCut}, {"If the air pump fails", c.PumpFailure}} {
		if one.is != nil {
			out.Cases = append(out.Cases, caseView{one.name, v.failure(one.is)})
		}
	}
	return out
}

// window is the end of a visit's window: the hour alone on the same day.
func (v *seasonOf) window(from, to time.Time) string {
	if term.DateOf(from.In(v.zone)) == term.DateOf(to.In(v.zone)) {
		return to.In(v.zone).Format("15:04")
	}
	return v.at(to)
}

// dry says when a stretch reaches the lowest line.
func (v *seasonOf) dry(c *garden.LeaveIt) string {
	switch {
	case c.RunsDryP50 != nil && c.RunsDryP95 != nil:
		return fmt.Sprintf("%s in the thirstiest 1 in 20, the middle %s", v.at(*c.RunsDryP95), v.at(*c.RunsDryP50))
	case c.RunsDryP95 != nil:
		return v.at(*c.RunsDryP95) + " in the thirstiest 1 in 20"
	}
	return "not in that time"
}

// failure says what a power cut or a pump's failure does.
func (v *seasonOf) failure(c *garden.LeaveCase) string {
	return fmt.Sprintf("%s Over %.0f hours of it, the water falls below the lowest line in %s cases.", sentence(c.Says), c.Hours, quantity.Chance(c.Risk))
}
