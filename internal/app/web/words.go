package web

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"rootbell/internal/base/quantity"
)

// sentence begins with a capital and ends with a full stop. Keys of the plan in
// it become words, as the forms have them.
func sentence(text string) string {
	return exact(keyPattern.ReplaceAllStringFunc(text, func(key string) string { return "'" + strings.NewReplacer("_", " ", ".", " ").Replace(key) + "'" }))
}

// exact is sentence with the keys as the plan's text has them.
func exact(text string) string {
	text = strings.TrimSpace(text)
	if end, _ := utf8.DecodeLastRuneInString(text); text == "" || strings.ContainsRune(".?…", end) {
		return capital(text)
	}
	return capital(text) + "."
}

var keyPattern = regexp.MustCompile(`\b(?:[a-z]+\.)*[a-z]+(?:_[a-z]+)+\b|\b[a-z]{3,}\.[a-z]{3,}\b`)

// capital begins a sentence with a word.
func capital(word string) string {
	r, size := utf8.DecodeRuneInString(word)
	if size == 0 {
		return word
	}
	return string(unicode.ToUpper(r)) + word[size:]
}

// countOf is so many of a thing: 'one plant', 'eight plants'.
func countOf(n int, thing string) string {
	if n == 1 {
		return "one " + thing
	}
	return quantity.InWords(n) + " " + thing + "s"
}
