package solution

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Part is so many atoms of one element.
type Part struct {
	Element string
	Count   float64
}

// Formula is a chemical formula: its atoms in the order in which they were
// first written, and its charge in units of the proton's. Counts are fractions
// only in hydrates such as CaSO4.0.5H2O.
type Formula struct {
	Text   string
	Parts  []Part
	Charge int
}

// ErrFormula is what every formula that cannot be read is.
var ErrFormula = errors.New("not a chemical formula")

// Longer and larger ones are no salts, and are refused rather than summed.
const (
	longestFormula = 200
	deepestFormula = 8
	mostAtoms      = 10_000
)

// ParseFormula reads a formula such as Ca(NO3)2.4H2O, 5Ca(NO3)2.NH4NO3.10H2O,
// K4[Fe(CN)6], NH4+, SO4^2-, PO4-3 or SO₄²⁻. Parts are joined by '.', '·', '•'
// or '*', each with a factor in front of it if need be. Errors say what was
// met and where, and are ErrFormula.
func ParseFormula(text string) (Formula, error) {
	if len(text) > longestFormula {
		return Formula{}, fmt.Errorf("%w: longer than %d characters", ErrFormula, longestFormula)
	}
	body, charge, err := splitCharge(plain(strings.TrimSpace(text)))
	if err != nil {
		return Formula{}, err
	}
	r := &reader{text: body}
	f := Formula{Text: text, Charge: charge}
	for {
		factor := r.factor()
		parts, err := r.group(0)
		if err != nil {
			return Formula{}, err
		}
		f.add(parts, factor)
		if r.done() {
			break
		}
		if !r.take('.') {
			return Formula{}, r.odd()
		}
	}
	for _, p := range f.Parts {
		if p.Count > mostAtoms || p.Count <= 0 {
			return Formula{}, fmt.Errorf("%w: %g atoms of %s", ErrFormula, p.Count, p.Element)
		}
	}
	return f, nil
}

// plain writes raised and lowered figures and the dots of hydrates in ASCII. A
// raised figure is the start of a charge.
func plain(text string) string {
	var b strings.Builder
	raised := false
	for _, c := range text {
		if i := strings.IndexRune("₀₁₂₃₄₅₆₇₈₉", c); i >= 0 {
			b.WriteByte(byte('0' + i/3))
			continue
		}
		if i := slices.Index([]rune("⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻"), c); i >= 0 {
			if !raised {
				b.WriteByte('^')
			}
			raised = true
			b.WriteByte("0123456789+-"[i])
			continue
		}
		switch c {
		case '·', '•', '∙', '*':
			b.WriteByte('.')
		case '[', '{':
			b.WriteByte('(')
		case ']', '}':
			b.WriteByte(')')
		case '−', '–':
			b.WriteByte('-')
		default:
			b.WriteRune(c)
		}
	}
	return b.String()
}

// splitCharge takes the charge off the end: ^2-, ^-2, ^+, +, -, ++, +2, -3.
// What stands before a sign without '^' is a number of atoms, so Ca2+ could be
// two readings and is refused.
func splitCharge(text string) (body string, charge int, err error) {
	body, mark, raised := strings.Cut(text, "^")
	if !raised {
		at := strings.IndexAny(text, "+-")
		if at < 0 {
			return text, 0, nil
		}
		body, mark = text[:at], text[at:]
		if oneAtom(body) {
			return "", 0, fmt.Errorf("%w: %q can be read in two ways; write the charge after '^', as in Ca^2+", ErrFormula, text)
		}
	}
	signs := strings.Count(mark, "+") + strings.Count(mark, "-")
	digits := strings.Trim(mark, "+-")
	size := signs
	if digits != "" {
		n, err := strconv.ParseUint(digits, 10, 8)
		if err != nil || signs != 1 {
			return "", 0, fmt.Errorf("%w: the charge %q", ErrFormula, mark)
		}
		size = int(n)
	}
	mixed := strings.Contains(mark, "+") && strings.Contains(mark, "-")
	if signs == 0 || mixed || size == 0 || size > 9 {
		return "", 0, fmt.Errorf("%w: the charge %q", ErrFormula, mark)
	}
	if strings.Contains(mark, "-") {
		return body, -size, nil
	}
	return body, size, nil
}

// oneAtom tells whether the text is an element and a figure, and no more.
func oneAtom(text string) bool {
	symbol := strings.TrimRight(text, "0123456789")
	_, known := atoms[symbol]
	return known && symbol != text
}

func (f *Formula) add(parts []Part, factor float64) {
	for _, p := range parts {
		if at := slices.IndexFunc(f.Parts, func(q Part) bool { return q.Element == p.Element }); at >= 0 {
			f.Parts[at].Count += p.Count * factor
			continue
		}
		f.Parts = append(f.Parts, Part{p.Element, p.Count * factor})
	}
}

// Count is how many atoms of the element the formula holds.
func (f Formula) Count(element string) float64 {
	for _, p := range f.Parts {
		if p.Element == element {
			return p.Count
		}
	}
	return 0
}

// MolarMass is the mass of one mole in grams.
func (f Formula) MolarMass() float64 {
	sum := 0.0
	for _, p := range f.Parts {
		sum += p.Count * weight(p.Element)
	}
	return sum
}

// Content is the share of the mass that the element makes, 0 to 1.
func (f Formula) Content(element string) float64 {
	all := f.MolarMass()
	if all == 0 {
		return 0
	}
	return f.Count(element) * weight(element) / all
}

// reader walks the text of a formula, which is ASCII but for what is wrong.
type reader struct {
	text string
	at   int
}

func (r *reader) done() bool { return r.at >= len(r.text) }

func (r *reader) peek() byte {
	if r.done() {
		return 0
	}
	return r.text[r.at]
}

func (r *reader) take(c byte) bool {
	if r.peek() != c {
		return false
	}
	r.at++
	return true
}

func (r *reader) odd() error {
	if r.done() {
		return fmt.Errorf("%w: an element is missing at the end of %q", ErrFormula, r.text)
	}
	return fmt.Errorf("%w: %q at place %d of %q", ErrFormula, []rune(r.text[r.at:])[0], r.at+1, r.text)
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// factor stands before a part: whole, or with a decimal point that a figure
// follows. Left out it is one.
func (r *reader) factor() float64 {
	start := r.at
	for digit(r.peek()) {
		r.at++
	}
	if r.at > start && r.peek() == '.' && r.at+1 < len(r.text) && digit(r.text[r.at+1]) {
		r.at++
		for digit(r.peek()) {
			r.at++
		}
	}
	if r.at == start {
		return 1
	}
	v, err := strconv.ParseFloat(r.text[start:r.at], 64)
	if err != nil {
		return math.Inf(1)
	}
	return v
}

// count stands after an atom or a bracket.
func (r *reader) count() float64 {
	start := r.at
	for digit(r.peek()) {
		r.at++
	}
	if r.at == start {
		return 1
	}
	v, err := strconv.ParseFloat(r.text[start:r.at], 64)
	if err != nil {
		return math.Inf(1)
	}
	return v
}

// group reads atoms and brackets up to a dot, a closing bracket or the end.
func (r *reader) group(depth int) ([]Part, error) {
	var f Formula
	for start := r.at; ; {
		switch c := r.peek(); {
		case c == '(' && depth < deepestFormula:
			r.at++
			inner, err := r.group(depth + 1)
			if err != nil {
				return nil, err
			}
			if !r.take(')') {
				return nil, fmt.Errorf("%w: a bracket of %q is not closed", ErrFormula, r.text)
			}
			f.add(inner, r.count())
		case c >= 'A' && c <= 'Z':
			symbol, err := r.element()
			if err != nil {
				return nil, err
			}
			f.add([]Part{{symbol, 1}}, r.count())
		case r.at == start:
			return nil, r.odd()
		default:
			return f.Parts, nil
		}
	}
}

func (r *reader) element() (string, error) {
	start := r.at
	r.at++
	for r.peek() >= 'a' && r.peek() <= 'z' {
		r.at++
	}
	symbol := r.text[start:r.at]
	if _, known := atoms[symbol]; !known {
		return "", fmt.Errorf("%w: the element %q of %q is not known here; capital and small letters matter", ErrFormula, symbol, r.text)
	}
	return symbol, nil
}
