package quantity

import "strings"

// ParseInterval reads '80 to 120 mg/L', '80–120 mg/L' or one quantity, which
// is then both ends. The low end may leave its unit to the high end. Results
// are in base units; the error is always an *Error.
func ParseInterval(k Kind, text string) (low, high float64, err error) {
	ends, bad := readInterval(k, text)
	if bad != nil {
		return 0, 0, bad
	}
	return ends[0].base(), ends[1].base(), nil
}

// ParseIntervalAs reads an interval of a typed quantity as ParseInterval does.
func ParseIntervalAs[Q Quantity](text string) (Interval[Q], error) {
	var zero Q
	ends, bad := readInterval(zero.Kind(), text)
	if bad != nil {
		return Interval[Q]{}, bad
	}
	return Interval[Q]{as[Q](ends[0]), as[Q](ends[1]), text}, nil
}

func readInterval(k Kind, text string) (ends [2]measure, bad *Error) {
	first, second, two := cutInterval(text)
	if !two {
		one, bad := read(k, text)
		return [2]measure{one, one}, bad
	}
	if ends[1], bad = read(k, second); bad != nil {
		return ends, bad
	}
	if ends[0], bad = readLow(k, first, second); bad != nil {
		return ends, bad
	}
	if ends[0].base() > ends[1].base() {
		return ends, wrong(quoted(text)+" begins with the larger figure", "write the smaller one first")
	}
	return ends, nil
}

// readLow reads the low end, with the unit of the high one where it has none.
func readLow(k Kind, first, second string) (measure, *Error) {
	cleaned, bad := clean(first)
	if bad != nil {
		return measure{}, bad
	}
	if a, bad := readAmount(cleaned); bad == nil && strings.TrimSpace(a.rest) == "" {
		high, _ := clean(second)
		if b, bad := readAmount(high); bad == nil {
			first += " " + b.rest
		}
	}
	return read(k, first)
}

// cutInterval finds the word or dash between the ends. A hyphen counts only
// between digits, and not before a fraction: 1-1/2 is one and a half.
func cutInterval(text string) (low, high string, two bool) {
	for _, word := range []string{" to ", "–", "—", "…"} {
		if low, high, two = strings.Cut(strings.ReplaceAll(text, "\u00a0", " "), word); two {
			return low, high, strings.TrimSpace(low) != ""
		}
	}
	low, high, two = strings.Cut(text, "-")
	low, high = strings.TrimSpace(low), strings.TrimSpace(high)
	if !two || low == "" || high == "" || !isDigit(rune(low[len(low)-1])) || !isDigit(rune(high[0])) {
		return "", "", false
	}
	_, after := leading(high, isDigit)
	return low, high, !strings.HasPrefix(after, "/")
}
