package web

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"rootbell/internal/garden/plan"
)

// inWords writes a small count as a word, as a sentence does.
func inWords(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}

// pathWords is a path of the plan as a teacher says it: 'Heron, lid, size'.
func pathWords(text []byte, path string) string {
	words := strings.NewReplacer(".", ", ", "_", " ").Replace(path)
	var index int
	if _, err := fmt.Sscanf(path, "tubs[%d]", &index); err == nil {
		own := fmt.Sprintf("tubs[%d]", index)
		name, _, _, ok := plan.Value(text, own+".name")
		if !ok {
			name = fmt.Sprintf("tub %d", index+1)
		}
		words = strings.Replace(words, own, name, 1)
	}
	return counted.ReplaceAllStringFunc(words, func(place string) string {
		n, _ := strconv.Atoi(place[1 : len(place)-1])
		return " " + strconv.Itoa(n+1)
	})
}

var counted = regexp.MustCompile(`\[\d+\]`)

// capital begins a sentence with a word.
func capital(word string) string {
	r, size := utf8.DecodeRuneInString(word)
	if size == 0 {
		return word
	}
	return string(unicode.ToUpper(r)) + word[size:]
}
