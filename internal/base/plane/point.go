// Package plane holds the plane geometry of a lid and a tub: points, arcs and
// closed shapes with signed distances, all in millimetres.
//
// Coordinates are right-handed, x to the right and y up. A distance to a
// closed shape is signed: positive inside, zero on the outline, negative
// outside, so that "a disc of radius r lies inside with margin m" reads
// Distance(centre) >= r+m. Arcs stay arcs; nothing is replaced by chords.
//
// Products are converted explicitly before they are added, which the language
// guarantees to forbid fused multiply-add: the same input gives the same bits
// on every processor, except in what uses angles.
package plane

import "math"

// Point is a place, or a displacement, in millimetres. The zero value is the
// origin.
type Point struct{ X, Y float64 }

// Add returns p+q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p-q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns p stretched by s.
func (p Point) Times(s float64) Point { return Point{float64(p.X * s), float64(p.Y * s)} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return float64(p.X*q.X) + float64(p.Y*q.Y) }

// Cross returns the z component of the vector product: positive where q lies
// to the left of p.
func (p Point) Cross(q Point) float64 { return float64(p.X*q.Y) - float64(p.Y*q.X) }

// Length returns the distance from the origin.
func (p Point) Length() float64 { return math.Sqrt(p.Dot(p)) }

// To returns the distance between two points.
func (p Point) To(q Point) float64 { return q.Sub(p).Length() }

// Finite reports whether both coordinates are ordinary numbers.
func (p Point) Finite() bool { return finite(p.X) && finite(p.Y) }

// Left returns p turned by a quarter turn to the left.
func (p Point) Left() Point { return Point{-p.Y, p.X} }

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// turn is twice the signed area of the triangle a, b, c: positive where the
// path turns left.
func turn(a, b, c Point) float64 { return b.Sub(a).Cross(c.Sub(a)) }
