package web

import (
	"strings"

	"github.com/rogpeppe/go-internal/diff"
)

// lineChange is one line of two texts set against each other.
type lineChange struct {
	Sign string // gone, came, same or skip
	Text string
}

// linesChanged sets two texts line against line, with three lines around each
// change.
func linesChanged(before, after []byte) []lineChange {
	var out []lineChange
	signs := map[byte]string{'-': "gone", '+': "came", ' ': "same"}
	for i, line := range strings.Split(string(diff.Diff("before", before, "after", after)), "\n") {
		switch {
		case i < 3 || line == "":
		case strings.HasPrefix(line, "@@"):
			out = append(out, lineChange{"skip", ""})
		case signs[line[0]] != "":
			out = append(out, lineChange{signs[line[0]], line[1:]})
		}
	}
	return out
}
