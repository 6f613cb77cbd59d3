package classroom

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// handOver is the pack for the next teacher.
func (p papers) handOver(paper scene.Size) []content.Sheet {
	s := content.Sheet{Title: "Hand-over pack", Block: p.block("Hand-over pack", paper), Sections: []content.Section{
		{Heading: "The plan in short", Tables: []content.Table{p.tubTable()}, List: p.inShort()},
		{Heading: "Where things stand", List: p.stand()},
		{Heading: "What was learned", Paragraphs: append(p.learned(), p.truth()...), Lines: []content.Line{
			"What surprised us ________________________________",
			"What we would not do again ________________________",
		}},
		{Heading: "Next dates", List: p.dates()},
		{Heading: "Who and where, by hand", Lines: []content.Line{
			"Key to the room ______________ Caretaker ______________",
			"Fertiliser and acid are locked in ______________________",
			"The board, and the circuit's number ____________________",
		}},
		{Heading: "What to take along", List: []string{
			"The garden as one file, from the page 'Plan as text': all plans and the logbook. It has no person's name.",
			"These papers, the dipsticks, the lid sheets, the meter passports.",
			"not the list of pupils: that stays with the teacher who made it.",
		}},
	}}
	return []content.Sheet{s}
}

// tubTable is each tub in a row.
func (p papers) tubTable() content.Table {
	t := content.Table{Caption: "Tubs", Columns: []content.Column{
		{Head: "tub"}, {Head: "crop"}, {Head: "plants", Number: true}, {Head: "solution", Number: true}, {Head: "fill line", Number: true}, {Head: "filled", Number: true},
	}}
	for _, tub := range p.a.Tubs {
		row := []string{tub.Name, crops(tub), "–", "–", "–", "–"}
		if tub.Plants != nil {
			row[2] = fmt.Sprint(tub.Plants.Count)
		}
		if tub.VolumeSolution != nil {
			row[3] = p.litres(*tub.VolumeSolution)
		}
		if tub.FillDepthMM != nil {
			row[4] = quantity.Format(quantity.Length, *tub.FillDepthMM, p.a.Plan.Units)
		}
		if tub.MassFilledKG != nil {
			row[5] = quantity.Format(quantity.Mass, quantity.Kilogram.Base(*tub.MassFilledKG), p.a.Plan.Units)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// inShort is what else the plan says that a successor asks first.
func (p papers) inShort() []string {
	var out []string
	for _, t := range p.a.Tubs {
		if t.Mix != nil && t.Mix.EC != nil && t.Mix.Band != nil {
			out = append(out, fmt.Sprintf("%s: nutrient solution with EC %s; %s is as it should be.", t.Name, t.Mix.ECWords(*t.Mix.EC), t.Mix.ECRange()))
		}
	}
	var shelf []string
	for _, f := range p.a.Plan.Fertilisers {
		shelf = append(shelf, f.Name)
	}
	if len(shelf) > 0 {
		out = append(out, "On the shelf: "+listed(shelf)+".")
	}
	for _, l := range p.a.Plan.Lamps {
		if l.Lit[0].Given && l.Lit[1].Given {
			name := l.Name
			if name == "" {
				name = "the lamp"
			}
			out = append(out, fmt.Sprintf("%s is lit from %s to %s.", sentenceHead(name), l.Lit[0].Value, l.Lit[1].Value))
		}
	}
	if n := p.c.Report.Learners; n > 0 {
		out = append(out, fmt.Sprintf("A class of %d.", n))
	}
	for _, f := range p.a.Findings {
		if f.Level == finding.Stop {
			out = append(out, "To mend first: "+f.Text)
		}
	}
	return out
}

func sentenceHead(text string) string {
	s := sentence(text)
	return s[:len(s)-1]
}

// stand is each tub as last read, and what is to be done about it.
func (p papers) stand() []string {
	var out []string
	for _, t := range p.a.Tubs {
		now := t.Today
		if now == nil {
			out = append(out, t.Name+" cannot be filled as planned: its lines contradict each other.")
			continue
		}
		if now.ReadOn == "" {
			out = append(out, t.Name+": not measured yet. Its line is at "+now.Line+".")
			continue
		}
		text := fmt.Sprintf("%s: level %s as read on %s, its line at %s.", t.Name, now.Level, now.ReadOn, now.Line)
		if now.Lowest != "" {
			text += " Never under " + now.Lowest + "."
		}
		out = append(out, text)
		for _, a := range now.Advice {
			if a.Do != "" && a.Text != "" {
				out = append(out, t.Name+": "+sentence(a.Text))
			}
		}
	}
	return out
}

// mostDates is how many dates are told: the rest stands on the page Season.
const mostDates = 10

// ahead is how many days closed stretches are looked for.
const ahead = 120

// longDays is from how many closed days in a row on they are told of; a weekend
// has two.
const longDays = 3

type dated struct {
	on   term.Date
	text string
}

// dates are the next days that matter, by the calendar and the season.
func (p papers) dates() []string {
	if p.a.Today == nil || !p.a.Today.On.Set() {
		return []string{"The plan names no term, so there are no dates."}
	}
	on := p.a.Today.On
	all := p.tasks(on)
	if next, ok := p.a.Term.OpenFrom(on); ok {
		all = append(all, dated{next, "the next day on which somebody comes."})
	}
	for _, s := range p.a.Term.Stretches(term.Span{From: on, To: on.Add(ahead)}, p.a.Today.At.Location()) {
		if s.Days() >= longDays {
			all = append(all, dated{s.From, fmt.Sprintf("nobody comes until %s (%s).", s.To.Long(), s.Why)})
		}
	}
	if meal := term.Date(p.a.Plan.School.Meal.Day); meal.Set() && !meal.Before(on) {
		all = append(all, dated{meal, "the meal."})
	}
	slices.SortStableFunc(all, func(a, b dated) int { return a.on.Compare(b.on) })
	var out []string
	for _, d := range all[:min(len(all), mostDates)] {
		out = append(out, d.on.Long()+": "+d.text)
	}
	if p.c.Term != nil && !p.c.Term.To.Before(on) {
		out = append(out, p.c.Term.To.Long()+": the term ends. The lay-up card is for that day.")
	}
	if len(all) > mostDates {
		out = append(out, "All later days stand in the season's papers.")
	}
	return out
}

// tasks are what the seasons of the tubs ask for from a day on; the meal is told
// once for all tubs.
func (p papers) tasks(from term.Date) []dated {
	var out []dated
	for _, t := range p.a.Tubs {
		if t.Season == nil {
			continue
		}
		for _, task := range t.Season.Tasks {
			if d, err := term.ParseDate(task.On); err == nil && !d.Before(from) && task.Kind != "meal" && task.Do != "" {
				out = append(out, dated{d, t.Name + ": " + strings.ToLower(task.Do[:1]) + sentence(task.Do)[1:]})
			}
		}
	}
	return out
}
