package plan

import "strings"

// nearest is the word of the list that is most like the one typed, by itself or
// in one of its parts, or "" when none is near: at most one slip in three letters, and three in all.
func nearest(typed string, words []string) string {
	folded := loose(typed)
	best, least := "", min(3, max(1, (len([]rune(folded))+1)/3))+1
	for _, w := range words {
		for _, part := range append(strings.Fields(w), w) {
			if d := slips(folded, loose(part)); d < least {
				best, least = w, d
			}
		}
	}
	return best
}

// loose makes words alike that differ only in case, hyphens, blanks and
// underscores.
func loose(word string) string {
	return strings.ToLower(strings.NewReplacer("_", "", "-", "", " ", "").Replace(word))
}

// slips is the least number of letters left out, put in, changed or swapped
// with their neighbour that lead from one word to the other.
func slips(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x) > 60 || len(y) > 60 {
		return 60
	}
	last, row := make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(x); i++ {
		next := make([]int, len(y)+1)
		next[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			next[j] = min(row[j]+1, next[j-1]+1, row[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				next[j] = min(next[j], last[j-2]+1)
			}
		}
		last, row = row, next
	}
	return row[len(y)]
}

// list joins words as a sentence does: a, b or c.
func list(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}
