package plainwords

// Source names the formula of Grade.
const Source = "Kincaid, Fishburne, Rogers and Chissom 1975, Research Branch Report 8-75, Naval Technical Training Command (Flesch-Kincaid grade level)"

// The coefficients of the Flesch-Kincaid grade level; see Source.
const (
	perSentence = 0.39  // for each word of a mean sentence
	perWord     = 11.8  // for each syllable of a mean word
	less        = 15.59 // so that the grade of a school year comes out
)

// Grade is the Flesch-Kincaid grade level of a text: 3 is what a child in the
// third school year reads. It may fall under 0 for very short words; an empty
// text has the grade 0. See Source.
func Grade(text string) float64 { return Of(text).Grade() }

// Grade is the Flesch-Kincaid grade level of what was counted.
func (c Counts) Grade() float64 {
	if c.Words == 0 {
		return 0
	}
	words := float64(c.Words)
	return perSentence*words/float64(max(c.Sentences, 1)) + perWord*float64(c.Syllables)/words - less
}

// Band is pupils of some school years, and the hardest text for them.
type Band struct {
	Name      string // the school years, such as 3-5
	FromAge   int    // the next band's age ends it
	MostGrade float64
}

// Bands are the bands of school years, the youngest first. A child of five or
// six is in the first of them; the last year of a band is the hardest text that
// its youngest are asked to read with help. Common practice, no source.
func Bands() []Band {
	return []Band{{"K-2", 5, 3}, {"3-5", 8, 5}, {"6-8", 11, 8}, {"9-12", 14, 12}}
}

// BandAt is the band of a class whose youngest is so many years old. A class of
// which no age is told, 0, is taken as the second: most papers are for them.
func BandAt(youngest int) Band {
	all := Bands()
	if youngest <= 0 {
		return all[1]
	}
	out := all[0]
	for _, b := range all[1:] {
		if youngest >= b.FromAge {
			out = b
		}
	}
	return out
}
