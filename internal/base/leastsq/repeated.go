package leastsq

import (
	"fmt"
	"math"
	"math/bits"
)

// Repeated minimises the length of w·(A·x − b), row by row, over x ≥ 0, for one
// matrix and many right sides and weights, as when one shelf of fertilisers has
// to serve many targets. What is the same each time is worked out once. It is
// not for use by several goroutines at once: each makes its own.
type Repeated struct {
	a       Matrix
	squares []square
	parts   []part
	from    []int  // the parts of column j stand from from[j] to from[j+1]
	guess   Matrix // of the columns that will be in use, from each right side

	weight2, pull, gram  []float64
	triangle, over, half []float64 // L, 1/D and what is half solved
	left                 []float64 // of the right side
	in                   []int     // the columns in use
	used                 uint64    // the same as bits
}

// most is how many columns the bits hold.
const most = 64

// square is one product of two values in a row: a part of AᵀA, whose lower
// triangle stands row by row.
type square struct {
	at, row int
	value   float64
}

// part is one value of the matrix that is not nought.
type part struct {
	column, row int
	value       float64
}

// NewRepeated prepares a matrix.
func NewRepeated(a Matrix) (*Repeated, error) {
	if err := check(a, make([]float64, max(a.Rows, 0))); err != nil {
		return nil, err
	}
	m, n := a.Rows, a.Columns
	r := &Repeated{a: a}
	for j := range n {
		r.from = append(r.from, len(r.parts))
		for i := range m {
			v := a.At(i, j)
			if v == 0 {
				continue
			}
			r.parts = append(r.parts, part{j, i, v})
			for k := range j + 1 {
				if u := a.At(i, k); u != 0 {
					r.squares = append(r.squares, square{j*n + k, i, u * v})
				}
			}
		}
	}
	r.from = append(r.from, len(r.parts))
	r.weight2, r.pull, r.gram = make([]float64, m), make([]float64, n), make([]float64, n*n)
	r.triangle, r.over, r.half = make([]float64, n*n), make([]float64, n), make([]float64, n)
	r.in, r.left = make([]int, 0, n), make([]float64, m)
	r.guess = r.firstGuess()
	return r, nil
}

// firstGuess solves for each right side with a single one in it, all rows alike
// and no column held at nought: the mixture of these tells which columns are
// likely to be in use. A wrong guess costs a step and changes no answer.
func (r *Repeated) firstGuess() Matrix {
	n := r.a.Columns
	guess := NewMatrix(n, r.a.Rows)
	even := make([]float64, r.a.Rows)
	for i := range even {
		even[i] = 1
	}
	for j := range min(n, most) {
		r.in = append(r.in, j)
	}
	for i := range r.a.Rows {
		b := make([]float64, r.a.Rows)
		b[i] = 1
		r.normal(b, even)
		if n > most || !r.factor() {
			return guess
		}
		r.solve(guess.column(i))
	}
	return guess
}

// dependent is the share of a column's own length, squared, below which what is
// left of it beside the others counts as a mixture of them: the normal equations
// then lose six of sixteen digits at most.
const dependent = 1e-6

// rounding is what may be left of a right side that is reached, as a share of it.
const rounding = 1e-13

// smallest keeps squares and their inverses far from where floats end.
const smallest = 1e-100

// atRest is the pull, as a share of what pulls, that counts as none.
const atRest = 1e-13

// What is left of the right side shows whether the normal equations, which lose
// half of the digits, missed anything: as a share of the right side it counts as
// nothing, or is more than a little, and then no other column may tilt its way by
// more than this.
const (
	nothing = 1e-10
	little  = 1e-4
	tilt    = 1e-12
)

// Fit writes the best x. It exchanges columns in blocks (Portugal, Júdice &
// Vicente 1994, Mathematics of Computation 63:625, from memory); where columns
// are too much alike for the normal equations, or the exchanges do not come to
// rest at the best, Lawson & Hanson's method does it. Two columns that all but
// cancel out can need millions of each for a little that is missing: then x may
// leave that little.
func (r *Repeated) Fit(x, b, w []float64) error {
	if len(x) != r.a.Columns || len(b) != r.a.Rows || len(w) != r.a.Rows {
		return fmt.Errorf("%w: %d × %d, x %d, right side %d, weights %d", ErrShape, r.a.Rows, r.a.Columns, len(x), len(b), len(w))
	}
	for i, v := range b {
		if !(math.Abs(v) <= largest && math.Abs(w[i]) <= largest) {
			return ErrNotFinite
		}
	}
	if len(x) <= most {
		if r.begin(x, b) {
			return nil
		}
		r.normal(b, w)
		if r.exchange(x) && r.settled(x, b) {
			return nil
		}
	}
	return r.carefully(x, b, w)
}

// normal sets up the normal equations.
func (r *Repeated) normal(b, w []float64) {
	weight2 := r.weight2
	for i, v := range w {
		weight2[i] = v * v
	}
	clear(r.gram)
	for i := range r.squares {
		s := &r.squares[i]
		r.gram[s.at] += weight2[s.row] * s.value
	}
	clear(r.pull)
	for i := range r.parts {
		p := &r.parts[i]
		r.pull[p.column] += weight2[p.row] * p.value * b[p.row]
	}
}

// begin takes in the columns that the guess says. Where the guess reaches every
// right side it is the best, whatever the weights.
func (r *Repeated) begin(x, b []float64) (reached bool) {
	n := len(x)
	r.used = 0
	clear(x)
	for i, v := range b {
		for j, g := range r.guess.Values[i*n : i*n+n] {
			x[j] += g * v
		}
	}
	for j, v := range x {
		if v > 0 {
			r.used |= 1 << j
		}
	}
	return bits.OnesCount64(r.used) == n && r.reaches(x, b)
}

// reaches tells whether nothing is left of the right side but rounding.
func (r *Repeated) reaches(x, b []float64) bool {
	left := r.weight2[:copy(r.weight2, b)]
	for i := range r.parts {
		p := &r.parts[i]
		left[p.row] -= p.value * x[p.column]
	}
	for i, v := range left {
		if math.Abs(v) > rounding*math.Abs(b[i]) {
			return false
		}
	}
	return true
}

// settled tells whether an x that the exchanges came to rest at is the best by
// what it leaves of the right side.
func (r *Repeated) settled(x, b []float64) bool {
	left := r.left[:copy(r.left, b)]
	for _, j := range r.in {
		for _, p := range r.parts[r.from[j]:r.from[j+1]] {
			left[p.row] -= p.value * x[j]
		}
	}
	rest, all := 0.0, 0.0
	for i, v := range left {
		left[i] = r.weight2[i] * v
		rest += left[i] * v
		all += r.weight2[i] * b[i] * b[i]
	}
	switch {
	case rest <= nothing*nothing*all:
		return true
	case rest < little*little*all:
		return false
	}
	for j := range x {
		if r.used>>j&1 == 1 {
			continue
		}
		pull := 0.0
		for _, p := range r.parts[r.from[j]:r.from[j+1]] {
			pull += p.value * left[p.row]
		}
		if pull > 0 && pull*pull > tilt*tilt*rest*r.gram[j*len(x)+j] {
			return false
		}
	}
	return true
}

// patience is how often the count of columns on the wrong side may fail to fall
// before only one of them is exchanged at a time, which comes to an end.
const patience = 3

// exchange solves for the columns in use, and puts out those that would be under
// nought and takes in those that would help, until there are none.
func (r *Repeated) exchange(x []float64) bool {
	n := len(x)
	least, left := n+1, patience
	for range 20 + 4*n {
		r.in = r.in[:0]
		for rest := r.used; rest != 0; rest &= rest - 1 {
			r.in = append(r.in, bits.TrailingZeros64(rest))
		}
		if !r.factor() {
			return false
		}
		r.solve(x)
		wrong := r.wrong(x)
		count := bits.OnesCount64(wrong)
		switch {
		case count == 0:
			return true
		case count < least:
			least, left = count, patience
		case left > 0:
			left--
		default:
			wrong = 1 << (bits.Len64(wrong) - 1)
		}
		r.used ^= wrong
	}
	return false
}

// wrong are the columns in use with less than nothing, and those that are not
// and would help.
func (r *Repeated) wrong(x []float64) (wrong uint64) {
	n := len(x)
	for j, v := range x {
		if r.used>>j&1 == 1 {
			if v < 0 {
				wrong |= 1 << j
			}
			continue
		}
		pull := r.pull[j]
		scale := math.Abs(pull)
		for _, k := range r.in {
			g := r.gram[max(j, k)*n+min(j, k)] * x[k]
			pull -= g
			scale += math.Abs(g)
		}
		if pull > atRest*scale {
			wrong |= 1 << j
		}
	}
	return wrong
}

// factor splits the rows and columns in use of AᵀA into L·D·Lᵀ; false where one
// is a mixture of those before it.
func (r *Repeated) factor() bool {
	n := r.a.Columns
	for a, j := range r.in {
		row, from := r.triangle[a*n:a*n+a], r.gram[j*n:j*n+j+1]
		over, in := r.over[:len(row)], r.in[:len(row)]
		d := from[j]
		for c := range row {
			v := from[in[c]]
			other := r.triangle[c*n : c*n+c]
			before := row[:len(other)]
			for e, o := range other {
				v -= before[e] * o
			}
			row[c] = v
		}
		for c, v := range row {
			l := v * over[c]
			d -= l * v
			row[c] = l
		}
		if !(d > dependent*from[j] && d > smallest) {
			return false
		}
		r.over[a] = 1 / d
	}
	return true
}

// solve finds the x of the columns in use; the others are nought.
func (r *Repeated) solve(x []float64) {
	n := r.a.Columns
	clear(x)
	for a, j := range r.in {
		v := r.pull[j]
		for c, l := range r.triangle[a*n : a*n+a] {
			v -= l * r.half[c]
		}
		r.half[a] = v
	}
	for a := range r.in {
		r.half[a] *= r.over[a]
	}
	for a := len(r.in) - 1; a >= 0; a-- {
		v := r.half[a]
		x[r.in[a]] = v
		row := r.triangle[a*n : a*n+a]
		half := r.half[:len(row)]
		for c, l := range row {
			half[c] -= l * v
		}
	}
}

// carefully solves by reflections, which lose half as many digits.
func (r *Repeated) carefully(x, b, w []float64) error {
	found, err := Weighted(r.a, b, w)
	if err != nil {
		return err
	}
	copy(x, found.X)
	return nil
}
