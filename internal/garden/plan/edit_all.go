package plan

import (
	"cmp"
	"slices"
)

// Change is a value typed at a path; an empty one takes the value back.
type Change struct {
	Path, Typed string
}

// Refusal is a change that cannot be made, and why, in words for the teacher.
// Path is empty when the whole text cannot be edited.
type Refusal struct {
	Path, Why string
}

// Error says why.
func (r Refusal) Error() string { return r.Why }

// EditAll gives a document's text with many values typed at once, as a form
// gives them: each as Edit does it, what is typed before what is taken back. A
// change that says what stands there already leaves the text as it is. Every
// change that cannot be made is told, and the text has all the others: a form
// shows it, and saves it only when none was refused.
func EditAll(text []byte, changes []Change) ([]byte, []Refusal) {
	d := Read(text)
	if err := d.Trouble(); err != nil {
		return d.text, []Refusal{{Why: err.Error()}}
	}
	var refused []Refusal
	for _, c := range inEditOrder(changes) {
		if typed, _, _, ok := d.Value(c.Path); ok && c.Typed != "" && typed == string(plainBlanks(c.Typed)) {
			continue
		}
		next, err := d.typedAt(c.Path, c.Typed)
		if err != nil {
			refused = append(refused, Refusal{c.Path, err.Error()})
			continue
		}
		d = next
	}
	return d.text, refused
}

// inEditOrder puts what is typed first, in its order, and what is taken back
// behind it, from the last place of each list to the first, so that none moves
// another.
func inEditOrder(changes []Change) []Change {
	var typed, back []Change
	for _, c := range changes {
		if c.Typed != "" {
			typed = append(typed, c)
			continue
		}
		back = append(back, c)
	}
	slices.SortStableFunc(back, func(a, b Change) int {
		return slices.CompareFunc(splitPath(b.Path), splitPath(a.Path), func(x, y step) int {
			return cmp.Or(cmp.Compare(x.key, y.key), cmp.Compare(x.index, y.index))
		})
	})
	return append(typed, back...)
}
