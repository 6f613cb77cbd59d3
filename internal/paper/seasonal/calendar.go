package seasonal

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// wall is the calendar as it hangs on the wall: weeks as rows, days as cells.
type wall struct {
	weeks []week
	broad [7]bool // the days of the week, from Monday, on which the school is open at some time
}

type week struct {
	number int // of the term; 0 before it
	monday term.Date
	days   [7]daily
}

type daily struct {
	at    term.Day
	shown bool // lies within the calendar
	broad bool // in a column with room for words
	lines []string
	jobs  []job
}

// wall lays the calendar out. ok is false where there is no day to show.
func (p papers) wall() (w wall, ok bool) {
	span, ok := p.shown()
	if !ok {
		return w, false
	}
	byDay := map[term.Date][]job{}
	for _, j := range slices.Concat(p.jobs(), p.weeklies(span), p.visitings()) {
		byDay[j.on] = append(byDay[j.on], j)
	}
	current, known := p.a.Term.Current(span.To)
	for monday := span.From.Monday(); !monday.After(span.To); monday = monday.Add(7) {
		one := week{monday: monday}
		if known {
			one.number = max(0, p.a.Term.WeekOf(current, monday))
		}
		for k := range one.days {
			d := p.a.Term.On(monday.Add(k))
			one.days[k] = daily{at: d, shown: span.Holds(d.Date), jobs: byDay[d.Date], lines: cell(byDay[d.Date])}
			if d.Kind == term.Open {
				w.broad[k] = true
			}
		}
		w.weeks = append(w.weeks, one)
	}
	for i := range w.weeks {
		for k := range w.weeks[i].days {
			w.weeks[i].days[k].broad = w.broad[k]
		}
	}
	return w, true
}

// mostDays bounds the calendar to a year: a day far off, typed by mistake, stands
// in the list alone.
const mostDays = 366

// shown are the days of the calendar: the term in which the crop is harvested,
// and before it what is to be done for it.
func (p papers) shown() (term.Span, bool) {
	var s term.Span
	add := func(d term.Date) {
		if !s.From.Set() || d.Before(s.From) {
			s.From = d
		}
		if !s.To.Set() || d.After(s.To) {
			s.To = d
		}
	}
	for _, j := range p.jobs() {
		add(j.on)
	}
	if !s.To.Set() {
		return s, false
	}
	if at, in := p.a.Term.TermAt(s.To); in {
		t := p.a.Term.Terms()[at]
		add(t.From)
		add(t.To)
	}
	if last := s.From.Add(mostDays - 1); s.To.After(last) {
		s.To = last
	}
	return s, true
}

// weeklies are the measurements of each week in which a tub has plants: on its
// first open day.
func (p papers) weeklies(shown term.Span) []job {
	var out []job
	for _, i := range p.tubs {
		planted, ok := p.planted(i)
		if !ok {
			continue
		}
		for monday := shown.From.Monday(); !monday.After(shown.To); monday = monday.Add(7) {
			first, open := p.a.Term.OpenFrom(monday)
			if open && !first.After(monday.Add(6)) && planted.Holds(first) {
				out = append(out, job{on: first, kind: weekly, tub: p.a.Tubs[i].Name})
			}
		}
	}
	return out
}

// everyDay are the jobs of each school day, by tub, for under the calendar.
func (p papers) everyDay() []string {
	var tubs, filled []string
	for _, i := range p.tubs {
		if s, ok := p.planted(i); ok {
			tubs = append(tubs, fmt.Sprintf("%s (%s to %s)", p.a.Tubs[i].Name, s.From.Short(), s.To.Short()))
			if !p.still(i) {
				filled = append(filled, p.a.Tubs[i].Name)
			}
		}
	}
	if len(tubs) == 0 {
		return nil
	}
	fill := ""
	if len(filled) > 0 {
		fill = "fill " + listed(filled) + " to the line, "
	}
	return []string{"Each school day while plants are in the tub, " + listed(tubs) + ": look at the floor first, read the level, " + fill + "write it down. Where 'pH, EC' stands, measure both in each of them."}
}

// calendar is what the wall calendar says: the weeks as a table, then the days
// in words.
func (p papers) calendar(paper scene.Size) []content.Sheet {
	title := "Wall calendar"
	weeks := content.Sheet{Title: title, Block: p.block(title, paper.Across())}
	w, ok := p.wall()
	if !ok {
		weeks.Sections = []content.Section{{Heading: "Nothing yet", Paragraphs: []string{"No day of this season can be worked out. Mend the plan first."}}}
		return []content.Sheet{weeks}
	}
	table := content.Table{Caption: "Weeks of the term", Columns: []content.Column{{Head: "week"}}}
	for k := range 7 {
		table.Columns = append(table.Columns, content.Column{Head: w.weeks[0].monday.Add(k).Weekday().String()[:3]})
	}
	for _, one := range w.weeks {
		row := []string{one.name()}
		for _, d := range one.days {
			row = append(row, d.words())
		}
		table.Rows = append(table.Rows, row)
	}
	weeks.Sections = []content.Section{{Heading: p.head(w), Tables: []content.Table{table}}}
	if every := p.everyDay(); len(every) > 0 {
		weeks.Sections = append(weeks.Sections, content.Section{Heading: "Every school day", Paragraphs: every})
	}
	return []content.Sheet{weeks, p.inWords(paper)}
}

// head names the days of the calendar.
func (p papers) head(w wall) string {
	return span(w.weeks[0].monday, w.weeks[len(w.weeks)-1].monday.Add(6))
}

// name is a week's number and its Monday.
func (w week) name() string {
	if w.number > 0 {
		return itoa(w.number) + ", " + whole(w.monday.Short())
	}
	return w.monday.Short()
}

// words are a day's cell in words, for the table.
func (d daily) words() string {
	if !d.shown {
		return "–"
	}
	parts := []string{d.number()}
	if reason := d.reason(); reason != "" {
		parts = append(parts, reason)
	}
	return strings.Join(append(parts, d.lines...), "; ")
}

// reason is why a day is closed, where it is worth its room.
func (d daily) reason() string {
	switch {
	case !d.broad:
	case d.at.Kind == term.Shut && d.at.Why != "":
		return d.at.Why
	case d.at.Kind == term.Shut:
		return "closed"
	}
	return ""
}

// inWords lists the days with each job in full.
func (p papers) inWords(paper scene.Size) content.Sheet {
	title := "The days in words"
	t := content.Table{Caption: "Tick off what is done", Wordy: true, Columns: []content.Column{{Head: "day"}, {Head: "what is done"}, {Head: "done", Tick: true}}}
	all := append(p.jobs(), p.visitings()...)
	slices.SortStableFunc(all, func(a, b job) int { return a.on.Compare(b.on) })
	reasons := map[string]bool{}
	for i, j := range all {
		words := j.do
		switch {
		case j.kind == leaving && i > 0 && all[i-1].kind == leaving && all[i-1].on == j.on:
			continue // said with the first of the day
		case j.kind == leaving:
			words = leavingWords(all, j)
		case j.tub != "" && !strings.Contains(j.do, j.tub):
			words = j.tub + ": " + words
		}
		// A reason is given the first time.
		if j.why != "" && !reasons[j.why] {
			words += " " + j.why
		}
		reasons[j.why] = true
		t.Rows = append(t.Rows, []string{whole(j.on.Words()), words, content.Blank})
	}
	s := content.Sheet{Title: title, Block: p.block(title, paper), Sections: []content.Section{{Heading: "In order", Tables: []content.Table{t}}}}
	if len(t.Rows) == 0 {
		s.Sections = []content.Section{{Heading: "Nothing yet", Paragraphs: []string{"No job has a day yet."}}}
	}
	return s
}

// leavingWords name the leave-it sheets of a day in one sentence.
func leavingWords(all []job, of job) string {
	var tubs []string
	for _, j := range all {
		if j.kind == leaving && j.on == of.on {
			tubs = append(tubs, j.tub)
		}
	}
	return strings.Replace(of.do, "sheet of "+of.tub, map[bool]string{true: "sheets", false: "sheet"}[len(tubs) > 1]+" of "+listed(tubs), 1)
}

// openDays are how many of the seven days are broad.
func (w wall) openDays() int {
	n := 0
	for _, b := range w.broad {
		if b {
			n++
		}
	}
	return n
}

// chunks are the weeks in pages of so many at most.
func (w wall) chunks(most int) []wall {
	var out []wall
	for part := range slices.Chunk(w.weeks, most) {
		out = append(out, wall{weeks: part, broad: w.broad})
	}
	return out
}
