package lid

import "math"

// simplex solves: maximise t - 30 e over moves of the points, where every row
// has room >= 0 and every move lies between its bounds. It is a primal
// simplex for bounded variables on a dense tableau (Dantzig's rule), started
// at a corner of the box of moves, where t (and e, if a border is overstepped
// there) is pivoted in at once, which makes the start feasible.
//
// Columns are numbered 0..nv-1 for moves, nv for t, nv+1 for e. Each tableau
// row is a basic variable as a linear function of the nonbasic ones.
type simplex struct {
	nv, m, w int       // moves, rows, tableau width
	tab      []float64 // m rows of w
	beta     []float64 // value of the basic variable of each row
	cost     []float64 // d(objective)/d(nonbasic)
	lo, hi   []float64 // bounds by variable number; rows' slacks follow
	basis    []int32   // variable of each row
	nonbasic []int32   // variable of each column
	upper    []bool    // nonbasic variable stands at its upper bound
	val      []float64 // result: value of each move
	nz       []int32
	col      []float64 // a column of the tableau, gathered
	pivots   int
}

// elasticCost is what one unit of overstepping a border costs, in units of
// distance; any price above the largest multiplier of a border keeps e at 0.
const elasticCost = 30

func grown[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/2)
	}
	return s[:n]
}

// begin sets the size: nv moves, m rows. Rows are cleared.
func (p *simplex) begin(nv, m int) {
	p.nv, p.m, p.w = nv, m, nv+2
	p.tab = grown(p.tab, m*p.w)
	clear(p.tab)
	p.beta = grown(p.beta, m)
	p.cost = grown(p.cost, p.w)
	p.lo = grown(p.lo, p.w+m)
	p.hi = grown(p.hi, p.w+m)
	p.basis = grown(p.basis, m)
	p.nonbasic = grown(p.nonbasic, p.w)
	p.upper = grown(p.upper, p.w)
	p.val = grown(p.val, p.w+m)
	p.nz = grown(p.nz, p.w)
	p.col = grown(p.col, m)
	clear(p.cost)
	for k := range p.w {
		p.nonbasic[k] = int32(k)
		p.upper[k] = false
	}
	for k := range m {
		p.basis[k] = int32(p.w + k)
		p.lo[p.w+k], p.hi[p.w+k] = 0, math.Inf(1)
	}
	p.lo[nv], p.hi[nv] = math.Inf(-1), math.Inf(1)
	p.lo[nv+1], p.hi[nv+1] = 0, math.Inf(1)
	p.pivots = 0
}

func (p *simplex) row(k int) []float64 { return p.tab[k*p.w : (k+1)*p.w] }

// solve runs to the optimum and leaves the moves in val. Rows must hold their
// constants in beta, taken at no move; start tells for each move whether it
// begins at its upper bound. pairs is the number of rows that carry t; they
// come first.
func (p *simplex) solve(pairs int) {
	p.moveToCorner()
	p.bringIn(p.nv, 0, pairs, true)
	p.cost[p.nv+1] -= elasticCost
	if pairs < p.m {
		p.bringIn(p.nv+1, pairs, p.m, false)
	}
	limit := 40*p.w + 200
	for p.pivots < limit && p.step() {
		p.pivots++
	}
	for k, v := range p.nonbasic[:p.w] {
		if p.upper[k] {
			p.val[v] = p.hi[v]
		} else {
			p.val[v] = p.lo[v]
		}
	}
	for k, v := range p.basis[:p.m] {
		p.val[v] = p.beta[k]
	}
}

func (p *simplex) moveToCorner() {
	for k := range p.m {
		row := p.row(k)
		sum := p.beta[k]
		for j, a := range row[:p.nv] {
			if a == 0 {
				continue
			}
			if p.upper[j] {
				sum += float64(a * p.hi[j])
			} else {
				sum += float64(a * p.lo[j])
			}
		}
		p.beta[k] = sum
	}
}

// bringIn pivots t or e against the row with the least room among from..to.
func (p *simplex) bringIn(col, from, to int, always bool) {
	r := from
	for k := from + 1; k < to; k++ {
		if p.beta[k] < p.beta[r] {
			r = k
		}
	}
	if !always && p.beta[r] >= 0 {
		return
	}
	// Raising the column's variable by delta takes the row to zero.
	delta := -p.beta[r] / p.row(r)[col]
	p.gather(col)
	p.advance(delta)
	if always {
		p.cost[col] = 1
	}
	p.upper[col] = false
	p.pivot(r, col, delta)
}

const (
	costEps  = 1e-11
	pivotEps = 1e-10
)

// step makes one move of the simplex; false at the optimum.
func (p *simplex) step() bool {
	col, best := -1, costEps
	for j, c := range p.cost[:p.w] {
		if p.upper[j] {
			c = -c
		}
		if c > best && p.hi[p.nonbasic[j]] > p.lo[p.nonbasic[j]] {
			col, best = j, c
		}
	}
	if col < 0 {
		return false
	}
	dir := 1.0
	if p.upper[col] {
		dir = -1
	}
	p.gather(col)
	v := p.nonbasic[col]
	r, limit, toUpper := p.blocking(dir, p.hi[v]-p.lo[v])
	if math.IsInf(limit, 1) {
		return false // cannot happen with bounded moves
	}
	p.advance(dir * limit)
	if r < 0 {
		p.upper[col] = !p.upper[col]
		return true
	}
	at := p.lo[v]
	if p.upper[col] {
		at = p.hi[v]
	}
	p.upper[col] = toUpper
	p.pivot(r, col, at+float64(dir*limit))
	return true
}

// gather copies a column of the tableau to col.
func (p *simplex) gather(col int) {
	at := col
	for k := range p.col {
		p.col[k] = p.tab[at]
		at += p.w
	}
}

// blocking returns the row whose basic variable is the first to meet a bound
// as the gathered column's variable moves in direction dir, and how far it
// goes; no row (-1) where its own range, limit, ends first.
func (p *simplex) blocking(dir, limit float64) (r int, room float64, toUpper bool) {
	r = -1
	size := 0.0
	beta, basis := p.beta[:len(p.col)], p.basis[:len(p.col)]
	for k, a := range p.col {
		a *= dir
		var room float64
		up := false
		switch {
		case a < -pivotEps:
			room = (beta[k] - p.lo[basis[k]]) / -a
		case a > pivotEps:
			hi := p.hi[basis[k]]
			if hi > math.MaxFloat64 {
				continue
			}
			room, up = (hi-beta[k])/a, true
		default:
			continue
		}
		if room < 0 {
			room = 0
		}
		if room < limit || (room == limit && r >= 0 && math.Abs(a) > size) {
			limit, r, toUpper, size = room, k, up, math.Abs(a)
		}
	}
	return r, limit, toUpper
}

// advance changes the gathered column's variable by delta.
func (p *simplex) advance(delta float64) {
	if delta == 0 {
		return
	}
	beta := p.beta[:len(p.col)]
	for k, a := range p.col {
		beta[k] += float64(a * delta)
	}
}

// pivot swaps the basic variable of row r with the nonbasic one of col, which
// was gathered and whose value is given.
func (p *simplex) pivot(r, col int, value float64) {
	row := p.row(r)
	inv := 1 / row[col]
	nz := p.nz[:0]
	for j, a := range row {
		if a == 0 || j == col {
			continue
		}
		row[j] = -float64(a * inv)
		nz = append(nz, int32(j))
	}
	row[col] = inv
	nz = append(nz, int32(col))
	dense := 2*len(nz) > p.w
	for k, f := range p.col {
		if f == 0 || k == r {
			continue
		}
		other := p.row(k)
		other[col] = 0
		addRow(other, row, f, nz, dense)
	}
	if f := p.cost[col]; f != 0 {
		p.cost[col] = 0
		addRow(p.cost, row, f, nz, dense)
	}
	p.beta[r] = value
	p.basis[r], p.nonbasic[col] = p.nonbasic[col], p.basis[r]
}

// addRow adds f times row to other; nz lists where row is not zero.
func addRow(other, row []float64, f float64, nz []int32, dense bool) {
	if dense {
		row = row[:len(other)]
		for len(other) >= 4 && len(row) >= 4 {
			other[0] += float64(f * row[0])
			other[1] += float64(f * row[1])
			other[2] += float64(f * row[2])
			other[3] += float64(f * row[3])
			other, row = other[4:], row[4:]
		}
		for j := range other {
			other[j] += float64(f * row[j])
		}
		return
	}
	for _, j := range nz {
		other[j] += float64(f * row[j])
	}
}
