package quantity

import (
	"math"
	"strconv"
	"strings"
)

// amount is the number at the start of a text, and what follows it.
type amount struct {
	value    float64
	negative bool
	rest     string
}

// most is the largest number taken. It is far beyond a classroom, and small
// enough that no unit can carry it out of a float64.
const most = 1e15

// readAmount reads a number at the start of cleaned text: 12, 1.5, 1,5, 1/4,
// 1 1/2 or 1-1/2, each with a sign.
func readAmount(text string) (amount, *Error) {
	a := amount{rest: text}
	switch {
	case strings.HasPrefix(text, "-"):
		a.negative, a.rest = true, strings.TrimLeft(text[1:], " ")
	case strings.HasPrefix(text, "+"):
		a.rest = strings.TrimLeft(text[1:], " ")
	}
	if err := notANumber(a.rest); err != nil {
		return a, err
	}
	digits, rest := leading(a.rest, isNumeral)
	if strings.HasPrefix(rest, "/") {
		value, after, err := fraction(digits, rest[1:])
		a.value, a.rest = value, after
		return a, err
	}
	value, err := decimal(digits)
	if err != nil {
		return a, err
	}
	a.value, a.rest = value, rest
	return withFraction(a, digits)
}

// withFraction adds the fraction of a mixed number such as 1 1/2.
func withFraction(a amount, digits string) (amount, *Error) {
	if a.rest == "" || !strings.ContainsRune(" -", rune(a.rest[0])) {
		return a, noExponent(a.rest)
	}
	top, after := leading(a.rest[1:], isDigit)
	if top == "" || !strings.HasPrefix(after, "/") {
		return a, nil
	}
	if strings.ContainsAny(digits, ".,") {
		return a, wrong(quoted(digits+a.rest)+" has a decimal number and a fraction", "write 1 1/2 or 1.5")
	}
	part, rest, err := fraction(top, after[1:])
	if err != nil {
		return a, err
	}
	if part >= 1 {
		return a, wrong("the fraction after "+digits+" is not less than one", "write a mixed number such as 1 1/2")
	}
	a.value, a.rest = a.value+part, rest
	return a, nil
}

func fraction(top, text string) (value float64, rest string, err *Error) {
	bottom, rest := leading(text, isDigit)
	over, errTop := wholeNumber(top)
	under, errBottom := wholeNumber(bottom)
	switch {
	case errTop != nil || errBottom != nil:
		return 0, rest, wrong("the fraction is not one whole number over another", "write it like 1/4 or 1 1/2")
	case under == 0:
		return 0, rest, wrong("the fraction divides by zero", "write it like 1/4 or 1 1/2")
	}
	return over / under, rest, nil
}

func wholeNumber(digits string) (float64, error) {
	n, err := strconv.ParseUint(digits, 10, 32)
	return float64(n), err
}

// decimal reads digits with at most one decimal point or comma.
func decimal(digits string) (float64, *Error) {
	points, commas := strings.Count(digits, "."), strings.Count(digits, ",")
	plain := strings.NewReplacer(".", "", ",", "").Replace(digits)
	switch {
	case points+commas > 1 && plain != "":
		return 0, wrong("the number "+quoted(digits)+" has more than one point or comma",
			"write it without thousands separators, such as 1500 or 1500.5")
	case commas == 1 && groupsOfThree(digits):
		return 0, wrong(quoted(digits)+" can be read as "+plain+" or as "+strings.Replace(digits, ",", ".", 1),
			"write "+plain+" or "+strings.Replace(digits, ",", ".", 1))
	}
	value, err := strconv.ParseFloat(strings.Replace(digits, ",", ".", 1), 64)
	if err != nil || math.IsNaN(value) || plain == "" {
		return 0, wrong("there is no number in it", "begin with a number, such as 3 in")
	}
	if value > most {
		return 0, wrong("the number is too large", "check the digits")
	}
	return value, nil
}

// groupsOfThree tells whether a comma could be a thousands separator: three
// digits after it and one to three, not beginning with a zero, before it.
func groupsOfThree(digits string) bool {
	before, after, _ := strings.Cut(digits, ",")
	return len(after) == 3 && len(before) >= 1 && len(before) <= 3 && before[0] != '0'
}

// notANumber refuses what does not begin like a number, with a word for each
// usual case.
func notANumber(text string) *Error {
	low := strings.ToLower(text)
	switch {
	case text == "":
		return wrong("nothing is typed here", "type a number and a unit, such as 3 in")
	case strings.HasPrefix(low, "nan"), strings.HasPrefix(low, "inf"), strings.HasPrefix(low, "∞"),
		strings.HasPrefix(low, ".inf"), strings.HasPrefix(low, ".nan"):
		return wrong(quoted(text)+" is not a number one can measure", "type the figure, such as 3 in")
	case !isNumeral(rune(text[0])):
		return wrong(quoted(text)+" does not begin with a number", "type a number and a unit, such as 3 in")
	}
	return nil
}

// noExponent refuses 1e3: no ruler or label shows it, and it hides how large a
// number is.
func noExponent(rest string) *Error {
	if len(rest) < 2 || (rest[0] != 'e' && rest[0] != 'E') {
		return nil
	}
	after := strings.TrimLeft(rest[1:], "+-")
	if after != "" && isDigit(rune(after[0])) {
		return wrong("the number is written with an exponent", "write it out, such as 1500 or 0.0015")
	}
	return nil
}

// leading splits off the longest start whose characters all pass.
func leading(text string, pass func(rune) bool) (start, rest string) {
	for i, r := range text {
		if !pass(r) {
			return text[:i], text[i:]
		}
	}
	return text, ""
}

func isDigit(r rune) bool   { return r >= '0' && r <= '9' }
func isNumeral(r rune) bool { return isDigit(r) || r == '.' || r == ',' }
