package plainwords

import (
	"strings"
	"unicode"
)

// asWritten are units and short forms as they are read out, by their exact
// letters: L is a litre, EC two letters.
var asWritten = map[string]int{
	"mm": 4, "cm": 4, "m": 2, "in": 1, "ft": 1, "L": 2, "mL": 4, "gal": 2, "qt": 1, "kg": 3, "g": 1, "lb": 1, "oz": 1,
	"°C": 4, "°F": 4, "EC": 2, "pH": 2, "mS": 4, "ppm": 4, "%": 2, "h": 1, "min": 2, "°": 2,
}

// ones are the syllables of zero to nineteen.
var ones = [...]int{2, 1, 1, 1, 1, 1, 1, 2, 1, 1, 1, 3, 1, 2, 2, 2, 2, 3, 2, 2}

// numeral is how many syllables a number has when it is spoken, with what
// stands behind it: 26, 2.5, 40%.
func numeral(word string) int {
	digits := strings.TrimRightFunc(word, func(r rune) bool { return !unicode.IsDigit(r) })
	n := 0
	if unit := word[len(digits):]; unit != "" {
		n = max(1, asWritten[unit])
	}
	whole, part, decimal := strings.Cut(digits, ".")
	whole = strings.ReplaceAll(whole, ",", "")
	value, count := 0, 0
	for _, r := range whole {
		if r < '0' || r > '9' {
			continue
		}
		value, count = value*10+int(r-'0'), count+1
		if count > 6 {
			break
		}
	}
	n += spoken(value)
	if decimal {
		n++ // point
		for _, r := range part {
			if r >= '0' && r <= '9' {
				n += ones[r-'0']
			}
		}
	}
	return n
}

// spoken is the syllables of a whole number under ten million.
func spoken(v int) int {
	switch {
	case v < 20:
		return ones[v]
	case v < 100:
		n := 2
		if v/10 == 7 {
			n = 3
		}
		if v%10 > 0 {
			n += ones[v%10]
		}
		return n
	case v < 1000:
		n := ones[v/100] + 2
		if v%100 > 0 {
			n += spoken(v % 100)
		}
		return n
	}
	n := spoken(v/1000) + 2
	if v%1000 > 0 {
		n += spoken(v % 1000)
	}
	return n
}
