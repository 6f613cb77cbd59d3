package reading

import (
	"slices"
	"time"

	"rootbell/internal/base/quantity"
)

// Question is a value that may be a slip. Nothing is refused: the answers are
// to take a likely value, to measure again, or to keep it as doubtful.
type Question struct {
	Field  Field
	Code   string   // stable, for tests and pages
	Text   string   // what is asked
	Hint   string   // what to do besides answering; may be empty
	Likely []Choice // the likeliest first; none where only measuring again helps
}

// Choice is a likely value that can be taken.
type Choice struct {
	Label  string
	change func(*Row)
}

// Take is the row with a likely value; what was typed stays as its text.
func (c Choice) Take(r Row) Row {
	r.Doubtful = slices.Clone(r.Doubtful)
	if c.change != nil {
		c.change(&r)
	}
	return r
}

// Keep is the row with the field of a question kept as doubtful: it is drawn,
// but nothing is decided by it.
func (q Question) Keep(r Row) Row {
	r.Doubtful = slices.Clone(r.Doubtful)
	if !r.Doubts(q.Field) {
		r.Doubtful = append(r.Doubtful, q.Field)
	}
	return r
}

// Beside is what a new row is held against.
type Beside struct {
	Now    time.Time        // the moment the row is written down
	Tub    Vessel           // the row's tub; LitresAtDepth may be nil
	Last   []Entry          // the tub's readings that stand, without the row that this one corrects
	Others map[string]Row   // the last reading of each other tub
	Target quantity.MSPerCM // of the tub; zero: not known
	System quantity.System
}

// Ask gives the questions that a row raises, in the order of the form. A field
// that is kept as doubtful already is not asked about again.
func Ask(r Row, b Beside) []Question {
	if r.Withdrawn {
		return nil
	}
	var out []Question
	for _, ask := range []func(Row, Beside) (Question, bool){
		askTub, askMoment, askSwapped, askPH, askEC, askWater, askLevel, askAdded, askHeight, askLeaves, askPicked, askWeigh,
	} {
		q, doubtful := ask(r, b)
		if doubtful && !r.Doubts(q.Field) && !asked(out, q.Field) {
			out = append(out, q)
		}
	}
	return out
}

// asked tells whether a field has its question: pH and EC that were swapped
// are one question and not three.
func asked(out []Question, f Field) bool {
	return slices.ContainsFunc(out, func(q Question) bool {
		return q.Field == f || q.Code == swapped && (f == FieldPH || f == FieldEC)
	})
}

// last is the tub's latest reading of a field before the row.
func (b Beside) last(r Row, f Field) (Row, bool) {
	e, ok := Last(b.Last, f, r.At)
	return e.Row, ok
}

// askMoment asks about a moment that is still to come or long past.
func askMoment(r Row, b Beside) (Question, bool) {
	if r.At.IsZero() || b.Now.IsZero() {
		return Question{}, false
	}
	const hour = time.Hour
	ahead := time.Duration(Facts.Get(factAskMomentAhead).Value) * time.Minute
	late := time.Duration(Facts.Get(factAskMomentLate).Value) * 24 * hour
	plausible := func(t time.Time) bool { return !t.After(b.Now.Add(ahead)) && !t.Before(b.Now.Add(-late)) }
	q := Question{Field: FieldMoment, Code: "moment-ahead", Text: moment(r.At) + " is still to come: did you mean another day or hour?"}
	switch {
	case plausible(r.At):
		return Question{}, false
	case !r.At.After(b.Now):
		q.Code, q.Text = "moment-late", moment(r.At)+" is long past: is the year right?"
	}
	for _, t := range []time.Time{r.At.Add(-12 * hour), r.At.AddDate(0, 0, -1), r.At.AddDate(0, -1, 0), r.At.AddDate(-1, 0, 0), r.At.AddDate(1, 0, 0)} {
		if plausible(t) && len(q.Likely) < mostLikely {
			q.Likely = append(q.Likely, Choice{moment(t), func(r *Row) { r.At = t }})
		}
	}
	if len(q.Likely) == 0 {
		now := b.Now.In(r.At.Location())
		q.Likely = []Choice{{"now, " + moment(now), func(r *Row) { r.At = now }}}
	}
	return q, true
}

// mostLikely is how many likely values are offered: a form has no room for more.
const mostLikely = 2

func moment(t time.Time) string { return t.Format("Mon 2 Jan 2006 15:04") }
