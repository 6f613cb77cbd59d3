package reading

import (
	"regexp"
	"strings"
	"unicode"
)

// The words in the head of a column that would hold something about a person,
// and what to call it. They are looked for as whole words, so that 'username'
// and 'name' are found and 'filename' is not. No list finds every name: the
// column 'by' takes the plan's teams and jobs alone.
var personalHeads = []struct{ what, words string }{
	{"names of people", "name names surname forename firstname lastname fullname nickname username user initials pupil pupils student students child children learner kid kids teacher parent parents guardian carer who person author"},
	{"birth dates or ages", "birth born birthday birthdate dob age ages"},
	{"addresses", "email emails mail phone telephone mobile tel address addresses postcode zip home street contact"},
	{"health", "health allergy allergies allergic medical medication medicine illness diagnosis disability doctor diet sen iep"},
	{"photos or recordings", "photo photos photograph photographs picture pictures image images pic pics selfie video videos voice audio recording"},
	{"marks or behaviour", "mark marks grade grades score scores behaviour behavior attendance absent absence"},
	{"numbers that stand for a person", "upn ssn passport login password account"},
	{"who a person is", "gender sex religion ethnicity race nationality language fsm income"},
}

// columnOfPerson says what a column's head promises about people.
func columnOfPerson(head string) (what string, found bool) {
	words := strings.FieldsFunc(strings.ToLower(spaced(head)), func(r rune) bool { return !unicode.IsLetter(r) })
	for _, kind := range personalHeads {
		listed := strings.Fields(kind.words)
		for i, w := range words {
			both := w
			if i+1 < len(words) {
				both += words[i+1]
			}
			for _, l := range listed {
				if w == l || both == l {
					return kind.what, true
				}
			}
		}
	}
	return "", false
}

// spaced parts words that are written together: firstName, e-mail.
func spaced(head string) string {
	var b strings.Builder
	before := ' '
	for _, r := range head {
		if unicode.IsUpper(r) && unicode.IsLower(before) {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		before = r
	}
	return b.String()
}

var (
	mailPattern = regexp.MustCompile(`[^\s@<>()]+@[^\s@<>()]+\.[^\s@<>().,;]+`)
	linkPattern = regexp.MustCompile(`(?i)\b(https?|ftp|file)://|\bwww\.|\bdata:image|\.(jpe?g|png|gif|heic|webp|mp4|mov|m4a|mp3)\b`)
)

// personal says what in a note is about a person as far as its form tells: an
// e-mail address, or a link to a picture or a page. A name has no form.
func personal(text string) (what string, found bool) {
	switch {
	case mailPattern.MatchString(text):
		return "an e-mail address", true
	case linkPattern.MatchString(text):
		return "a link or a photo", true
	}
	return "", false
}
