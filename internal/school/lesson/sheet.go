package lesson

import (
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Sheet is one sheet of sums: what a pupil reads, and the key.
type Sheet struct {
	Template Template
	Band     Band
	Tub      string
	System   quantity.System
	Number   uint64 // of the variant: the seed

	From      string   // on which data it rests, a sentence
	Made      bool     // some numbers are made up
	Told      []string // what the pupil is told first
	Care      []string // cautions
	Questions []Question
	Table     *Table
	Graph     *Graph
	Filled    bool // the graph of the pupil's copy is drawn already
	Odd       []Oddity
	Talk      string // a question to talk about
	TalkKey   string
	Why       string // why there is no such sheet for this tub; the rest is then empty
}

// Question is one thing asked. Its answer is the last of its numbers.
type Question struct {
	Text  string
	Steps []working.Number // to the answer, which is the last; none for one answered in words
	Noun  string           // of a count: 'holes'
	Says  string           // the answer in words, beside the number or in its place
	Lines int              // to write words on
}

// Answer is the number that is asked for; ok is false where words are.
func (q Question) Answer() (n working.Number, ok bool) {
	if len(q.Steps) == 0 {
		return n, false
	}
	return q.Steps[len(q.Steps)-1], true
}

// Table is what is read off or filled in.
type Table struct {
	Caption string
	Heads   []string
	Rows    [][]Cell
}

// Cell is one cell; one that is Asked is empty on the pupil's copy.
type Cell struct {
	Text  string
	Asked bool
}

// Numbers are all numbers that the key works out, in order.
func (s Sheet) Numbers() []working.Number {
	var out []working.Number
	for _, q := range s.Questions {
		out = append(out, q.Steps...)
	}
	return out
}

// FromPlan tells that the logbook gave nothing to this sheet.
func (s Sheet) FromPlan() bool { return s.Template.Log && strings.HasPrefix(s.From, fromPlan) }

// FromLog tells that it rests on readings.
func (s Sheet) FromLog() bool { return strings.HasPrefix(s.From, fromLog) }

// The sentences that say on which data a sheet rests.
const (
	fromPlan  = "The logbook holds too little for this sheet yet, so it comes from the plan alone."
	fromTub   = "From the plan of the tub."
	fromLog   = "From the class's logbook"
	madeUp    = "made up for this sheet"
	madeUpSay = "Some numbers are made up for practice: nobody measured them."
)
