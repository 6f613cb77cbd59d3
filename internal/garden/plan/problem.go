package plan

import "fmt"

// Problem is one thing in the document that cannot be read. Line and Column
// count from 1, in characters; Field is the path, such as tubs[0].hole, and may
// be empty; What is a clause without a full stop; Hint says what to do.
type Problem struct {
	Line   int
	Column int
	Field  string
	What   string
	Hint   string
}

// String gives the problem as one line: LINE:COLUMN: what is wrong.
func (p Problem) String() string { return fmt.Sprintf("%d:%d: %s", p.Line, p.Column, p.What) }
