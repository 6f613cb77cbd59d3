package quantity

// Error says what is wrong with a typed quantity and what to type instead.
// What is a clause without a full stop; Hint may be empty.
type Error struct {
	What string
	Hint string
}

// Error gives what is wrong and, when there is one, the hint.
func (e *Error) Error() string {
	if e.Hint == "" {
		return e.What
	}
	return e.What + " (" + e.Hint + ")"
}

func wrong(what, hint string) *Error { return &Error{What: what, Hint: hint} }
