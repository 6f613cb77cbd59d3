package jobs

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/base/finding"
)

// Turn is one job in one week and who does it, by rising number.
type Turn struct {
	Week   int
	Job    int // its place in Ask.Jobs
	People []int
}

// Rota is who does what. Turns stand by week, then in the order of the jobs.
type Rota struct {
	Turns    []Turn
	Fairness Fairness
	Changes  []Change // what absences changed, in the order of the weeks
	Owed     []Owed   // turns that no later week makes good
	Short    []Short  // places that nobody could take
}

// Make is the rota of an ask, with what there is to say about it; a stop means
// that there is none. The same ask gives the same rota.
func Make(ask Ask) (Rota, []finding.Finding) {
	if found := Check(ask); len(found) > 0 {
		return Rota{}, found
	}
	b := newBoard(ask)
	steps := fillSteps
	if week, proved, ok := b.fill(&steps); !ok {
		return Rota{}, []finding.Finding{noRoom(ask, b.weeks[week], proved)}
	}
	effort := ask.Effort
	if effort <= 0 {
		effort = DefaultEffort
	}
	f := Fairness{Bound: b.bound()}
	f.Tried = b.search(f.Bound, ask.Seed, effort)
	f.ByBound = b.score.Compare(f.Bound) == 0
	f.Proved = f.ByBound || b.prove(f.Bound, len(ask.Wanted)+len(ask.Never) > 0)
	b.measure(&f)
	out := Rota{Fairness: f}
	out.absences(b, ask.Away)
	out.Turns = b.list()
	return out, out.says(ask)
}

func (b *board) list() []Turn {
	var out []Turn
	for _, g := range b.ofGroup {
		t := Turn{Week: b.weeks[b.slots[g[0]].week], Job: b.slots[g[0]].job}
		for _, s := range g {
			if b.who[s] >= 0 {
				t.People = append(t.People, b.who[s]+1)
			}
		}
		slices.Sort(t.People)
		out = append(out, t)
	}
	return out
}

// noRoom is the stop when wishes leave a week without a rota.
func noRoom(ask Ask, week int, proved bool) finding.Finding {
	text := fmt.Sprintf("Week %d cannot be filled: the pairs that must not work together leave no way.", week)
	if !proved {
		text = fmt.Sprintf("No way to fill week %d was found in %d trials; the pairs that must not work together leave too little room.", week, fillSteps)
	}
	hint := "Give up some of these wishes, or have fewer for a job."
	if pairs, ok := GiveUp(ask); ok {
		var names []string
		for _, p := range pairs {
			names = append(names, fmt.Sprintf("%d and %d", p[0], p[1]))
		}
		hint = "It can be filled when this wish is given up: " + names[0] + "."
		if len(names) > 1 {
			hint = "It can be filled when these wishes are given up: " + strings.Join(names, "; ") + "."
		}
	}
	return finding.Finding{Level: finding.Stop, Code: "rota-no-room", Field: "school.pairs.never", Text: text, Hint: hint}
}

// says is what a rota that could be made still has to tell.
func (r Rota) says(ask Ask) []finding.Finding {
	var out []finding.Finding
	add := func(level finding.Level, code, field, text, hint string) {
		out = append(out, finding.Finding{Level: level, Code: code, Field: field, Text: text, Hint: hint})
	}
	f := r.Fairness
	if f.TurnsMost-f.TurnsLeast > 1 {
		add(finding.Warn, "rota-uneven", "school.pairs.never", fmt.Sprintf("Turns are not even: the least is %d, the most %d.", f.TurnsLeast, f.TurnsMost), "Someone has too few to work with. Give up a wish, or have a job for one.")
	}
	if f.Score.WantedMissed > 0 {
		add(finding.Note, "rota-wanted", "school.pairs.wanted", wantedWords(f.Score.WantedMissed), "More jobs in pairs would make room.")
	}
	if len(r.Short) > 0 {
		var weeks []string
		for _, s := range r.Short {
			weeks = append(weeks, fmt.Sprintf("'%s' in week %d", ask.Jobs[s.Job].Name, s.Week))
		}
		add(finding.Warn, "rota-short", "school.away", "A place stays empty, as nobody is free: "+strings.Join(weeks, "; ")+".", "Leave a job out that week, or do it yourself.")
	}
	if len(r.Owed) > 0 {
		add(finding.Note, "rota-owed", "school.away", "No later week of this term makes good what was missed: "+ask.owed(r.Owed)+".", "Begin the next rota with those who missed a turn.")
	}
	return out
}

func wantedWords(n int) string {
	if n == 1 {
		return "1 wanted pair never works together in this rota."
	}
	return fmt.Sprintf("%d wanted pairs never work together in this rota.", n)
}

// owed is who missed a turn in which week: 'number 5 in week 12'.
func (a Ask) owed(all []Owed) string {
	var out []string
	for _, o := range all {
		who := fmt.Sprintf("number %d", o.Who)
		if a.ByTeams() {
			who = a.Teams[o.Who-1]
		}
		out = append(out, fmt.Sprintf("%s in week %d", who, o.Week))
	}
	return strings.Join(out, "; ")
}
