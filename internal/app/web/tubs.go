package web

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// tubAsked is the place of the tub that an address names, 0 without a name.
func tubAsked(p *plan.Plan, name string) int {
	return max(0, slices.IndexFunc(p.Tubs, func(t plan.Tub) bool { return garden.Slug(t.Name) == name }))
}

// otherTubs are the names of the tubs beside one.
func (o *opened) otherTubs(tub int) []string {
	var out []string
	for i, t := range o.Plan.Tubs {
		if i != tub {
			out = append(out, t.Name)
		}
	}
	return out
}

// anotherTub is a new tub with the measures of one that is there: a school
// often has two or three of the same kind. It is the item for the plan's list.
func anotherTub(d *plan.Document, tub int, asked []string) string {
	own := fmt.Sprintf("tubs[%d].", tub)
	root := &branch{}
	root.at("name").value = newTubName(d)
	for _, path := range asked {
		rest, mine := strings.CutPrefix(path, own)
		typed, _, _, there := d.Value(path)
		if mine && there && rest != "name" {
			root.grow(rest).value = plan.Flow(typed)
		}
	}
	return root.flow()
}

// newTubName is 'Tub N' with the first number that no tub has.
func newTubName(d *plan.Document) string {
	taken := map[string]bool{}
	n := d.Items("tubs")
	for i := range n {
		name, _, _, _ := d.Value(fmt.Sprintf("tubs[%d].name", i))
		taken[plan.FileName(name)] = true
	}
	for n++; ; n++ {
		if name := "Tub " + strconv.Itoa(n); !taken[plan.FileName(name)] {
			return name
		}
	}
}

// branch is a group or a list under construction, its parts in the order in
// which they came.
type branch struct {
	value string
	keys  []string
	parts []*branch
	list  bool
}

// grow is the branch at a path such as lid.size[0], made where it is missing.
func (b *branch) grow(path string) *branch {
	for part := range strings.SplitSeq(path, ".") {
		key, rest, indexed := strings.Cut(part, "[")
		b = b.at(key)
		for indexed {
			b.list = true
			var index string
			index, rest, _ = strings.Cut(rest, "]")
			b = b.at(index)
			_, rest, indexed = strings.Cut(rest, "[")
		}
	}
	return b
}

func (b *branch) at(key string) *branch {
	if i := slices.Index(b.keys, key); i >= 0 {
		return b.parts[i]
	}
	b.keys = append(b.keys, key)
	b.parts = append(b.parts, &branch{})
	return b.parts[len(b.parts)-1]
}

// flow writes the branch as one value on a line.
func (b *branch) flow() string {
	if len(b.parts) == 0 {
		return b.value
	}
	var out []string
	for i, p := range b.parts {
		if b.list {
			out = append(out, p.flow())
		} else {
			out = append(out, b.keys[i]+": "+p.flow())
		}
	}
	if b.list {
		return "[" + strings.Join(out, ", ") + "]"
	}
	return "{" + strings.Join(out, ", ") + "}"
}
