package content

import "strings"

// Line is a sentence with blanks to write in: each run of '_' is one, as wide
// as the run.
type Line string

// Span is a piece of a line: words, or a blank of so many letters.
type Span struct {
	Text  string
	Width int // 0 for words
}

// Spans are the pieces in order.
func (l Line) Spans() []Span {
	var out []Span
	rest := string(l)
	for rest != "" {
		from := strings.IndexByte(rest, '_')
		if from < 0 {
			return append(out, Span{Text: rest})
		}
		if from > 0 {
			out = append(out, Span{Text: rest[:from]})
		}
		after := strings.TrimLeft(rest[from:], "_")
		out = append(out, Span{Width: len(rest) - from - len(after)})
		rest = after
	}
	return out
}
