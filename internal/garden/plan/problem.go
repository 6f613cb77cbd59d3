package plan

import (
	"fmt"
	"strconv"
)

// Problem is one thing in the document that cannot be read. Line and Column
// count from 1, in characters. Field is the path of the value it is about, such
// as tubs[0].hole, so that a form can say it there; it is empty only where no
// one value can be named: where the text is no plan, or cannot be told apart
// into keys. What is a clause without a full stop; Hint says what to do.
type Problem struct {
	Line   int
	Column int
	Field  string
	What   string
	Hint   string
}

// String gives the problem as one line: LINE:COLUMN: what is wrong.
func (p Problem) String() string { return fmt.Sprintf("%d:%d: %s", p.Line, p.Column, p.What) }

// withFields names the fields of problems that were found while the tree was
// built.
func withFields(root *node, problems []Problem) []Problem {
	for i, p := range problems {
		if root != nil && p.Field == "" {
			problems[i].Field, _ = root.spoiledAt(place{p.Line, p.Column}, "")
		}
	}
	return problems
}

// spoiledAt is the path of the value at a place about which something has been
// said.
func (n *node) spoiledAt(at place, path string) (string, bool) {
	if n.shape == spoiled {
		return path, n.at == at
	}
	for _, e := range n.entries {
		inner := path
		if e.key != "" {
			inner = join(path, e.key)
		}
		if found, ok := e.value.spoiledAt(at, inner); ok {
			return found, true
		}
	}
	for i, item := range n.items {
		if found, ok := item.spoiledAt(at, path+"["+strconv.Itoa(i)+"]"); ok {
			return found, true
		}
	}
	return "", false
}
