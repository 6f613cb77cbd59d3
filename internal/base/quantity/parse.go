package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Parse reads what a teacher types for a quantity of the kind and gives its
// value in base units: a number (decimal point or comma, or a fraction such as
// 1 1/2), then a unit, or several of one dimension from large to small, such
// as 5 ft 2 in. 'gal' is the US gallon; the imperial one is 'imp gal'. A bare
// number is taken for a kind without a unit, and a bare 0 for a length. The
// error is always an *Error; the result is always finite.
func Parse(k Kind, text string) (base float64, err error) {
	m, bad := read(k, text)
	if bad != nil {
		return 0, bad
	}
	return m.base(), nil
}

// ParseAs reads a typed quantity as Parse does.
func ParseAs[Q Quantity](text string) (Q, error) {
	var zero Q
	m, bad := read(zero.Kind(), text)
	if bad != nil {
		return 0, bad
	}
	return as[Q](m), nil
}

// FromBase gives the typed quantity of a value in base units.
func FromBase[Q Quantity](base float64) Q {
	stored := storedUnit[Q]()
	return Q(stored.From(base))
}

// storedUnit is the unit whose number a typed quantity stores.
func storedUnit[Q Quantity]() Unit {
	zero := Q(0).Base()
	return Unit{Scale: Q(1).Base() - zero, Offset: zero}
}

// measure is a quantity as typed, part by part.
type measure struct {
	parts    []part
	negative bool
}

type part struct {
	value float64
	unit  Unit
}

func (m measure) base() float64 {
	sum := 0.0
	for _, p := range m.parts {
		value := p.value
		if m.negative {
			value = -value
		}
		sum += p.unit.Base(value)
	}
	return tidy(sum)
}

// tidy takes the last binary digits off that a conversion leaves behind, so
// that 3 in is 76.2 mm: the nearest decimal of 15 digits, all a float64 holds.
func tidy(value float64) float64 {
	short, err := strconv.ParseFloat(strconv.FormatFloat(value, 'g', 15, 64), 64)
	if err != nil {
		return value
	}
	return short
}

// as avoids the way through base units where the unit typed is the one stored:
// 21.3 °C is then exactly 21.3.
func as[Q Quantity](m measure) Q {
	stored := storedUnit[Q]()
	if only := m.parts[0]; len(m.parts) == 1 && only.unit.Scale == stored.Scale && only.unit.Offset == stored.Offset {
		if m.negative {
			return Q(-only.value)
		}
		return Q(only.value)
	}
	return Q(tidy(stored.From(m.base())))
}

func read(k Kind, text string) (measure, *Error) {
	cleaned, bad := clean(text)
	if bad != nil {
		return measure{}, bad
	}
	m, bad := readParts(k, cleaned)
	if bad != nil {
		return measure{}, bad
	}
	return m, allowed(k, m)
}

func readParts(k Kind, text string) (measure, *Error) {
	var m measure
	for rest := text; rest != "" || len(m.parts) == 0; {
		a, bad := readAmount(rest)
		if bad != nil {
			return m, suited(bad, k)
		}
		if len(m.parts) == 0 {
			m.negative = a.negative
		} else if a.negative {
			return m, wrong("there is a minus sign in the middle of "+quoted(text), "write one quantity")
		}
		name, after := unitText(strings.TrimLeft(a.rest, " "))
		unit, bad := unitFor(k, name, a.value, text)
		if bad != nil {
			return m, bad
		}
		m.parts = append(m.parts, part{a.value, unit})
		rest = strings.TrimLeft(after, " ")
	}
	return m, inOrder(m, text)
}

// unitText splits the unit off the front: up to the next number.
func unitText(text string) (name, rest string) {
	for i, r := range text {
		if i > 0 && isDigit(r) && (text[i-1] == ' ' || text[i-1] == '\'') {
			return strings.TrimRight(text[:i], " "), text[i:]
		}
		if i > 0 && (r == '-' || r == '+') {
			return strings.TrimRight(text[:i], " "), text[i:]
		}
	}
	return strings.TrimRight(text, " "), ""
}

func unitFor(k Kind, name string, value float64, text string) (Unit, *Error) {
	unit, known := findUnit(name, k)
	switch {
	case name == "" && bare(k):
		return Unit{Dim: k.Dim, Scale: 1}, nil
	case name == "" && value == 0 && k.Dim == LengthDim:
		return Millimetre, nil
	case name == "":
		return Unit{}, wrong(quoted(text)+" has no unit", "add one, such as "+wouldDo(k))
	case !known && isNumeral(rune(name[0])):
		return Unit{}, wrong("there are two numbers in "+quoted(text), "write one number without spaces in it, such as 1500")
	case !known && bare(k):
		return Unit{}, wrong(quoted(text)+" is not "+k.Name, "write only the number")
	case !known:
		return Unit{}, wrong("the unit "+quoted(name)+" is not known", "use "+wouldDo(k))
	case unit.Dim != k.Dim:
		return Unit{}, wrongDim(k, unit)
	case bare(k):
		return Unit{}, wrong(k.Name+" has no unit", "write only the number")
	}
	return unit, nil
}

// bare tells the kinds that are typed as a number alone.
func bare(k Kind) bool { return k.Metric.Scale == 1 && (k.Dim == None || k.Dim == MoneyDim) }

func wrongDim(k Kind, unit Unit) *Error {
	hint := "use " + wouldDo(k)
	switch {
	case bare(k):
		hint = "write only the number"
	case k.Dim == VolumeDim && unit.Symbol == "oz":
		hint = "oz is a mass; write fl oz for a volume"
	case k.Dim == ConductivityDim && unit.Dim == siemensDim:
		hint = "write " + unit.Symbol + "/cm if that is what the meter shows"
	}
	return wrong(unit.Symbol+" is not "+unitOf(k), hint)
}

// inOrder asks for parts of falling size, each smaller than the one before.
func inOrder(m measure, text string) *Error {
	for i := 1; i < len(m.parts); i++ {
		before, p := m.parts[i-1], m.parts[i]
		switch {
		case before.unit.Offset != 0 || p.unit.Offset != 0:
			return wrong(quoted(text)+" holds two temperatures", "write one")
		case p.unit.Scale >= before.unit.Scale:
			return wrong(quoted(text)+" holds two quantities", "write one, such as 5 ft 2 in")
		case p.value*p.unit.Scale >= before.unit.Scale && p.value != 0:
			return wrong(quoted(text)+" has more "+p.unit.Symbol+" than make one "+before.unit.Symbol, "write it as one number")
		}
	}
	return nil
}

// allowed refuses what no quantity of the kind can be.
func allowed(k Kind, m measure) *Error {
	base := m.base()
	switch {
	case math.IsNaN(base) || math.IsInf(base, 0):
		return wrong("the number is too large", "check the digits")
	case k.Dim == TemperatureDim && base < 0:
		return wrong("nothing is colder than "+Format(k, 0, Metric), "check the number and the unit")
	case base < 0 && !maySink(k):
		return wrong(k.Name+" cannot be negative", "leave out the minus sign")
	}
	return nil
}

// maySink tells the kinds that have a meaning below zero: a recessed lid, an
// altitude, a temperature above 0 K, a plain number.
func maySink(k Kind) bool {
	return k.Dim == LengthDim || k.Dim == TemperatureDim || k == Factor
}
