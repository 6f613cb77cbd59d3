package plainwords

import (
	"strings"
	"unicode"
)

// Syllables is how many syllables a word has, at least 1. It goes by groups of
// vowels and the silent endings of English, with a list of words that break the
// rules; units are read out and numbers spoken.
func Syllables(word string) int {
	if n, ok := asWritten[word]; ok {
		return n
	}
	word = strings.ToLower(strings.ReplaceAll(word, "’", "'"))
	if strings.ContainsFunc(word, unicode.IsDigit) {
		return numeral(word)
	}
	if n, ok := irregular[word]; ok {
		return n
	}
	base, had := strings.CutSuffix(word, "'s")
	if n, ok := irregular[base]; ok && had {
		return n
	}
	for _, ending := range []string{"s", "d", "ed", "ing", "ly"} {
		if stem, ok := strings.CutSuffix(base, ending); ok {
			if n, there := irregular[stem]; there {
				return n + beyond(stem, ending)
			}
		}
	}
	return max(1, groups(base)-silent(base))
}

// beyond is how many syllables an ending adds to an irregular word.
func beyond(stem, ending string) int {
	switch ending {
	case "ing", "ly":
		return 1
	case "ed":
		if strings.HasSuffix(stem, "t") || strings.HasSuffix(stem, "d") {
			return 1
		}
	}
	return 0
}

const vowels = "aeiouyäöüé"

func isVowel(r rune) bool { return strings.ContainsRune(vowels, r) }

// groups counts vowels in a row as one, but for the pairs that are spoken apart.
func groups(word string) int {
	n, before := 0, rune(0)
	letters := []rune(word)
	for i, r := range letters {
		if r == 'y' && i == 0 || r == 'u' && before == 'q' {
			before = 0 // spoken as a consonant
			continue
		}
		if isVowel(r) && (!isVowel(before) || apart(letters, i)) {
			n++
		}
		before = r
	}
	return n
}

// apart tells whether the vowel at i and the one before it belong to two
// syllables: di-al, media-n, nutri-ent, se-ing; but not -tion, -cial.
func apart(letters []rune, i int) bool {
	rest := string(letters[i+1:])
	soft := i >= 2 && strings.ContainsRune("tcsgx", letters[i-2])
	switch string(letters[i-1 : i+1]) {
	case "ia", "io", "iu":
		return !soft || i == 1 || rest == "" && letters[i] == 'o'
	case "ie":
		return !soft && len(letters) > 4 && (rest == "r" || rest == "rs" || rest == "st" || strings.HasPrefix(rest, "nt") || rest == "t")
	case "ua", "uo":
		return !strings.HasPrefix(string(letters[max(0, i-2):]), "gu")
	case "eo":
		return rest != "" && !strings.HasPrefix(rest, "p") && !strings.HasPrefix(rest, "r")
	case "yi", "uu", "ii":
		return true
	case "ei", "oi", "ai":
		return strings.HasPrefix(rest, "ng") // be-ing, go-ing
	}
	return false
}

// silent is how many of the counted groups are not spoken: a last e, -es and
// -ed after most letters.
func silent(word string) int {
	consonant := func(r byte) bool { return !isVowel(rune(r)) }
	n := len(word)
	switch {
	case n < 3:
		return 0
	case strings.HasSuffix(word, "le") && consonant(word[n-3]):
		return 0
	case strings.HasSuffix(word, "e") && consonant(word[n-2]):
		return 1
	case n > 3 && strings.HasSuffix(word, "les") && consonant(word[n-4]):
		return 0
	case n > 3 && strings.HasSuffix(word, "es") && consonant(word[n-3]) && !hisses(word[:n-2]):
		return 1
	case n > 3 && strings.HasSuffix(word, "led") && consonant(word[n-4]) && word[n-4] != 'l' && word[n-4] != 'r':
		return 0
	case n > 3 && strings.HasSuffix(word, "ed") && consonant(word[n-3]) && word[n-3] != 't' && word[n-3] != 'd':
		return 1
	case n > 4 && strings.HasSuffix(word, "ely") || n > 5 && (strings.HasSuffix(word, "eful") || strings.HasSuffix(word, "eless")) || n > 6 && (strings.HasSuffix(word, "ement") || strings.HasSuffix(word, "ements")) && n != 7 && !strings.Contains(word, "pplement"):
		return 1
	}
	return 0
}

// hisses tells whether a plural's -es is spoken: leaves is one, boxes two.
func hisses(stem string) bool {
	for _, end := range []string{"s", "x", "z", "ch", "sh", "c", "g"} {
		if strings.HasSuffix(stem, end) {
			return true
		}
	}
	return false
}
