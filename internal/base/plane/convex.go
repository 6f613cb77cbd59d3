package plane

import (
	"cmp"
	"slices"
)

// Hull returns the convex hull of the points, anticlockwise from the lowest
// of the leftmost, without straight corners (Andrew's monotone chain, 1979).
func Hull(points []Point) Polygon {
	p := slices.Clone(points)
	slices.SortFunc(p, func(a, b Point) int {
		return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y))
	})
	p = slices.Compact(p)
	if len(p) < 3 {
		return p
	}
	h := make(Polygon, 0, 2*len(p))
	add := func(q Point, floor int) {
		for len(h) >= floor+2 && turn(h[len(h)-2], h[len(h)-1], q) <= 0 {
			h = h[:len(h)-1]
		}
		h = append(h, q)
	}
	for _, q := range p {
		add(q, 0)
	}
	floor := len(h) - 1
	for k := len(p) - 2; k >= 0; k-- {
		add(p[k], floor)
	}
	return h[:len(h)-1]
}

// ConvexPieces splits a simple polygon into convex polygons that cover it
// without overlap, all anticlockwise: triangles by cutting ears, then joined
// over each diagonal that is not needed (Hertel and Mehlhorn 1983), which
// leaves at most four times the least possible number of pieces. The polygon
// must pass Check.
func (p Polygon) ConvexPieces() []Polygon {
	if p.Convex() {
		return []Polygon{p.Anticlockwise()}
	}
	return joined(p.Anticlockwise().triangles())
}

// triangles cuts an anticlockwise polygon into triangles, ear by ear.
func (p Polygon) triangles() []Polygon {
	rest := slices.Clone(p)
	var out []Polygon
	for len(rest) > 3 {
		k := rest.ear()
		n := len(rest)
		t := Polygon{rest[(k+n-1)%n], rest[k], rest[(k+1)%n]}
		if t.area2() > 0 {
			out = append(out, t)
		}
		rest = slices.Delete(rest, k, k+1)
	}
	if rest.area2() > 0 {
		out = append(out, rest)
	}
	return out
}

// ear finds a corner that can be cut off: straight ones first, because they
// carry no area, else a left turn whose triangle holds no other corner.
func (p Polygon) ear() int {
	n := len(p)
	best := -1
	for k := range p {
		a, b, c := p[(k+n-1)%n], p[k], p[(k+1)%n]
		t := turn(a, b, c)
		if t == 0 {
			return k
		}
		if best < 0 && t > 0 && !slices.ContainsFunc(p, func(q Point) bool {
			return q != a && q != b && q != c &&
				turn(a, b, q) >= 0 && turn(b, c, q) >= 0 && turn(c, a, q) >= 0
		}) {
			best = k
		}
	}
	return max(best, 0)
}

// joined merges pieces over shared sides for as long as the result is convex.
func joined(pieces []Polygon) []Polygon {
	for {
		i, j, m := mergeable(pieces)
		if m == nil {
			return pieces
		}
		pieces[i] = m
		pieces = slices.Delete(pieces, j, j+1)
	}
}

func mergeable(pieces []Polygon) (int, int, Polygon) {
	for i := range pieces {
		for j := i + 1; j < len(pieces); j++ {
			if m := merge(pieces[i], pieces[j]); m != nil {
				return i, j, m
			}
		}
	}
	return 0, 0, nil
}

// merge joins two anticlockwise pieces over a side that they share, or
// returns nil where they share none or the union is not convex.
func merge(a, b Polygon) Polygon {
	for i := range a {
		e := a.edge(i)
		j := slices.Index(b, e.B)
		if j < 0 || b.edge(j).B != e.A {
			continue
		}
		m := make(Polygon, 0, len(a)+len(b)-2)
		for k := range a {
			m = append(m, a[(i+1+k)%len(a)])
		}
		for k := 2; k < len(b); k++ {
			m = append(m, b[(j+k)%len(b)])
		}
		if m.Convex() {
			return m
		}
	}
	return nil
}

// Diameter returns the largest distance between two of the points.
func Diameter(points []Point) float64 {
	d := 0.0
	for i, p := range points {
		for _, q := range points[:i] {
			d = max(d, p.To(q))
		}
	}
	return d
}
