package garden

import (
	"time"

	"rootbell/internal/base/working"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/steering"
	"rootbell/internal/school/term"
	"rootbell/internal/school/trouble"
	"rootbell/internal/science/reading"
)

// Today is what there is to do on one day, for whoever stands at the tubs: from
// the plan, the calendar and what was last read.
type Today struct {
	On    term.Date     `json:"-"`
	At    time.Time     `json:"at"`   // the moment it is asked for
	Open  bool          `json:"open"` // somebody comes on that day
	Jobs  int           `json:"jobs"` // what is due beside looking, reading the level and writing down
	Mixed bool          `json:"-"`    // solution is poured in today
	Steps []Step        `json:"steps"`
	More  []Step        `json:"more,omitempty"` // due too, after those
	Back  *term.Stretch `json:"-"`              // the first day after this long stretch
	Ahead *Ahead        `json:"-"`              // the next long stretch; nil without one
	Next  term.Date     `json:"-"`              // the next open day after On; not set where none comes
	Wrong []Wrong       `json:"-"`
	Donts []string      `json:"-"`
}

// Step is one thing to do, in the order of a morning: look, listen, level, top
// up, wait, only then measure.
type Step struct {
	Kind  StepKind    `json:"kind"`
	Do    steering.Do `json:"do,omitempty"`
	Code  string      `json:"code,omitempty"`
	Head  string      `json:"text"`
	Lines []Line      `json:"lines,omitempty"`
}

// StepKind is which part of the morning a step is.
type StepKind string

// The parts of a morning.
const (
	StepLook    StepKind = "look"
	StepLevel   StepKind = "level"
	StepDo      StepKind = "do"
	StepMeasure StepKind = "measure"
	StepWrite   StepKind = "write"
)

// Line is what a step is for one tub.
type Line struct {
	Tub string `json:"tub,omitempty"`
	Act string `json:"act,omitempty"` // what to do, how much
	Why string `json:"why,omitempty"`
	How string `json:"how,omitempty"` // or what would move it
	Key string `json:"key,omitempty"` // of the number behind it
}

// TubToday is a tub on that day: where its line is, what was last read, and what
// to do about it. A number that is nil is not known.
type TubToday struct {
	LineMM  *float64   `json:"line_mm"`            // the fill line of the day
	LevelMM *float64   `json:"level_mm,omitempty"` // as last read, with what was poured in since
	Read    *time.Time `json:"level_read,omitempty"`
	Advice  []Advised  `json:"advice"`

	Line, Level string    `json:"-"` // in words, with unit
	ReadOn      string    `json:"-"` // Tue 9 Feb; empty: not measured yet
	TopUpMM     float64   `json:"-"` // top up from here down; 0 for a still tub
	TopUp       string    `json:"-"`
	Course      string    `json:"-"` // which way the pH goes, in words
	Uptake      string    `json:"-"` // whether the plants took food or water faster, in words
	Wants       string    `json:"-"` // the crops' EC and pH
	Litres      string    `json:"-"` // in the tub as read, in words
	Lowest      string    `json:"-"` // the lowest safe line; empty without one
	Mass        string    `json:"-"` // of the tub filled; empty where it is not known
	FromTap     string    `json:"-"` // the most from the tap in one day; empty without a limit
	Fills       string    `json:"-"` // solution at the line of the day
	Carry       []Carried `json:"-"`
	Still       bool      `json:"-"`

	known trouble.Known // for whoever looks for a cause
}

// Advised is one piece of advice, with its amounts in fixed units.
type Advised struct {
	Do       steering.Do `json:"do"`
	Code     string      `json:"code"`
	Text     string      `json:"text"`
	Hint     string      `json:"hint,omitempty"`
	Source   string      `json:"source"`
	TakeOutL *float64    `json:"take_out_l,omitempty"`
	MassKG   *float64    `json:"mass_kg,omitempty"`
	PourInL  *float64    `json:"pour_in_l,omitempty"`
	RestL    *float64    `json:"rest_l,omitempty"`
	ECAfter  *float64    `json:"ec_after,omitempty"`
}

// Morning is the moment at which somebody asks what there is to do.
type Morning struct {
	On       plan.Date // left out: the day of At, else of the last reading, else the first term day
	At       time.Time // see Inputs
	Zone     *time.Location
	Readings []reading.Row
}

// Asked is the assessment on another morning: what rests on the plan alone is
// shared, the rest is worked out anew. a stays as it is.
func (a *Assessment) Asked(m Morning) *Assessment {
	out := *a
	out.Tubs = append([]Tub(nil), a.Tubs...)
	out.Book, out.Findings = a.plain.Copy(), a.plainFindings
	if m.Zone == nil {
		m.Zone = time.UTC
	}
	d := &desk{Assessment: &out, entries: reading.Standing(m.Readings), today: &Today{}, book: out.Book}
	d.moment(m)
	out.Today = d.today
	out.On = ""
	if d.today.On.Set() {
		out.On = d.today.On.String()
	}
	d.work()
	if out.rotas != nil {
		d.class()
	}
	known := len(a.plainNumbers)
	out.Numbers = append(a.plainNumbers[:known:known], shownFrom(out.Book, a.Plan.Units, known)...)
	return &out
}

// moment settles the day and the time of day.
func (d *desk) moment(m Morning) {
	at := m.At
	if !at.IsZero() {
		at = at.In(m.Zone)
	}
	on := term.Date(m.On)
	last := time.Time{}
	for _, e := range d.entries {
		if moment := e.At.In(m.Zone); (!on.Set() || term.DateOf(moment) == on) && moment.After(last) {
			last = moment
		}
	}
	switch {
	case on.Set():
	case !at.IsZero():
		on = term.DateOf(at)
	case !last.IsZero():
		on = term.DateOf(last)
	default:
		on, _ = d.Term.First()
		if first := firstTermDay(d.Plan); !on.Set() {
			on = first
		}
	}
	if at.IsZero() || term.DateOf(at) != on {
		at = last
	}
	if on.Set() && (at.IsZero() || term.DateOf(at) != on) {
		at = d.Term.Arrives(on, m.Zone)
	}
	d.today.On, d.today.At = on, at
	upTo := 0
	for upTo < len(d.entries) && !d.entries[upTo].At.After(at) {
		upTo++
	}
	d.entries = d.entries[:upTo]
}

// desk works a morning out.
type desk struct {
	*Assessment
	book    *working.Book
	today   *Today
	entries []reading.Entry
}
