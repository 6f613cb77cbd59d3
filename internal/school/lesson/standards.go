package lesson

import "rootbell/internal/base/facts"

// Standard is a code that a sheet touches: it gives practice with a part of it
// and does not cover it.
type Standard struct {
	Code string
	Of   string // which body of standards
	Says string // in our words
	Fact facts.Fact
}

// Standards are the codes that a template touches.
func (t Template) Standards() []Standard {
	out := make([]Standard, len(t.touches))
	for i, id := range t.touches {
		f := Facts.Get(id)
		of := "CCSS"
		if id[:4] == "ngss" {
			of = "NGSS"
		}
		out[i] = Standard{Code: f.Word, Of: of, Says: f.AppliesTo, Fact: f}
	}
	return out
}
