package quantity

import "strconv"

// InWords is a count as a sentence has it: a word up to twelve, 'no' for none,
// and figures beyond.
func InWords(n int) string {
	small := [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(small) {
		return small[n]
	}
	return strconv.Itoa(n)
}
