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
