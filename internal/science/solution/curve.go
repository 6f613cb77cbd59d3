package solution

import "math"

// Curve is EC against strength: the EC of tap water with so many parts of a
// feed in it. A straight line would be wrong by some percent at half strength.
type Curve struct {
	chemistry   *Chemistry
	water       Ions
	feed        Ions
	air         Air
	strongest   float64
	atNought    float64
	atStrongest float64
}

// strongestFeed bounds a curve: four times a full recipe is no feed any more.
const strongestFeed = 4

// NewCurve is the curve of a feed at full strength in a water, both in mol/L.
func NewCurve(water, fullFeed Ions, air Air) Curve {
	k := Curve{chemistry: at25, water: water, feed: fullFeed, air: air, strongest: strongestFeed}
	k.atNought, k.atStrongest = k.EC(0), k.EC(k.strongest)
	return k
}

// EC is the EC in mS/cm at 25 °C with so much of the feed; 1 is full strength.
func (k Curve) EC(strength float64) float64 {
	return k.chemistry.Equilibrium(k.water.Plus(k.feed.Times(max(strength, 0))), k.air).Conductivity()
}

// Strength is how much of the feed gives an EC. ok is false below the water's
// own EC and above four times the feed.
func (k Curve) Strength(ec float64) (strength float64, ok bool) {
	if !(ec >= k.atNought && ec <= k.atStrongest) {
		return 0, false
	}
	return root(func(s float64) float64 { return k.EC(s) - ec }, 0, k.strongest, 1e-9), true
}

// Points are so many points from nothing to a strength, to draw and to read by
// hand.
func (k Curve) Points(to float64, count int) []Point {
	count = min(max(count, 2), 500)
	out := make([]Point, count)
	for i := range out {
		s := to * float64(i) / float64(count-1)
		out[i] = Point{s, k.EC(s)}
	}
	return out
}

// Band is an EC with the range in which a meter may fairly show it.
type Band struct{ Low, EC, High float64 }

// ECBand is the band of a predicted EC: published ion models agree no better.
func ECBand(ec float64) Band {
	b := percent(factEcBand)
	return Band{ec * (1 - b), ec, ec * (1 + b)}
}

// Holds tells whether a reading lies in the band.
func (x Band) Holds(ec float64) bool { return ec >= x.Low && ec <= x.High }

// Over is the band that holds both.
func (x Band) Over(y Band) Band {
	return Band{math.Min(x.Low, y.Low), x.EC, math.Max(x.High, y.High)}
}
