package figure

import (
	"math"

	"rootbell/internal/paper/scene"
)

// contour is where a field passes through zero, as closed paths in mm: marching
// squares over a box in cells of so many mm (Lorensen and Cline 1987, in the
// plane), thinned to within slack mm. The field must be below zero all round
// the box, and change by no more than a point moves, as distances do. The order follows the cells, so the same field gives the same paths.
func contour(field func(scene.Point) float64, within scene.Box, cell, slack float64) []scene.Path {
	g := newLattice(field, within.Grown(cell*1.5), cell)
	var out []scene.Path
	for row := range g.rows - 1 {
		for col := range g.cols - 1 {
			for _, s := range g.crossings(row, col) {
				if loop := g.follow(s); len(loop) > 3 {
					out = append(out, scene.Polygon(thinned(loop, slack)...))
				}
			}
		}
	}
	return out
}

// lattice is a field's values at the corners of cells.
type lattice struct {
	from       scene.Point
	cell       float64
	rows, cols int
	values     []float64
	used       map[side]bool
}

// side is an edge of a cell: from a corner to the right, or upwards.
type side struct {
	row, col int
	up       bool
}

// step is a straight piece of the contour through a cell, zone inside on its
// left.
type step struct {
	row, col int
	in, out  side
}

func newLattice(field func(scene.Point) float64, b scene.Box, cell float64) *lattice {
	g := &lattice{from: b.Min, cell: cell, used: map[side]bool{}}
	g.cols, g.rows = int(math.Ceil(b.Width()/cell))+1, int(math.Ceil(b.Height()/cell))+1
	g.values = make([]float64, g.rows*g.cols)
	for row := 0; row < g.rows; row += patch {
		for col := 0; col < g.cols; col += patch {
			g.fill(field, row, col)
		}
	}
	return g
}

// patch is the side of the squares of corners that are looked at together.
const patch = 8

// fill takes the field of one patch. Where its middle is further from zero than
// any corner from the middle, no corner can be beyond zero.
func (g *lattice) fill(field func(scene.Point) float64, row, col int) {
	middle := field(g.corner(row+patch/2, col+patch/2))
	same := math.Abs(middle) > math.Sqrt2*(patch/2+1)*g.cell
	for r := row; r < min(row+patch, g.rows); r++ {
		for c := col; c < min(col+patch, g.cols); c++ {
			v := middle
			if !same {
				v = field(g.corner(r, c))
			}
			g.values[r*g.cols+c] = v
		}
	}
}

func (g *lattice) corner(row, col int) scene.Point {
	return scene.Point{X: g.from.X + float64(col)*g.cell, Y: g.from.Y + float64(row)*g.cell}
}

func (g *lattice) value(row, col int) float64 { return g.values[row*g.cols+col] }

func (g *lattice) inside(row, col int) bool { return g.value(row, col) >= 0 }

// crossings are the pieces of the contour in a cell that were not followed yet:
// none, one, or two where the inside touches over a diagonal.
func (g *lattice) crossings(row, col int) []step {
	sides := [4]side{{row, col, false}, {row, col + 1, true}, {row + 1, col, false}, {row, col, true}}
	corners := [4]bool{g.inside(row, col), g.inside(row, col+1), g.inside(row+1, col+1), g.inside(row+1, col)}
	var ins, outs []side
	for k := range 4 {
		a, b := corners[k], corners[(k+1)%4]
		switch {
		case a && !b:
			ins = append(ins, sides[k])
		case !a && b:
			outs = append(outs, sides[k])
		}
	}
	// Walked anticlockwise round the cell, the contour leaves the inside on its
	// left when it enters where the inside ends and leaves where it begins.
	var out []step
	for k, in := range ins {
		if !g.used[in] {
			out = append(out, step{row, col, in, outs[k%len(outs)]})
		}
	}
	return out
}

// follow walks one loop of the contour.
func (g *lattice) follow(s step) []scene.Point {
	var loop []scene.Point
	for !g.used[s.in] {
		g.used[s.in] = true
		loop = append(loop, g.on(s.in))
		row, col, ok := g.beyond(s)
		if !ok {
			return loop
		}
		next := g.crossings(row, col)
		found := false
		for _, n := range next {
			if n.in == s.out {
				s, found = n, true
			}
		}
		if !found {
			return loop
		}
	}
	return loop
}

// beyond is the cell on the other side of where a piece leaves its own.
func (g *lattice) beyond(s step) (row, col int, ok bool) {
	row, col = s.row, s.col
	switch {
	case s.out.up && s.out.col == s.col:
		col--
	case s.out.up:
		col++
	case s.out.row == s.row:
		row--
	default:
		row++
	}
	return row, col, row >= 0 && col >= 0 && row < g.rows-1 && col < g.cols-1
}

// on is where the field is zero along a side, straight between its ends.
func (g *lattice) on(s side) scene.Point {
	row, col := s.row, s.col+1
	if s.up {
		row, col = s.row+1, s.col
	}
	a, b := g.value(s.row, s.col), g.value(row, col)
	p, q := g.corner(s.row, s.col), g.corner(row, col)
	return p.Plus(q.Minus(p).Times(a / (a - b)))
}

// thinned leaves out points that lie within slack of the line between those
// kept (Douglas and Peucker 1973), on a closed loop.
func thinned(loop []scene.Point, slack float64) []scene.Point {
	far := 0
	for i, p := range loop {
		if p.Distance(loop[0]) > loop[far].Distance(loop[0]) {
			far = i
		}
	}
	first := reduced(loop[:far+1], slack)
	second := reduced(append(append([]scene.Point{}, loop[far:]...), loop[0]), slack)
	return append(first[:len(first)-1], second[:len(second)-1]...)
}

func reduced(line []scene.Point, slack float64) []scene.Point {
	if len(line) < 3 {
		return append([]scene.Point{}, line...)
	}
	a, b := line[0], line[len(line)-1]
	length := math.Max(a.Distance(b), 1e-12)
	worst, at := 0.0, 0
	for i, p := range line {
		if off := math.Abs((b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X)) / length; off > worst {
			worst, at = off, i
		}
	}
	if worst <= slack {
		return []scene.Point{a, b}
	}
	left := reduced(line[:at+1], slack)
	return append(left[:len(left)-1], reduced(line[at:], slack)...)
}
