package garden

import (
	"rootbell/internal/school/lesson"
	"rootbell/internal/school/term"
)

// Class is who does what in the weeks of a term, and the lessons in it. People
// are numbers or teams, and never names.
type Class struct {
	By       string         `json:"by"`       // pupils or teams; empty where the plan names neither
	Rota     []ClassWeek    `json:"rota"`     // every week of the term; empty where no rota can be made
	Fairness *ClassFairness `json:"fairness"` // nil without a rota
	Sheets   []Sheet        `json:"sheets"`   // the lesson sheets there are
	Jobs     []ClassJob     `json:"jobs"`     // of the term, the plan's own or the usual ones
	CarryL   *float64       `json:"carry_l"`  // what the youngest carries at once; nil under five, or with no age told
	Lesson   *ClassLesson   `json:"lesson"`   // the ten minutes at the tub; nil without a number of pupils
	Report   ClassReport    `json:"report"`   // of the run so far

	Youngest int        `json:"-"` // 0 where no age is told
	Term     *term.Span `json:"-"` // of the rota; nil without a term

	lessons []*lesson.Tub // by tub
}

// Sheet is one lesson sheet.
type Sheet struct {
	Name    string `json:"name"`    // of its paper
	Title   string `json:"title"`   // the question it asks
	Concept string `json:"concept"` // what it teaches
	About   string `json:"about"`   // for whom, and from what data

	ID      string       `json:"id"`     // of its template
	Number  int          `json:"number"` // likewise
	Tub     string       `json:"tub"`
	Band    string       `json:"band"`    // school years: K-2, 3-5, 6-8 or 9-12
	Touches []string     `json:"touches"` // codes of standards
	Odd     []string     `json:"odd"`     // readings that stand out, and what was done with them
	Lesson  lesson.Sheet `json:"-"`
}

// ClassWeek is one week of the rota.
type ClassWeek struct {
	Week  int         `json:"week"` // 1 is the term's first
	From  string      `json:"from"` // its Monday
	Open  bool        `json:"open"`
	Turns []ClassTurn `json:"turns"`
}

// ClassTurn is one job in one week.
type ClassTurn struct {
	Job     string `json:"job"`
	Numbers []int  `json:"numbers"` // of pupils or of teams, from 1
	Who     string `json:"who"`     // in words
}

// ClassFairness says how even the rota is.
type ClassFairness struct {
	TurnsLeast   int      `json:"turns_least"`
	TurnsMost    int      `json:"turns_most"`
	LoadLeast    int      `json:"load_least"`
	LoadMost     int      `json:"load_most"`
	PairsAgain   int      `json:"pairs_again"`   // times two work together who had before
	WantedMissed int      `json:"wanted_missed"` // wanted pairs that never come about
	JobsUnmet    int      `json:"jobs_unmet"`    // of all the meetings of one and a job
	Proved       bool     `json:"proved"`        // no rota is fairer
	Tried        int      `json:"tried"`         // changes that the search tried
	Says         []string `json:"says"`
}

// ClassJob is one job of the week.
type ClassJob struct {
	Name   string  `json:"name"`
	People int     `json:"people"`
	Weight int     `json:"weight"`
	Usual  bool    `json:"usual"` // taken from a morning's work, as the plan names none
	Kind   JobKind `json:"kind"`
}

// JobKind is what a job is about, as its card tells it.
type JobKind string

// The kinds of jobs.
const (
	JobLook  JobKind = "look"
	JobLevel JobKind = "level"
	JobEC    JobKind = "ec"
	JobPH    JobKind = "ph"
	JobLog   JobKind = "log"
	JobBoth  JobKind = "measure" // EC and pH together
	JobAll   JobKind = "all"     // for a class of one or two
	JobOwn   JobKind = "own"     // the teacher's, of which the card says the name alone
)
