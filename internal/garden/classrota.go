package garden

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/jobs"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
)

// rotas keeps the rota of each term, which rests on the plan alone, for all
// mornings of one assessment.
type rotas struct {
	seed   uint64
	effort int
	mu     sync.Mutex
	made   map[int]madeRota
}

type madeRota struct {
	class    Class
	findings []finding.Finding
}

// quickEffort is how many changes are tried for an answer while typing.
const quickEffort = jobs.DefaultEffort / 10

func newRotas(in Inputs) *rotas {
	out := &rotas{seed: in.Seed, effort: jobs.DefaultEffort, made: map[int]madeRota{}}
	if in.Effort == lid.Quick {
		out.effort = quickEffort
	}
	return out
}

// class works out who does what in the term of the day, and the lessons.
func (d *desk) class() {
	i, known := d.Term.Current(d.today.On)
	if !known {
		i = -1
	}
	d.rotas.mu.Lock()
	made, there := d.rotas.made[i]
	if !there {
		made = d.rotaOf(i)
		d.rotas.made[i] = made
	}
	d.rotas.mu.Unlock()
	c := made.class
	c.Sheets, c.lessons = d.sheets()
	c.Lesson = d.lesson()
	c.Report = d.report()
	d.Class = &c
	if len(made.findings) > 0 {
		d.Findings = append(slices.Clone(d.Findings), made.findings...)
		finding.Sort(d.Findings)
	}
}

// rotaOf makes the rota of a term by its place; -1 where the plan has none.
func (d *desk) rotaOf(i int) madeRota {
	m := &roster{plan: d.Plan, term: d.Term, at: i}
	m.out.Rota = []ClassWeek{}
	m.gather()
	if m.out.By != "" && i >= 0 && finding.Worst(m.findings) != finding.Stop {
		m.make(d.rotas.seed, d.rotas.effort)
	}
	for j, f := range m.findings {
		m.findings[j].Line, m.findings[j].Column = d.Plan.Where(f.Field)
	}
	return madeRota{m.out, m.findings}
}

// roster turns a plan into what a rota is asked for, and back.
type roster struct {
	plan     *plan.Plan
	term     *term.Calendar
	at       int
	out      Class
	ask      jobs.Ask
	places   []int // of the asked jobs in the plan; -1 for a usual one
	findings []finding.Finding
}

func (m *roster) find(level finding.Level, code, field, text, hint string) {
	m.findings = append(m.findings, finding.Finding{Level: level, Code: code, Field: field, Text: text, Hint: hint})
}

// gather puts the ask together, and says what the plan lacks for it.
func (m *roster) gather() {
	s := m.plan.School
	m.ask.Pupils, m.ask.Teams = s.Pupils.Or(0), s.Teams
	switch {
	case m.ask.ByTeams():
		m.out.By = "teams"
	case m.ask.Pupils > 0:
		m.out.By = "pupils"
	case m.wanted():
		m.find(finding.Note, "class-nobody", "school.pupils", "Nobody is there to share the jobs: the plan names neither pupils nor teams.", "Write how many pupils there are, or name the teams by colours or birds.")
	}
	if m.at < 0 && m.wanted() {
		m.find(finding.Note, "class-no-term", "school.terms", "There is no rota: the plan names no term.", "Write the first and the last day of the term.")
	}
	if m.out.Youngest = m.youngest(); m.out.Youngest > 0 {
		if carry, ok := jobs.CarryAt(m.out.Youngest); ok {
			m.out.CarryL = &carry.Litres
		}
	}
	m.weeks()
	m.jobs()
	m.wishes()
	m.away()
}

// wanted tells whether the plan says anything that only a rota is for.
func (m *roster) wanted() bool {
	s := m.plan.School
	return len(s.Jobs)+len(s.Pairs.Wanted)+len(s.Pairs.Never)+len(s.Absent) > 0
}

// youngest is the youngest pupil's age; 0 where it is not told.
func (m *roster) youngest() int {
	least := 0
	for _, a := range m.plan.School.Ages {
		if a.Given && (least == 0 || a.Value < least) {
			least = a.Value
		}
	}
	return least
}

func (m *roster) weeks() {
	if m.at < 0 {
		return
	}
	m.out.Term = &m.term.Terms()[m.at]
	for _, w := range m.term.Weeks(m.at) {
		m.ask.Weeks++
		if w.Shut() {
			m.ask.Closed = append(m.ask.Closed, w.Number)
		}
	}
}

// jobs are the plan's own of this term, else the usual ones.
func (m *roster) jobs() {
	for i, j := range m.plan.School.Jobs {
		from, to, now := m.span(i, j)
		if !now {
			continue
		}
		m.add(i, ClassJob{Name: j.Name, People: j.People.Or(1), Weight: j.Weight.Or(1), Kind: kindOf(j.Name)}, from, to)
	}
	if len(m.plan.School.Jobs) > 0 {
		return
	}
	for _, j := range usualJobs(m.plan, m.ask.Count(), m.ask.ByTeams()) {
		m.add(-1, j, 0, 0)
	}
}

func (m *roster) add(place int, j ClassJob, from, to int) {
	m.places = append(m.places, place)
	m.out.Jobs = append(m.out.Jobs, j)
	m.ask.Jobs = append(m.ask.Jobs, jobs.Job{Name: j.Name, People: j.People, Weight: j.Weight, From: from, To: to})
}

// span is the weeks of the term in which a job is done; false where there are
// none.
func (m *roster) span(i int, j plan.Job) (from, to int, now bool) {
	first, last := term.Date(j.From), term.Date(j.To)
	if first.Set() && last.Set() && last.Before(first) {
		m.find(finding.Stop, "job-backwards", fmt.Sprintf("school.jobs[%d].to", i), fmt.Sprintf("The job '%s' ends on %s, before it begins on %s.", j.Name, last.Long(), first.Long()), "Swap the two days, or look at their years.")
		return 0, 0, false
	}
	if m.at < 0 {
		return 0, 0, true
	}
	whole := m.term.Terms()[m.at]
	if first.Set() && first.After(whole.To) || last.Set() && last.Before(whole.From) {
		return 0, 0, false
	}
	if first.Set() {
		from = max(1, m.term.WeekOf(m.at, first))
	}
	if last.Set() {
		to = min(m.ask.Weeks, m.term.WeekOf(m.at, last))
	}
	return from, to, true
}

func (m *roster) wishes() {
	for _, p := range m.plan.School.Pairs.Wanted {
		m.ask.Wanted = append(m.ask.Wanted, [2]int{int(p[0]), int(p[1])})
	}
	for _, p := range m.plan.School.Pairs.Never {
		m.ask.Never = append(m.ask.Never, [2]int{int(p[0]), int(p[1])})
	}
}

// away are the absences of this term.
func (m *roster) away() {
	if m.at < 0 {
		return
	}
	for i, a := range m.plan.School.Absent {
		week := m.term.WeekOf(m.at, term.Date(a.Week))
		if n := m.ask.Count(); m.out.By != "" && int(a.Number) > n {
			m.find(finding.Stop, "rota-away", fmt.Sprintf("school.absent[%d].number", i), fmt.Sprintf("There is no number %d; the numbers are 1 to %d.", a.Number, n), m.numbers())
			continue
		}
		if week >= 1 && week <= m.ask.Weeks {
			m.ask.Away = append(m.ask.Away, jobs.Absence{Week: week, Who: int(a.Number)})
		}
	}
}

// numbers says what the numbers count.
func (m *roster) numbers() string {
	if m.ask.ByTeams() {
		return "Teams take turns, so the numbers are the teams' in their order: " + strings.Join(m.ask.Teams, ", ") + "."
	}
	return "The numbers are the pupils' on your own list."
}

// make looks for the rota and turns it into weeks.
func (m *roster) make(seed uint64, effort int) {
	m.ask.Seed, m.ask.Effort = seed, effort
	rota, found := jobs.Make(m.ask)
	for _, f := range found {
		m.findings = append(m.findings, m.placed(f))
	}
	if finding.Worst(found) == finding.Stop {
		return
	}
	closed := map[int]bool{}
	for _, w := range m.ask.Closed {
		closed[w] = true
	}
	for _, w := range m.term.Weeks(m.at) {
		m.out.Rota = append(m.out.Rota, ClassWeek{Week: w.Number, From: w.Monday.String(), Open: !closed[w.Number], Turns: []ClassTurn{}})
	}
	for _, t := range rota.Turns {
		w := &m.out.Rota[t.Week-1]
		w.Turns = append(w.Turns, ClassTurn{Job: m.ask.Jobs[t.Job].Name, Numbers: append([]int{}, t.People...), Who: m.names(t.People)})
	}
	m.out.Fairness = m.fair(rota)
}

// placed is a finding at its field of the plan. The engine counts the jobs of
// this term; where the plan names none, what is asked for is pupils.
func (m *roster) placed(f finding.Finding) finding.Finding {
	switch {
	case f.Field == "school.away":
		f.Field = "school.absent"
	case strings.HasPrefix(f.Field, "school.jobs"):
		var at int
		if n, _ := fmt.Sscanf(f.Field, "school.jobs[%d]", &at); n == 1 && at < len(m.places) && m.places[at] >= 0 {
			_, rest, _ := strings.Cut(f.Field, "]")
			f.Field = fmt.Sprintf("school.jobs[%d]%s", m.places[at], rest)
		} else if len(m.plan.School.Jobs) == 0 {
			f.Field = "school.pupils"
		}
	case f.Code == "rota-pair-number":
		f.Hint = m.numbers()
	}
	return f
}

// names are people in words: teams by name, pupils by number.
func (m *roster) names(people []int) string {
	var out []string
	for _, n := range people {
		if m.ask.ByTeams() {
			out = append(out, m.ask.Teams[n-1])
		} else {
			out = append(out, fmt.Sprint(n))
		}
	}
	return listed(out)
}
