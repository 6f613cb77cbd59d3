package plan

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"unicode"
	"unicode/utf8"
)

// With gives the plan's text with one value replaced by what was typed; see Edit.
func (p *Plan) With(path, typed string) ([]byte, error) {
	if p == nil {
		return nil, errors.New("there is no document to edit")
	}
	return Edit(p.text, path, typed)
}

// Edit gives a document's text with one value replaced by what was typed, or
// with a key added, together with the groups around it that are missing. Every
// other byte stays: the comments, the order, the blanks. The text may have
// problems, as long as its keys can be told apart; and the new text is not
// judged beyond being the same document with that value: Parse says whether the
// value is a good one.
//
// The path must be one that the document format knows; a place in a list must
// be there already, or be the one behind the last, which begins a new item. Of
// a list of fixed length, such as a size, the values not typed yet are left
// empty. An empty text takes the value back; see Clear.
func Edit(text []byte, path, typed string) ([]byte, error) {
	return change(text, func(d *Document) (*Document, error) { return d.typedAt(path, typed) })
}

// change is the text of a document after an edit.
func change(text []byte, by func(*Document) (*Document, error)) ([]byte, error) {
	d := Read(text)
	if err := d.Trouble(); err != nil {
		return nil, err
	}
	next, err := by(d)
	if err != nil {
		return nil, err
	}
	return next.text, nil
}

// typedAt is Edit for a document.
func (d *Document) typedAt(path, typed string) (*Document, error) {
	if err := typeable(typed); err != nil {
		return nil, err
	}
	steps, words, k, err := d.named(path)
	if err != nil {
		return nil, err
	}
	n, _, left := d.root.follow(steps)
	switch {
	case typed == "" && len(left) == 0 && (n.shape == mapping || n.shape == sequence), n.shape != scalar && n.shape != absent && len(left) == 0 && !oneWord(k, typed):
		return nil, fmt.Errorf("%s is a group or a list: name the value in it", words)
	case typed == "":
		return d.cleared(steps, words)
	case len(left) == 0 && n.shape == scalar && n.quote != 0:
		return d.apply(d.root.placed(steps, valued(typed)), words, cut{n.start, n.end, written(typed, n.flow, n.quote)})
	}
	return asTyped(typed, func(value offer) (*Document, error) {
		if len(left) > 0 {
			return d.added(n, steps, left, words, value)
		}
		return d.replaced(steps, words, value)
	})
}

// asTyped writes a text as it was typed, or in quotes where it is then read as
// something else.
func asTyped(typed string, write func(offer) (*Document, error)) (*Document, error) {
	next, err := write(offer{written(typed, true, 0), written(typed, false, 0), valued(typed)})
	if err == nil {
		return next, nil
	}
	quoted := written(typed, true, '"')
	if again, failed := write(offer{quoted, quoted, valued(typed)}); failed == nil {
		return again, nil
	}
	return nil, err
}

// oneWord tells whether a text may stand in place of a whole group: unknown for
// the tap water, one radius for the corners.
func oneWord(k kin, typed string) bool {
	if k.of == reflect.TypeFor[Corners]() {
		return true
	}
	word, is := reflect.New(k.of).Interface().(wordReader)
	return is && word.readWord(typed)
}

func typeable(typed string) error {
	switch {
	case utf8.RuneCountInString(typed) > longestText && utf8.ValidString(typed):
		return errors.New("this is longer than 80 characters")
	}
	return oneLine(typed)
}

// oneLine refuses what cannot stand on a line of text.
func oneLine(typed string) error {
	switch {
	case !utf8.ValidString(typed):
		return errors.New("this is not text")
	case strings.ContainsFunc(typed, func(r rune) bool { return unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || r == '\ufeff' }):
		return errors.New("there is a line end or an invisible character in it")
	}
	return nil
}

// written is the text as a token: as it is where YAML reads it as one plain
// value, in quotes otherwise, and in the kind of quotes that stood there.
func written(typed string, flow bool, quote byte) string {
	if typed == "" {
		return `""`
	}
	switch {
	case quote == '\'':
		return "'" + strings.ReplaceAll(typed, "'", "''") + "'"
	case quote == '"' || !plainable(typed, flow):
		return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(typed) + `"`
	}
	return typed
}

// plainable tells whether a text can stand without quotes.
func plainable(typed string, flow bool) bool {
	runes := plainBlanks(typed)
	length, _ := extent(runes, flow)
	first := runes[0]
	switch {
	case length != len(runes), isBlank(first), isNull(typed):
		return false
	case first == '-' && (len(runes) == 1 || isBlank(runes[1])), strings.HasPrefix(typed, "---"), strings.HasPrefix(typed, "..."):
		return false
	case strings.ContainsRune(",?:[]{}#&*!|>'\"%@`<=", first):
		return false
	}
	return true
}

// lineEnd is the text's way to end a line.
func (d *Document) lineEnd() string {
	if bytes.Contains(d.text, []byte("\r\n")) {
		return "\r\n"
	}
	return "\n"
}
