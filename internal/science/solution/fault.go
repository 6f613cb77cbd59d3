package solution

import (
	"rootbell/internal/base/finding"
)

// Fault is what is wrong with something typed: a stable code, the field below
// the thing it belongs to (label.P2O5, density), what is wrong and what to do.
type Fault struct {
	Code, Field, Text, Hint string
}

// Error is the text and the hint in one line.
func (f *Fault) Error() string {
	if f.Hint == "" {
		return f.Text
	}
	return f.Text + "; " + f.Hint
}

// Finding is the fault as a stop, for whoever knows the field's full path.
func (f *Fault) Finding(path string) finding.Finding {
	if f.Field != "" {
		path += "." + f.Field
	}
	return finding.Finding{Level: finding.Stop, Code: f.Code, Field: path, Text: f.Text, Hint: f.Hint}
}
