// Package finding holds what a plan's assessment has to say in words: a stop,
// a warning or a note, with what to do and the field it concerns.
package finding

import "sort"

// Level says how serious a finding is. The zero value is Note.
type Level int

// The three levels, from 'good to know' to 'it would fail or harm'.
const (
	Note Level = iota
	Warn
	Stop
)

// String is the word shown and written: note, warn or stop.
func (l Level) String() string {
	switch l {
	case Stop:
		return "stop"
	case Warn:
		return "warn"
	default:
		return "note"
	}
}

// MarshalText writes the word, so that JSON carries it.
func (l Level) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// Finding is one thing to know or to act on. Code is stable and meant for
// scripts; Text and Hint are for the teacher; Field is the path in the plan,
// such as tubs[0].hole. Line and Column are 1-based and zero when the plan has
// no such place; they are filled where the document is known.
type Finding struct {
	Level  Level  `json:"level"`
	Code   string `json:"code"`
	Field  string `json:"field"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Text   string `json:"text"`
	Hint   string `json:"hint"`
}

// Sort puts stops first, then warnings, then notes, keeping the order of those
// of one level: the first three on a page are then the three that matter.
func Sort(all []Finding) {
	sort.SliceStable(all, func(i, j int) bool { return all[i].Level > all[j].Level })
}

// Worst is the highest level among the findings; Note when there are none.
func Worst(all []Finding) Level {
	worst := Note
	for _, f := range all {
		worst = max(worst, f.Level)
	}
	return worst
}
