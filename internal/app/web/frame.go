package web

import (
	"net/http"

	"rootbell/internal/garden"
	"rootbell/internal/school/term"
)

// plainFrame is the frame of a page that belongs to no garden.
func (s *Server) plainFrame(r *http.Request, title, page string) frame {
	v := viewOf(r).orElse()
	return frame{Title: title, Page: page, Units: v.Units, Paper: v.Paper, Here: r.URL.RequestURI(), Drawing: title}
}

// frameOf is the frame of a garden's page; a is nil where the plan cannot be
// read.
func (s *Server) frameOf(r *http.Request, o *opened, a *garden.Assessment, page, title string) frame {
	f := s.plainFrame(r, title+": "+o.Name, page)
	f.Drawing = title
	if r.Method == http.MethodGet {
		f.Here = r.URL.RequestURI()
	} else {
		f.Here = "/g/" + o.ID + "/" + page
	}
	f.Head = &gardenHead{ID: o.ID, Name: o.Name, Example: o.Example, Book: o.Example && o.bound(), Revision: o.Revision.Number}
	if !o.Example {
		f.Saved = o.Revision.At.In(o.Now.Location()).Format("Mon 2 Jan 2006, 15:04")
	}
	f.Head.Tabs, f.Head.Later = tabsOf(o, a, page)
	if a != nil {
		f.Units, f.Paper = a.Plan.Units.String(), a.Paper()
		f.Head.Invented = a.Invented()
		f.Head.Strip = stripOf(s.withSeasons(o, a), o.Today)
	}
	return f
}

// gardenPages are the pages of a garden in the order of the work.
var gardenPages = []tab{
	{Name: "Today", Address: "today"},
	{Name: "Build", Address: "build"},
	{Name: "Mix", Address: "mix"},
	{Name: "Season", Address: "season"},
	{Name: "Logbook", Address: "logbook"},
	{Name: "Choose", Address: "choose"},
	{Name: "Class", Address: "class"},
	{Name: "Working", Address: "working"},
	{Name: "Papers", Address: "papers"},
	{Name: "Plan as text", Address: "text"},
}

// tabsOf are the pages that stand in front, and those whose week has not come
// yet: they can be opened all the same.
func tabsOf(o *opened, a *garden.Assessment, page string) (front, later []tab) {
	for _, t := range gardenPages {
		t.Here = t.Address == page
		waits := !t.Here && (t.Address == "mix" && !mixingHasCome(o, a) || t.Address == "season" && !seasonHasCome(o, a) || t.Address == "choose" && !choosingHasCome(o))
		waits = waits || t.Address == "class" && !t.Here && !classHasCome(o, a)
		t.Address = "/g/" + o.ID + "/" + t.Address
		if waits {
			later = append(later, t)
		} else {
			front = append(front, t)
		}
	}
	return front, later
}

// seasonWeeks is how long before the meal a season begins at the latest: what is
// sown for it grows for eight to ten weeks, and seed is ordered before that.
// Common practice.
const seasonWeeks = 12

// seasonHasCome tells whether the page Season stands in front: from some weeks
// before the meal on, without a meal from the term's first day on, or as soon as
// a tub has its day of sowing.
func seasonHasCome(o *opened, a *garden.Assessment) bool {
	if o.Plan == nil || a == nil || !a.Term.Known() {
		return false
	}
	for _, t := range o.Plan.Tubs {
		if t.Sow.Set() {
			return true
		}
	}
	day := term.Date(o.Today)
	if !o.bound() {
		day, _ = a.Term.First()
	}
	if meal := term.Date(o.Plan.School.Meal.Day); meal.Set() {
		return meal.Since(day) <= 7*seasonWeeks
	}
	_, in := a.Term.TermAt(day)
	return in
}

// buildingWeeks is how many weeks of a term are for building alone: seedlings
// in their nursery need no feed yet. Common practice.
const buildingWeeks = 1

// mixingHasCome tells whether the page Mix stands in front: from the term's
// second week on, or as soon as a fertiliser is in the plan.
func mixingHasCome(o *opened, a *garden.Assessment) bool {
	if o.Plan == nil || len(o.Plan.Fertilisers) > 0 {
		return true
	}
	if a == nil || !a.Term.Known() {
		return false
	}
	day := term.Date(o.Today)
	i, ok := a.Term.TermAt(day)
	return ok && a.Term.WeekOf(i, day) > buildingWeeks
}

// choosingHasCome tells whether the page Choose stands in front: as soon as an
// offer is in the plan.
func choosingHasCome(o *opened) bool { return o.Plan == nil || len(o.Plan.Offers) > 0 }
