package plan

import "fmt"

// Replace gives a document's text with a whole group, list or value replaced by
// another, given as Append takes it. What is not there is added, with the groups
// around it. As with Edit, every other byte stays: also the comments behind the
// key and those between the lines of a group that is replaced go only where the
// line goes that they stand on.
func Replace(text []byte, path, value string) ([]byte, error) {
	return change(text, func(d *Document) (*Document, error) { return d.withWhole(path, value) })
}

func (d *Document) withWhole(path, value string) (*Document, error) {
	steps, words, _, err := d.named(path)
	if err != nil {
		return nil, err
	}
	n, _, left := d.root.follow(steps)
	return given(value, func(by offer, _ *piece) (*Document, error) {
		if len(left) > 0 {
			return d.added(n, steps, left, words, by)
		}
		return d.replaced(steps, words, by)
	})
}

// replaced puts a value in place of whatever stands at a path.
func (d *Document) replaced(steps []step, words string, by offer) (*Document, error) {
	n, _, left := d.root.follow(steps)
	if len(left) > 0 {
		return nil, fmt.Errorf("there is no %s in the plan", words)
	}
	want := d.root.placed(steps, by.node)
	text := by.bare
	if d.inFlow(steps) {
		text = by.text
	}
	if n.start == n.end {
		return d.apply(want, words, cut{n.start, n.end, " " + text})
	}
	holder, _, _ := d.root.follow(steps[:len(steps)-1])
	if n.flow || n.shape == scalar || n.shape == absent || holder.shape != mapping {
		return d.apply(want, words, cut{n.start, n.end, text})
	}
	colon := holder.entries[holder.entryAt(steps[len(steps)-1].key)].colon
	lines, err := d.wholeLines(n.start, n.end, words)
	if err != nil {
		return nil, err
	}
	return d.apply(want, words, cut{colon, colon, " " + text}, lines)
}

// inFlow tells whether a path's value stands inside [ ] or { }.
func (d *Document) inFlow(steps []step) bool {
	holder, _, left := d.root.follow(steps[:len(steps)-1])
	return len(left) == 0 && holder.flow
}
