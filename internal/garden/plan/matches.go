package plan

import "slices"

// matches tells, for each item of a new list, which item of the old list it
// was, or -1 for one that is new.
type matches struct {
	list    string // the list's key
	was, is []*node
	of      []int
}

// old is what the item j of the new list was, or nil.
func (m matches) old(j int) *node {
	if m.of[j] < 0 {
		return nil
	}
	return m.was[m.of[j]]
}

// matched finds out what became of the items of a list. What is the same at
// both ends has stayed. In between things go by their names, then by what they
// say, and last by their order, as long as they are much the same.
func matched(list string, was, is []*node) matches {
	m := matches{list, was, is, make([]int, len(is))}
	for j := range m.of {
		m.of[j] = -1
	}
	start, end := 0, 0
	for start < min(len(was), len(is)) && alike(was[start], is[start]) {
		m.of[start] = start
		start++
	}
	for end < min(len(was), len(is))-start && alike(was[len(was)-1-end], is[len(is)-1-end]) {
		m.of[len(is)-1-end] = len(was) - 1 - end
		end++
	}
	var left, right []int
	for i := start; i < len(was)-end; i++ {
		left = append(left, i)
	}
	for j := start; j < len(is)-end; j++ {
		right = append(right, j)
	}
	left, right = m.byName(left, right)
	m.byWhatTheySay(left, right)
	return m
}

// byName matches things of one name, and gives what is left of both lists.
func (m matches) byName(left, right []int) (stillLeft, stillRight []int) {
	for _, j := range right {
		name := nameOf(m.list, m.is[j])
		k := -1
		if name != "" {
			k = slices.IndexFunc(left, func(i int) bool { return FileName(nameOf(m.list, m.was[i])) == FileName(name) })
		}
		if k < 0 {
			stillRight = append(stillRight, j)
			continue
		}
		m.of[j] = left[k]
		left = slices.Delete(left, k, k+1)
	}
	return left, stillRight
}

// byWhatTheySay matches the longest row of items that say the same in the same
// order, and between them those that stand in the same place.
func (m matches) byWhatTheySay(left, right []int) {
	longest := make([][]int, len(left)+1)
	for i := range longest {
		longest[i] = make([]int, len(right)+1)
	}
	for i := len(left) - 1; i >= 0; i-- {
		for j := len(right) - 1; j >= 0; j-- {
			longest[i][j] = max(longest[i+1][j], longest[i][j+1])
			if alike(m.was[left[i]], m.is[right[j]]) {
				longest[i][j] = max(longest[i][j], longest[i+1][j+1]+1)
			}
		}
	}
	i, j, from, to := 0, 0, 0, 0
	for i < len(left) && j < len(right) && longest[i][j] > 0 {
		switch {
		case alike(m.was[left[i]], m.is[right[j]]) && longest[i][j] == longest[i+1][j+1]+1:
			m.inOrder(left[from:i], right[to:j])
			m.of[right[j]] = left[i]
			i, j = i+1, j+1
			from, to = i, j
		case longest[i][j] == longest[i+1][j]:
			i++
		default:
			j++
		}
	}
	m.inOrder(left[from:], right[to:])
}

// inOrder matches one by one what is much the same.
func (m matches) inOrder(left, right []int) {
	for k := range min(len(left), len(right)) {
		if m.muchTheSame(m.was[left[k]], m.is[right[k]]) {
			m.of[right[k]] = left[k]
		}
	}
}

// muchTheSame tells whether one item may have become the other: things with
// different names must share half of what else they say, groups without names a
// key.
func (m matches) muchTheSame(a, b *node) bool {
	if a.shape != mapping || b.shape != mapping || len(a.entries) == 0 || len(b.entries) == 0 {
		return true
	}
	if nameOf(m.list, a) == "" && nameOf(m.list, b) == "" {
		return slices.ContainsFunc(a.entries, func(e entry) bool { return b.child(e.key) != nil })
	}
	shared, all := 0, 0
	for _, e := range a.entries {
		if e.key == nameKey(m.list) {
			continue
		}
		all++
		if other := b.child(e.key); other != nil && alike(e.value, other) {
			shared++
		}
	}
	return 2*shared >= all
}
