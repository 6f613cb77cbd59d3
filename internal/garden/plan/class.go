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
