package plan

// Clear gives a document's text with the value at a path taken back, so that
// its default holds. A key that may be left out is taken out with its line's
// comment, and so is a group around it that nothing is left in. A key that is
// required stays with nothing behind it, and so does one value of a size or a
// point: Parse then says what is missing, at that field. A place in a list of
// any length is taken out. Where nothing stands, the text stays as it is.
func Clear(text []byte, path string) ([]byte, error) {
	return change(text, func(d *Document) (*Document, error) {
		steps, words, _, err := d.named(path)
		if err != nil {
			return nil, err
		}
		return d.cleared(steps, words)
	})
}

func (d *Document) cleared(steps []step, words string) (*Document, error) {
	n, _, left := d.root.follow(steps)
	if len(left) > 0 {
		return d, nil
	}
	target, err := d.outermost(steps, words)
	if err != nil {
		return nil, err
	}
	last := target[len(target)-1]
	k, err := kinOf(target, words)
	if err != nil {
		return nil, err
	}
	holder, err := kinOf(target[:len(target)-1], words)
	if err != nil {
		return nil, err
	}
	alone, _, _ := d.root.follow(target[:len(target)-1])
	stays := last.index < 0 && k.key.Required || last.index >= 0 && holder.fixed() > 0 || len(target) == 1 && len(alone.spans()) == 1
	if !stays {
		return d.removed(target, words)
	}
	if n.shape == absent && len(target) == len(steps) {
		return d, nil
	}
	return d.replaced(target, words, offer{`""`, `""`, &node{shape: absent}})
}

// outermost is the widest group or list that says nothing once the value is
// gone, and that may be gone itself.
func (d *Document) outermost(steps []step, words string) ([]step, error) {
	for len(steps) > 1 {
		around := steps[:len(steps)-1]
		holder, _, _ := d.root.follow(around)
		if !holder.without(steps[len(steps)-1:]).hollow() {
			break
		}
		k, err := kinOf(around, words)
		if err != nil {
			return nil, err
		}
		optional := around[len(around)-1].index < 0 && !k.key.Required
		if k.fixed() == 0 && (k.isList() || !optional) {
			break
		}
		steps = around
	}
	return steps, nil
}
