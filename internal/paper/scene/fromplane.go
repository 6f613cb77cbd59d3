package scene

import (
	"math"

	"rootbell/internal/base/plane"
)

// PointOf is a point of the plane as a place on paper.
func PointOf(p plane.Point) Point { return Point{p.X, p.Y} }

// PathOf is an outline of the plane as a closed path; its arcs stay arcs.
func PathOf(outline plane.Outline) Path {
	path := Path{Closed: true}
	for _, edge := range outline {
		arc, round := edge.(plane.Arc)
		if !round {
			path.Vertices = append(path.Vertices, Vertex{Point: PointOf(edge.Start())})
			continue
		}
		// A bulge cannot hold a full turn, so each arc goes in two halves.
		half := math.Tan(arc.Sweep / 8)
		path.Vertices = append(
			path.Vertices,
			Vertex{PointOf(arc.Start()), half},
			Vertex{PointOf(arc.At(arc.From + arc.Sweep/2)), half},
		)
	}
	return path
}

// PathOfShape is the outline of any shape of the plane, closed; its arcs stay
// arcs.
func PathOfShape(s plane.Shape) Path {
	switch s := s.(type) {
	case plane.Circle:
		return Disc(PointOf(s.Centre), s.Radius)
	case plane.Rect:
		return Rectangle(Box{Min: PointOf(s.Min), Max: PointOf(s.Max)})
	case plane.RoundedRect:
		return RoundedRectangle(Box{Min: PointOf(s.Min), Max: PointOf(s.Max)}, s.Radius)
	case plane.Polygon:
		return PathOf(s.Outline())
	case plane.Capsule:
		return rib(s)
	}
	return Path{Closed: true}
}

// rib is a capsule as two sides and two half circles.
func rib(c plane.Capsule) Path {
	const halfCircle = 1 // a bulge is the tangent of a quarter of the angle
	along := c.B.Sub(c.A)
	across := along.Left().Times(c.Width / 2 / max(along.Length(), 1e-9))
	return Path{Closed: true, Vertices: []Vertex{
		{Point: PointOf(c.A.Sub(across))},
		{Point: PointOf(c.B.Sub(across)), Bulge: halfCircle},
		{Point: PointOf(c.B.Add(across))},
		{Point: PointOf(c.A.Add(across)), Bulge: halfCircle},
	}}
}
