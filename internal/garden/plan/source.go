package plan

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"
)

// largest is the most bytes a plan may have. A plan of a whole school has
// fewer than a hundredth of it.
const largest = 1 << 20

// place is where something stands in the text, counted from 1 in characters.
type place struct {
	line, column int
}

func (p place) before(q place) bool {
	return p.line < q.line || p.line == q.line && p.column < q.column
}

// source is the document's text, seen as lines of characters in which every
// blank is a plain blank. Places count in these lines, and lead back to bytes.
type source struct {
	raw    []byte
	lines  [][]rune
	starts []int // the byte in raw at which each line begins, after a byte-order mark
}

// newSource splits the text into lines, or says why it is no plan at all.
func newSource(raw []byte) (*source, *Problem) {
	if bad := unreadable(raw); bad != nil {
		return nil, bad
	}
	s := &source{raw: raw}
	start := 0
	if bytes.HasPrefix(raw, []byte("\ufeff")) {
		start = len("\ufeff")
	}
	for {
		end := bytes.IndexByte(raw[start:], '\n')
		line := raw[start:]
		if end >= 0 {
			line = raw[start : start+end]
		}
		s.starts = append(s.starts, start)
		s.lines = append(s.lines, plainBlanks(string(bytes.TrimSuffix(line, []byte("\r")))))
		if end < 0 {
			return s, nil
		}
		start += end + 1
	}
}

// plainBlanks turns every kind of blank but the tab into a plain one, character
// for character, so that places stay.
func plainBlanks(line string) []rune {
	runes := []rune(line)
	for i, r := range runes {
		if r != '\t' && (unicode.IsSpace(r) || r == '\ufeff') {
			runes[i] = ' '
		}
	}
	return runes
}

// clean is the text as the library reads it.
func (s *source) clean() string {
	var b strings.Builder
	for i, line := range s.lines {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(string(line))
	}
	return b.String()
}

// offset is the byte in raw at which the place stands.
func (s *source) offset(at place) int {
	if at.line < 1 || at.line > len(s.lines) {
		return len(s.raw)
	}
	at0 := s.starts[at.line-1]
	for range at.column - 1 {
		if at0 >= len(s.raw) || s.raw[at0] == '\n' {
			break
		}
		_, size := utf8.DecodeRune(s.raw[at0:])
		at0 += size
	}
	return at0
}

// rest is what stands on the line from the place on.
func (s *source) rest(at place) []rune {
	if at.line < 1 || at.line > len(s.lines) || at.column < 1 || at.column > len(s.lines[at.line-1]) {
		return nil
	}
	return s.lines[at.line-1][at.column-1:]
}

func unreadable(raw []byte) *Problem {
	at := func(i int) (line, column int) {
		before := raw[:i]
		start := bytes.LastIndexByte(before, '\n') + 1
		column = utf8.RuneCount(bytes.TrimPrefix(before[start:], []byte("\ufeff"))) + 1
		return bytes.Count(before, []byte("\n")) + 1, column
	}
	const save = "save the plan as plain text (UTF-8)"
	switch {
	case len(raw) > largest:
		return &Problem{Line: 1, Column: 1, What: "the file is larger than 1 MiB, so it is not a plan", Hint: "check that it is the right file"}
	case bytes.HasPrefix(raw, []byte("\xff\xfe")), bytes.HasPrefix(raw, []byte("\xfe\xff")):
		return &Problem{Line: 1, Column: 1, What: "the file is saved as UTF-16", Hint: save}
	}
	for i := 0; i < len(raw); {
		r, size := utf8.DecodeRune(raw[i:])
		line, column := 0, 0
		if r == utf8.RuneError && size == 1 || unicode.IsControl(r) && r != '\n' && r != '\t' && r != '\r' && r != '\u0085' {
			line, column = at(i)
			return &Problem{Line: line, Column: column, What: "this is not plain text", Hint: save}
		}
		if r == '\r' && !bytes.HasPrefix(raw[i+1:], []byte("\n")) {
			line, column = at(i)
			return &Problem{Line: line, Column: column, What: "a line ends here without a line feed", Hint: "save the plan with the usual line ends"}
		}
		i += size
	}
	return nil
}
