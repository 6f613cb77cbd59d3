package crop

import "math"

// AtLeast is the chance of k or more out of n that each come with chance p: the
// upper tail of the binomial, to about twelve digits.
func AtLeast(k, n int, p float64) float64 {
	switch {
	case k <= 0:
		return 1
	case k > n || !(p > 0):
		return 0
	case p >= 1:
		return 1
	}
	// Whichever tail is lighter is summed, from its heaviest term on.
	if float64(k) > float64(n)*p {
		return tail(k, n, p)
	}
	return 1 - tail(n-k+1, n, 1-p)
}

// tail is the sum of the chances of k, k+1 … n, of which k is the greatest.
func tail(k, n int, p float64) float64 {
	lgamma := func(x int) float64 { v, _ := math.Lgamma(float64(x)); return v }
	term := math.Exp(lgamma(n+1) - lgamma(k+1) - lgamma(n-k+1) + float64(k)*math.Log(p) + float64(n-k)*math.Log1p(-p))
	sum := 0.0
	for i := k; i <= n && term > sum*1e-18; i++ {
		sum += term
		term *= float64(n-i) / float64(i+1) * p / (1 - p)
	}
	return min(1, sum)
}

// mostSeeds ends the search where a chance is so small that no school would sow.
const mostSeeds = 100_000

// SeedsFor is the least number of seeds, each of which makes a plant with chance
// p, that gives at least so many plants with the chance wanted. ok is false
// where more than a hundred thousand would be needed.
func SeedsFor(plants int, p, chance float64) (n int, ok bool) {
	if plants <= 0 {
		return 0, true
	}
	if !(p > 0) || !(chance < 1) && p < 1 {
		return 0, false
	}
	low, high := plants-1, plants
	for AtLeast(plants, high, p) < chance {
		if low, high = high, 2*high; high > 2*mostSeeds {
			return 0, false
		}
	}
	for high-low > 1 {
		if mid := (low + high) / 2; AtLeast(plants, mid, p) < chance {
			low = mid
		} else {
			high = mid
		}
	}
	return high, high <= mostSeeds
}

// Sowing is what is sown for some plants.
type Sowing struct {
	SeedChance, CellChance float64
	Cells, Seeds           int
	Enough                 float64 // chance of enough plants
}

// CellChance is that a cell with some seeds fills, 1-(1-p)^k.
func CellChance(p float64, seeds int) float64 { return -math.Expm1(float64(seeds) * math.Log1p(-p)) }

// Sow is the least number of cells with some seeds each that gives at least so
// many plants with the chance wanted, one being kept of each cell; ok is false
// where no number does.
func Sow(plants int, p float64, seedsInACell int, chance float64) (s Sowing, ok bool) {
	s.SeedChance, s.CellChance = p, CellChance(min(p, 1), max(1, seedsInACell))
	s.Cells, ok = SeedsFor(plants, s.CellChance, chance)
	s.Seeds = s.Cells * max(1, seedsInACell)
	s.Enough = AtLeast(plants, s.Cells, s.CellChance)
	return s, ok
}

// UsualChance is the chance of enough seedlings that is aimed at.
func UsualChance() float64 { return grown(factNurseryChance) / 100 }
