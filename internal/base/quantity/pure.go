package quantity

// The typed pure numbers a plan holds.
type (
	// Number is a plain number.
	Number float64
	// PH is an acidity on the pH scale.
	PH float64
	// MoleShare is a mole fraction, 1 for the whole; typed and shown in ppm.
	MoleShare float64
	// Cash is an amount of money in the plan's currency.
	Cash float64
)

// PHScale is the kind of a pH.
var PHScale = Kind{"a pH", None, One, One, [2]int{1, 1}}

// Kind and Base of each typed pure number.
func (Number) Kind() Kind    { return Factor }
func (PH) Kind() Kind        { return PHScale }
func (MoleShare) Kind() Kind { return MoleFraction }
func (Cash) Kind() Kind      { return Money }

func (q Number) Base() float64    { return float64(q) }
func (q PH) Base() float64        { return float64(q) }
func (q MoleShare) Base() float64 { return float64(q) }
func (q Cash) Base() float64      { return float64(q) }
