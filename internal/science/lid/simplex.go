package lid

import "math"

// simplex solves: maximise t - 30 e over moves of the points, where every row
// has room >= 0 and every move lies between its bounds. It is a primal
// simplex for bounded variables on a dense tableau (Dantzig's rule), started
// at a corner of the box of moves, where t (and e, if a border is overstepped
// there) is pivoted in at once, which makes the start feasible.
//
// Columns are numbered 0..nv-1 for moves, nv for t, nv+1 for e, and filled up
// to whole quads. Each tableau row is a basic variable as a linear function
// of the nonbasic ones.
type simplex struct {
	nv, m, w int // moves, rows, quads in a row
	tab      []quad
	cost     []quad // d(objective)/d(nonbasic)
	way      []quad // which way a nonbasic variable can go: 1 up, -1 down, 0 not
	nonbasic []int32
	lo, hi   []float64 // bounds by variable number; rows' slacks follow
	val      []float64 // value by variable number; of moves the result

	beta        []float64 // value of the basic variable of each row,
	least, most []float64 // and its bounds
	basis       []int32
	col         []float64 // a column of the tableau, gathered,
	in          []int32   // and the rows where it is not zero
	nz          []int32   // quads of the pivot row that are not all zero
	pivots      int

	// work counts the quads of all rows changed so far, and spare is where a
	// program ends early: what it has reached by then is a layout too.
	work, spare int64
}

// quad is four neighbouring numbers of a row; a row is a whole number of them
// so that its arithmetic needs no remainder.
type quad [4]float64

func at(row []quad, j int) *float64 { return &row[j>>2][j&3] }

// elasticCost is what one unit of overstepping a border costs, in units of
// distance; any price above the largest multiplier of a border keeps e at 0.
const elasticCost = 30

func grown[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/2)
	}
	return s[:n]
}

// begin sets the size: nv moves, m rows, all zero. The bounds of the moves
// come next, then corner, then the rows.
func (p *simplex) begin(nv, m int) {
	p.nv, p.m, p.w = nv, m, (nv+2+3)/4
	p.tab = grown(p.tab, m*p.w)
	clear(p.tab)
	p.cost, p.way = grown(p.cost, p.w), grown(p.way, p.w)
	clear(p.cost)
	clear(p.way)
	p.beta, p.least, p.most = grown(p.beta, m), grown(p.least, m), grown(p.most, m)
	p.col, p.basis = grown(p.col, m), grown(p.basis, m)
	p.nonbasic = grown(p.nonbasic, nv+2)
	all := nv + 2 + m
	p.lo, p.hi, p.val = grown(p.lo, all), grown(p.hi, all), grown(p.val, all)
	for k := range p.nonbasic {
		p.nonbasic[k] = int32(k)
	}
	inf := math.Inf(1)
	p.lo[nv], p.hi[nv], p.lo[nv+1], p.hi[nv+1] = -inf, inf, 0, inf
	p.val[nv], p.val[nv+1] = 0, 0
	*at(p.way, nv), *at(p.way, nv+1) = 1, 1
	for k := range m {
		v := nv + 2 + k
		p.basis[k], p.lo[v], p.hi[v] = int32(v), 0, inf
		p.least[k], p.most[k] = 0, inf
	}
	p.pivots = 0
}

// corner puts the nonbasic variable of a column at a bound.
func (p *simplex) corner(v, col int, upper bool) {
	p.val[v] = p.lo[v]
	way := 1.0
	if upper {
		p.val[v], way = p.hi[v], -1
	}
	if p.lo[v] == p.hi[v] {
		way = 0
	}
	*at(p.way, col) = way
}

func (p *simplex) row(k int) []quad { return p.tab[k*p.w : (k+1)*p.w] }

// put enters a coefficient of a move into row k.
func (p *simplex) put(k, v int, a float64) {
	*at(p.row(k), v) = a
	p.beta[k] += float64(a * p.val[v])
}

// solve runs to the optimum and leaves the moves in val. Rows must hold their
// coefficients and, in beta, their room at the corner. pairs is the number of
// rows that carry t; they come first.
func (p *simplex) solve(pairs int) {
	p.bringIn(p.nv, 0, pairs, true)
	*at(p.cost, p.nv+1) -= elasticCost
	if pairs < p.m {
		p.bringIn(p.nv+1, pairs, p.m, false)
	}
	limit := 40*(p.nv+2) + 200
	for p.pivots < limit && p.work < p.spare && p.step() {
		p.pivots++
	}
	for k, v := range p.basis {
		p.val[v] = p.beta[k]
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
	p.gather(col)
	delta := -p.beta[r] / p.col[r]
	p.advance(delta)
	if always {
		*at(p.cost, col) = 1
	}
	p.pivot(r, col, delta, false)
}

const (
	costEps  = 1e-11
	pivotEps = 1e-10
)

// step makes one move of the simplex; false at the optimum.
func (p *simplex) step() bool {
	col := p.steepest()
	if col < 0 {
		return false
	}
	v := p.nonbasic[col]
	way := *at(p.way, col)
	p.gather(col)
	r, limit, toUpper := p.blocking(way, p.hi[v]-p.lo[v])
	if math.IsInf(limit, 1) {
		return false // cannot happen with bounded moves
	}
	p.advance(way * limit)
	if r < 0 {
		p.corner(int(v), col, way > 0)
		return true
	}
	p.pivot(r, col, p.val[v]+float64(way*limit), toUpper)
	return true
}

// steepest is the column whose variable raises the objective fastest; -1
// where none does.
func (p *simplex) steepest() int {
	col, best := -1, costEps
	way := p.way[:len(p.cost)]
	for j := range p.cost {
		c, w := &p.cost[j], &way[j]
		for i := range c {
			if v := c[i] * w[i]; v > best {
				col, best = 4*j+i, v
			}
		}
	}
	return col
}

// gather copies a column of the tableau to col.
func (p *simplex) gather(col int) {
	b, i := col>>2, col&3
	p.in = p.in[:0]
	for k := range p.col {
		a := p.tab[b][i]
		b += p.w
		p.col[k] = a
		if a != 0 {
			p.in = append(p.in, int32(k))
		}
	}
}

// blocking returns the row whose basic variable is the first to meet a bound
// as the gathered column's variable moves the given way, and how far it goes;
// no row (-1) where its own range, limit, ends first.
func (p *simplex) blocking(way, limit float64) (r int, room float64, toUpper bool) {
	r = -1
	size := 0.0
	n := len(p.col)
	beta, least, most, colm := p.beta[:n], p.least[:n], p.most[:n], p.col
	for _, k := range p.in {
		a := colm[k] * way
		up := a > 0
		var room float64
		switch {
		case a < -pivotEps:
			a = -a
			room = beta[k] - least[k]
		case a > pivotEps:
			room = most[k] - beta[k]
		default:
			continue
		}
		if room > limit*a {
			continue
		}
		room = max(room/a, 0)
		if room < limit || room == limit && r >= 0 && a > size {
			limit, r, toUpper, size = room, int(k), up, a
		}
	}
	return r, limit, toUpper
}

// advance changes the gathered column's variable by delta.
func (p *simplex) advance(delta float64) {
	if delta == 0 {
		return
	}
	beta, col := p.beta[:len(p.col)], p.col
	for _, k := range p.in {
		beta[k] += float64(col[k] * delta)
	}
}

// pivot swaps the basic variable of row r, which has come to its upper or
// lower bound, with the nonbasic one of col, which was gathered and whose
// value is given.
func (p *simplex) pivot(r, col int, value float64, toUpper bool) {
	row := p.row(r)
	inv := 1 / p.col[r]
	*at(row, col) = 0
	p.nz = p.nz[:0]
	for j := range row {
		q := &row[j]
		if q[0] == 0 && q[1] == 0 && q[2] == 0 && q[3] == 0 && j != col>>2 {
			continue
		}
		p.nz = append(p.nz, int32(j))
		for i := range q {
			q[i] = -float64(q[i] * inv)
		}
	}
	*at(row, col) = inv
	p.work += int64(len(p.in)) * int64(len(p.nz))
	for _, k := range p.in {
		if int(k) != r {
			other := p.row(int(k))
			*at(other, col) = 0
			addRow(other, row, p.col[k], p.nz)
		}
	}
	if f := *at(p.cost, col); f != 0 {
		*at(p.cost, col) = 0
		addRow(p.cost, row, f, p.nz)
	}
	in, out := p.nonbasic[col], p.basis[r]
	p.basis[r], p.nonbasic[col] = in, out
	p.beta[r], p.least[r], p.most[r] = value, p.lo[in], p.hi[in]
	p.corner(int(out), col, toUpper)
}

// addRow adds f times row to other; nz lists the quads where row is not zero.
func addRow(other, row []quad, f float64, nz []int32) {
	row = row[:len(other)]
	for _, j := range nz {
		o, q := &other[j], &row[j]
		o[0] += float64(f * q[0])
		o[1] += float64(f * q[1])
		o[2] += float64(f * q[2])
		o[3] += float64(f * q[3])
	}
}
