package season

import (
	"context"
	"fmt"
	"math"
	"slices"

	"rootbell/internal/base/finding"
	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
)

// ask makes ready what a wish can be looked for with; what keeps it from being
// looked for at all is said.
func (a *Answer) ask(w Wish, e Effort) (*search, bool) {
	by, ok := a.day(w)
	if !ok {
		return nil, false
	}
	a.ReadyBy = by
	s := &search{w: w, e: e, first: w.Today, by: by, seen: map[try]came{}}
	if w.MoveOn.Set() { // what was sown for it was sown when it was
		s.first = term.Date{}
	}
	s.candidates()
	for _, c := range w.Crops {
		if _, grows := c.Nursery(); !grows {
			a.say(finding.Stop, "season-no-seedlings", fmt.Sprintf("At %.0f °C no figures are known for %s seed, or nothing comes up.", c.Seed.TempC, c.Kind.Name), "Sow where it is 18 to 22 °C, or buy seedlings.")
			return nil, false
		}
	}
	switch {
	case len(w.Crops) == 0 || len(w.Tub.Stands) == 0:
		a.say(finding.Stop, "season-no-plants", "No plants stand in this tub, so there is nothing to sow.", "Give the tub a crop and some plants.")
		return nil, false
	case len(s.days) == 0 || s.days[0].After(by):
		a.say(finding.Stop, "season-too-late", "No day is left for sowing and moving plants before "+by.Words()+".", "Choose a later meal, or buy seedlings.")
		return nil, false
	}
	if w.dark() {
		a.say(finding.Warn, "season-dark", "No light falls on the plants, so none of them is ready on any day.", "Give the lamp's light and its hours.")
	}
	return s, true
}

// dark tells whether no stand has light.
func (b Bed) dark() bool {
	most := 0.0
	for _, s := range b.Tub.Stands {
		most = max(most, s.PPFD)
	}
	return most*b.Lamp.Hours() <= 0
}

// day is the one that a tub is to be ready by: the meal, or the last open day
// of the term.
func (a *Answer) day(w Wish) (term.Date, bool) {
	if _, ok := w.Calendar.OpenFrom(w.Today); !ok {
		a.say(finding.Stop, "season-no-open-day", "From "+w.Today.Words()+" on the school has no open day.", "Give the terms, and the days of the week with school.")
		return term.Date{}, false
	}
	if !w.MealOn.Set() {
		i, ok := w.Calendar.Current(w.Today)
		if !ok {
			a.say(finding.Note, "season-no-end", "Neither a meal nor a term is given, so no day can be worked back from.", "Give the day of the meal, or the terms.")
			return term.Date{}, false
		}
		return w.Calendar.OpenUntil(w.Calendar.Terms()[i].To)
	}
	if w.MealOn.Before(w.Today) {
		a.say(finding.Note, "season-meal-past", "The meal on "+w.MealOn.Words()+" is over.", "Give the day of the next one.")
		return term.Date{}, false
	}
	by, ok := w.Calendar.OpenUntil(w.MealOn)
	switch {
	case !ok || by.Before(w.Today):
		a.say(finding.Stop, "season-meal-closed", "No open day lies before the meal on "+w.MealOn.Words()+".", "Choose a day of a term for the meal.")
		return by, false
	case by != w.MealOn:
		a.say(finding.Warn, "season-meal-closed", "Nobody is at the school on "+w.MealOn.Words()+", the day of the meal.", "Choose an open day. Until then the harvest is planned for "+by.Words()+".")
	}
	return by, true
}

func (a *Answer) say(level finding.Level, code, text, hint string) {
	a.Findings = append(a.Findings, finding.Finding{Level: level, Code: code, Text: text, Hint: hint})
}

// choose looks for the latest, the best and the earliest candidate, and gives
// the best one's place.
func (a *Answer) choose(ctx context.Context, s *search) (best int, err error) {
	if len(s.days) == 1 {
		a.MoveLatest = s.days[0]
		return 0, nil
	}
	latest, err := s.latest(ctx, ready(a.Wanted))
	if err != nil || latest < 0 {
		return 0, err
	}
	if best, err = s.best(ctx, a.Wanted); err != nil {
		return 0, err
	}
	from := max(0, slices.IndexFunc(s.days, func(d term.Date) bool { return !d.Before(s.past()) }))
	if best < from {
		best = min(from, latest)
	}
	best = s.tended(from, best)
	from = min(from, best)
	a.MoveLatest = s.days[latest]
	a.SowLatest, _ = s.sow(s.days[latest])
	a.SowFrom, _ = s.sow(s.days[from])
	return best, nil
}

// best is the last candidate that leaves nineteen runs in twenty ready and
// plants as large as they are usually picked; as large as they become where
// that is not to be had, and -1 where not so many are ready.
func (s *search) best(ctx context.Context, wanted float64) (int, error) {
	sure := ready(max(wanted, BestChance()))
	best, err := s.latest(ctx, sure)
	if err != nil || best < 0 || s.w.NeededG <= 0 {
		return best, err
	}
	large, err := s.latest(ctx, func(c came) bool { return sure(c) && c.picked })
	if err != nil || large < 0 || s.days[large].Before(s.past()) {
		return best, err
	}
	return large, nil
}

// tended is the last candidate up to the best one whose seedlings are not left
// alone for long; the best one where there is none.
func (s *search) tended(from, best int) int {
	for i := best; i >= from; i-- {
		left := false
		for _, c := range s.w.Crops {
			d, ok := c.dates(s.w.Calendar, s.days[i], s.first, s.w.Plants(c))
			_, alone := s.w.alone(d)
			left = left || ok && alone
		}
		if !left {
			return i
		}
	}
	return best
}

// alone is the first closed stretch over which a crop's seedlings would be left
// alone longer than a tray lasts.
func (b Bed) alone(d CropDates) (term.Stretch, bool) {
	if !d.SowOn.Set() || !d.SowOn.Before(d.MoveOn) {
		return term.Stretch{}, false
	}
	for _, s := range b.Calendar.Stretches(term.Span{From: d.SowOn, To: d.MoveOn}, b.zone()) {
		if s.Days() > int(value(factNurseryAlone)) {
			return s, true
		}
	}
	return term.Stretch{}, false
}

// longestAlone is how many days in a row a crop's seedlings would be left alone
// at the longest; 0 where that is never longer than a tray lasts.
func (b Bed) longestAlone(d CropDates) (days int) {
	for {
		s, ok := b.alone(d)
		if !ok {
			return days
		}
		days, d.SowOn = max(days, s.Days()), s.After()
	}
}

// past is the first day for a move whose plants are still at their best on the
// day of the answer.
func (s *search) past() term.Date { return s.by.Add(-s.w.standDays()) }

// standDays is how long the plants of a tub stay at their best: the usual days
// of the crop that is over first, and some more.
func (b Bed) standDays() int {
	days := math.Inf(1)
	for _, c := range b.Crops {
		days = min(days, c.Kind.Days().High)
	}
	if math.IsInf(days, 1) {
		return mostTubDays
	}
	return int(days + value(factStandLate))
}

// sow is the first sowing day of the crops that move on a day.
func (s *search) sow(move term.Date) (first term.Date, ok bool) {
	for _, c := range s.w.Crops {
		d, good := c.dates(s.w.Calendar, move, s.first, s.w.Plants(c))
		if good && (!ok || d.SowOn.Before(first)) {
			first, ok = d.SowOn, true
		}
	}
	return first, ok
}

// tell follows the best candidate with all members and enters what comes of it.
func (a *Answer) tell(ctx context.Context, s *search, best int) error {
	members := s.e.members()
	f, err := s.run(ctx, s.course(s.days[best], false), members)
	if err != nil {
		return err
	}
	held := f
	if slices.ContainsFunc(f.Standing, func(st Standing) bool { return st.Dry.Risk > seldomDry }) {
		if held, err = s.run(ctx, s.course(s.days[best], true), members); err != nil {
			return err
		}
	}
	last := held.Days[len(held.Days)-1]
	a.Followed, a.MoveOn, a.Chance, a.MassG = f, s.days[best], last.Ready, last.CropG
	a.Can = a.Chance >= a.Wanted
	if left := f.Days[len(f.Days)-1].Ready; left < a.Chance-dryCosts {
		a.say(finding.Warn, "season-dry-costs", fmt.Sprintf("Left alone as it stands, the tub may run dry: then %d in 100 runs are ready, not %d.", percent(left), percent(a.Chance)), "Keep to the plan to leave it.")
	}
	a.SowOn, _ = s.sow(a.MoveOn)
	if !a.SowFrom.Set() {
		a.SowFrom = a.SowOn
	}
	if len(s.days) == 1 && a.Can {
		a.SowLatest = a.SowOn
	} else if len(s.days) == 1 {
		a.MoveLatest = term.Date{}
	}
	a.harvest(s, held)
	a.crops(s, held)
	return nil
}

// seldomDry is a risk that no chance of being ready can notice.
const seldomDry = 0.01

// dryCosts is how much a chance must fall to be told.
const dryCosts = 0.02

func percent(p float64) int { return int(math.Round(100 * p)) }

// harvest enters the days between which it can be picked.
func (a *Answer) harvest(s *search, f Followed) {
	for i, day := range f.Days {
		if day.Ready >= 0.5 && f.Dates[i].Open {
			a.HarvestFrom = f.Dates[i].Date
			break
		}
	}
	a.HarvestTo = a.ReadyBy
	late, ok := s.w.Calendar.OpenUntil(a.MoveOn.Add(s.w.standDays()))
	what := "enough by the meal"
	if !s.w.MealOn.Set() {
		what = "large enough by the term's end"
	}
	switch {
	case !ok || !late.Before(a.HarvestTo):
	case !s.w.MealOn.Set() && f.readyOn(late) >= a.Wanted:
		a.HarvestTo = late
	default:
		a.say(finding.Note, "season-stands-long", fmt.Sprintf("To be %s the plants stand in the tub for %d days, which is longer than usual.", what, a.ReadyBy.Since(a.MoveOn)), "Pick outer leaves and tips on the way, so that they stay tender; more light would make it shorter.")
	}
	if a.HarvestTo.Before(a.HarvestFrom) {
		a.HarvestTo = a.HarvestFrom
	}
}

// readyOn is the chance of being ready on a day; 0 for one that was not followed.
func (f Followed) readyOn(on term.Date) float64 {
	for i, d := range f.Dates {
		if d.Date == on {
			return f.Days[i].Ready
		}
	}
	return 0
}

// crops enters the dates of each crop, and what becomes of it.
func (a *Answer) crops(s *search, f Followed) {
	for i, c := range s.w.Crops {
		d, ok := c.dates(s.w.Calendar, a.MoveOn, s.first, s.w.Plants(c))
		if !ok {
			d.MoveOn = a.MoveOn
		}
		if d.Cells == 0 && d.Enough < 1 {
			a.say(finding.Warn, "season-seeds", "No number of "+c.Kind.Name+" seeds from this packet gives enough seedlings.", "Use fresh seed, and a warmer or cooler place for the plugs.")
		}
		d.Crop = i
		d.MassG, d.Ready = c.came(s.w.Tub, f)
		a.Crops = append(a.Crops, d)
		if away, ok := s.w.alone(d); ok && !away.To.Before(s.w.Today) {
			a.say(finding.Warn, "season-nursery-closed", c.Kind.Name+" seedlings stand in their tray over the closed days from "+away.From.Words()+" to "+away.To.Words()+".", "Somebody takes the tray home or waters it every other day.")
		}
	}
}

// came is the mass of a plant of the crop at the end of a course, and the
// chance that each of them has its harvest mass.
func (c Crop) came(t forecast.Tub, f Followed) (massG forecast.Band, ready float64) {
	var each []float64
	for _, end := range f.Ends {
		all, plants, full := 0.0, 0, true
		for _, j := range c.Stands {
			s := &t.Stands[j]
			g := s.Model.HarvestG(end.Stands[j], s.PerM2)
			all, plants = all+g*float64(end.Plants[j]), plants+end.Plants[j]
			full = full && (end.Plants[j] == 0 || g >= s.PickG)
		}
		if plants > 0 {
			each = append(each, all/float64(plants))
			if full {
				ready++
			}
		}
	}
	if len(each) == 0 {
		return massG, 0
	}
	return bandOf(each), ready / float64(len(f.Ends))
}
