package garden

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/school/shopping"
	"rootbell/internal/science/solution"
)

// mostSalts is how many salts are put on the list for one feed: with more of
// them another label mix is the better buy.
const mostSalts = 4

// remedy is what would bring a feed to its recipe, by the salt, in g/L.
type remedy struct {
	salts []solution.Fertiliser
	grams []float64
}

// remedies looks for the salts that mend what the shelf misses, one after the
// other, the one that the worst miss asks for first. Tubs with one feed share
// the answer.
func (k *tubMix) remedies(shelf []solution.Fertiliser, b solution.Batch, base solution.Content) {
	if k.cures == nil {
		k.cures = map[string]remedy{}
	}
	r, known := k.cures[k.field]
	if !known {
		r = cure(shelf, b, base)
		k.cures[k.field] = r
	}
	litres := quantity.Litre.From(k.litres.Base)
	for i, s := range r.salts {
		k.buySalt(s, r.grams[i]*litres)
	}
}

func cure(shelf []solution.Fertiliser, b solution.Batch, base solution.Content) remedy {
	var r remedy
	all := append([]solution.Fertiliser(nil), shelf...)
	misses := b.Misses
	for len(r.salts) < mostSalts {
		salt, ok := wantedSalt(misses)
		if !ok {
			break
		}
		all, r.salts = append(all, salt), append(r.salts, salt)
		fit, err := b.Aim.FitTo(all, base)
		if err != nil {
			return remedy{}
		}
		r.grams = fit.GramsPerLitre[len(shelf):]
		misses = b.Aim.Misses(all, base, fit)
	}
	return r
}

// wantedSalt is the salt that the first nutrient that falls short asks for.
func wantedSalt(misses []solution.Miss) (solution.Fertiliser, bool) {
	for _, level := range []finding.Level{finding.Stop, finding.Warn} {
		for _, m := range misses {
			if m.Level != level || m.Have >= m.Want || len(m.Buy) == 0 {
				continue
			}
			for _, id := range solution.SaltNames() {
				if f, ok := solution.SaltNamed(id); ok && f.Name == m.Buy[0] {
					return f, true
				}
			}
		}
	}
	return solution.Fertiliser{}, false
}

func (m *mixer) buySalt(s solution.Fertiliser, grams float64) {
	for i := range m.salts {
		if m.salts[i].Salt == s.Salt {
			m.saltGrams[i] += grams
			return
		}
	}
	m.salts, m.saltGrams = append(m.salts, s), append(m.saltGrams, grams)
}

// buys are the lines that mixing adds to the shopping list: only what is surely
// missing, with the amount that one filling of all tubs takes.
func (m *mixer) buys(tubs []Tub) []shopping.Item {
	var out []shopping.Item
	add := func(key, what, size, measure string) {
		i := shopping.Item{Key: key, What: what, Count: 1, Size: size, Measure: measure}
		if p, ok := m.plan.Prices[key]; ok {
			price := float64(p.Value)
			i.Price = &price
		}
		out = append(out, i)
	}
	for i, s := range m.salts {
		grams := math.Ceil(m.saltGrams[i]*10) / 10
		add(strings.ReplaceAll(s.Salt, "-", "_"), s.Name+", to bring the feed to its recipe", fmt.Sprintf("%s for one filling of all tubs", m.gramWords(grams, 0.1)), "the label: its hazards, and whether the school may hold it")
	}
	if !m.water.Known {
		add("alkalinity_test", "drop test for carbonate hardness, or strips for alkalinity", "", "the tap on the day: no acid is dosed before")
	}
	var acid, chlorine, pours, small bool
	for _, t := range tubs {
		if t.Mix == nil {
			continue
		}
		acid = acid || t.Mix.Acid != nil && t.Mix.Acid.Missing != ""
		chlorine = chlorine || t.Mix.Chlorine != nil
		for _, w := range t.Mix.Weigh {
			pours, small = pours || w.Millilitres != nil, small || w.Stock != nil
		}
	}
	if acid {
		add("acid", "acid that lowers the pH, ready thinned for gardens, with its strength and density on the label; an adult's", "", "")
	}
	if chlorine {
		add("chlorine_strip", "strips for chlorine", "", "")
	}
	if pours {
		add("syringe", "syringe or small cylinder without a needle, in half millilitres", "", "")
	}
	if small {
		add("pocket_scale", "pocket scale, in place of small stocks", m.gramWords(0.1, 0.1)+" steps", "")
	}
	return out
}
