package ode

import "math"

// System writes the rates dy/dt of the states y at time t into rates. It must
// keep neither slice.
type System func(t float64, y, rates []float64)

// Solver follows systems of one size. It holds room for its work, so that
// solving allocates nothing; one solver serves one goroutine at a time. What it
// gives depends on nothing it solved before.
type Solver struct {
	tolerance Tolerance
	k         [7][]float64
	trial     []float64
}

// New is a solver for n states.
func New(n int, tolerance Tolerance) *Solver {
	s := &Solver{tolerance: tolerance, trial: make([]float64, n)}
	room := make([]float64, 7*n)
	for i := range s.k {
		s.k[i], room = room[:n:n], room[n:]
	}
	return s
}

// Solve carries y from one time to another, forwards or backwards, and writes
// the end over it. After an error y holds the last state reached.
func (s *Solver) Solve(f System, from, to float64, y []float64) (Effort, error) {
	var effort Effort
	if from == to {
		return effort, nil
	}
	f(from, y, s.k[0])
	effort.Rates++
	if !finite(s.k[0]) {
		return effort, ErrNotFinite
	}
	h := s.tolerance.First
	if h <= 0 {
		h = s.first(f, from, to, y)
		effort.Rates++
	}
	h = math.Copysign(h, to-from)
	for t := from; t != to; {
		if effort.Steps+effort.Rejected == mostSteps || t+h == t {
			return effort, ErrSteps
		}
		end := t + h
		if last := (to - t) / h; last < 1.0001 { // no sliver is left over
			h, end = to-t, to
		}
		err := s.try(f, t, h, y)
		effort.Rates += 6
		if !(err <= 1) {
			effort.Rejected++
			h *= min(next(err), 1)
			continue
		}
		effort.Steps++
		copy(y, s.trial)
		s.k[0], s.k[6] = s.k[6], s.k[0]
		t = end
		h *= next(err)
	}
	return effort, nil
}

// first is the length of a first step, by Hairer, Nørsett & Wanner, section
// II.4: short beside both the slope and its change.
func (s *Solver) first(f System, from, to float64, y []float64) float64 {
	span := math.Abs(to - from)
	d0, d1 := s.norm(y, y), s.norm(s.k[0], y)
	h := 1e-6
	if d0 >= 1e-5 && d1 >= 1e-5 {
		h = 0.01 * d0 / d1
	}
	h = min(h, span)
	way := math.Copysign(h, to-from)
	for i := range y {
		s.trial[i] = y[i] + way*s.k[0][i]
	}
	f(from+way, s.trial, s.k[1])
	for i := range y {
		s.k[1][i] -= s.k[0][i]
	}
	bend := max(d1, s.norm(s.k[1], y)/h)
	second := max(1e-6, h*1e-3)
	if bend > 1e-15 {
		second = math.Pow(0.01/bend, 0.2)
	}
	return min(100*h, second, span)
}

// norm is the size of v beside the error allowed at y: the root of the mean
// square over the states.
func (s *Solver) norm(v, y []float64) float64 {
	sum := 0.0
	for i := range v {
		r := v[i] / (s.tolerance.Absolute + s.tolerance.Relative*math.Abs(y[i]))
		sum += r * r
	}
	return math.Sqrt(sum / float64(max(1, len(v))))
}

// try takes one step into trial and gives its error beside the one allowed.
func (s *Solver) try(f System, t, h float64, y []float64) float64 {
	k, z := &s.k, s.trial
	for i := range y {
		z[i] = y[i] + h*a21*k[0][i]
	}
	f(t+c2*h, z, k[1])
	for i := range y {
		z[i] = y[i] + h*(a31*k[0][i]+a32*k[1][i])
	}
	f(t+c3*h, z, k[2])
	for i := range y {
		z[i] = y[i] + h*(a41*k[0][i]+a42*k[1][i]+a43*k[2][i])
	}
	f(t+c4*h, z, k[3])
	for i := range y {
		z[i] = y[i] + h*(a51*k[0][i]+a52*k[1][i]+a53*k[2][i]+a54*k[3][i])
	}
	f(t+c5*h, z, k[4])
	for i := range y {
		z[i] = y[i] + h*(a61*k[0][i]+a62*k[1][i]+a63*k[2][i]+a64*k[3][i]+a65*k[4][i])
	}
	f(t+h, z, k[5])
	for i := range y {
		z[i] = y[i] + h*(b1*k[0][i]+b3*k[2][i]+b4*k[3][i]+b5*k[4][i]+b6*k[5][i])
	}
	f(t+h, z, k[6])
	sum := 0.0
	for i := range y {
		e := h * (e1*k[0][i] + e3*k[2][i] + e4*k[3][i] + e5*k[4][i] + e6*k[5][i] + e7*k[6][i])
		r := e / (s.tolerance.Absolute + s.tolerance.Relative*max(math.Abs(y[i]), math.Abs(z[i])))
		sum += r * r
	}
	return math.Sqrt(sum / float64(max(1, len(y))))
}

func finite(v []float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
