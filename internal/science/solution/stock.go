package solution

import (
	"fmt"
	"math"

	"rootbell/internal/base/finding"
)

// Tank is one stock solution: its letter, what goes in, how full of salt it is
// at the coldest (1 is the limit), and the saturation of what could fall out.
type Tank struct {
	Letter           string
	Portions         []TankPortion
	Load             float64
	Gypsum, Brushite float64
	ions             Ions
}

// TankPortion is so much of a fertiliser for the whole tank.
type TankPortion struct {
	Name      string
	Grams     float64
	UnknownAt bool // its solubility is not known
}

// Stocks are the two tanks. DoseMLPerL is what of each goes into a litre of
// tub; Fills is how often that fills the tub.
type Stocks struct {
	A, B       Tank
	Strength   float64
	LitresEach float64
	DoseMLPerL float64
	Fills      float64
	LifeDays   float64
	Apart      []string // what can go into no tank
	Findings   []finding.Finding
}

// Strengths and volumes that a stock can have.
const (
	weakestStock, strongestStock = 2, 500
	mostStockLitres              = 200
)

// ColdestStore is the temperature in °C of a store room that nobody measured.
func ColdestStore() float64 { return value(factStockColdest) }

// MakeStocks divides a recipe in g/L of tub into two tanks of so many litres
// and times the strength: calcium in A, sulfate and phosphate in B, the rest in
// A as far as it dissolves at the coldest of the store room, else in B. A tub
// of so many litres is filled. What cannot be is a *Fault; what would fall out
// is a finding below the field.
func MakeStocks(shelf []Fertiliser, gramsPerLitre []float64, strength, litresEach, coldestC, tubLitres float64, field string) (Stocks, error) {
	if !(strength >= weakestStock && strength <= strongestStock) {
		return Stocks{}, &Fault{"stock-strength", "strength", fmt.Sprintf("a stock of %g times the feed cannot be", strength), fmt.Sprintf("it lies between %d and %d times; 100 times is usual", weakestStock, strongestStock)}
	}
	if !(litresEach > 0 && litresEach <= mostStockLitres) {
		return Stocks{}, &Fault{"stock-volume", "volume", fmt.Sprintf("a stock of %g L cannot be", litresEach), fmt.Sprintf("it lies between 0 and %d L; 1 L is usual", mostStockLitres)}
	}
	s := Stocks{Strength: strength, LitresEach: litresEach, DoseMLPerL: 1000 / strength, LifeDays: value(factStockLife)}
	if tubLitres > 0 {
		s.Fills = strength * litresEach / tubLitres
	}
	s.A.Letter, s.B.Letter = "A", "B"
	var neutral []int
	for j, f := range shelf {
		if gramsPerLitre[j] <= 0 {
			continue
		}
		calcium, other := f.Ions[Ca] > 0, f.Ions[SO4] > 0 || f.Ions[PO4] > 0
		switch {
		case calcium && other:
			s.Apart = append(s.Apart, f.Name)
			s.say(finding.Warn, "stock-one-bag", field, fmt.Sprintf("%s holds calcium beside sulfate or phosphate, and turns to sludge in a stock.", f.Name), "Dissolve it in the tub's own water, or keep to the maker's dose.")
		case calcium:
			s.A.put(f, gramsPerLitre[j], s, coldestC)
		case other:
			s.B.put(f, gramsPerLitre[j], s, coldestC)
		default:
			neutral = append(neutral, j)
		}
	}
	for _, j := range neutral {
		tank := &s.A
		if load := shelf[j].load(gramsPerLitre[j]*strength, coldestC); s.A.Load+load > 1 && s.B.Load+load < s.A.Load+load {
			tank = &s.B
		}
		tank.put(shelf[j], gramsPerLitre[j], s, coldestC)
	}
	s.judge(&s.A, field, coldestC)
	s.judge(&s.B, field, coldestC)
	return s, nil
}

func (s *Stocks) say(level finding.Level, code, field, text, hint string) {
	s.Findings = append(s.Findings, finding.Finding{Level: level, Code: code, Field: field, Text: text, Hint: hint})
}

// load is the share of a litre's room that so many grams take up.
func (f Fertiliser) load(gramsPerLitre, coldestC float64) float64 {
	if !f.dissolves.known() {
		return 0
	}
	most := f.dissolves.mostPerLitre(coldestC)
	if most <= 0 {
		return math.Inf(1)
	}
	return gramsPerLitre / most
}

func (t *Tank) put(f Fertiliser, gramsPerLitre float64, s Stocks, coldestC float64) {
	t.Portions = append(t.Portions, TankPortion{f.Name, gramsPerLitre * s.Strength * s.LitresEach, !f.dissolves.known()})
	// Salts crowd each other out: a sum of the shares is the cautious side.
	t.Load += f.load(gramsPerLitre*s.Strength, coldestC)
	t.ions = t.ions.Plus(f.Ions.Times(gramsPerLitre * s.Strength))
}

func (s *Stocks) judge(t *Tank, field string, coldestC float64) {
	if len(t.Portions) == 0 {
		return
	}
	state := at25.Equilibrium(t.ions, Closed)
	t.Gypsum, t.Brushite = state.Gypsum(), state.Brushite()
	if t.Load > 1 {
		s.say(finding.Warn, "stock-cold", field,
			fmt.Sprintf("At %g °C stock %s cannot hold all its salt at %g times: crystals fall out in the cold.", coldestC, t.Letter, s.Strength),
			fmt.Sprintf("Make it %.0f times at most, or keep it warmer.", math.Floor(s.Strength/t.Load)))
	}
	if t.Gypsum > 0 || t.Brushite > 0 {
		s.say(finding.Stop, "stock-sludge", field,
			fmt.Sprintf("In stock %s calcium meets sulfate or phosphate, and white sludge forms.", t.Letter), "Keep calcium in A, sulfate and phosphate in B.")
	}
}

// Together is what would happen if both tanks were one: the saturation of
// gypsum and brushite. It is the reason why there are two.
func (s Stocks) Together() (gypsum, brushite float64) {
	state := at25.Equilibrium(s.A.ions.Plus(s.B.ions), Closed)
	return state.Gypsum(), state.Brushite()
}
