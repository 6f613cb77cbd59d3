package plainwords

import (
	"strings"
	"unicode"
)

// Counts are what a text is made of.
type Counts struct{ Sentences, Words, Syllables int }

// Add puts two texts one after the other.
func (c Counts) Add(o Counts) Counts {
	return Counts{c.Sentences + o.Sentences, c.Words + o.Words, c.Syllables + o.Syllables}
}

// Of counts a text. A sentence ends with a full stop, a question mark, an
// exclamation mark, or the line: an entry of a list is one. A number is a word,
// read aloud; a gap to write in, such as ____, is none.
func Of(text string) Counts {
	var c Counts
	open := 0 // words since the last end of a sentence
	for _, line := range strings.Split(text, "\n") {
		for _, token := range strings.FieldsFunc(line, splits) {
			spoken := strings.TrimFunc(token, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '°' && r != '%' })
			if spoken != "" {
				c.Words++
				open++
				c.Syllables += Syllables(spoken)
			}
			if ends(token) && open > 0 {
				c.Sentences++
				open = 0
			}
		}
		if open > 0 {
			c.Sentences++
			open = 0
		}
	}
	return c
}

// splits tells whether a sign stands between words; a hyphen does, so that each
// part of a compound counts.
func splits(r rune) bool {
	return unicode.IsSpace(r) || r == '-' || r == '–' || r == '—' || r == '/'
}

func ends(token string) bool {
	token = strings.TrimRight(token, `'")]’”`)
	return strings.HasSuffix(token, ".") || strings.HasSuffix(token, "?") || strings.HasSuffix(token, "!")
}
