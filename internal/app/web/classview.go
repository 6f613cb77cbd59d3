package web

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
	"rootbell/internal/paper/classroom"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/pack"
	"rootbell/internal/school/term"
)

// classWork is what the assessment says of the class, ready to be shown.
type classWork struct {
	ID       string
	Example  bool
	Bold     string
	Rest     string
	Findings []findingView
	Open     bool     // one of them is mended in the folded part of the form
	Heads    []string // the jobs
	Weeks    []weekRow
	Fair     []string
	Carry    string
	Lesson   []string // how the ten minutes go
	Rounds   *content.Table
	Adopted  []adoptedRow
	Sheets   int
	Papers   []pack.Paper
}

type weekRow struct {
	Week, From string
	Now, Open  bool
	Cells      []weekCell
}

type weekCell struct{ Job, Who string }

type adoptedRow struct{ Who, What string }

// foldedLists are the lists in the part of the form that is folded away.
var foldedLists = []string{"job", "wanted", "never", "away"}

func classWorkOf(o *opened, a *garden.Assessment, f *form) *classWork {
	c := a.Class
	w := &classWork{ID: o.ID, Example: o.Example, Papers: pack.ClassOf(a, revisionOf(o)), Sheets: len(c.Sheets)}
	w.Bold, w.Rest = classAnswer(a)
	w.Carry = classroom.CarryWords(a)
	w.Findings = findingsOf(o, a, f, ofClass, ofClassLists)
	w.Open = slices.ContainsFunc(w.Findings, func(v findingView) bool {
		return slices.ContainsFunc(foldedLists, func(list string) bool { return strings.HasPrefix(v.Address, "#"+idOf(classField+list)) })
	})
	now, _ := c.WeekOn(a.Today.On)
	for _, j := range c.Jobs {
		w.Heads = append(w.Heads, j.Name)
	}
	for _, week := range c.Rota {
		w.Weeks = append(w.Weeks, rowOfWeek(week, c.Jobs, week.Week == now.Week))
	}
	if c.Fairness != nil {
		w.Fair = c.Fairness.Says
	}
	if l := c.Lesson; l != nil {
		w.Lesson = classroom.LessonWords(l)
		if len(l.Groups) > 1 {
			t := classroom.Rounds(l)
			w.Rounds = &t
		}
		for _, one := range l.Adopted {
			what := fmt.Sprintf("jar %d", one.Jar)
			if one.Hole > 0 {
				what = fmt.Sprintf("%s, hole %d", one.Tub, one.Hole)
			}
			w.Adopted = append(w.Adopted, adoptedRow{one.Who(), what})
		}
	}
	return w
}

func rowOfWeek(week garden.ClassWeek, jobs []garden.ClassJob, now bool) weekRow {
	row := weekRow{Week: fmt.Sprint(week.Week), From: shortDay(week.From), Now: now, Open: week.Open}
	for _, j := range jobs {
		cell := weekCell{Job: j.Name, Who: "–"}
		for _, t := range week.Turns {
			if t.Job == j.Name && t.Who != "" {
				cell.Who = t.Who
			}
		}
		row.Cells = append(row.Cells, cell)
	}
	return row
}

func shortDay(iso string) string {
	d, err := term.ParseDate(iso)
	if err != nil {
		return iso
	}
	return d.Short()
}

// classAnswer is the week's rota in a sentence; bold is who has the first job.
func classAnswer(a *garden.Assessment) (bold, rest string) {
	c := a.Class
	switch {
	case c.By == "":
		return "Nobody shares the jobs yet.", "Say how many pupils there are, or name the teams: the rota follows."
	case c.Term == nil:
		return "There is no rota yet:", "the plan names no term. Write its first and last day on the page Build."
	case len(c.Rota) == 0:
		return "There is no rota yet:", "something below has to be settled first."
	}
	when, week, ok := weekToTell(a)
	if !ok {
		return "The term is over.", "Its rota stands below. Print the report and the lay-up card."
	}
	var said []string
	for _, t := range week.Turns {
		if t.Who == "" {
			continue
		}
		job, _ := c.Job(t.Job)
		who := t.Who
		if c.By == "pupils" {
			who = "number " + who
			if len(t.Numbers) > 1 {
				who = "numbers " + t.Who
			}
		}
		said = append(said, who+" "+garden.Do(job.Does(), len(t.Numbers)))
	}
	if len(said) == 0 {
		return capital(when) + " no job is done.", ""
	}
	bold = capital(when) + " " + said[0]
	if len(said) == 1 {
		return bold + ".", ""
	}
	return bold + ",", strings.Join(said[1:len(said)-1], ", ") + map[bool]string{true: "", false: " and "}[len(said) == 2] + said[len(said)-1] + "."
}

// weekToTell is the week that the answer is about: this one, else the next that
// is open; false when none comes any more.
func weekToTell(a *garden.Assessment) (when string, week garden.ClassWeek, ok bool) {
	on := a.Today.On
	if now, in := a.Class.WeekOn(on); in && now.Open {
		return "this week", now, true
	}
	for _, w := range a.Class.Rota {
		if w.Open && w.From > on.String() {
			return "in the week from " + shortDay(w.From), w, true
		}
	}
	return "", garden.ClassWeek{}, false
}

// ofClass tells what concerns the class.
func ofClass(one finding.Finding) bool {
	return strings.HasPrefix(one.Code, "rota-") || strings.HasPrefix(one.Code, "class-") || one.Code == "job-backwards"
}

// ofClassLists is where a list of the plan is mended that the form has in fields
// of its own.
func ofClassLists(field string) string {
	name := ""
	var at int
	switch {
	case field == "school.teams":
		name = "teams"
	case strings.HasPrefix(field, "school.pairs.wanted"):
		name = "wanted"
	case strings.HasPrefix(field, "school.pairs.never"):
		name = "never"
	case scans(field, "school.jobs[%d]", &at):
		name = fmt.Sprintf("job.%d.name", at)
	case field == "school.jobs":
		name = "job.0.name"
	case strings.HasPrefix(field, "school.absent"):
		name = "away.week"
	default:
		return ""
	}
	return "#" + idOf(classField+name)
}
