package lamp

import "math"

// Lamp is a flat diffuse (Lambertian) lamp that hangs level and shines down.
// Places are in millimetres on the lid: x to the right, y up. A side of nought
// makes it a thin strip, two make it a small lamp. Light that walls throw back
// is not counted: a lux meter sees it.
type Lamp struct {
	Name       string
	XMM, YMM   float64 // the middle
	AlongXMM   float64 // size of the glowing face
	AlongYMM   float64
	AboveMM    float64 // from the level asked about up to the lamp, more than 0
	FluxUmolS  float64 // photons sent down, µmol/s
	HoursADay  float64 // lit, 0 to 24
	PowerWatts float64 // from the socket
}

// thin is the share of the height under which a side counts as nought: there
// the two formulas differ by less than their rounding.
const thin = 1e-5

// PPFD is the light on a level leaf at a place under the lamp or beside it, in
// µmol/m²/s. It is 0 at or above the lamp.
//
// Source: configuration factors of a small patch to a parallel rectangle, to a
// strip and to a small source, as in textbooks of radiant heat.
func (l Lamp) PPFD(xMM, yMM float64) float64 {
	if !(l.AboveMM > 0) {
		return 0
	}
	const metre = 1000
	x, y, h := (xMM-l.XMM)/metre, (yMM-l.YMM)/metre, l.AboveMM/metre
	w, d := l.AlongXMM/metre, l.AlongYMM/metre
	switch {
	case w < thin*h && d < thin*h:
		return small(l.FluxUmolS, h, x, y)
	case w < thin*h:
		return strip(l.FluxUmolS, d, h, x, y)
	case d < thin*h:
		return strip(l.FluxUmolS, w, h, y, x)
	}
	return l.FluxUmolS / (w * d) * viewed(x-w/2, x+w/2, y-d/2, y+d/2, h)
}

// small is φ cos⁴ a / (π h²), a the angle from straight down.
func small(flux, h, x, y float64) float64 {
	r2 := h*h + x*x + y*y
	return flux * h * h / (math.Pi * r2 * r2)
}

// strip is a line of light of a length along y, seen from x aside of it.
func strip(flux, length, h, x, y float64) float64 {
	d2 := h*h + x*x
	d := math.Sqrt(d2)
	part := func(v float64) float64 { return v/(2*d2*(d2+v*v)) + math.Atan(v/d)/(2*d2*d) }
	return flux / (math.Pi * length) * h * h * (part(length/2-y) + part(length/2+y))
}

// viewed is the configuration factor of the rectangle from x1, y1 to x2, y2 as
// seen from the origin, h below it: four corner factors with their signs.
func viewed(x1, x2, y1, y2, h float64) float64 {
	x1, x2, y1, y2 = x1/h, x2/h, y1/h, y2/h
	return corner(x2, y2) - corner(x1, y2) - corner(x2, y1) + corner(x1, y1)
}

// corner is the factor of a rectangle a by b, in heights, over whose corner the
// patch lies. It changes its sign with a and with b.
func corner(a, b float64) float64 {
	p, q := math.Sqrt(1+a*a), math.Sqrt(1+b*b)
	return (a/p*math.Atan(b/p) + b/q*math.Atan(a/q)) / (2 * math.Pi)
}
