package garden

import (
	"context"
	"time"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/shopping"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
	"rootbell/internal/science/tub"
)

// Inputs is all an assessment depends on: the same inputs give the same
// assessment, byte for byte.
type Inputs struct {
	Plan   *plan.Plan
	On     plan.Date  // the day asked for; left out: that of the last reading, else the first term day
	Effort lid.Effort // zero counts as full
	Seed   uint64
	Memory Memory // of earlier searches; nil keeps none. It changes no answer
	// Readings are the rows of the garden's logbook in the order in which they
	// were written down; none is a garden of which nothing was read yet.
	Readings []reading.Row
	Zone     *time.Location // the school's; nil is UTC
	// Stages are what is asked for beside Build.
	Stages Stages
	// Members is how many courses a season's forecast follows; 0 is the usual
	// thousand. Fewer answer sooner, and more coarsely.
	Members int
	// Workers is how many of them are followed at once; it changes no answer.
	Workers int
	// At is the moment on the day On; zero: that day's last reading, else when
	// the first person comes.
	At time.Time
}

// Assessment is what a plan comes to. Its JSON is the document of
// 'check --json'; a nil pointer is a number that could not be worked out.
type Assessment struct {
	Format   int               `json:"format"`
	Garden   string            `json:"garden"`
	On       string            `json:"on"`
	Tubs     []Tub             `json:"tubs"`
	Findings []finding.Finding `json:"findings"`
	Numbers  []Number          `json:"numbers"`

	Shopping []shopping.Item `json:"-"`

	Term *term.Calendar `json:"-"` // the school's calendar; Known tells whether it has a term

	Today *Today `json:"today,omitempty"` // nil only for an assessment without its morning
	Class *Class `json:"class,omitempty"` // nil where it was not asked for

	Choose *Choose `json:"choose,omitempty"` // likewise

	Plan *plan.Plan    `json:"-"`
	Book *working.Book `json:"-"`

	plain         *working.Book // the numbers that rest on the plan alone
	plainNumbers  []Number
	plainFindings []finding.Finding // likewise, without the day's
	states        []*tubState
	rotas         *rotas // nil where the class was not asked for
}

// Tub is one tub's answer, all of it at the transplant line.
type Tub struct {
	Name           string   `json:"name"`
	FillDepthMM    *float64 `json:"fill_depth_mm"`
	VolumeFillL    *float64 `json:"volume_fill_l"`
	DisplacedL     *float64 `json:"displaced_l"`
	VolumeSolution *float64 `json:"volume_solution_l"`
	VolumeReserveL *float64 `json:"volume_reserve_l"`
	MassFilledKG   *float64 `json:"mass_filled_kg"`
	Plants         *Plants  `json:"plants"`
	Lid            *Lid     `json:"lid"`
	Mix            *Mix     `json:"mix,omitempty"`    // nil where it was not asked for, or rests on what must be put right first
	Season         *Season  `json:"season,omitempty"` // likewise
	Light          *Light   `json:"lamp,omitempty"`   // nil without lamp and lux readings
	Oxygen         *Oxygen  `json:"oxygen,omitempty"` // nil without an air pump

	Today *TubToday `json:"today,omitempty"` // nil where its lines contradict each other

	Crops  []Growing `json:"-"` // what grows in it, with the plants of each
	Shape  tub.Shape `json:"-"`
	Levels []Level   `json:"-"` // its lines, from the top down; none where they contradict each other
}

// Plants is how many plants a tub takes, and what binds.
type Plants struct {
	Count  int            `json:"count"`
	Binds  string         `json:"binds"`
	Limits map[string]int `json:"limits"`
	// Moves says of each limit what would move it.
	Moves map[string]string `json:"moves"`
}

// The names of the limits.
const (
	ByWater    = "nutrient volume"
	ByLid      = "lid"
	ByShelf    = "shelf"
	ByHeadroom = "headroom"
	ByLamp     = "lamp"
	ByOxygen   = "oxygen"
)

// LimitNames are the limits in the order in which they are told.
func LimitNames() []string { return []string{ByWater, ByLid, ByShelf, ByHeadroom, ByLamp, ByOxygen} }

// Growing is one crop of a tub.
type Growing struct {
	Name   string
	Plants int
}

// Number is one number of the assessment as the plan's unit system shows it.
type Number struct {
	Key     string        `json:"key"`
	Name    string        `json:"name"`
	Value   float64       `json:"value"`
	Unit    string        `json:"unit"`
	Symbol  string        `json:"symbol"`
	Formula string        `json:"formula"`
	PutIn   string        `json:"put_in"`
	Basis   working.Basis `json:"basis"`
	Source  string        `json:"source"`
	Low     *float64      `json:"low,omitempty"`
	High    *float64      `json:"high,omitempty"`
	From    []string      `json:"from,omitempty"` // keys of the numbers put in

	Decimals int `json:"-"`
}

// Assess works out the plan. The only error is that ctx ended: what is wrong
// with the garden is a finding.
func Assess(ctx context.Context, in Inputs) (*Assessment, error) {
	a := &assessor{in: in, plan: in.Plan, book: working.NewBook(), ctx: ctx}
	out := &Assessment{Format: plan.Format, Garden: in.Plan.Garden, Plan: in.Plan, Book: a.book}
	a.shelf()
	for i := range in.Plan.Tubs {
		t, err := a.tub(i)
		if err != nil {
			return nil, err
		}
		out.Tubs = append(out.Tubs, t.out)
		out.states = append(out.states, t)
	}
	a.overloaded()
	a.missing()
	a.lamps()
	a.foamCups()
	out.Term = a.term()
	out.Shopping = a.shopping(out.Tubs)
	if in.Stages.Has(StageChoose) {
		var err error
		if out.Choose, err = a.choose(out); err != nil {
			return nil, err
		}
	}
	if in.Stages.Has(StageMix) {
		a.mix(out)
	}
	if in.Stages.Has(StageSeason) {
		if err := a.season(out); err != nil {
			return nil, err
		}
	}
	if in.Stages.Has(StageClass) {
		out.rotas = newRotas(in)
	}
	a.place()
	finding.Sort(a.findings)
	out.Findings = a.findings
	if out.Findings == nil {
		out.Findings = []finding.Finding{}
	}
	out.plain, out.plainNumbers, out.plainFindings = a.book, Shown(a.book, in.Plan.Units), out.Findings
	return out.Asked(Morning{On: in.On, At: in.At, Zone: in.Zone, Readings: in.Readings}), nil
}

// Shown writes every number of a book in a unit system.
func Shown(b *working.Book, s quantity.System) []Number { return shownFrom(b, s, 0) }

// shownFrom leaves out so many of the first numbers.
func shownFrom(b *working.Book, s quantity.System, first int) []Number {
	out := []Number{}
	for _, n := range b.Numbers()[first:] {
		shown := n.Show(s)
		row := Number{
			Key: n.Key, Name: n.Name, Value: shown.Value, Unit: shown.Unit, Symbol: n.Symbol, Formula: shown.Formula,
			PutIn: shown.PutIn, Basis: n.Basis, Source: n.Source, Decimals: shown.Decimals,
		}
		if shown.Low != shown.High {
			low, high := shown.Low, shown.High
			row.Low, row.High = &low, &high
		}
		for _, input := range n.Inputs {
			row.From = append(row.From, input.Key)
		}
		out = append(out, row)
	}
	return out
}

// firstTermDay is the first day of all the terms, not set without one.
func firstTermDay(p *plan.Plan) term.Date {
	first := term.Date{}
	for _, t := range p.School.Terms {
		if from := term.Date(t.From); !first.Set() || from.Before(first) {
			first = from
		}
	}
	return first
}

// assessor is one assessment under way.
type assessor struct {
	ctx      context.Context
	in       Inputs
	plan     *plan.Plan
	book     *working.Book
	findings []finding.Finding
	bay      bay
}

func (a *assessor) find(level finding.Level, code, field, text, hint string) {
	a.findings = append(a.findings, finding.Finding{Level: level, Code: code, Field: field, Text: text, Hint: hint})
}

func (a *assessor) stop(code, field, text, hint string) {
	a.find(finding.Stop, code, field, text, hint)
}

func (a *assessor) warn(code, field, text, hint string) {
	a.find(finding.Warn, code, field, text, hint)
}

func (a *assessor) note(code, field, text, hint string) {
	a.find(finding.Note, code, field, text, hint)
}

// place fills in where in the document each finding's field stands.
func (a *assessor) place() {
	for i, f := range a.findings {
		a.findings[i].Line, a.findings[i].Column = a.plan.Where(f.Field)
	}
}

// says writes a number as the plan's unit system shows it.
func (a *assessor) says(n working.Number) string {
	return quantity.Format(n.Kind, n.Base, a.plan.Units)
}

// mm writes a length given in mm.
func (a *assessor) mm(v float64) string {
	return quantity.Format(quantity.Length, v, a.plan.Units)
}

// in returns a number's value in a unit, for the JSON's fixed units.
func in(n working.Number, u quantity.Unit, decimals int) *float64 {
	v := quantity.Round(u.From(n.Base), decimals)
	return &v
}

// Invented tells whether the plan says that its numbers are made up.
func (a *Assessment) Invented() bool { return a.Plan.Invented.Value }

// Paper is the paper in the printer: as the plan says, else by its units.
func (a *Assessment) Paper() string {
	if a.Plan.Paper != "" {
		return a.Plan.Paper
	}
	if a.Plan.Units == quantity.US {
		return "Letter"
	}
	return "A4"
}
