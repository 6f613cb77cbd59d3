package web

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"rootbell/internal/garden/plan"
)

// problem is a problem with the place in the form where it is mended; without
// an address where the form has no such place.
func (f *form) problem(p plan.Problem, tub int) problemView {
	v := problemView{What: p.What, Hint: sentence(p.Hint), Field: p.Field, Where: plan.PathWords(f.text, p.Field)}
	if label, ok := f.labels[p.Field]; ok {
		v.Where = label
	}
	lid := fmt.Sprintf("tubs[%d].lid.", tub)
	var index int
	switch {
	case slices.Contains(f.asked, p.Field):
		v.Address = "#" + idOf(p.Field)
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

// typed puts what was posted over what is in the plan, so that nothing typed is
// lost where it could not be saved.
func (w *buildWork) typed(f *form, tub int) {
	if f.posted == nil {
		return
	}
	for i := range w.Layouts {
		if name := f.posted.Get(fmt.Sprintf("tubs[%d].layout", tub)); name != "" {
			w.Layouts[i].Chosen = w.Layouts[i].Name == name
		}
	}
	if f.posted.Get("holes") != fmt.Sprint(tub) {
		return
	}
	for i := range w.Holes {
		h := &w.Holes[i]
		if x, y := holeField(h.N, "x"), holeField(h.N, "y"); f.posted.Has(x) && f.posted.Has(y) {
			h.X, h.Y, h.Fixed = f.posted.Get(x), f.posted.Get(y), f.posted.Get(holeField(h.N, "fixed")) != ""
		}
	}
	fixed := f.fixedHoles(tub)
	for _, p := range f.problems {
		var index int
		if !scans(p.Field, fmt.Sprintf("tubs[%d].lid.holes[%%d]", tub), &index) || index >= len(fixed) {
			continue
		}
		if at := slices.IndexFunc(w.Holes, func(h holeView) bool { return h.N == fixed[index].n }); at >= 0 && w.Holes[at].Error == nil {
			v := f.problem(p, tub)
			w.Holes[at].Error = &v
		}
	}
}
