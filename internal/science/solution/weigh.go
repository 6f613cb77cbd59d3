package solution

import "math"

// Tools is what the class weighs and pours with: the step of the scale in g
// and of the syringe in mL. Zero takes the syringe's usual step.
type Tools struct {
	ScaleStepG    float64
	SyringeStepML float64
	Spoons        []Spoon
}

// Spoon is one level spoonful of one fertiliser, weighed by the class itself:
// grain and packing differ too much for a table.
type Spoon struct {
	Name, Of string // the spoon, and the fertiliser by its name
	Grams    float64
}

// spoon for a fertiliser; it is used only where there is no scale.
func (t Tools) spoon(f Fertiliser) (Spoon, bool) {
	for _, s := range t.Spoons {
		if s.Grams > 0 && (s.Of == f.Name || s.Of == f.Salt) {
			return s, true
		}
	}
	return Spoon{}, false
}

// SyringeStep is the step in mL of the syringe that a class has.
func SyringeStep() float64 { return value(factWeighSyringeStep) }

// LeastSteps is how many steps of a scale the smallest mass to weigh should be.
func LeastSteps() float64 { return value(factWeighLeastSteps) }

func (t Tools) syringe() float64 {
	if t.SyringeStepML > 0 {
		return t.SyringeStepML
	}
	return value(factWeighSyringeStep)
}

// least is the smallest mass to weigh: so many steps of the scale.
func (t Tools) least() float64 { return value(factWeighLeastSteps) * t.ScaleStepG }

// Portion is one fertiliser as the class measures it out. Exactly one way is
// used: RoundedGrams on the scale, Millilitres of a liquid, Stock, or Spoons.
type Portion struct {
	Name         string
	Grams        float64 // what the sum asks for
	RoundedGrams float64 // what the measuring gives, through a stock too
	Millilitres  float64 // of a liquid or of the stock
	Stock        *SmallStock
	Spoons       float64 // level spoons, where there is no scale
	spoon        Spoon
	step         float64 // grams for each step of the tool; 0 where nothing is rounded
}

// SmallStock is made when there is too little to weigh: so many grams in a
// litre; Thin is 10 when a tenth of that, made up to the litre again, is poured
// instead, else 1.
type SmallStock struct {
	Grams, Litres float64
	Thin          float64
	PourML        float64
}

// portion decides how an amount in g is measured.
func (t Tools) portion(f Fertiliser, grams float64) Portion {
	p := Portion{Name: f.Name, Grams: grams}
	switch {
	case grams <= 0:
	case f.Liquid():
		p.step = t.syringe() * f.DensityKgL
	case t.ScaleStepG <= 0:
		if spoon, ok := t.spoon(f); ok {
			p.spoon, p.step = spoon, spoon.Grams
		} else {
			p.RoundedGrams = grams
		}
	case grams >= t.least():
		p.step = t.ScaleStepG
	default:
		s := t.smallStock(grams)
		p.Stock = &s
		p.step = t.syringe() * s.Grams / s.Litres / s.Thin / 1000
	}
	return p
}

// smallStock is the weakest litre that the scale can make and of which no more
// is poured than a few fillings of the largest syringe, thinned ten times where
// less than a syringe can measure well would be poured.
func (t Tools) smallStock(grams float64) SmallStock {
	litres := value(factWeighStockLitres)
	// Rounding may add two steps of the syringe.
	least := grams * 1000 * litres / (value(factWeighSyringeFillings)*value(factWeighSyringeMost) - 2*t.syringe())
	s := SmallStock{Litres: litres, Thin: 1}
	s.Grams = math.Ceil(max(least, t.least())/t.ScaleStepG-1e-9) * t.ScaleStepG
	if pour := grams / s.Grams * 1000 * litres; pour < value(factWeighPourLeast) {
		s.Thin = 10
	}
	return s
}

// Weigh turns amounts in g/L into what the class can weigh and pour for a tub,
// and says what the tub then holds. Rounding each by itself would do; a search
// among the neighbouring steps makes the relative errors of the nutrients,
// squared and added, smaller still, and keeps the limits.
func (t Target) Weigh(tools Tools, shelf []Fertiliser, gramsPerLitre []float64, litres float64, base Content) ([]Portion, Content) {
	portions := make([]Portion, len(shelf))
	steps := make([]float64, len(shelf))
	for j, f := range shelf {
		portions[j] = tools.portion(f, gramsPerLitre[j]*litres)
		if p := portions[j]; p.step > 0 {
			steps[j] = math.Max(1, math.Round(p.Grams/p.step))
		}
	}
	s := rounding{target: t, base: base, shelf: shelf, portions: portions, steps: steps, litres: litres}
	s.mgL = base
	for j := range portions {
		grams := portions[j].RoundedGrams
		if portions[j].step > 0 {
			grams = steps[j] * portions[j].step
		}
		s.mgL = s.mgL.Plus(shelf[j].MgL(grams / litres))
	}
	s.search()
	for j := range portions {
		portions[j].measured(shelf[j], s.steps[j])
	}
	return portions, s.mgL
}

// measured fills in what so many steps are.
func (p *Portion) measured(f Fertiliser, steps float64) {
	if p.step == 0 {
		return
	}
	p.RoundedGrams = steps * p.step
	switch {
	case p.Stock != nil:
		p.Stock.PourML = p.RoundedGrams / p.Stock.Grams * p.Stock.Thin * p.Stock.Litres * 1000
		p.Millilitres = p.Stock.PourML
	case f.Liquid():
		p.Millilitres = f.Millilitres(p.RoundedGrams)
	case p.spoon.Grams > 0:
		p.Spoons = steps
	}
}

// rounding looks for whole steps.
type rounding struct {
	target   Target
	base     Content
	shelf    []Fertiliser
	portions []Portion
	steps    []float64
	litres   float64
	mgL      Content
}

// mostRoundings bounds the search; each round makes the error smaller, so it
// ends by itself long before.
const mostRoundings = 100

// search moves one amount by a step, or two at once, as long as that helps.
func (s *rounding) search() {
	moves := []float64{-1, 1}
	for range mostRoundings {
		best, bi, bj, di, dj := s.cost(), -1, -1, 0.0, 0.0
		for i := range s.portions {
			for _, a := range moves {
				if !s.may(i, a) {
					continue
				}
				s.shift(i, a)
				if c := s.cost(); c < best-1e-15 {
					best, bi, bj, di = c, i, -1, a
				}
				for j := i + 1; j < len(s.portions); j++ {
					for _, b := range moves {
						if !s.may(j, b) {
							continue
						}
						s.shift(j, b)
						if c := s.cost(); c < best-1e-15 {
							best, bi, bj, di, dj = c, i, j, a, b
						}
						s.shift(j, -b)
					}
				}
				s.shift(i, -a)
			}
		}
		if bi < 0 {
			return
		}
		s.shift(bi, di)
		if bj >= 0 {
			s.shift(bj, dj)
		}
	}
}

func (s *rounding) may(j int, by float64) bool {
	p := s.portions[j]
	return p.step > 0 && s.steps[j]+by >= 1 && math.Abs((s.steps[j]+by)*p.step-p.Grams) <= 2*p.step
}

func (s *rounding) shift(j int, by float64) {
	s.steps[j] += by
	s.mgL = s.mgL.Plus(s.shelf[j].MgL(by * s.portions[j].step / s.litres))
}

// cost is the sum of the squared relative misses, of what water and acid leave
// to the shelf; what is over a limit counts a thousand times.
func (s *rounding) cost() float64 {
	sum := 0.0
	for _, n := range aims {
		if want := s.target.MgL[n]; want > 0 {
			off := weightOf(n) * (s.mgL[n] - max(want, s.base[n])) / want
			sum += off * off
		}
	}
	for _, l := range s.target.Limits {
		if over := s.mgL[l.Of] - l.MostMgL; over > 0 && l.MostMgL > 0 {
			sum += 1000 * over / l.MostMgL
		}
	}
	return sum
}
