package web

import (
	"fmt"
	"regexp"
	"strings"

	"rootbell/internal/garden/plan"
)

// problemView is a problem as a page lists it.
type problemView struct{ What, Hint, Field, Where, Address string }

// mends are the problems of a form as its page lists them.
func (f *form) mends(tub int) []problemView {
	var out []problemView
	for _, p := range f.problems {
		out = append(out, f.problem(p, tub))
	}
	return out
}

// problem is a problem with the place in the form where it is mended; without
// an address where the form has no such place.
func (f *form) problem(p plan.Problem, tub int) problemView {
	v := problemView{What: p.What, Hint: sentence(p.Hint), Field: f.fieldFor(p.Field), Where: plan.PathWords(f.text, p.Field)}
	if label, ok := f.labels[v.Field]; ok {
		v.Where = label
	}
	lid := fmt.Sprintf("tubs[%d].lid.", tub)
	var index int
	switch {
	case f.has(v.Field):
		v.Address = "#" + idOf(v.Field)
	case p.Field == lid+"keep_clear":
		v.Address = "#keep-shape"
	case scans(p.Field, lid+"holes[%d]", &index):
		if fixed := f.fixedHoles(tub); index < len(fixed) {
			v.Address = fmt.Sprintf("#hole-%d-x", fixed[index].n)
			v.Where = fmt.Sprintf("hole %d", fixed[index].n)
		}
	}
	v.What = sentence(v.What)
	return v
}

// fieldFor is the field in which a path of the plan is mended: its own, or that
// of the list it stands in. Where the form has neither, it is the path.
func (f *form) fieldFor(path string) string {
	for name := path; ; {
		if f.has(name) {
			return name
		}
		in := strings.LastIndexByte(name, '[')
		if in < 0 {
			return path
		}
		name = name[:in]
	}
}

// Bare is what is wrong without the key that it begins with, for a place where
// the field is named before it.
func (p problemView) Bare() string {
	if key, what, ok := strings.Cut(p.What, ": "); ok && keyPlain.MatchString(key) {
		return what
	}
	return p.What
}

var keyPlain = regexp.MustCompile(`^'?[A-Za-z][a-z ]+'?$`)

func scans(text, format string, index *int) bool {
	n, _ := fmt.Sscanf(text, format, index)
	return n == 1
}
