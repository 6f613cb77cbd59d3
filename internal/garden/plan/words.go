package plan

import (
	"regexp"
	"strings"
	"unicode"

	"rootbell/internal/base/quantity"
)

// longestText is the most characters of a text that is free.
const longestText = 80

// form is a form that a text must have.
type form struct {
	matches *regexp.Regexp
	hint    string
}

// forms are the forms by the name the tags give them. Their expressions stand
// in the JSON Schema too, so they keep to what both engines read.
var forms = map[string]form{
	"currency": {regexp.MustCompile(`^[A-Z]{3}$`), "write its three capital letters, such as EUR or USD"},
	"zone":     {regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_+-]*(/[A-Za-z0-9_+-]+){0,2}$`), "write it like Europe/Dublin or America/Chicago"},
	"name":     {regexp.MustCompile(`^[\p{L}\p{N}][\p{L}\p{M}\p{N} -]{0,23}$`), "write 1 to 24 letters, digits, spaces or hyphens"},
	"salt":     {regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9()\[\]₀-₉.·•*-]*$`), "write its name, such as magnesium-sulfate, or its formula, such as MgSO4.7H2O"},
	"slug":     {regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`), "write it in small letters, digits and hyphens"},
}

// readWord reads a text by its field's words or form. Words are taken in any
// case, and given as the document spells them.
func readWord(text string, f Key) (string, error) {
	text = strings.TrimSpace(text)
	if f.Words != nil {
		for _, w := range f.Words {
			if strings.EqualFold(w, text) {
				return w, nil
			}
		}
		return "", notAWord(text, f.Words)
	}
	if want, has := forms[f.Form]; has && !want.matches.MatchString(text) {
		return "", &quantity.Error{What: quote(text) + " does not have the form wanted here", Hint: want.hint}
	}
	if strings.ContainsFunc(text, unicode.IsControl) {
		return "", &quantity.Error{What: "there is an invisible control character in it", Hint: "type it again"}
	}
	if len([]rune(text)) > longestText {
		return "", &quantity.Error{What: "the text is longer than 80 characters", Hint: "shorten it"}
	}
	return text, nil
}

func notAWord(text string, words []string) error {
	hint := "write " + list(words)
	if near := nearest(text, words); near != "" {
		hint = "did you mean " + near + "?"
		if len(words) <= 4 {
			hint += " It may be " + list(words)
		}
	}
	return &quantity.Error{What: quote(text) + " is not known here", Hint: hint}
}

// FormOf is the regular expression and the hint of a named form; both are empty
// for a name that is not one.
func FormOf(name string) (expression, hint string) {
	f, known := forms[name]
	if !known {
		return "", ""
	}
	return f.matches.String(), f.hint
}

// ItemForm is the regular expression of an item of the price list.
func ItemForm() string { return itemName.String() }
