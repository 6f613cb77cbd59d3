package lesson

// Choice is what a teacher asks of a sheet.
type Choice struct {
	Template string
	Band     Band   // empty: the template's first
	Seed     uint64 // which variant
	Filled   bool   // the pupils' graph is drawn already
	Odd      []Decision
}

// Deed is what is done with a reading that stands out.
type Deed string

// The deeds. The empty one is that nobody decided, and counts as Keep.
const (
	Keep     Deed = "keep"
	LeaveOut Deed = "out"
	Correct  Deed = "correct"
)

// Decision is what the teacher decided about one reading, named by its row. The
// value stands in the unit of the sheet.
type Decision struct {
	ID    string
	Do    Deed
	Value float64
}

func (c Choice) decided(id string) Decision {
	for _, d := range c.Odd {
		if d.ID == id {
			return d
		}
	}
	return Decision{ID: id}
}
