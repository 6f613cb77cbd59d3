package store

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The limits of what is kept. Revisions are kept all.
const (
	MostText  = 256 << 10 // bytes of a plan
	MostName  = 200       // characters of a garden's name
	MostWhy   = 200       // characters of what a revision is for
	MostKey   = 60        // characters of a setting's key
	MostValue = 4 << 10   // characters of a setting's value

	MostReading = 32 << 10 // bytes of a row of the logbook, as JSON
	MostID      = 64       // bytes of its id
)

func unfit(what, hint string, parts ...any) error {
	return &Refused{Reason: Unfit, What: fmt.Sprintf(what, parts...), Hint: hint}
}

// checkText wants text that every database keeps byte for byte.
func checkText(text []byte) error {
	if len(text) > MostText {
		return unfit("the plan is %d KiB long, and at most %d KiB are kept", "shorten it; a plan of a whole school is far below that", (len(text)+1023)>>10, MostText>>10)
	}
	if !utf8.Valid(text) || strings.ContainsRune(string(text), 0) {
		return unfit("the plan is not plain text in UTF-8", "save it as UTF-8 text in your editor, then try again")
	}
	return nil
}

// checkLine wants one line of text, called what, of at most so many characters.
func checkLine(what, line string, most int) error {
	switch {
	case !utf8.ValidString(line):
		return unfit("%s is not plain text in UTF-8", "type it again", what)
	case utf8.RuneCountInString(line) > most:
		return unfit("%s has %d characters, and at most %d are kept", "shorten it", what, utf8.RuneCountInString(line), most)
	case strings.ContainsFunc(line, unicode.IsControl):
		return unfit("%s has a line break or another sign that cannot be seen", "type it in one line", what)
	}
	return nil
}

func checkName(name string) error {
	if strings.TrimSpace(name) == "" {
		return unfit("the garden has no name", "give it one, such as 'Science room'")
	}
	return checkLine("the garden's name", name, MostName)
}

func checkRevision(name string, text []byte, why string) error {
	if err := checkName(name); err != nil {
		return err
	}
	if err := checkText(text); err != nil {
		return err
	}
	return checkLine("what the change is for", why, MostWhy)
}
