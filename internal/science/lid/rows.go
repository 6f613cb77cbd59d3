package lid

import (
	"cmp"
	"context"
	"math"
	"slices"

	"rootbell/internal/base/plane"
)

// InRows is a layout in straight rows at equal pitch.
type InRows struct {
	Layout Layout
	// Staggered tells that every other row is shifted by half the pitch.
	Staggered bool
	// Upright tells that the rows run along y instead of x.
	Upright bool
	// Pitch is the distance along a row and Apart that from row to row, mm.
	Pitch, Apart float64
	// Left counts places of the pattern inside the region that are not used.
	Left int
}

// pattern is one way of setting out rows, in steps of the mesh.
type pattern struct {
	pitch, apart, shift int
	upright             bool
	q                   int // squared least distance, in steps
}

// rowLines is the most lines each way of the mesh that Rows works on; a finer
// ruler counts in several steps at once.
const rowLines = 96

// Rows lays n points in rows, plain or staggered, along x or along y, at whole
// multiples of the ruler's step: of all pitches and offsets the one with the
// largest least distance, among equals the one with the fewest measures to set
// out, then the one that leaves the fewest places unused and lies nearest the
// middle. Places in margins and keep-clear zones are left out. Fixed holes
// stay, and rows keep their distance from them.
func (r *Region) Rows(ctx context.Context, n int, u Ruler, fixed []plane.Point) (InRows, error) {
	if err := r.checkCount(n, fixed); err != nil {
		return InRows{}, err
	}
	u.Borders = false
	m, err := r.mesh(u)
	if err != nil {
		return InRows{}, err
	}
	if k := (max(len(m.xs), len(m.ys)) + rowLines - 1) / rowLines; k > 1 {
		u.Step *= float64(k)
		if m, err = r.mesh(u); err != nil {
			return InRows{}, err
		}
	}
	free := n - len(fixed)
	if free == 0 {
		return InRows{Layout: r.finished(fixed, fixed, 0)}, nil
	}
	if !m.hasNodes(free) {
		return InRows{}, ErrNoMark
	}
	limit := math.Inf(1)
	if n > 1 {
		limit = r.Bound(n).Distance / u.Step
	}
	var best seating
	for _, p := range patterns(len(m.xs), len(m.ys), free) {
		if float64(p.q) > limit*limit*(1+tie) && len(fixed) == 0 && free > 1 {
			continue
		}
		if best.places != nil && p.q < best.q {
			break
		}
		if err := ctx.Err(); err != nil {
			return InRows{}, err
		}
		best = m.seat(p, free, u.Step, fixed, best)
	}
	if best.places == nil {
		return InRows{}, ErrNoMark
	}
	return InRows{
		Layout:    r.marked(m.without(best.places, free), fixed, 0),
		Staggered: best.shift > 0, Upright: best.upright,
		Pitch: float64(best.pitch) * u.Step, Apart: float64(best.apart) * u.Step,
		Left: len(best.places) - free,
	}, nil
}

// patterns lists the ways to set out rows that could hold n points, the widest
// first.
func patterns(nx, ny, n int) []pattern {
	var out []pattern
	for _, upright := range [2]bool{false, true} {
		along, across := nx, ny
		if upright {
			along, across = ny, nx
		}
		for a := 1; a <= along; a++ {
			for b := 1; b <= across; b++ {
				rows, cols := (across+b-1)/b, (along+a-1)/a
				if rows*cols < n {
					continue
				}
				out = append(out, waysOf(a, b, rows, cols, upright)...)
			}
		}
	}
	slices.SortStableFunc(out, func(p, q pattern) int { return cmp.Compare(q.q, p.q) })
	return out
}

func waysOf(a, b, rows, cols int, upright bool) []pattern {
	const none = math.MaxInt32
	along, across := none, none
	if cols > 1 {
		along = a * a
	}
	if rows > 1 {
		across = b * b
	}
	var out []pattern
	if !upright || rows == 1 || cols == 1 {
		out = append(out, pattern{a, b, 0, upright, min(along, across)})
	}
	if a%2 == 0 && rows > 1 {
		q := min(along, a*a/4+b*b)
		if rows > 2 {
			q = min(q, 4*b*b)
		}
		out = append(out, pattern{a, b, a / 2, upright, q})
	}
	return out
}

// seating is a pattern with its places and how good they are.
type seating struct {
	pattern
	places []plane.Point
	marks  int
	off    float64 // distance of the places' middle from the box's
}

// seat tries every offset of the pattern and returns the better of the best
// one and the one so far.
func (m *mesh) seat(p pattern, n int, step float64, fixed []plane.Point, best seating) seating {
	least := float64(math.Sqrt(float64(p.q)) * step)
	c := m.region.box.Centre()
	for y0 := range p.apart {
		for x0 := range p.pitch {
			if m.count(p, x0, y0, n) < n {
				continue
			}
			places := m.places(p, x0, y0)
			places = slices.DeleteFunc(places, func(q plane.Point) bool {
				return slices.ContainsFunc(fixed, func(f plane.Point) bool { return f.To(q) < least-feasibleMM })
			})
			if len(places) < n {
				continue
			}
			s := seating{pattern: p, places: places, marks: marks(places), off: middle(places).To(c)}
			if best.places == nil || s.before(best, n) {
				best = s
			}
		}
	}
	return best
}

func (s seating) before(o seating, n int) bool {
	return cmp.Or(
		cmp.Compare(s.marks, o.marks),
		cmp.Compare(len(s.places)-n, len(o.places)-n),
		cmp.Compare(math.Round(s.off/grainMM), math.Round(o.off/grainMM)),
	) < 0
}

func middle(p []plane.Point) plane.Point {
	var sum plane.Point
	for _, q := range p {
		sum = sum.Add(q)
	}
	return sum.Times(1 / float64(len(p)))
}

// each calls f for the nodes of the pattern at an offset that lie in the
// region, until f returns false.
func (m *mesh) each(p pattern, x0, y0 int, f func(i, j int) bool) {
	along, across := len(m.xs), len(m.ys)
	if p.upright {
		along, across = across, along
	}
	for row, b := 0, y0; b < across; row, b = row+1, b+p.apart {
		a := x0
		if row%2 == 1 {
			a = (x0 + p.shift) % p.pitch
		}
		for ; a < along; a += p.pitch {
			i, j := a, b
			if p.upright {
				i, j = b, a
			}
			if m.holds(i, j) && !f(i, j) {
				return
			}
		}
	}
}

// hasNodes reports whether at least n nodes lie in the region.
func (m *mesh) hasNodes(n int) bool {
	one := pattern{pitch: 1, apart: 1}
	return m.count(one, 0, 0, n) >= n
}

// count counts the places of a pattern, no further than n.
func (m *mesh) count(p pattern, x0, y0, n int) int {
	k := 0
	m.each(p, x0, y0, func(int, int) bool {
		k++
		return k < n
	})
	return k
}

func (m *mesh) places(p pattern, x0, y0 int) []plane.Point {
	var out []plane.Point
	m.each(p, x0, y0, func(i, j int) bool {
		out = append(out, m.at(i, j))
		return true
	})
	return out
}

// without leaves out the surplus places: those with the least room to the
// border first, among equals the last of the top row.
func (m *mesh) without(places []plane.Point, n int) []plane.Point {
	out := slices.Clone(places)
	sortByRows(out)
	for len(out) > n {
		drop, least := 0, math.Inf(1)
		for k, p := range out {
			if s := math.Round(m.region.Slack(p)); s <= least {
				drop, least = k, s
			}
		}
		out = slices.Delete(out, drop, drop+1)
	}
	return out
}
