package seasonal

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/school/term"
)

// job is something that is done on one day, for one tub or for all.
type job struct {
	on   term.Date
	kind string
	tub  string // empty: for all of them
	do   string // in one sentence
	why  string
	nth  int // of its kind and tub, from 1
}

// The kinds of job that the season's tasks lack.
const (
	leaving  = "leave" // on the last day before a closed stretch
	weekly   = "weekly"
	visiting = "visit"
)

// order is the order of a day's jobs, and what each is called in a cell of the
// calendar, with %s for the tubs.
var order = []struct{ kind, words string }{
	{"meal", "meal"},
	{"harvest", "harvest: %s"},
	{"sow", "sow: %s"},
	{"thin", "thin: %s"},
	{"transplant", "move in: %s"},
	{"change-out", "new water: %s"},
	{"lower", "lower line: %s"},
	{"lamp", "lamp up: %s"},
	{"order", "order"},
	{leaving, "leave sheet: %s"},
	{visiting, "one visit"},
	{weekly, "pH, EC"}, // of every tub with plants, as the line under the calendar says
}

func rank(kind string) int {
	for i, o := range order {
		if o.kind == kind {
			return i
		}
	}
	return len(order)
}

// jobs are all dated jobs of the garden, by day, then in the order of a day.
func (p papers) jobs() []job {
	var out []job
	seen := map[string]bool{}
	for _, i := range p.tubs {
		t := &p.a.Tubs[i]
		nth := map[string]int{}
		for _, task := range inOrder(t.Season.Tasks) {
			on, ok := date(task.On)
			if !ok {
				continue
			}
			nth[task.Kind]++
			j := job{on: on, kind: task.Kind, tub: t.Name, do: sentence(task.Do), why: sentence(task.Why), nth: nth[task.Kind]}
			if task.Kind == "meal" {
				j.tub = ""
			}
			// The meal, and an order that two tubs share, are said once.
			if key := task.Kind + task.On + task.Do; j.tub == "" || task.Kind == "order" {
				if seen[key] {
					continue
				}
				seen[key] = true
			}
			out = append(out, j)
		}
		out = append(out, p.leavings(i)...)
	}
	slices.SortStableFunc(out, func(a, b job) int {
		return cmp.Or(a.on.Compare(b.on), cmp.Compare(rank(a.kind), rank(b.kind)))
	})
	return out
}

func inOrder(tasks []garden.SeasonTask) []garden.SeasonTask {
	return slices.SortedStableFunc(slices.Values(tasks), func(a, b garden.SeasonTask) int { return cmp.Compare(a.On, b.On) })
}

// leavings are the days on which a leave-it sheet is taken in hand.
func (p papers) leavings(tub int) []job {
	var out []job
	for _, l := range p.a.Tubs[tub].Season.Closed {
		if !long(l) {
			continue
		}
		out = append(out, job{
			on: term.DateOf(l.From), kind: leaving, tub: p.a.Tubs[tub].Name, nth: len(out) + 1,
			do: "Before " + clock(l.From) + ": the leave-it sheet of " + p.a.Tubs[tub].Name + ", then nobody comes until " + moment(l.To) + ", " + hours(l.Hours) + ".",
		})
	}
	return out
}

// planted are the days on which a tub has plants in it; ok is false where they
// are not known.
func (p papers) planted(tub int) (s term.Span, ok bool) {
	season := p.a.Tubs[tub].Season
	from, known := date(season.TransplantOn)
	if n := len(season.Days); n > 0 {
		to, ends := date(season.Days[n-1].Date)
		return term.Span{From: from, To: to}, known && ends
	}
	to, ends := date(season.HarvestTo)
	return term.Span{From: from, To: to}, known && ends
}

// cell is what stands in a day's cell of the calendar.
func cell(jobs []job) []string {
	var out []string
	for _, o := range order {
		var tubs []string
		found := false
		for _, j := range jobs {
			if j.kind == o.kind {
				found = true
				if j.tub != "" && !slices.Contains(tubs, j.tub) {
					tubs = append(tubs, j.tub)
				}
			}
		}
		if found {
			out = append(out, strings.TrimSpace(strings.Replace(o.words, "%s", strings.Join(tubs, ", "), 1)))
		}
	}
	return out
}

func itoa(n int) string { return strconv.Itoa(n) }
