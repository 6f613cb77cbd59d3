package reading

import (
	"math"
	"slices"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"rootbell/internal/base/quantity"
)

// Problem is why a row cannot be kept: what is wrong, what to do, and where.
// Line and Column are those of a table that was read in, 1-based and in
// characters; zero elsewhere.
type Problem struct {
	Field        Field
	Line, Column int
	What         string // a clause without a full stop
	Hint         string
}

// Longest texts that a row holds, in characters.
const (
	longestID   = 64
	longestName = 24
	longestNote = 2000
	longestText = 80
)

// Check gives what keeps a row from being written down. A value that is only
// unlikely is no problem: see Ask. by are the teams and jobs of the plan; no
// other word may stand in By, so that no person's name does.
func (r Row) Check(by []string) []Problem {
	var out []Problem
	add := func(f Field, what, hint string) { out = append(out, Problem{Field: f, What: what, Hint: hint}) }
	r.checkPlace(by, add)
	r.checkFigures(add)
	r.checkWords(add)
	return out
}

type adder func(f Field, what, hint string)

func (r Row) checkPlace(by []string, add adder) {
	if !plainWord(r.ID, longestID) {
		add("id", "the row has no id", "give each row its own, up to 64 letters, digits, dots or hyphens")
	}
	if r.Corrects != "" && !plainWord(r.Corrects, longestID) {
		add("corrects", "this is no id of a row", "write the id of the row that this one corrects")
	}
	if r.Corrects != "" && r.Corrects == r.ID {
		add("corrects", "the row corrects itself", "give the new row its own id")
	}
	if r.Withdrawn && r.Corrects == "" {
		add("withdrawn", "the row withdraws a reading but names none", "write the id of that row under corrects")
	}
	switch name := strings.TrimSpace(r.Tub); {
	case name == "":
		add(FieldTub, "the row names no tub", "write the tub's name")
	case name != r.Tub || !oneLine(r.Tub) || utf8.RuneCountInString(r.Tub) > longestName:
		add(FieldTub, "this is no name of a tub", "write 1 to 24 letters, digits, spaces or hyphens")
	}
	switch y := r.At.UTC().Year(); {
	case r.At.IsZero():
		add(FieldMoment, "the row has no moment", "write when it was read")
	case y < 2000 || y > 9998:
		add(FieldMoment, "no reading is from that year", "write the year with four digits")
	case r.At.Nanosecond()%int(time.Millisecond) != 0:
		add(FieldMoment, "the moment is finer than a thousandth of a second", "write hours, minutes and seconds")
	}
	if r.By != "" && !Named(by, r.By) {
		add("by", "'"+shortened(r.By)+"' is no team or job of this garden", "write "+listed(by)+", and no person's name")
	}
}

// Named tells whether a word is among the teams and jobs, in any case.
func Named(by []string, word string) bool {
	return slices.ContainsFunc(by, func(b string) bool { return strings.EqualFold(b, word) })
}

func listed(words []string) string {
	switch len(words) {
	case 0:
		return "nothing there, as the plan names no teams"
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

func (r Row) checkFigures(add adder) {
	ways := 0
	for _, set := range []bool{r.Level.Litres.Set(), r.Level.Depth.Set(), r.Level.Filled.Set()} {
		if set {
			ways++
		}
	}
	if ways > 1 {
		add(FieldLevel, "the level is told in more than one way", "leave one: the dipstick, the depth, or what it was filled with")
	}
	if r.Added.Litres.Set() && r.Level.Filled.Set() {
		add(FieldAdded, "what was poured in is told twice", "leave one of the two")
	}
	figure(FieldPH, r.PH.Read, add)
	figure(FieldEC, r.EC.Read, add)
	for _, f := range []struct {
		field Field
		value float64
		text  string
	}{
		{FieldWater, float64(r.Water.Value), r.Water.Text},
		{FieldLevel, float64(r.Level.Litres.Value), r.Level.Litres.Text},
		{FieldLevel, float64(r.Level.Depth.Value), r.Level.Depth.Text},
		{FieldLevel, float64(r.Level.Filled.Value), r.Level.Filled.Text},
		{FieldAdded, float64(r.Added.Litres.Value), r.Added.Litres.Text},
		{FieldAdded, float64(r.Added.EC.Value), r.Added.EC.Text},
		{FieldHeight, float64(r.Height.Value), r.Height.Text},
		{FieldLeaves, float64(r.Counted.Value), r.Counted.Text},
		{FieldPicked, float64(r.Picked.Plants.Value), r.Picked.Plants.Text},
		{FieldWeigh, float64(r.Picked.Mass.Value), r.Picked.Mass.Text},
		{FieldPH, float64(r.PH.Step), ""},
		{FieldEC, float64(r.EC.Step), ""},
	} {
		if !sane(f.value) || f.text == "" && f.value != 0 && f.field != FieldPH && f.field != FieldEC {
			add(f.field, "this is no figure to be measured", "type it again")
		} else if !cell(f.text, longestText) {
			add(f.field, "this is too long, or not text", "type the figure and its unit")
		}
	}
	whole(FieldLeaves, r.Counted, "leaves", add)
	whole(FieldPicked, r.Picked.Plants, "plants", add)
	if r.Picked.Mass.Set() && !(r.Picked.Mass.Value > 0) {
		add(FieldWeigh, "what was picked weighs something", "weigh it again, or leave the field empty")
	}
	for _, d := range []time.Time{r.PH.Calibrated, r.EC.Calibrated} {
		if !d.IsZero() && (!d.Equal(day(d)) || d.Location() != time.UTC || d.Year() < 2000 || d.Year() > 9998) {
			add("calibrated", "this is no day", "write it as 2027-01-11")
		}
	}
}

// Figures of a garden lie far within these, and a table can hold them all to
// the last bit.
const (
	least = 1e-9
	most  = 1e7
)

func sane(v float64) bool { return v == 0 || math.Abs(v) >= least && math.Abs(v) <= most }

func figure[Q quantity.Quantity](f Field, i quantity.Interval[Q], add adder) {
	switch {
	case !sane(float64(i.Low)) || !sane(float64(i.High)) || i.Low < 0 || !i.Set() && (i.Low != 0 || i.High != 0):
		add(f, "this is no figure to be measured", "type it again")
	case i.Low > i.High:
		add(f, "the interval begins with the larger figure", "write the smaller one first")
	case !cell(i.Text, longestText):
		add(f, "this is too long, or not text", "type the figure")
	}
}

// whole holds what is counted to numbers that a count can give.
func whole(f Field, t quantity.Typed[quantity.Number], what string, add adder) {
	if v := float64(t.Value); t.Set() && (v < 1 || v != math.Trunc(v)) {
		add(f, "that is no number of "+what, "count them: 1, 2, 3 and so on; leave the field empty where there are none")
	}
}

func (r Row) checkWords(add adder) {
	word(add, "pH read with", r.PH.With, instruments[:])
	word(add, "EC read with", r.EC.With, instruments[:])
	word(add, "EC scale", r.EC.Scale, scales[:])
	word(add, "roots", r.Roots.Colour, colours[:])
	for i, d := range r.Done {
		word(add, "done", d, deeds[:])
		if d == "" || slices.Contains(r.Done[:i], d) {
			add("done", "a deed stands twice or is empty", "tick each once")
		}
	}
	for i, f := range r.Doubtful {
		word(add, "doubtful", f, fields[:])
		if f == "" || slices.Contains(r.Doubtful[:i], f) {
			add("doubtful", "a field stands twice or is empty", "name each once")
		}
	}
	for _, n := range []struct {
		field Field
		text  string
	}{{"leaves", r.Leaves}, {"seen", r.Seen}, {"note", r.Note}} {
		if !cell(n.text, longestNote) {
			add(n.field, "the note is too long or holds characters that cannot be written", "shorten it to 2,000 characters of plain text")
		} else if what, found := personal(n.text); found {
			add(n.field, "the note holds "+what, "leave it out: the logbook keeps nothing about a person")
		}
	}
}

func word[T ~string](add adder, f Field, w T, of []T) {
	if w == "" || slices.Contains(of, w) {
		return
	}
	all := make([]string, len(of))
	for i, o := range of {
		all[i] = string(o)
	}
	add(f, "'"+shortened(string(w))+"' is not known here", "write "+listed(all))
}

// plainWord tells what can be an id: letters, digits, dots, hyphens, and so on.
func plainWord(s string, longest int) bool {
	if s == "" || len(s) > longest {
		return false
	}
	for _, r := range s {
		if !strings.ContainsRune("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789._:-", r) {
			return false
		}
	}
	return s[0] != '-'
}

// cell tells whether a text can be kept: not too long, no control characters
// but the end of a line, no blanks at its ends.
func cell(s string, longest int) bool {
	if !utf8.ValidString(s) || utf8.RuneCountInString(s) > longest || strings.TrimSpace(s) != s {
		return false
	}
	return !strings.ContainsFunc(s, func(r rune) bool { return unicode.IsControl(r) && r != '\n' })
}

func oneLine(s string) bool { return cell(s, longestNote) && !strings.Contains(s, "\n") }

func shortened(s string) string {
	if r := []rune(s); len(r) > 30 {
		return string(r[:29]) + "…"
	}
	return s
}
