package plan

import (
	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"
)

// builder turns the library's syntax tree into ours, and says what of YAML a
// plan does not take.
type builder struct {
	src      *source
	problems []Problem
}

func (b *builder) refuse(at place, what, hint string) *node {
	b.problems = append(b.problems, Problem{Line: at.line, Column: at.column, What: what, Hint: hint})
	return &node{shape: spoiled, at: at, start: b.src.offset(at), end: b.src.offset(at)}
}

func placeOf(t *token.Token) place {
	if t == nil || t.Position == nil {
		return place{1, 1}
	}
	return place{max(t.Position.Line, 1), max(t.Position.Column, 1)}
}

func (b *builder) node(n ast.Node, flow bool) *node {
	switch n := n.(type) {
	case *ast.MappingNode:
		return b.mapping(n, n.Values, flow)
	case *ast.MappingValueNode:
		return b.mapping(nil, []*ast.MappingValueNode{n}, flow)
	case *ast.SequenceNode:
		return b.sequence(n, flow)
	case *ast.LiteralNode:
		return b.refuse(placeOf(n.GetToken()), "a text over several lines is not taken", "write it on one line")
	case *ast.AnchorNode, *ast.AliasNode:
		return b.refuse(placeOf(n.GetToken()), "anchors (&) and aliases (*) are not taken in a plan", "write the value out, or quote it if the sign belongs to the text")
	case *ast.TagNode:
		return b.refuse(placeOf(n.GetToken()), "tags (!) are not taken in a plan", "leave the tag out, or quote the text if the sign belongs to it")
	case ast.ScalarNode:
		return b.scalar(n, flow)
	}
	if n == nil {
		return b.refuse(place{1, 1}, "there is something here that a plan does not have", "write keys and values")
	}
	return b.refuse(placeOf(n.GetToken()), "there is something here that a plan does not have", "write keys and values")
}

func (b *builder) mapping(m *ast.MappingNode, values []*ast.MappingValueNode, flow bool) *node {
	out := &node{shape: mapping, flow: flow}
	if m != nil && m.IsFlowStyle {
		out.flow = true
		out.at = placeOf(m.Start)
		out.start, out.end = b.src.offset(out.at), b.src.offset(placeOf(m.End))+1
	}
	for _, v := range values {
		out.entries = append(out.entries, b.entry(v, out.flow))
	}
	if !isFlow(m) && len(out.entries) > 0 {
		first, last := out.entries[0], out.entries[len(out.entries)-1]
		out.at, out.start = first.at, first.start
		out.end = max(last.value.end, last.colon)
	}
	return out
}

func isFlow(m *ast.MappingNode) bool { return m != nil && m.IsFlowStyle }

func (b *builder) entry(v *ast.MappingValueNode, flow bool) entry {
	at := placeOf(v.Key.GetToken())
	e := entry{at: at, start: b.src.offset(at)}
	switch key := v.Key.(type) {
	case *ast.MergeKeyNode:
		e.value = b.refuse(at, "merge keys (<<) are not taken in a plan", "write the keys out")
	case *ast.MappingKeyNode:
		e.value = b.refuse(at, "keys behind a question mark are not taken in a plan", "write key: value")
	case ast.ScalarNode:
		name := b.scalar(key, flow)
		e.key, e.end, e.colon = name.text, name.end, afterColon(b.src, name.end)
		switch name.shape {
		case spoiled:
			e.value = name
		case absent:
			e.key = "null"
		}
	default:
		e.value = b.refuse(at, "this cannot be a key", "write key: value")
	}
	if e.value != nil {
		e.end = max(e.end, e.start)
		e.colon = max(e.colon, e.end)
		return e
	}
	e.value = b.node(v.Value, flow)
	if e.value.shape == absent && e.value.start == e.value.end {
		e.value.at, e.value.start, e.value.end = e.at, e.colon, e.colon
	}
	return e
}

// afterColon is the byte after the colon that follows a key, on its line.
func afterColon(src *source, end int) int {
	for i := end; i < len(src.raw); i++ {
		switch src.raw[i] {
		case ' ', '\t':
			continue
		case ':':
			return i + 1
		}
		return end
	}
	return end
}

func (b *builder) sequence(s *ast.SequenceNode, flow bool) *node {
	out := &node{shape: sequence, at: placeOf(s.Start), flow: flow || s.IsFlowStyle}
	out.start = b.src.offset(out.at)
	out.end = out.start + 1
	for _, v := range s.Values {
		item := b.node(v, out.flow)
		out.items = append(out.items, item)
		out.end = max(out.end, item.end)
	}
	if s.IsFlowStyle {
		out.end = b.src.offset(placeOf(s.End)) + 1
	}
	return out
}

// scalar reads a token's text from the source itself, so that what was typed
// is kept: 1_000, 0x10 and yes are texts here, and mean what the field says.
func (b *builder) scalar(n ast.ScalarNode, flow bool) *node {
	t := n.GetToken()
	at := placeOf(t)
	out := &node{shape: scalar, at: at, flow: flow, start: b.src.offset(at)}
	out.end = out.start
	rest := b.src.rest(at)
	length, whole := extent(rest, flow)
	typed := string(rest[:length])
	if _, null := n.(*ast.NullNode); null {
		out.shape = absent
		if isNull(typed) {
			out.end = b.src.offset(place{at.line, at.column + length})
		}
		return out
	}
	out.end = b.src.offset(place{at.line, at.column + length})
	out.text = typed
	if whole && (rest[0] == '\'' || rest[0] == '"') {
		out.quote, out.text = byte(rest[0]), t.Value
	}
	if out.quote != 0 && out.text == "" {
		out.shape = absent
		return out
	}
	if !whole || out.text != t.Value {
		bad := b.refuse(at, "this text goes on over several lines", "write it on one line, in quotes if it has : # , [ ] { or } in it")
		bad.end = out.end
		return bad
	}
	return out
}

func isNull(text string) bool {
	return text == "~" || text == "null" || text == "Null" || text == "NULL"
}
