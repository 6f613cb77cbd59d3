package quantity

// Typed is a quantity together with the text it was typed as. The zero value
// is one that was left out.
type Typed[Q Quantity] struct {
	Value Q
	Text  string
}

// Set tells whether anything was typed.
func (t Typed[Q]) Set() bool { return t.Text != "" }

// Or is the value typed, or the default when it was left out.
func (t Typed[Q]) Or(value Q) Q {
	if t.Set() {
		return t.Value
	}
	return value
}

// Interval is a quantity known to lie between two values, together with the
// text it was typed as. One reading alone has Low equal to High.
type Interval[Q Quantity] struct {
	Low, High Q
	Text      string
}

// Set tells whether anything was typed.
func (i Interval[Q]) Set() bool { return i.Text != "" }

// Mid is the middle of the interval.
func (i Interval[Q]) Mid() Q { return i.Low + (i.High-i.Low)/2 }
