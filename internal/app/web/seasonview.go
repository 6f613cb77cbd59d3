package web

import (
	"fmt"
	"html/template"
	"slices"
	"strings"
	"time"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/pack"
	"rootbell/internal/school/term"
)

// shortRisk is the chance of falling below the lowest line from which on
// something is to be done for a closed stretch.
const shortRisk = 0.05

// seasonWork is what the assessment says of one tub's season, ready to be
// shown. Each of its parts is replaced by itself while a teacher types.
type seasonWork struct {
	ID, Tub    string
	Example    bool
	Known      bool // the season could be worked out
	Bold, Rest string
	Guess      string
	Missed     bool // not ready with the chance that is wanted
	Moves      []string
	Findings   []findingView
	Further    []findingView
	Closed     []closedView
	Quiet      string     // the stretches for which nothing is needed, in a sentence
	Past       []taskView // of days before today
	Tasks      []taskView
	Crops      []cropView
	Charts     []seasonChart
	Days       []dayRow
	Part       string // which days of a long season are shown
	Volume     string // the unit of what is drunk
	Score      []scoreView
	Learnt     []string
	Counted    []string // how the chances were counted
	Workings   []workingView
	Papers     []pack.Paper
}

type taskView struct{ On, Do, Why string }

type cropView struct {
	Crop, Plants, Seeds, Sow, Move, Pick, Band, Ready string
}

type scoreView struct{ Of, Count, Wide, Half, Off, Says string }

// seasonOf is the season of one tub being put in words.
type seasonOf struct {
	*seasonWork
	a     *garden.Assessment
	t     *garden.Tub
	s     *garden.Season
	zone  *time.Location
	today term.Date
	units quantity.System
	shown []garden.SeasonDay // the days that the page shows
}

// seasonWorkOf shows a tub of an assessment that was asked for its seasons.
func seasonWorkOf(o *opened, a *garden.Assessment, f *form, tub int) *seasonWork {
	t := &a.Tubs[tub]
	w := &seasonWork{ID: o.ID, Example: o.Example, Tub: t.Name, Known: t.Season != nil, Papers: pack.SeasonOf(a, revisionOf(o))}
	w.findings(o, a, f, tub)
	if t.Season == nil {
		w.Bold, w.Rest = "Not worked out yet:", "something below has to be settled first."
		if a.Term == nil || !a.Term.Known() {
			w.Bold, w.Rest = "No school calendar yet.", "Say when the term begins and ends: the days follow."
		}
		return w
	}
	v := &seasonOf{seasonWork: w, a: a, t: t, s: t.Season, zone: o.Now.Location(), today: term.Date(o.Today), units: a.Plan.Units}
	if !o.bound() {
		v.today, _ = term.ParseDate(a.On)
	}
	w.Missed = v.s.ReadyChance < v.s.WantedChance
	w.Moves, w.Guess = v.s.Moves, sentenceOrNone(v.s.Guess)
	v.answer()
	v.closed(o)
	v.tasks()
	v.crops()
	v.charts(o)
	v.days()
	v.scores()
	v.counted()
	w.Workings = append(w.Workings, numbersOf(o, a, v.s.Key+".", "ready_chance", "needed", "expected", "seeds", "thirst")...)
	return w
}

func sentenceOrNone(text string) string {
	if text == "" {
		return ""
	}
	return sentence(text)
}

// findings takes what concerns a season, and the stops without which there
// would be one.
func (w *seasonWork) findings(o *opened, a *garden.Assessment, f *form, tub int) {
	concerns := func(one finding.Finding) bool {
		return !ofAnotherTub(one.Field, tub) && !saidOfAnother(a, one.Text, tub) &&
			(garden.OfSeason(one) || movesSeason(one.Field) || !w.Known && one.Level == finding.Stop)
	}
	w.Findings, w.Further = foremostOf(findingsOf(o, a, f, concerns, nowhere))
}

// saidOfAnother tells whether what a finding says begins with another tub's name:
// what is about a lamp stands at the lamp.
func saidOfAnother(a *garden.Assessment, text string, tub int) bool {
	for i, t := range a.Tubs {
		if i != tub && strings.HasPrefix(text, t.Name+": ") {
			return true
		}
	}
	return false
}

// movesSeason tells whether a field is among those that a season rests on and
// Build does not.
func movesSeason(field string) bool {
	for _, head := range []string{"school.meal", "school.visits", "lamps", "lux", "place."} {
		if strings.HasPrefix(field, head) {
			return true
		}
	}
	_, rest, _ := strings.Cut(field, "].")
	rest, _, _ = strings.Cut(rest, ".")
	return slices.Contains([]string{"sow", "transplant", "harvest_mass", "max_fill", "seed", "nursery"}, rest)
}

// dayIn is a day of the calendar; one that cannot be read is not set.
func dayIn(text string) term.Date {
	d, _ := term.ParseDate(text)
	return d
}

// wordsOf is a day as people say it; a dash where it is not known.
func wordsOf(text string) string {
	if d := dayIn(text); d.Set() {
		return d.Words()
	}
	return "–"
}

// at is a moment as people say it at the school.
func (v *seasonOf) at(t time.Time) string { return t.In(v.zone).Format("Mon 2 Jan, 15:04") }

// goal is the day everything aims at: 'the meal on Wed 24 Mar'.
func (v *seasonOf) goal() string {
	if d := term.Date(v.a.Plan.School.Meal.Day); d.Set() && v.a.Term.Open(d) {
		return "the meal on " + d.Words()
	}
	return "the end of the term"
}

// short is the next closed stretch for which something is to be done.
func (v *seasonOf) short() *garden.LeaveIt {
	for i := range v.s.Closed {
		if c := &v.s.Closed[i]; c.Risk >= shortRisk && !term.DateOf(c.To.In(v.zone)).Before(v.today) {
			return c
		}
	}
	return nil
}

// answer is the first sentence of the page: what to do next, and how sure.
func (v *seasonOf) answer() {
	sow, move, last := dayIn(v.s.SowOn), dayIn(v.s.TransplantOn), dayIn(v.s.HarvestTo)
	short := v.short()
	ready := fmt.Sprintf("ready by %s in %s cases.", v.goal(), quantity.Chance(v.s.ReadyChance))
	switch {
	case !move.Set():
		v.Bold, v.Rest = fmt.Sprintf("No day is left on which to sow %s", v.Tub), "so that it is ready by "+v.goal()+"."
		return
	case last.Set() && v.today.After(last):
		v.Bold, v.Rest = v.Tub+" is past its harvest.", "Its last good day was "+last.Words()+"."
		return
	case v.Missed:
		v.Bold = fmt.Sprintf("%s will hardly be ready by %s:", v.Tub, v.goal())
		if v.s.ReadyChance >= 0.5 {
			v.Bold = fmt.Sprintf("%s may not be ready by %s:", v.Tub, v.goal())
		}
		v.Rest = fmt.Sprintf("it is in %s cases, and %s is wanted.", quantity.Chance(v.s.ReadyChance), strings.TrimPrefix(quantity.Chance(v.s.WantedChance), "about "))
		if len(v.s.Moves) > 0 {
			v.Rest += " What could be done stands below."
		}
		return
	case sow.Set() && !v.today.After(sow):
		v.Bold, v.Rest = fmt.Sprintf("Sow %s on %s;", v.Tub, sow.Words()), ready
	case move.Set() && !v.today.After(move):
		v.Bold, v.Rest = fmt.Sprintf("Move %s into its tub on %s;", v.Tub, move.Words()), ready
	case short != nil:
		v.Bold = fmt.Sprintf("%s may run low from %s.", v.Tub, v.at(short.From))
		v.Rest = v.low(short)
		return
	default:
		v.Bold, v.Rest = fmt.Sprintf("Harvest %s from %s;", v.Tub, wordsOf(v.s.HarvestFrom)), ready
	}
	if short != nil {
		v.Rest += " " + v.low(short)
	}
}

// low says how likely a stretch runs low, and what one choice brings.
func (v *seasonOf) low(c *garden.LeaveIt) string {
	text := fmt.Sprintf("Between %s and %s its water falls below the lowest line in %s cases.", v.at(c.From), v.at(c.To), quantity.Chance(c.Risk))
	if c.Take >= 0 && c.Take < len(c.Options) {
		text += fmt.Sprintf(" One choice below brings that to %s.", strings.TrimPrefix(quantity.Chance(c.Options[c.Take].Risk), "about "))
	}
	return text
}

func (v *seasonOf) tasks() {
	for _, t := range v.s.Tasks {
		one := taskView{wordsOf(t.On), sentence(t.Do), sentenceOrNone(t.Why)}
		if day, err := term.ParseDate(t.On); err == nil && day.Before(v.today) {
			v.Past = append(v.Past, one)
			continue
		}
		v.Tasks = append(v.Tasks, one)
	}
}

func (v *seasonOf) crops() {
	for _, c := range v.s.Ready {
		v.Crops = append(v.Crops, cropView{
			Crop: c.Crop, Plants: fmt.Sprint(c.Plants), Seeds: fmt.Sprint(c.Seeds), Sow: wordsOf(c.SowOn), Move: wordsOf(c.Transplant),
			Pick: v.mass(c.PickG), Band: v.mass(c.MassG.P50) + ", 9 in 10: " + v.massNumber(c.MassG.P5) + " to " + v.massNumber(c.MassG.P95), Ready: quantity.InHundred(c.ReadyChance),
		})
	}
}

func (v *seasonOf) mass(g float64) string {
	return quantity.Format(quantity.SmallMass, g/1000, v.units)
}

func (v *seasonOf) massNumber(g float64) string {
	return quantity.FormatNumber(quantity.SmallMass.Unit(v.units).From(g/1000), quantity.SmallMass.Decimals[v.units])
}

func (v *seasonOf) scores() {
	names := map[string]string{"level": "level", "ec": "EC", "height": "height", "harvest": "harvest", "leaves": "leaves"}
	for _, s := range v.s.Score {
		if s.Count == 0 {
			continue
		}
		name, ok := names[s.Of]
		if !ok {
			name = s.Of
		}
		v.Score = append(v.Score, scoreView{Of: name, Count: fmt.Sprint(s.Count), Wide: fmt.Sprint(s.InWide), Half: fmt.Sprint(s.InHalf), Off: v.off(s), Says: sentenceOrNone(s.Says)})
	}
	for _, l := range v.s.Learnt {
		if l.Says != "" {
			v.Learnt = append(v.Learnt, sentence(l.Says))
		}
	}
}

// off is how far forecasts were off on average.
func (v *seasonOf) off(s garden.SeasonScore) string {
	switch s.Of {
	case "level", "height":
		return quantity.Format(quantity.Length, s.MeanOff, v.units)
	case "ec":
		return quantity.FormatNumber(s.MeanOff, quantity.Conductivity.Decimals[v.units]) + "\u00a0mS/cm"
	case "harvest":
		return v.mass(s.MeanOff)
	}
	return quantity.FormatNumber(s.MeanOff, 1)
}

// counted says in the margin how a chance came about.
func (v *seasonOf) counted() {
	if v.s.Runs == 0 {
		return
	}
	v.Counted = append(v.Counted, fmt.Sprintf("The program plays these days %s times, each time with a slightly different thirst and growth, and counts.", grouped(v.s.Runs)))
	if c := v.short(); c != nil {
		v.Counted = append(v.Counted, fmt.Sprintf("Of %s runs %s fell below the line between %s and %s.", grouped(v.s.Runs), grouped(int(c.Risk*float64(v.s.Runs)+0.5)), v.at(c.From), v.at(c.To)))
	}
	v.Counted = append(v.Counted, "Under the lowest line some roots no longer reach the water.")
}

// grouped is a count as people write it: 1,000.
func grouped(n int) string {
	text := fmt.Sprint(n)
	for i := len(text) - 3; i > 0; i -= 3 {
		text = text[:i] + "," + text[i:]
	}
	return text
}

// seasonChart is one quantity over the season's days.
type seasonChart struct {
	Name, Key, Says string
	Desk, Hand      template.HTML
	Unit            string
	Rows            []bandRow // few of them
	rows            []bandRow // of all days
}
