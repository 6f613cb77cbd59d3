package plan

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// offer is a value to be written into the text.
type offer struct {
	text string // as it stands inside [ ] and { }
	bare string // as it stands behind a key or dash of its own line
	node *node  // what it is read as
}

// added puts a value at a words of which the last steps are missing: under is
// the last node that is there. What was written around the value must lead to
// it.
func (d *Document) added(under *node, steps, left []step, words string, value offer) (*Document, error) {
	next, err := d.grown(under, steps, left, words, value)
	if err != nil {
		return nil, err
	}
	if n, _, astray := next.root.follow(steps); len(astray) > 0 || !alike(n, value.node) {
		return nil, unplain(words)
	}
	return next, nil
}

func (d *Document) grown(under *node, steps, left []step, words string, value offer) (*Document, error) {
	here := steps[:len(steps)-len(left)]
	k, err := kinOf(here, words)
	if err != nil {
		return nil, err
	}
	if !takes(under, k, left[0]) {
		return nil, fmt.Errorf("there is no group for %s in the plan", words)
	}
	value, err = wrapped(steps, len(here)+1, words, value)
	if err != nil {
		return nil, err
	}
	switch under.shape {
	case mapping:
		key := left[0].key + ": "
		want := d.root.placed(steps[:len(here)+1], value.node)
		if under.flow {
			return d.apply(want, words, d.flowAddition(under, key+value.text))
		}
		return d.apply(want, words, d.blockAddition(under, key+value.bare))
	case sequence:
		if left[0].index != len(under.items) {
			return nil, fmt.Errorf("there is no %s yet: the list has %d", words, len(under.items))
		}
		return d.appended(under, here, words, value, pieceOf(value.text))
	}
	if k.fixed() > 0 && under.shape == scalar {
		value = beside(k, left[0].index, under, value)
	} else if value, err = wrapped(steps[:len(here)+1], len(here), words, value); err != nil {
		return nil, err
	}
	return d.replaced(here, words, value)
}

// takes tells whether a step can be added under a node: a key to a group, a
// place to a list, and either to nothing or to a word that stands for a whole.
func takes(under *node, k kin, s step) bool {
	switch under.shape {
	case mapping:
		return s.index < 0
	case sequence:
		return s.index >= 0
	case scalar:
		return oneWord(k, under.text)
	}
	return true
}

// wrapped puts the groups and lists of the steps from one on around a value
// that stands behind them.
func wrapped(steps []step, from int, words string, value offer) (offer, error) {
	for i := len(steps) - 1; i >= from; i-- {
		s := steps[i]
		if s.index < 0 {
			text := "{" + s.key + ": " + value.text + "}"
			value = offer{text, text, (*node)(nil).placed(steps[i:i+1], value.node)}
			continue
		}
		k, err := kinOf(steps[:i], words)
		if err != nil {
			return offer{}, err
		}
		if k.fixed() == 0 && s.index > 0 {
			return offer{}, fmt.Errorf("there is no %s yet: add the ones before it first", words)
		}
		value = beside(k, s.index, nil, value)
	}
	return value, nil
}

// beside is a list of fixed length with a value at one place of it, and at the
// others what stood for all of them, or nothing.
func beside(k kin, index int, was *node, value offer) offer {
	other := offer{text: `""`, node: &node{shape: absent}}
	if was != nil && was.shape == scalar {
		other = offer{text: written(was.text, true, 0), node: valued(was.text)}
	}
	list, texts := &node{shape: sequence}, []string{}
	for i := range max(k.fixed(), 1) {
		part := other
		if i == index {
			part = value
		}
		list.items, texts = append(list.items, part.node), append(texts, part.text)
	}
	text := "[" + strings.Join(texts, ", ") + "]"
	return offer{text, text, list}
}

// flowAddition puts an entry or item right behind the last one in its brackets.
func (d *Document) flowAddition(under *node, text string) cut {
	switch {
	case len(under.entries) > 0:
		last := under.entries[len(under.entries)-1]
		at := max(last.value.end, last.colon)
		return cut{at, at, ", " + text}
	case len(under.items) > 0:
		at := under.items[len(under.items)-1].end
		return cut{at, at, ", " + text}
	}
	return cut{under.start + 1, under.start + 1, text}
}

// blockAddition puts a line behind the line on which the group ends, with the
// group's indent.
func (d *Document) blockAddition(under *node, text string) cut {
	return d.lineBehind(under.end, strings.Repeat(" ", under.at.column-1)+text)
}

// lineBehind puts a line behind the one on which the place lies.
func (d *Document) lineBehind(place int, line string) cut {
	at := bytes.IndexByte(d.text[place:], '\n')
	if at < 0 {
		return cut{len(d.text), len(d.text), d.lineEnd() + line}
	}
	at += place + 1
	return cut{at, at, line + d.lineEnd()}
}

// behindComments is the end of the last of the comment lines that follow a
// place's line directly and are indented deeper than the column: they belong to
// what stands there.
func (d *Document) behindComments(place, column int) int {
	for {
		at := bytes.IndexByte(d.text[place:], '\n')
		if at < 0 {
			return place
		}
		next := place + at + 1
		line, _, _ := bytes.Cut(d.text[next:], []byte("\n"))
		words := strings.TrimLeft(string(plainBlanks(string(line))), " \t")
		indent := utf8.RuneCount(line) - utf8.RuneCountInString(words)
		if !strings.HasPrefix(words, "#") || indent < column {
			return place
		}
		place = next + len(bytes.TrimSuffix(line, []byte("\r")))
	}
}
