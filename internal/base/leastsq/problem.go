package leastsq

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Matrix is a dense matrix by columns: the value of row i in column j is
// Values[j*Rows+i].
type Matrix struct {
	Rows, Columns int
	Values        []float64
}

// NewMatrix is a matrix of zeros.
func NewMatrix(rows, columns int) Matrix {
	return Matrix{Rows: rows, Columns: columns, Values: make([]float64, max(rows, 0)*max(columns, 0))}
}

// At is the value of row i in column j.
func (a Matrix) At(i, j int) float64 { return a.Values[j*a.Rows+i] }

// Set changes the value of row i in column j.
func (a Matrix) Set(i, j int, v float64) { a.Values[j*a.Rows+i] = v }

// column j, as it stands.
func (a Matrix) column(j int) []float64 { return a.Values[j*a.Rows : (j+1)*a.Rows] }

// Result is where the search ended. X is never negative. Residual is the
// length of A·X − b, weighted where weights were given. Steps counts the
// columns that were taken in or put out.
type Result struct {
	X        []float64
	Residual float64
	Steps    int
}

// What can be wrong with a problem.
var (
	ErrShape     = errors.New("leastsq: the matrix and the right side do not fit together")
	ErrNotFinite = errors.New("leastsq: a value is no number, or beyond 1e100")
	ErrSteps     = errors.New("leastsq: the search did not come to rest")
	ErrCeiling   = errors.New("leastsq: a ceiling or one of its parts is negative")
)

// largest is the largest size of a value: squares and sums stay finite.
const largest = 1e100

func check(a Matrix, b []float64) error {
	if a.Rows < 0 || a.Columns < 0 || len(a.Values) != a.Rows*a.Columns || len(b) != a.Rows {
		return fmt.Errorf("%w: %d × %d with %d values, %d on the right", ErrShape, a.Rows, a.Columns, len(a.Values), len(b))
	}
	for _, all := range [][]float64{a.Values, b} {
		for _, v := range all {
			if !(math.Abs(v) <= largest) {
				return ErrNotFinite
			}
		}
	}
	return nil
}

// Weighted minimises the length of w·(A·x − b), row by row, over x ≥ 0. A
// weight of zero leaves its row out of account.
func Weighted(a Matrix, b, w []float64) (Result, error) {
	return UnderCeilings(a, b, w, nil)
}

// Ceiling is a limit that must be kept: the sum of Of[j]·x[j] is at most Most.
// Neither is negative.
type Ceiling struct {
	Of   []float64
	Most float64
}

// heavy is how much a ceiling weighs beside wishes of about one: it is then
// passed by some heavy⁻² of what the wishes ask for, and more than half of the
// digits are left for them (the method of weighting: Lawson & Hanson, Solving
// Least Squares Problems, 1974, chapter 22).
const heavy = 1e6

// UnderCeilings is Weighted with ceilings. Each ceiling gets a slack of its
// own, so that it becomes an equation; the equations stand first and weigh
// most, which is also the order that keeps Householder's method accurate. What
// is still over a ceiling by then is taken off what it counts, in proportion.
func UnderCeilings(a Matrix, b, w []float64, ceilings []Ceiling) (Result, error) {
	if err := check(a, b); err != nil {
		return Result{}, err
	}
	if len(w) != a.Rows {
		return Result{}, fmt.Errorf("%w: %d rows and %d weights", ErrShape, a.Rows, len(w))
	}
	k := len(ceilings)
	all := NewMatrix(k+a.Rows, a.Columns+k)
	right := make([]float64, k+a.Rows)
	for i, c := range ceilings {
		if len(c.Of) != a.Columns {
			return Result{}, fmt.Errorf("%w: a ceiling over %d of %d columns", ErrShape, len(c.Of), a.Columns)
		}
		if !(c.Most >= 0) || slices.ContainsFunc(c.Of, func(v float64) bool { return v < 0 }) {
			return Result{}, ErrCeiling
		}
		scale := heavy / size(c)
		for j, v := range c.Of {
			all.Set(i, j, v*scale)
		}
		all.Set(i, a.Columns+i, heavy)
		right[i] = c.Most * scale
	}
	for i := range a.Rows {
		right[k+i] = b[i] * w[i]
		for j := range a.Columns {
			all.Set(k+i, j, a.At(i, j)*w[i])
		}
	}
	r, err := NonNegative(all, right)
	if err != nil {
		return Result{}, err
	}
	r.X = r.X[:a.Columns]
	under(r.X, ceilings)
	r.Residual = Misfit(a, b, w, r.X)
	return r, nil
}

// under takes off what is over a ceiling.
func under(x []float64, ceilings []Ceiling) {
	for _, c := range ceilings {
		if used := dot(c.Of, x); used > c.Most {
			for j, v := range c.Of {
				if v > 0 {
					x[j] *= c.Most / used
				}
			}
		}
	}
}

// size brings every ceiling to the same footing, whatever it counts in.
func size(c Ceiling) float64 {
	most := c.Most
	for _, v := range c.Of {
		most = max(most, math.Abs(v))
	}
	if most == 0 {
		return 1
	}
	return most
}

// Misfit is the length of w·(A·x − b), row by row.
func Misfit(a Matrix, b, w, x []float64) float64 {
	sum := 0.0
	for i := range a.Rows {
		r := -b[i]
		for j := range a.Columns {
			r += a.At(i, j) * x[j]
		}
		sum += r * w[i] * r * w[i]
	}
	return math.Sqrt(sum)
}
