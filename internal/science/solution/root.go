package solution

import "math"

// root finds where f crosses zero between lo and hi by Brent's method
// (Algorithms for Minimization without Derivatives, 1973, chapter 4). Where the
// ends have the same sign it is the end nearer to zero. The tolerance is in x.
func root(f func(float64) float64, lo, hi, tolerance float64) float64 {
	a, b := lo, hi
	fa, fb := f(a), f(b)
	if fa == 0 || (fa > 0) == (fb > 0) && math.Abs(fa) < math.Abs(fb) {
		return a
	}
	if fb == 0 || (fa > 0) == (fb > 0) {
		return b
	}
	c, fc := a, fa
	d := b - a
	e := d
	for range 200 {
		if (fb > 0) == (fc > 0) {
			c, fc = a, fa
			d = b - a
			e = d
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		tol := 2*0x1p-52*math.Abs(b) + tolerance/2
		half := (c - b) / 2
		if math.Abs(half) <= tol || fb == 0 {
			return b
		}
		d, e = step(a, b, c, fa, fb, fc, d, e, half, tol)
		a, fa = b, fb
		switch {
		case math.Abs(d) > tol:
			b += d
		case half > 0:
			b += tol
		default:
			b -= tol
		}
		fb = f(b)
	}
	return b
}

// step is by interpolation where that is safe, else half of the interval.
func step(a, b, c, fa, fb, fc, d, e, half, tol float64) (now, before float64) {
	if math.Abs(e) < tol || math.Abs(fa) <= math.Abs(fb) {
		return half, half
	}
	var p, q float64
	s := fb / fa
	if a == c {
		p, q = 2*half*s, 1-s
	} else {
		u, v := fa/fc, fb/fc
		p = s * (2*half*u*(u-v) - (b-a)*(v-1))
		q = (u - 1) * (v - 1) * (s - 1)
	}
	if p > 0 {
		q = -q
	}
	p = math.Abs(p)
	if 2*p < min(3*half*q-math.Abs(tol*q), math.Abs(e*q)) {
		return p / q, d
	}
	return half, half
}
