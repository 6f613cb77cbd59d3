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

// UnmarshalText reads what was typed; the error is an *Error.
func (t *Typed[Q]) UnmarshalText(text []byte) error {
	value, err := ParseAs[Q](string(text))
	if err != nil {
		return err
	}
	*t = Typed[Q]{value, string(text)}
	return nil
}

// UnmarshalText reads what was typed; the error is an *Error.
func (i *Interval[Q]) UnmarshalText(text []byte) error {
	read, err := ParseIntervalAs[Q](string(text))
	if err != nil {
		return err
	}
	*i = read
	return nil
}

// Kind is the kind of the quantity.
func (t Typed[Q]) Kind() Kind { return t.Value.Kind() }

// Kind is the kind of the quantity.
func (i Interval[Q]) Kind() Kind { return i.Low.Kind() }

// Ends is the least and the most that the value may be, in base units.
func (t Typed[Q]) Ends() (low, high float64) { return t.Value.Base(), t.Value.Base() }

// Ends is the least and the most that the value may be, in base units.
func (i Interval[Q]) Ends() (low, high float64) { return i.Low.Base(), i.High.Base() }
