package quantity

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestText is the most characters a quantity may take. Nothing a person
// types into a box is longer.
const longestText = 80

// The ways one sign is typed, to the one that the parser reads.
var oneSign = strings.NewReplacer(
	"−", "-", "‐", "-", "‑", "-", "﹣", "-", "-", "-",
	"μ", "µ", // Greek mu to the micro sign
	"º", "°", "˚", "°", "℃", "°C", "℉", "°F",
	"′′", `"`, "''", `"`, "″", `"`, "”", `"`, "“", `"`, "′", "'", "’", "'", "‘", "'",
	"⁄", "/", "∕", "/",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅓", " 1/3", "⅔", " 2/3",
	"²", "2", "³", "3", "ℓ", "l",
)

// clean gives the text in the parser's alphabet: one kind of blank, minus,
// micro sign, degree sign and quote, fractions written out.
func clean(text string) (string, *Error) {
	if !utf8.ValidString(text) {
		return "", wrong("this is not text", "type a number and a unit, such as 3 in")
	}
	if utf8.RuneCountInString(text) > longestText {
		return "", wrong("this is too long for a quantity", "type a number and a unit, such as 3 in")
	}
	for _, r := range text {
		if unicode.IsControl(r) && !unicode.IsSpace(r) {
			return "", wrong("there is an invisible control character in it", "type it again")
		}
	}
	return strings.Join(strings.Fields(oneSign.Replace(text)), " "), nil
}

// quoted is the text as shown in a message, cut when long.
func quoted(text string) string {
	runes := []rune(strings.TrimSpace(text))
	if len(runes) > 30 {
		runes = append(runes[:29], '…')
	}
	return "'" + string(runes) + "'"
}
