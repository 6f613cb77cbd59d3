package web

import (
	"fmt"
	"strings"

	"rootbell/internal/garden/plan"
)

// list is a list of the plan, item by item.
func (f *form) list(path string) []string {
	var out []string
	for i := range f.doc().Items(path) {
		v, _, _, _ := f.doc().Value(fmt.Sprintf("%s[%d]", path, i))
		out = append(out, v)
	}
	return out
}

// listed is a list of the plan with commas, as a field shows it.
func (f *form) listed(path string) string { return strings.Join(f.list(path), ", ") }

// wordList takes what was typed apart at any of the separators.
func wordList(typed, separators string) []string {
	var out []string
	for one := range strings.FieldsFuncSeq(typed, func(r rune) bool { return strings.ContainsRune(separators, r) }) {
		if one = strings.TrimSpace(one); one != "" {
			out = append(out, one)
		}
	}
	return out
}

// flowList is a list of texts as the plan has it.
func flowList(words []string) string {
	var out []string
	for _, w := range words {
		out = append(out, plan.Flow(w))
	}
	return "[" + strings.Join(out, ", ") + "]"
}
