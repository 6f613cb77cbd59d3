package solution

import (
	"strconv"
	"strings"

	"rootbell/internal/base/facts"
)

// solubility is what 100 g of water take up, in g of the salt without its
// crystal water, at rising temperatures; anhydrous is the share of that in the
// salt as sold. The zero value is a salt of unknown solubility.
type solubility struct {
	tempC, grams []float64
	anhydrous    float64
	source       string
}

// solubilityOf reads a row such as "10:21 20:31.6".
func solubilityOf(f facts.Fact, anhydrous float64) solubility {
	s := solubility{anhydrous: anhydrous, source: f.Says()}
	for _, word := range strings.Fields(f.Word) {
		at, grams, _ := strings.Cut(word, ":")
		t, err1 := strconv.ParseFloat(at, 64)
		g, err2 := strconv.ParseFloat(grams, 64)
		if err1 != nil || err2 != nil {
			panic("solution: " + string(f.ID) + " does not read as C:g")
		}
		s.tempC, s.grams = append(s.tempC, t), append(s.grams, g)
	}
	return s
}

func (s solubility) known() bool { return len(s.grams) > 0 }

// at is the solubility at a temperature in °C, on the cautious side: straight
// between two figures, falling by a few percent per kelvin below the coldest,
// and never above the warmest.
func (s solubility) at(tempC float64) float64 {
	last := len(s.tempC) - 1
	switch {
	case tempC >= s.tempC[last]:
		return s.grams[last]
	case tempC < s.tempC[0]:
		return s.grams[0] * max(0, 1-percent(factSolubilityPerDegree)*(s.tempC[0]-tempC))
	}
	for i := range last {
		if tempC < s.tempC[i+1] {
			part := (tempC - s.tempC[i]) / (s.tempC[i+1] - s.tempC[i])
			return s.grams[i] + part*(s.grams[i+1]-s.grams[i])
		}
	}
	return s.grams[last]
}

// mostPerLitre is how much of the salt as sold one litre of stock takes, in g.
// A litre of stock weighs a kilogram at the very least, which is the cautious
// side.
func (s solubility) mostPerLitre(tempC float64) float64 {
	return saturatedGL(s.at(tempC)) / s.anhydrous
}

// saturatedGL is saturatedLaw: g of salt in a litre of saturated stock, from g
// in 100 g of water.
func saturatedGL(per100 float64) float64 { return 1000 * per100 / (100 + per100) }

// hydrateWater lists the water molecules that a formula writes apart.
func hydrateWater(text string) []float64 {
	var out []float64
	parts := strings.Split(text, ".")
	for _, p := range parts[1:] {
		if before, ok := strings.CutSuffix(p, "H2O"); ok {
			n, err := strconv.ParseFloat(before, 64)
			if err != nil {
				n = 1
			}
			out = append(out, n)
		}
	}
	return out
}
