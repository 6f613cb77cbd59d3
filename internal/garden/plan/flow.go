package plan

import (
	"errors"
	"strings"
)

// largestValue is the most bytes of a value given as a whole.
const largestValue = 16 << 10

// piece is a value given as a whole, with the text that it stands in.
type piece struct {
	text string
	node *node
}

// given writes a value given as a whole: a group in { }, a list in [ ], or a
// text as typed, which is put in quotes where it needs them. The piece is nil
// for a text.
func given(value string, write func(offer, *piece) (*Document, error)) (*Document, error) {
	value = strings.TrimSpace(value)
	if value == "" {
		return nil, errors.New("no value is given")
	}
	if !strings.HasPrefix(value, "{") && !strings.HasPrefix(value, "[") {
		if err := typeable(value); err != nil {
			return nil, err
		}
		return asTyped(value, func(o offer) (*Document, error) { return write(o, nil) })
	}
	if err := oneLine(value); err != nil {
		return nil, err
	}
	if len(value) > largestValue {
		return nil, errors.New("this is more than one value of a plan")
	}
	whole := pieceOf(value)
	if whole == nil {
		return nil, errors.New(quote(value) + " is not one group or list: check its brackets and commas")
	}
	return write(offer{value, value, whole.node}, whole)
}

// pieceOf reads a group or list that is given as a whole; nil when it is not
// one.
func pieceOf(value string) *piece {
	around := "[" + value + "]"
	in := Read([]byte(around))
	if in.sick != nil || in.root.shape != sequence || len(in.root.items) != 1 {
		return nil
	}
	n := in.root.items[0]
	if n.start != 1 || n.end != len(around)-1 || n.shape != mapping && n.shape != sequence {
		return nil
	}
	return &piece{around, n}
}

// Flow is a text as it stands inside a group or list that is given as a whole,
// in quotes where it needs them: for building the values of Append and Replace.
func Flow(typed string) string { return written(typed, true, 0) }

// blockLines writes a group one key a line, as like is written: what is a block
// there is a block here. The first line has no indent: it stands behind a dash
// or on a line of its own.
func (p *piece) blockLines(n, like *node, indent int) []string {
	var out []string
	pad := strings.Repeat(" ", indent)
	for i, e := range n.entries {
		line := p.text[e.start:e.end] + ":"
		if i > 0 {
			line = pad + line
		}
		inner := like.child(e.key)
		deeper := indent + 2
		if inner != nil {
			deeper = indent + inner.at.column - like.at.column
		}
		switch {
		case p.asBlock(e.value, inner) && e.value.shape == mapping:
			lines := p.blockLines(e.value, inner, deeper)
			lines[0] = strings.Repeat(" ", deeper) + lines[0]
			out = append(append(out, line), lines...)
		case p.asBlock(e.value, inner):
			out = append(out, line)
			for _, item := range e.value.items {
				out = append(out, strings.Repeat(" ", deeper)+"- "+p.text[item.start:item.end])
			}
		case e.value.start == e.value.end:
			out = append(out, line)
		default:
			out = append(out, line+" "+p.text[e.value.start:e.value.end])
		}
	}
	return out
}

// asBlock tells whether a value is to be written as a block, as like is.
func (p *piece) asBlock(n, like *node) bool {
	return like != nil && !like.flow && like.shape == n.shape &&
		(n.shape == mapping && len(n.entries) > 0 || n.shape == sequence && len(n.items) > 0)
}
