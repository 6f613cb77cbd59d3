package lesson

import (
	"slices"

	"rootbell/internal/base/facts"
)

// Template is a kind of sheet.
type Template struct {
	Number  int
	ID      string
	Title   string // the question it asks
	Concept string // what it teaches
	Bands   []Band // the one it is made for first
	Log     bool   // it takes readings where there are enough
	Graph   bool   // it has a graph to fill

	touches []facts.ID
	make    func(*bench)
}

// For tells whether the template is for a band.
func (t Template) For(b Band) bool { return slices.Contains(t.Bands, b) }

// Named is the template of an id.
func Named(id string) (Template, bool) {
	for _, t := range Templates() {
		if t.ID == id {
			return t, true
		}
	}
	return Template{}, false
}
