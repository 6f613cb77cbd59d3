package lesson

import (
	"fmt"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
)

// fences is the rule by which a reading stands out.
const fences = "Tukey 1977, Exploratory Data Analysis: the fences"

// leastForFences is how many readings there must be before one of them is
// called odd: quartiles of fewer say little (our choice).
const leastForFences = 6

// Oddity is a reading that stands out, and what was done with it.
type Oddity struct {
	ID    string // of its row
	On    string // the date
	Value string // as read, with its unit
	Why   string // by which rule, with the numbers
	Do    Deed   // as decided; empty where nobody did
	New   string // in its place, with its unit; empty unless corrected
}

// Says is the reading, why it stands out and what was done, in sentences.
func (o Oddity) Says() string {
	text := fmt.Sprintf("On %s the logbook says %s. %s ", o.On, o.Value, o.Why)
	switch o.Do {
	case LeaveOut:
		return text + "The teacher leaves it out."
	case Correct:
		return text + "The teacher writes " + o.New + " in its place."
	case Keep:
		return text + "The teacher keeps it."
	}
	return text + "Nobody has decided yet: it is kept."
}

// Short is the same for pupils.
func (o Oddity) Short() string {
	text := fmt.Sprintf("On %s the logbook says %s. That looks odd. ", o.On, o.Value)
	switch o.Do {
	case LeaveOut:
		return text + "The teacher leaves it out."
	case Correct:
		return text + "The teacher puts " + o.New + " in its place."
	case Keep:
		return text + "The teacher keeps it."
	}
	return text + "It is kept so far."
}

// datum is one reading of a series in the unit that is shown.
type datum struct {
	id       string
	day      float64 // since the first
	at       time.Time
	on       string
	value    float64
	doubtful bool
	odd      string // why it stands out
}

// short is the date as it stands under a bar: 12 Feb.
func (d datum) short() string {
	day, month, _ := strings.Cut(d.on, " ")
	return day + " " + month[:min(len(month), 3)]
}

// judge marks the readings that stand out. What grows is held against the line
// through the middle of all slopes, what does not is taken as it is.
// step is the last digit that is read: a spread smaller than that is taken as
// that, or readings that hardly differ would all stand out.
func judge(data []datum, grows bool, step float64, show func(float64) string) {
	for i := range data {
		if data[i].doubtful {
			data[i].odd = "It was written down as doubtful."
		}
	}
	if len(data) < leastForFences {
		return
	}
	x, y := make([]float64, len(data)), make([]float64, len(data))
	for i, d := range data {
		x[i], y[i] = d.day, d.value
	}
	of, beyond := "", "that spread"
	if grows {
		a, b := steadyLine(x, y)
		for i := range y {
			y[i] -= a + b*x[i]
		}
		of = " off the steady line"
	}
	l, u := quartiles(y)
	low, high := lowFence.Value(l, u), highFence.Value(l, u)
	half := fmt.Sprintf("lie between %s and %s%s", show(l), show(u), of)
	if u-l < step {
		low, high = l-1.5*step, u+1.5*step
		beyond = "the last digit that is read, " + show(step) + ","
		switch {
		case grows && max(u, -l) < step:
			half = "lie within the last digit of the steady line"
		case show(l) == show(u):
			half = fmt.Sprintf("lie within the last digit of %s%s", show(l), of)
		}
	}
	const slack = 1e-9 // of binary fractions
	for i, v := range y {
		if (v < low-slack || v > high+slack) && data[i].odd == "" {
			data[i].odd = fmt.Sprintf("Half of all readings %s. It lies past the fences, %s and %s%s: one and a half times %s further out.", half, show(low), show(high), of, beyond)
		}
	}
}

// settle does with each odd reading what was decided, and tells of it. What is
// left out is gone from the result.
func settle(data []datum, c Choice, kind quantity.Kind, s quantity.System) (kept []datum, told []Oddity) {
	show := func(v float64) string { return quantity.Format(kind, kind.Unit(s).Base(v), s) }
	for _, d := range data {
		if d.odd == "" {
			kept = append(kept, d)
			continue
		}
		by := c.decided(d.id)
		o := Oddity{ID: d.id, On: d.on, Value: show(d.value), Why: d.odd, Do: by.Do}
		switch by.Do {
		case LeaveOut:
		case Correct:
			d.value = quantity.Round(by.Value, kind.Decimals[s])
			o.New = show(d.value)
			kept = append(kept, d)
		default:
			kept = append(kept, d)
		}
		told = append(told, o)
	}
	return kept, told
}
