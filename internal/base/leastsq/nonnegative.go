package leastsq

import "math"

// NonNegative minimises the length of A·x − b over x ≥ 0 by the active-set
// method of Lawson & Hanson (Solving Least Squares Problems, 1974, chapter 23):
// a column enters when a little of it would help, by a Householder reflection;
// it leaves when the best mixture would want less than nothing of it, and the
// triangle is then closed again by Givens rotations.
func NonNegative(a Matrix, b []float64) (Result, error) {
	if err := check(a, b); err != nil {
		return Result{}, err
	}
	s := newSearch(a, b)
	for s.set < min(s.Rows, s.Columns) {
		if !s.enter() {
			break
		}
		for !s.settle() {
			if s.steps > 3*s.Columns+10 {
				return Result{}, ErrSteps
			}
		}
		if s.steps > 3*s.Columns+10 {
			return Result{}, ErrSteps
		}
	}
	return Result{X: s.x, Residual: length(s.b[s.set:]), Steps: s.steps}, nil
}

// search holds A and b as far as they are reflected. order lists the columns,
// those taken in first; the rows above set hold their triangle.
type search struct {
	Matrix
	b, x, z, try, pull, size []float64
	order                    []int
	set                      int
	steps                    int
}

func newSearch(a Matrix, b []float64) *search {
	m, n := a.Rows, a.Columns
	work := make([]float64, m*n+2*m+4*n)
	cut := func(k int) []float64 {
		part := work[:k:k]
		work = work[k:]
		return part
	}
	s := &search{Matrix: Matrix{Rows: m, Columns: n, Values: cut(m * n)}, order: make([]int, n)}
	s.b, s.try = cut(m), cut(m)
	s.x, s.z, s.pull, s.size = cut(n), cut(n), cut(n), cut(n)
	copy(s.Values, a.Values)
	copy(s.b, b)
	for j := range n {
		s.order[j] = j
		s.size[j] = length(a.column(j))
	}
	return s
}

const epsilon = 0x1p-52

// independent is what must be left of a column beside those that are in, as a
// share of what they have in common: less may be rounding of all reflections so
// far, and an x of many billions would rest on it.
const independent = 1e-11

// enter takes in the column that helps most, if one helps beyond rounding and
// is not a mixture of those that are in already.
func (s *search) enter() bool {
	rest := length(s.b[s.set:])
	for p := s.set; p < s.Columns; p++ {
		j := s.order[p]
		s.pull[j] = dot(s.column(j)[s.set:], s.b[s.set:])
	}
	for {
		at, best := -1, 0.0
		for p := s.set; p < s.Columns; p++ {
			j := s.order[p]
			if s.pull[j] > best && s.pull[j] > epsilon*s.size[j]*rest {
				at, best = p, s.pull[j]
			}
		}
		if at < 0 {
			return false
		}
		j := s.order[at]
		if s.reflect(at) {
			return true
		}
		s.pull[j] = 0
	}
}

// reflect turns the column at place p so that it ends in row set, if it is
// independent enough and would come in with more than nothing.
func (s *search) reflect(p int) bool {
	k, j := s.set, s.order[p]
	c := s.column(j)
	tail := length(c[k:])
	if above := length(c[:k]); tail <= independent*above || tail == 0 {
		return false
	}
	pivot := tail
	if c[k] > 0 {
		pivot = -tail
	}
	up := c[k] - pivot
	half := up * pivot // half the length of the mirror's normal, squared, and negative
	copy(s.try, s.b)
	mirror(c[k:], up, half, s.try[k:])
	if s.try[k]/pivot <= 0 {
		return false
	}
	copy(s.b, s.try)
	s.order[p], s.order[k] = s.order[k], j
	for q := k + 1; q < s.Columns; q++ {
		mirror(c[k:], up, half, s.column(s.order[q])[k:])
	}
	c[k] = pivot
	clear(c[k+1:])
	s.set++
	s.steps++
	return true
}

// mirror reflects v where the normal is (up, c[1:]…).
func mirror(c []float64, up, half float64, v []float64) {
	sum := up*v[0] + dot(c[1:], v[1:])
	if sum == 0 {
		return
	}
	sum /= half
	v[0] += sum * up
	for i := 1; i < len(c); i++ {
		v[i] += sum * c[i]
	}
}

// settle solves for the columns that are in. Where one would go below nothing
// the step is cut short there, that column leaves, and it must be solved again.
func (s *search) settle() (done bool) {
	for i := s.set - 1; i >= 0; i-- {
		v := s.b[i]
		for q := i + 1; q < s.set; q++ {
			v -= s.column(s.order[q])[i] * s.z[q]
		}
		s.z[i] = v / s.column(s.order[i])[i]
	}
	part, out := 1.0, -1
	for i := range s.set {
		if s.z[i] > 0 {
			continue
		}
		x := s.x[s.order[i]]
		if t := x / (x - s.z[i]); out < 0 || t < part {
			part, out = t, i
		}
	}
	if out < 0 {
		part = 1
	}
	for i := range s.set {
		j := s.order[i]
		s.x[j] += part * (s.z[i] - s.x[j])
	}
	if out < 0 {
		for i := range s.set {
			s.x[s.order[i]] = s.z[i]
		}
		return true
	}
	s.leave(out)
	for i := s.set - 1; i >= 0; i-- { // rounding can bring others to nothing too
		if s.x[s.order[i]] <= 0 {
			s.leave(i)
		}
	}
	return false
}

// leave puts the column at place p out and closes the triangle behind it.
func (s *search) leave(p int) {
	gone := s.order[p]
	s.x[gone] = 0
	for q := p + 1; q < s.set; q++ {
		j := s.order[q]
		s.order[q-1] = j
		c := s.column(j)
		r := math.Hypot(c[q-1], c[q])
		if r == 0 {
			continue
		}
		cos, sin := c[q-1]/r, c[q]/r
		for o := range s.Columns {
			if o != j {
				turn(s.column(o), q-1, cos, sin)
			}
		}
		turn(s.b, q-1, cos, sin)
		c[q-1], c[q] = r, 0
	}
	s.set--
	s.steps++
	s.order[s.set] = gone
}

// turn rotates the rows i and i+1 of a column.
func turn(c []float64, i int, cos, sin float64) {
	c[i], c[i+1] = cos*c[i]+sin*c[i+1], cos*c[i+1]-sin*c[i]
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}

// length is plain: problems here are of like numbers, so no scaling is needed
// below the square root of the largest float.
func length(v []float64) float64 { return math.Sqrt(dot(v, v)) }
