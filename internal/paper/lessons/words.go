package lessons

import (
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/lesson"
)

// signs are those of a sum as a pencil writes them.
var signs = strings.NewReplacer("*", " × ", "/", " ÷ ", "+", " + ", "-", " − ", "^2", "²", "^3", "³", "^", " ^ ")

// Written is a sum in the signs of a schoolbook: 3 × 4 ÷ 2. A sign before a
// number keeps close to it.
func Written(sum string) string {
	var b strings.Builder
	for i := 0; i < len(sum); i++ {
		before := byte('(')
		if i > 0 {
			before = sum[i-1]
		}
		if sum[i] == '-' && strings.IndexByte("(*/+-,^ ", before) >= 0 {
			b.WriteString("−")
			continue
		}
		if sum[i] == '^' && i+1 < len(sum) && (sum[i+1] == '2' || sum[i+1] == '3') && (i+2 == len(sum) || !digit(sum[i+2])) {
			b.WriteString(signs.Replace(sum[i : i+2]))
			i++
			continue
		}
		b.WriteString(signs.Replace(sum[i : i+1]))
	}
	return b.String()
}

func digit(c byte) bool { return c >= '0' && c <= '9' || c == '.' }

func letter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_' }

// result is a number as it is written down, without its unit.
func result(shown working.Shown) string { return quantity.FormatNumber(shown.Value, shown.Decimals) }

// unitOf is what stands behind an answer: its unit, or the word for what is
// counted.
func unitOf(q lesson.Question, shown working.Shown) string {
	if shown.Unit != "" {
		return shown.Unit
	}
	return q.Noun
}

// blanked is a formula with a blank for each letter, as wide as the number that
// goes in; what the formula itself brings stays. ok is false for one that a
// pupil would not write in one line.
func blanked(n working.Number, s quantity.System, shown working.Shown) (text string, ok bool) {
	if n.Law == nil || len(n.Inputs) > mostBlanks {
		return "", false
	}
	wide := map[string]int{}
	for i, w := range n.Law.Where {
		in := n.Inputs[i].Show(s)
		wide[w.Name] = len([]rune(result(in))) + 2
	}
	var b strings.Builder
	formula := shown.Formula
	for i := 0; i < len(formula); {
		if !letter(formula[i]) {
			j := i
			for j < len(formula) && !letter(formula[j]) {
				j++
			}
			b.WriteString(formula[i:j])
			i = j
			continue
		}
		j := i
		for j < len(formula) && (letter(formula[j]) || digit(formula[j])) {
			j++
		}
		word := formula[i:j]
		if w, symbol := wide[word]; symbol {
			b.WriteString(strings.Repeat("_", w))
		} else {
			if word != "pi" {
				return "", false
			}
			b.WriteString("π")
		}
		i = j
	}
	text = Written(b.String())
	return text, len([]rune(text)) <= mostLetters
}

// The most that a sum with blanks may have.
const (
	mostBlanks  = 5
	mostLetters = 52
)

// rounding says to which digit an answer is rounded; empty where it comes out
// whole.
func rounding(n working.Number, s quantity.System, shown working.Shown) string {
	exact := n.Kind.Unit(s).From(n.Base)
	if off := exact - shown.Value; off < 1e-9 && off > -1e-9 {
		return ""
	}
	switch shown.Decimals {
	case 0:
		return "Round to a whole number."
	case 1:
		return "Round to 1 decimal place."
	}
	return "Round to " + strconv.Itoa(shown.Decimals) + " decimal places."
}
