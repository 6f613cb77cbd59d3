package season

import (
	"cmp"
	"math"
	"slices"

	"rootbell/internal/base/finding"
	"rootbell/internal/school/term"
)

// tasks are what is to be done on which day, in order.
func (a *Answer) tasks(w Wish) []Task {
	w.Bed = w.moved(a.MoveOn)
	var out []Task
	for _, d := range a.Crops {
		out = append(out, d.tasks(w)...)
	}
	for _, d := range a.Followed.Changes {
		if d.Before(a.HarvestTo) {
			out = append(out, Task{Kind: "change-out", On: d, MM: w.Line(d)})
		}
	}
	for i, l := range w.Care.Lines {
		if !l.From.Before(a.MoveOn) && l.From.Before(a.HarvestTo) && (i == 0 || l.MM != w.Care.Lines[i-1].MM) {
			out = append(out, Task{Kind: "lower", On: l.From, MM: l.MM, What: byStages})
		}
	}
	if on, ok := w.lowered(a.MoveOn); ok && on.Before(a.HarvestTo) {
		out = append(out, Task{Kind: "lower", On: on, MM: w.Care.LoweredMM})
	}
	out = append(out, a.raise(w)...)
	if harvest, ok := w.Calendar.OpenUntil(a.HarvestTo); ok {
		out = append(out, Task{Kind: "harvest", On: harvest})
	}
	if w.MealOn.Set() {
		out = append(out, Task{Kind: "meal", On: a.ReadyBy, Count: w.Eaters})
	}
	slices.SortStableFunc(out, func(x, y Task) int { return cmp.Or(x.On.Compare(y.On), cmp.Compare(order(x), order(y))) })
	return out
}

// byStages is what a line that is lowered step by step is told by.
const byStages = "stage"

// order is that of the tasks of one day.
func order(t Task) int {
	return slices.Index([]string{"order", "sow", "thin", "transplant", "lamp", "lower", "change-out", "harvest", "meal"}, t.Kind)
}

// tasks are those of a crop until it stands in the tub.
func (d CropDates) tasks(w Wish) []Task {
	c := w.Crops[d.Crop]
	name, plants := c.Kind.Name, w.Plants(c)
	out := []Task{{Kind: "transplant", On: d.MoveOn, Crop: name, Count: plants}}
	days, _ := c.Nursery()
	what, by := "seeds", d.SowOn
	if days == 0 {
		what, by = "young plants", d.MoveOn
	} else if d.SowOn.Set() {
		out = append(out, Task{Kind: "sow", On: d.SowOn, Crop: name, Count: d.Seeds, Cells: d.Cells})
	}
	if d.ThinOn.Set() {
		out = append(out, Task{Kind: "thin", On: d.ThinOn, Crop: name, Count: d.Cells})
	}
	if by.Set() && by.After(w.Today) {
		on, ok := w.Calendar.OpenUntil(by.Add(-w.lead()))
		if !ok || on.Before(w.Today) { // late already: as soon as somebody is there
			on, ok = w.Calendar.OpenFrom(w.Today)
		}
		if ok && !on.After(by) {
			out = append(out, Task{Kind: "order", On: on, Crop: name, What: what, Before: by})
		}
	}
	return out
}

// raise are the days on which the lamp is raised: on the last open day before
// the tallest plants, in three runs of four, would be too near to it.
func (a *Answer) raise(w Wish) (out []Task) {
	hang := w.Hang
	if hang.OverLidMM <= 0 || hang.StepMM <= 0 {
		return nil
	}
	f := a.Followed
	for i, day := range f.Dates {
		if !day.Open || i == 0 || day.Date.After(a.HarvestTo) {
			continue
		}
		next := i + 1
		for next < len(f.Dates) && !f.Dates[next].Open {
			next++
		}
		tall := 0.0
		for _, st := range f.Days[min(next, len(f.Days)-1)].Stands {
			tall = max(tall, st.HeightMM.P75)
		}
		if tall+hang.OverLeafMM <= hang.OverLidMM {
			continue
		}
		to := hang.OverLidMM + hang.StepMM*math.Ceil((tall+hang.OverLeafMM-hang.OverLidMM)/hang.StepMM)
		if hang.MostMM > 0 && to > hang.MostMM {
			a.say(finding.Warn, "season-lamp-low", "From "+day.Date.Words()+" on plants may be nearer to the lamp than they should be: it cannot be raised further.", "Harvest the tallest first, or dim the lamp.")
			return out
		}
		out, hang.OverLidMM = append(out, Task{Kind: "lamp", On: day.Date, MM: to}), to
	}
	return out
}

// lowered is the first open day on which a tub is filled up to its lower line
// only; false where the line stays, or comes down by stages.
func (w Wish) lowered(move term.Date) (term.Date, bool) {
	c := w.Care
	if !move.Set() || c.LowerDays <= 0 || c.LoweredMM <= 0 || c.LoweredMM >= w.Line(move) {
		return term.Date{}, false
	}
	return w.Calendar.OpenFrom(move.Add(c.LowerDays))
}

// Lowering are the fill lines by which a tub's line is lowered in stages, once
// roots hang: a step on each open day, no more than roots follow, down to a
// line a little under the cups. It is empty where there is nothing to lower.
func Lowering(b Bed, move term.Date) []Line {
	to := b.Tub.CupBottomMM - value(factLowerGap)
	line := b.Tub.LineMM
	if !(to > b.Tub.LowestMM) || to >= line {
		return nil
	}
	var out []Line
	for d, ok := b.Calendar.OpenFrom(move.Add(int(value(factLowerFrom)))); ok && line > to; d, ok = b.Calendar.Next(d) {
		line = max(to, line-value(factLowerRate))
		out = append(out, Line{From: d, MM: line})
	}
	return out
}

// Lowered is the day from which a tub's line has stood a little under its cups,
// so that roots grow in the air gap; false where it does not come.
func (b Bed) Lowered() (term.Date, bool) {
	for _, l := range b.Care.Lines {
		if l.MM <= b.Tub.CupBottomMM-value(factLowerGap)+0.5 {
			return l.From, true
		}
	}
	return term.Date{}, false
}
