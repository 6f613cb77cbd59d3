package mixing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
)

// Pupils is what pupils may handle of the solution, and what not (common
// practice).
const Pupils = "Pupils handle no mineral acid and no alkali of any strength. Citric acid up to 5 %: from age 11, with goggles and an adult beside. The school's own rule goes before."

// gramStep is the step in which a mass is written where no scale is told of.
const gramStep = 0.1

// Amount is one fertiliser as it is measured out for the tub: '13 g of calcium
// nitrate'.
func Amount(w garden.Weigh, s quantity.System) string {
	switch {
	case w.Stock != nil:
		return garden.PourWords(w.Stock.PourML, s) + " of a small stock of " + w.Name
	case w.Spoons != nil && *w.Spoons == 1:
		return "1 level " + w.Spoon + " of " + w.Name
	case w.Spoons != nil:
		return quantity.FormatNumber(*w.Spoons, 0) + " level " + w.Spoon + "s of " + w.Name
	case w.Millilitres != nil:
		return garden.PourWords(*w.Millilitres, s) + " of " + w.Name
	}
	return Mass(w, s) + " of " + w.Name
}

// Mass is what the scale shows of a fertiliser.
func Mass(w garden.Weigh, s quantity.System) string {
	step := gramStep
	if w.ScaleStepG != nil {
		step = *w.ScaleStepG
	}
	return garden.MassWords(w.RoundedGrams, step, s)
}

// fields begin the places in the plan that a mix rests on.
var fields = []string{"fertilisers", "tap", "acids", "bases", "blend", "stocks", "spoons", "bleach", "feed", "tools.scale_step", "tools.ec", "tools.ph", "place.water_temperature", "place.coldest"}

// Concerns tells whether what is said of a place in the plan concerns the mix of
// a tub.
func Concerns(field string, tub int) bool {
	if own, mine := strings.CutPrefix(field, fmt.Sprintf("tubs[%d].", tub)); mine {
		field = own
	}
	return slices.ContainsFunc(fields, func(head string) bool { return strings.HasPrefix(field, head) })
}

// Stop is why nobody may mix for a tub, as it stands across its papers; empty
// when nothing stops it.
func Stop(a *garden.Assessment, tub int) string {
	for _, f := range a.Findings {
		if f.Level == finding.Stop && Concerns(f.Field, tub) {
			return "do not mix: " + f.Text
		}
	}
	return ""
}

// verb is how a fertiliser is measured out.
func verb(w garden.Weigh) string {
	switch {
	case w.Spoons != nil:
		return "take"
	case w.Millilitres != nil || w.Stock != nil:
		return "pour"
	}
	return "weigh"
}

// Answer is the mix of a tub in one sentence, what to weigh and pour first; bold
// is the part that stands out.
func Answer(a *garden.Assessment, tub int) (bold, rest string) {
	t := &a.Tubs[tub]
	m := t.Mix
	switch {
	case m.Stocks != nil:
		pour := garden.PourWords(m.Stocks.PourML, a.Plan.Units)
		bold = "Pour " + pour + " of stock A, then " + pour + " of stock B"
		for _, name := range m.Stocks.Apart {
			for _, w := range m.Weigh {
				if w.Name == name {
					bold += ", and " + verb(w) + " " + Amount(w, a.Plan.Units)
				}
			}
		}
	case len(m.Weigh) == 0:
		bold = "Nothing on the shelf is taken"
	default:
		bold = measured(m.Weigh, a.Plan.Units)
	}
	rest = "for the " + Litres(m.SolutionL, a.Plan.Units) + " of " + t.Name + "."
	if m.EC != nil && m.Band != nil {
		rest += " Expect EC " + m.ECWords(*m.EC) + ": anything from " + m.ECRange() + " is as it should be."
	} else {
		rest += " Its EC is not worked out."
	}
	return bold, rest
}

// measured puts amounts into one clause: 'Weigh 13 g of X and 2 g of Y, pour
// 20 mL of Z'.
func measured(all []garden.Weigh, s quantity.System) string {
	var clauses []string
	for _, how := range []string{"weigh", "take", "pour"} {
		var amounts []string
		for _, w := range all {
			if verb(w) == how {
				amounts = append(amounts, Amount(w, s))
			}
		}
		if len(amounts) > 0 {
			clauses = append(clauses, how+" "+List(amounts))
		}
	}
	text := strings.Join(clauses, "; ")
	return strings.ToUpper(text[:1]) + text[1:]
}

// Sentence begins with a capital letter and ends with a stop.
func Sentence(text string) string {
	if text == "" {
		return ""
	}
	text = strings.ToUpper(text[:1]) + text[1:]
	if !strings.ContainsRune(".?", rune(text[len(text)-1])) {
		text += "."
	}
	return text
}

// List joins words: 'a, b and c'.
func List(all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}

// Litres is a volume in the plan's units.
func Litres(l float64, s quantity.System) string {
	return quantity.Format(quantity.Volume, quantity.Litre.Base(l), s)
}

// AcidDose tells whether a mix has a dose of acid that an adult gives today.
func AcidDose(m *garden.Mix) bool {
	return m.Acid != nil && (m.Acid.DoseTodayML != nil && *m.Acid.DoseTodayML > 0 || m.Acid.DoseTodayG != nil && *m.Acid.DoseTodayG > 0)
}

// Dose writes millilitres of a liquid or grams of a solid; empty for neither.
func Dose(ml, g *float64, s quantity.System) string {
	switch {
	case ml != nil:
		return garden.PourWords(*ml, s)
	case g != nil:
		return garden.MassWords(*g, gramStep, s)
	}
	return ""
}

// AcidToday is the dose of acid of the day before, never more than worked out:
// to the half millilitre, or the tenth of a gram.
func AcidToday(m *garden.Mix, s quantity.System) string {
	switch a := m.Acid; {
	case a.DoseTodayML != nil:
		return garden.PourWords(math.Floor(2**a.DoseTodayML)/2, s)
	case a.DoseTodayG != nil:
		return garden.MassWords(math.Floor(*a.DoseTodayG*10)/10, gramStep, s)
	}
	return ""
}

// Acid says of a mix's acid what is given and why, or why nothing is.
func Acid(m *garden.Mix, s quantity.System) []string {
	a := m.Acid
	switch {
	case a == nil:
		return nil
	case a.Why != "":
		return []string{"No acid is given. " + Sentence(a.Why)}
	case a.Missing != "":
		return []string{fmt.Sprintf("No acid is given: the plan does not name %s. In this water it takes %.2f mmol/L to last.", a.Missing, *a.MmolLOpen)}
	case !AcidDose(m):
		return []string{"No acid is needed."}
	}
	out := []string{fmt.Sprintf("%s of %s, by an adult, into unplanted water with the air on, the day before. The pH reads about %.1f at once and comes to %.1f when the air has taken the carbon dioxide out.",
		AcidToday(m, s), a.Name, *a.PHAtOnce, *a.PHAfterAir)}
	if less := Dose(a.MLClosed, a.GClosed, s); less != "" && a.PHRebound != nil {
		out = append(out, fmt.Sprintf("%s would read the same at once and not last: the air would bring the pH back to %.1f.", less, *a.PHRebound))
	}
	if most := Dose(a.PlantedML, a.PlantedG, s); most != "" && a.PlantedPH != nil {
		out = append(out, fmt.Sprintf("With plants in the tub never more than %s at a time, so that the pH at once stays at %.1f or over, and nothing more for %.0f hours.", most, *a.PlantedPH, *a.PlantedWait))
	}
	return out
}

// Hazards are what the labels of fertilisers warn of; ok is false where nothing
// is known of any. The label in hand goes before.
func Hazards(all []garden.Weigh) (t content.Table, ok bool) {
	t = content.Table{Caption: "What the bags warn of; the label in hand goes before", Wordy: true, Columns: []content.Column{{Head: "fertiliser"}, {Head: "warns"}}}
	for _, w := range all {
		var says []string
		for _, h := range w.Hazards {
			says = append(says, h.Says+" ("+h.Code+")")
		}
		if len(says) > 0 {
			t.Rows = append(t.Rows, []string{w.Name, Sentence(strings.Join(says, "; "))})
		}
	}
	return t, len(t.Rows) > 0
}

// Steps are the steps of a mix as lines, with the day where it changes.
func Steps(m *garden.Mix) []string {
	var out []string
	when := ""
	for _, s := range m.Steps {
		text := s.Do
		if s.When != when {
			text = Sentence(s.When) + " " + text
			when = s.When
		}
		out = append(out, text)
	}
	return out
}
