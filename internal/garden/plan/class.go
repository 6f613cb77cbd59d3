package plan

import (
	"strings"
	"unicode"
)

// Job is one of the class's jobs.
type Job struct {
	// What it is called. No person's name.
	Name string `plan:"name,required"`
	// How many pupils do it together. Where teams take turns: how many teams.
	People Whole `plan:"people" in:"1 to 6" default:"1"`
	// How heavy a turn is: 2 is twice as much work as 1.
	Weight Whole `plan:"weight" in:"1 to 9" default:"1"`
	// The day from which it is done; it begins with that day's week.
	From Date `plan:"from" default:"the first day of the term"`
	// The day until which it is done.
	To Date `plan:"to" default:"the last day of the term"`
}

// Pairs are wishes about who works with whom, by number and never by name.
type Pairs struct {
	// Two who are to work together at least once.
	Wanted [][2]Number `plan:"wanted" in:"1 to 500"`
	// Two who are never to work together.
	Never [][2]Number `plan:"never" in:"1 to 500"`
}

// Absent is one who is away for a week. No reason is asked.
type Absent struct {
	// Any day of the week.
	Week Date `plan:"week,required"`
	// Who, by number.
	Number Number `plan:"number,required" in:"1 to 500"`
}

// Number stands for a pupil on the teacher's own list, or for a team by its
// place among the teams. The zero value is one left out.
type Number int

// readText takes a whole number; a name is refused in words.
func (w *Number) readText(text string, f Key) error {
	if strings.ContainsFunc(text, unicode.IsLetter) {
		return bad(quote(text)+" is a word where a number belongs", "pupils and teams are numbers here, such as 14; names stay on your own list")
	}
	number, err := readWhole(text, f)
	if err == nil {
		*w = Number(number)
	}
	return err
}

// ofClass are the keys of the school that tell of one year's class and not of
// the tubs.
var ofClass = []string{"pupils", "ages", "teams", "jobs", "pairs", "absent"}

// WithoutClass gives a plan's text without what tells of one year's class: how
// many pupils of what age, teams, jobs, pairs and absences. All else stays, byte
// for byte. The error is that the text cannot be read.
func WithoutClass(text []byte) ([]byte, error) {
	if err := Read(text).Trouble(); err != nil {
		return nil, err
	}
	for _, key := range ofClass {
		path := "school." + key
		if !Has(text, path) {
			continue
		}
		out, err := Remove(text, path)
		if err != nil {
			return nil, err
		}
		text = out
	}
	return text, nil
}

// ClassKeys are the keys of the class that a text has, in their order.
func ClassKeys(text []byte) []string {
	var out []string
	for _, key := range ofClass {
		if Has(text, "school."+key) {
			out = append(out, key)
		}
	}
	return out
}
