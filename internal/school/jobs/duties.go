package jobs

import (
	"slices"
	"strings"
	"unicode"

	"rootbell/internal/base/facts"
)

// Carry is what a pupil carries at once.
type Carry struct {
	FromAge int    // years; the next entry's age ends it
	Ages    string // the same in words: 5 to 7
	Litres  float64
	Fact    facts.Fact
}

// Carries are the limits by age, the youngest first.
func Carries() []Carry {
	var out []Carry
	for _, r := range []struct {
		age  int
		ages string
		id   facts.ID
	}{{5, "5 to 7", factCarryJugAge57}, {8, "8 to 10", factCarryJugAge810}, {11, "11 and up", factCarryJugAge11Up}} {
		f := Facts.Get(r.id)
		out = append(out, Carry{FromAge: r.age, Ages: r.ages, Litres: f.Value, Fact: f})
	}
	return out
}

// CarryAt is the limit for a class whose youngest is so many years old. Under
// five there is none, and false: nothing is carried without an adult's hand.
func CarryAt(youngest int) (Carry, bool) {
	var best Carry
	for _, c := range Carries() {
		if c.FromAge <= youngest {
			best = c
		}
	}
	return best, best.FromAge > 0
}

// Duty is what only an adult does, and the row that says so.
type Duty struct {
	What  string
	words []string
	Fact  facts.Fact
}

// AdultDuties are the duties that cannot be given to a pupil.
func AdultDuties() []Duty {
	var out []Duty
	for _, id := range []facts.ID{factAdultConcentrates, factAdultPlugs, factAdultSaws, factAdultKnives, factAdultFullTubs} {
		f := Facts.Get(id)
		out = append(out, Duty{What: f.AppliesTo, words: strings.Fields(f.Word), Fact: f})
	}
	return out
}

// ForAdults tells whether a job's name speaks of a duty for adults, and which.
// It goes by whole words, some of them in a row (plant_food), so it is a help
// and no proof: the teacher still reads the list. A seed's plug is no plug.
func ForAdults(name string) (Duty, bool) {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) })
	all := "_" + strings.Join(words, "_") + "_"
	seeds := slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, "seed") || w == "sow" || w == "wool" })
	for _, d := range AdultDuties() {
		if slices.ContainsFunc(d.words, func(w string) bool { return strings.Contains(w, "_") && strings.Contains(all, "_"+w+"_") }) {
			return d, true
		}
		for i, w := range words {
			if seeds && (w == "plug" || w == "plugs") {
				continue
			}
			if slices.Contains(d.words, w) && (d.Fact.ID != factAdultFullTubs || ofTub(words[i+1:])) {
				return d, true
			}
		}
	}
	return Duty{}, false
}

// ofTub tells whether the words begin with a tub, so that a lid may be lifted
// and a jug carried.
func ofTub(words []string) bool {
	for _, w := range words {
		if w == "tub" || w == "tubs" {
			return true
		}
		if w != "the" && w != "a" && w != "our" && w != "full" {
			return false
		}
	}
	return false
}
