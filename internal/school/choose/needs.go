package choose

import (
	"slices"
	"strings"
	"unicode"

	"rootbell/internal/school/shopping"
)

// need is one thing that a garden does not run without.
type need struct {
	key   string // as in the teacher's prices
	what  string
	words [][]string // of an entry under 'includes', any of these word groups
	each  bool       // bought again for each crop
	count int
	unit  string // what is counted: pieces where empty
}

// kitNeeds are what a kit has to bring for so many plants and empty holes, or the
// school has to buy.
func (q *Question) kitNeeds(plants, caps int) []need {
	out := []need{}
	if q.Plant.Aerated {
		out = append(out,
			need{key: "pump", what: "air pump", words: [][]string{{"pump"}}},
			need{key: "tube", what: "air tube", words: [][]string{{"tube"}, {"tubing"}, {"hose"}, {"airline"}, {"line"}}, count: q.Tube, unit: q.TubeUnit},
			need{key: "stone", what: "air stone", words: [][]string{{"stone"}}},
			need{key: "check_valve", what: "check valve", words: [][]string{{"valve"}}},
			need{key: "spare_stone", what: "spare air stone", words: [][]string{{"spare", "stone"}, {"stones"}}},
		)
	}
	out = append(out, need{key: "cup", what: "net cups", words: [][]string{{"cup"}, {"pot"}, {"basket"}}, count: plants})
	if caps > 0 {
		out = append(out, need{key: "cap", what: "caps for the empty holes", words: [][]string{{"cap"}, {"blank"}}, count: caps})
	}
	return append(out,
		need{key: "tray", what: "tray for drips", words: [][]string{{"tray"}, {"mat"}}},
		need{key: "towel", what: "towels for spills", words: [][]string{{"towel"}}, count: int(Facts.Get(factSpillTowels).Value)},
		need{key: "eye_protection", what: "goggles for the adult who mixes", words: [][]string{{"goggle"}, {"eye"}}},
	)
}

// cropNeeds are what each crop of so many plants uses up.
func (q *Question) cropNeeds(plants int) []need {
	cells, seeds := shopping.Sown(q.Plant.Crop, plants)
	return []need{
		{key: "seed", what: "seed", words: [][]string{{"seed"}}, each: true, count: seeds},
		{key: "seed_plug", what: "plugs to sow in", words: [][]string{{"plug"}, {"sponge"}, {"cube"}, {"wool"}}, each: true, count: cells},
		{key: "nutrient", what: "feed for a crop", words: [][]string{{"nutrient"}, {"feed"}, {"fertiliser"}, {"fertilizer"}, {"food"}}, each: true},
	}
}

// schoolNeeds are what one set of serves, whatever is chosen; the school may
// have them.
func schoolNeeds(h Have) []need {
	var out []need
	if !h.PH {
		out = append(out, need{key: "ph_test", what: "pH strips or meter", words: [][]string{{"ph"}}})
	}
	if !h.EC {
		out = append(out, need{key: "ec_meter", what: "EC meter", words: [][]string{{"ec"}}})
	}
	if !h.Lamp {
		out = append(out,
			need{key: "lamp", what: "lamp", words: [][]string{{"lamp"}, {"light"}}},
			need{key: "timer", what: "timer for the lamp", words: [][]string{{"timer"}}},
		)
	}
	return out
}

// brings tells whether something on a list of what comes with an offer is the
// thing needed.
func (n need) brings(includes []string) bool {
	return slices.ContainsFunc(includes, func(entry string) bool {
		words := wordsOf(entry)
		if n.key == "seed" && (slices.Contains(words, "plug") || slices.Contains(words, "plugs")) {
			return false
		}
		return slices.ContainsFunc(n.words, func(group []string) bool {
			for _, w := range group {
				if !slices.ContainsFunc(words, func(have string) bool { return have == w || have == w+"s" }) {
					return false
				}
			}
			return true
		})
	})
}

func wordsOf(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
}

// itemOf is the key that something named in words has among the prices.
func itemOf(what string) string { return strings.Join(wordsOf(what), "_") }

// secondHand tells whether an offer's own words say that it was used before.
func secondHand(o Offer) bool {
	words := " " + strings.Join(wordsOf(o.Name+" . "+strings.Join(o.Includes, " . ")), " ") + " "
	for _, said := range []string{" second hand ", " secondhand ", " used ", " preowned "} {
		if strings.Contains(words, said) {
			return true
		}
	}
	return false
}
