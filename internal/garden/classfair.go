package garden

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/school/jobs"
)

// fair is how even a rota is, in numbers and in sentences.
func (m *roster) fair(r jobs.Rota) *ClassFairness {
	f := r.Fairness
	return &ClassFairness{
		TurnsLeast: f.TurnsLeast, TurnsMost: f.TurnsMost, LoadLeast: f.LoadLeast, LoadMost: f.LoadMost,
		PairsAgain: f.Score.PairsAgain, WantedMissed: f.Score.WantedMissed, JobsUnmet: f.Score.JobsUnmet,
		Proved: f.Proved, Tried: f.Tried, Says: m.fairWords(r),
	}
}

func (m *roster) fairWords(r jobs.Rota) []string {
	f := r.Fairness
	each := "Each pupil"
	if m.ask.ByTeams() {
		each = "Each team"
	}
	if m.ask.Count() == 1 {
		each = strings.Replace(each, "Each", "The one", 1)
	}
	var out []string
	if f.TurnsLeast == f.TurnsMost {
		out = append(out, fmt.Sprintf("%s has %s.", each, counted(f.TurnsLeast, "turn", "turns")))
	} else {
		word := "to"
		if f.TurnsMost-f.TurnsLeast == 1 {
			word = "or"
		}
		out = append(out, fmt.Sprintf("%s has %d %s %d turns.", each, f.TurnsLeast, word, f.TurnsMost))
	}
	if slices.ContainsFunc(m.ask.Jobs, func(j jobs.Job) bool { return j.People > 1 }) {
		switch n := f.Score.PairsAgain; n {
		case 0:
			out = append(out, "Nobody works twice with the same partner.")
		case 1:
			out = append(out, "Once, two work together who had before.")
		default:
			out = append(out, fmt.Sprintf("%d times, two work together who had before.", n))
		}
	}
	if n := f.Score.JobsUnmet; n == 0 {
		out = append(out, each+" meets every job.")
	} else {
		out = append(out, fmt.Sprintf("Not all meet every job: of %d meetings, %s missing.", m.ask.Count()*len(m.ask.Jobs), isAre(n)))
	}
	if f.LoadLeast != f.TurnsLeast || f.LoadMost != f.TurnsMost {
		out = append(out, fmt.Sprintf("Counted with their weights, the lightest share is %d and the heaviest %d.", f.LoadLeast, f.LoadMost))
	}
	says := f.Says()
	out = append(out, says[len(says)-1])
	return append(out, m.madeGood(r)...)
}

func isAre(n int) string {
	if n == 1 {
		return "1 is"
	}
	return fmt.Sprintf("%d are", n)
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// madeGood says what absences changed.
func (m *roster) madeGood(r jobs.Rota) []string {
	var out []string
	for _, c := range r.Changes {
		job := m.ask.Jobs[c.Job].Name
		if c.GoodFor == 0 {
			out = append(out, fmt.Sprintf("Week %d: %s stands in for %s at '%s'.", c.Week, m.one(c.In), m.one(c.Out), job))
		} else {
			out = append(out, fmt.Sprintf("Week %d: %s takes '%s' for %s, and so makes week %d good.", c.Week, m.one(c.In), job, m.one(c.Out), c.GoodFor))
		}
	}
	return out
}

// one is a team's name, or a pupil's number.
func (m *roster) one(n int) string {
	if n < 1 || n > m.ask.Count() {
		return "nobody"
	}
	if m.ask.ByTeams() {
		return m.ask.Teams[n-1]
	}
	return fmt.Sprintf("number %d", n)
}
