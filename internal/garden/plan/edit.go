package plan

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"slices"
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
// with a key added under a group that is there. Every other byte stays: the
// comments, the order, the blanks. The text may have problems, as long as its
// keys can be told apart; and the new text is not judged beyond being the same
// document with that value: Parse says whether the value is a good one.
//
// The path must be one that the document format knows; a place in a list must
// be there already. An empty text takes the value back: the key stays, with
// nothing in it.
func Edit(text []byte, path, typed string) ([]byte, error) {
	root, err := editable(text)
	if err != nil {
		return nil, err
	}
	p := &document{text, root}
	if err := typeable(typed); err != nil {
		return nil, err
	}
	steps := splitPath(path)
	if len(steps) == 0 {
		return nil, errors.New("no value is named")
	}
	if !known(reflect.TypeFor[Plan](), steps) {
		return nil, fmt.Errorf("a plan has no %s", path)
	}
	cut, err := p.cut(steps, path, typed)
	if err != nil {
		return nil, err
	}
	out := slices.Concat(p.text[:cut.start], []byte(cut.text), p.text[cut.end:])
	if err := p.same(out, path, typed); err != nil {
		return nil, err
	}
	return out, nil
}

// document is a text and its tree.
type document struct {
	text []byte
	root *node
}

// editable is the tree of a text, or why it cannot be edited value by value.
func editable(text []byte) (*node, error) {
	src, unreadable := newSource(text)
	if unreadable != nil {
		return nil, errors.New(unreadable.What)
	}
	root, problems, _ := readTree(src)
	switch {
	case len(problems) > 0:
		return nil, fmt.Errorf("line %d, column %d: %s: change that in the text first", problems[0].Line, problems[0].Column, problems[0].What)
	case root == nil:
		return nil, errors.New("the plan is empty: begin with the one that 'rootbell new' writes")
	}
	return root, nil
}

// cut is a stretch of the text and what takes its place.
type cut struct {
	start, end int
	text       string
}

func typeable(typed string) error {
	switch {
	case !utf8.ValidString(typed):
		return errors.New("this is not text")
	case utf8.RuneCountInString(typed) > longestText:
		return errors.New("this is longer than 80 characters")
	case strings.ContainsFunc(typed, func(r rune) bool { return unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || r == '\ufeff' }):
		return errors.New("there is a line end or an invisible character in it")
	}
	return nil
}

// cut finds the stretch to replace for a path.
func (p *document) cut(steps []step, path, typed string) (cut, error) {
	n, _, left := p.root.follow(steps)
	if len(left) > 0 {
		return p.addition(n, left, path, typed)
	}
	switch n.shape {
	case scalar:
		return cut{n.start, n.end, written(typed, n.flow, n.quote)}, nil
	case absent:
		text := written(typed, n.flow, 0)
		if n.start == n.end {
			text = " " + text
		}
		return cut{n.start, n.end, text}, nil
	}
	return cut{}, fmt.Errorf("%s is a group or a list: name the value in it", path)
}

// addition puts the keys that are left under the group that was reached.
func (p *document) addition(under *node, left []step, path, typed string) (cut, error) {
	for _, s := range left {
		if s.index >= 0 {
			return cut{}, fmt.Errorf("there is no %s in the plan: add it to the text", path)
		}
	}
	value := func(flow bool) string {
		text := written(typed, flow || len(left) > 1, 0)
		for i := len(left) - 1; i > 0; i-- {
			text = "{" + left[i].key + ": " + text + "}"
		}
		return text
	}
	switch {
	case under.shape == absent && under.start == under.end:
		return cut{under.start, under.end, " {" + left[0].key + ": " + value(true) + "}"}, nil
	case under.shape == absent:
		return cut{under.start, under.end, "{" + left[0].key + ": " + value(true) + "}"}, nil
	case under.shape != mapping:
		return cut{}, fmt.Errorf("there is no group for %s in the plan", path)
	case under.flow:
		return p.flowAddition(under, left[0].key+": "+value(true)), nil
	}
	return p.blockAddition(under, left[0].key+": "+value(false)), nil
}

// flowAddition puts an entry right behind the last one in { }.
func (p *document) flowAddition(under *node, text string) cut {
	if len(under.entries) == 0 {
		return cut{under.start + 1, under.start + 1, text}
	}
	last := under.entries[len(under.entries)-1]
	at := max(last.value.end, last.colon)
	return cut{at, at, ", " + text}
}

// blockAddition puts a line behind the line on which the group ends, with the
// group's indent and the text's line end.
func (p *document) blockAddition(under *node, text string) cut {
	end := "\n"
	if bytes.Contains(p.text, []byte("\r\n")) {
		end = "\r\n"
	}
	line := strings.Repeat(" ", under.at.column-1) + text
	at := bytes.IndexByte(p.text[under.end:], '\n')
	if at < 0 {
		return cut{len(p.text), len(p.text), end + line}
	}
	at += under.end + 1
	return cut{at, at, line + end}
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

// known tells whether the document format has a path.
func known(t reflect.Type, steps []step) bool {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if t == reflect.TypeFor[Corners]() && len(steps) == 1 {
		return steps[0].index >= 0 && steps[0].index < 2
	}
	if len(steps) == 0 {
		return true
	}
	s := steps[0]
	switch {
	case s.index < 0 && t.Kind() == reflect.Struct:
		fields := Keys(t)
		i := slices.IndexFunc(fields, func(f Key) bool { return f.Name == s.key })
		return i >= 0 && known(t.Field(fields[i].Index).Type, steps[1:])
	case s.index < 0 && t == reflect.TypeFor[Prices]():
		return len(steps) == 1 && itemName.MatchString(s.key)
	case s.index < 0 && t == reflect.TypeFor[Label]():
		return len(steps) == 1 && slices.Contains(Nutrients(), s.key)
	case s.index >= 0 && t.Kind() == reflect.Slice:
		return known(t.Elem(), steps[1:])
	case s.index >= 0 && t.Kind() == reflect.Array:
		return s.index < t.Len() && known(t.Elem(), steps[1:])
	}
	return false
}

// same makes sure that the new text is the old document with the one value: a
// text that would be read as anything else is not handed out.
func (p *document) same(text []byte, path, typed string) error {
	root, err := editable(text)
	if err != nil {
		return fmt.Errorf("%s cannot be edited there: change it in the text", path)
	}
	n, _, left := root.follow(splitPath(path))
	if len(left) > 0 || n.text != string(plainBlanks(typed)) {
		return fmt.Errorf("%s cannot be edited there: change it in the text", path)
	}
	return nil
}
