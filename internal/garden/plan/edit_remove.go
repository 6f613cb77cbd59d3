package plan

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
)

// Remove gives a document's text with an item of a list, or a key with all that
// stands behind it, taken out. The comment on its own line goes with it; comment
// lines above and below stay. A list that is left empty becomes [], a group {}.
// Taking out what is not there is refused. As with Edit, every other byte stays.
func Remove(text []byte, path string) ([]byte, error) {
	return change(text, func(d *Document) (*Document, error) {
		steps := splitPath(path)
		if len(steps) == 0 {
			return nil, errors.New("no value is named")
		}
		return d.removed(steps, d.Words(path))
	})
}

func (d *Document) removed(steps []step, words string) (*Document, error) {
	if _, _, left := d.root.follow(steps); len(left) > 0 {
		return nil, fmt.Errorf("there is no %s in the plan", words)
	}
	last := steps[len(steps)-1]
	holder, _, _ := d.root.follow(steps[:len(steps)-1])
	want := d.root.without(steps)
	at := last.index
	if at < 0 {
		at = holder.entryAt(last.key)
	}
	var cuts []cut
	var err error
	parts := holder.spans()
	switch {
	case len(parts) == 1 && len(steps) == 1:
		return nil, fmt.Errorf("%s is all that the plan has", words)
	case holder.flow:
		cuts, err = d.outOfFlow(holder, parts, at, words)
	case len(parts) == 1:
		cuts, err = d.emptied(holder, steps[:len(steps)-1], words)
	case holder.shape == sequence:
		cuts, err = d.outOfList(holder, at, words)
	default:
		cuts, err = d.outOfGroup(parts, at, words)
	}
	if err != nil {
		return nil, err
	}
	return d.apply(want, words, cuts...)
}

// span is where a part of a collection stands.
type span struct{ start, end int }

// spans are where the entries or items of a collection stand.
func (n *node) spans() []span {
	var out []span
	for _, e := range n.entries {
		out = append(out, span{e.start, max(e.value.end, e.colon)})
	}
	for _, item := range n.items {
		out = append(out, span{item.start, item.end})
	}
	return out
}

// outOfFlow takes a part out of [ ] or { }, with its comma.
func (d *Document) outOfFlow(holder *node, parts []span, at int, words string) ([]cut, error) {
	open, part := d.text[holder.start], parts[at]
	if open != '[' && open != '{' {
		return nil, unplain(words)
	}
	before, behind := holder.start+1, holder.end-1
	if at > 0 {
		before = parts[at-1].end
	}
	if at+1 < len(parts) {
		behind = parts[at+1].start
	}
	bare := func(from, to int) bool { return strings.Trim(string(d.text[from:to]), " \t\r\n,\u00a0") == "" }
	if len(parts) == 1 && bare(before, part.start) && bare(part.end, behind) {
		return []cut{{before, behind, ""}}, nil
	}
	after := d.behindComma(part.end, behind)
	if d.beginsLine(part.start) && d.endsLine(after) {
		lines, err := d.wholeLines(part.start, after, words)
		return []cut{lines}, err
	}
	if at > 0 && at == len(parts)-1 && bare(before, part.start) {
		return []cut{{before, part.end, ""}}, nil
	}
	return []cut{{part.start, after, ""}}, nil
}

// behindComma is the place behind the comma that follows a part on its line and
// the blanks around it.
func (d *Document) behindComma(at, most int) int {
	comma := false
	for at < most {
		switch c := d.text[at]; {
		case c == ' ', c == '\t':
		case c == ',' && !comma:
			comma = true
		default:
			return at
		}
		at++
	}
	return at
}

// outOfGroup takes a key's lines out of a group that has a line for each.
func (d *Document) outOfGroup(parts []span, at int, words string) ([]cut, error) {
	part := parts[at]
	if d.beginsLine(part.start) {
		lines, err := d.wholeLines(part.start, part.end, words)
		return []cut{lines}, err
	}
	if at+1 == len(parts) {
		return nil, unplain(words)
	}
	end, _ := d.endOfLine(part.end)
	if next := parts[at+1].start; strings.TrimSpace(string(d.text[end:next])) == "" {
		return []cut{{part.start, next, ""}}, nil
	}
	start := part.start
	for start > 0 && d.text[start-1] == ' ' {
		start--
	}
	return []cut{{start, end, ""}}, nil
}

// outOfList takes an item's lines out of a list with dashes.
func (d *Document) outOfList(list *node, at int, words string) ([]cut, error) {
	dash, ok := d.dashOf(list, at)
	if !ok {
		return nil, unplain(words)
	}
	if d.beginsLine(dash) {
		lines, err := d.wholeLines(dash, max(dash+1, list.items[at].end), words)
		return []cut{lines}, err
	}
	next, ok := d.dashOf(list, at+1)
	end, _ := d.endOfLine(list.items[at].end)
	if !ok || end > next || strings.TrimSpace(string(d.text[end:next])) != "" {
		return nil, unplain(words)
	}
	return []cut{{dash, next, ""}}, nil
}

// dashOf is the place of the dash before an item of a list.
func (d *Document) dashOf(list *node, at int) (int, bool) {
	if at >= len(list.items) {
		return 0, false
	}
	column := list.at.column
	for line := list.items[at].at.line; line >= list.at.line; line-- {
		runes := d.src.lines[line-1]
		if len(runes) < column || runes[column-1] != '-' || len(runes) > column && !isBlank(runes[column]) {
			continue
		}
		if strings.Trim(string(runes[:column]), " \t-") == "" {
			return d.src.offset(place{line, column}), true
		}
	}
	return 0, false
}

// emptied takes the last part out of a collection of lines, and writes that it
// is empty.
func (d *Document) emptied(holder *node, steps []step, words string) ([]cut, error) {
	nothing := "{}"
	if holder.shape == sequence {
		nothing = "[]"
	}
	last := steps[len(steps)-1]
	if last.index >= 0 {
		return []cut{{holder.start, holder.end, nothing}}, nil
	}
	around, _, _ := d.root.follow(steps[:len(steps)-1])
	colon := around.entries[around.entryAt(last.key)].colon
	lines, err := d.wholeLines(holder.start, holder.end, words)
	return []cut{{colon, colon, " " + nothing}, lines}, err
}

// wholeLines cuts the lines on which a stretch lies, which must begin one and
// be all of it but for a comment.
func (d *Document) wholeLines(start, end int, words string) (cut, error) {
	if !d.beginsLine(start) || !d.endsLine(end) {
		return cut{}, unplain(words)
	}
	from := d.startOfLine(start)
	to, next := d.endOfLine(end)
	if next > to || from == 0 {
		return cut{from, next, ""}, nil
	}
	back := from - 1
	if back > 0 && d.text[back-1] == '\r' {
		back--
	}
	return cut{back, to, ""}, nil
}

func (d *Document) startOfLine(at int) int {
	start := bytes.LastIndexByte(d.text[:at], '\n') + 1
	if start == 0 && bytes.HasPrefix(d.text, []byte("\ufeff")) {
		return min(at, len("\ufeff"))
	}
	return start
}

// endOfLine is where a place's line ends, and where the next one begins.
func (d *Document) endOfLine(at int) (end, next int) {
	i := bytes.IndexByte(d.text[at:], '\n')
	if i < 0 {
		return len(d.text), len(d.text)
	}
	end, next = at+i, at+i+1
	if end > at && d.text[end-1] == '\r' {
		end--
	}
	return end, next
}

func (d *Document) beginsLine(at int) bool {
	return strings.TrimSpace(string(d.text[d.startOfLine(at):at])) == ""
}

// endsLine tells whether nothing follows a place on its line but a comment.
func (d *Document) endsLine(at int) bool {
	end, _ := d.endOfLine(at)
	rest := strings.TrimSpace(string(d.text[at:end]))
	return rest == "" || strings.HasPrefix(rest, "#")
}
