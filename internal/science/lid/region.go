package lid

import (
	"errors"
	"fmt"
	"math"
	"sync"

	"rootbell/internal/base/plane"
)

// feasibleMM is how far a point may lie on the wrong side of a border and
// still count as on it: the rounding of floating-point sums, a thousandth of
// the width of an atom away from any pencil mark.
const feasibleMM = 1e-9

// Inset says that every centre lies inside Shape, at least Margin from its
// outline. Shape is a plane.Rect, RoundedRect, Circle, Capsule or Polygon.
type Inset struct {
	Shape  plane.Shape
	Margin float64
}

// KeepOut says that every centre lies outside Shape, at least Clearance from
// it, straight-line distance: the zone kept free has rounded corners. Shape is
// one of those that an Inset takes.
type KeepOut struct {
	Shape     plane.Shape
	Clearance float64
}

// ErrNoRoom says that the region has no room for a single centre.
var ErrNoRoom = errors.New("no room for one hole: the margins and keep-clear zones leave nothing of the lid")

// Region is where centres may lie. It need not be convex, nor in one piece.
type Region struct {
	bounds   []Inset
	keepOuts []KeepOut
	box      plane.Rect
	rules    []rule
	area     float64 // mm², good to a part in a hundred; no bound rests on it
	// Worked out once, when asked:
	deepest    func() plane.Point   // the place with the most room around it
	hull       func() plane.Polygon // holds the region
	symmetries func() []symmetry
}

// NewRegion returns the part of the plane that lies inside all bounds (at
// least one) and outside all keep-outs. The error names the shape that is
// impossible, or is ErrNoRoom.
func NewRegion(bounds []Inset, keepOuts []KeepOut) (*Region, error) {
	if len(bounds) == 0 {
		return nil, errors.New("a region needs an outline")
	}
	r := &Region{
		bounds: bounds, keepOuts: keepOuts,
		box: plane.Box(math.Inf(-1), math.Inf(-1), math.Inf(1), math.Inf(1)),
	}
	for k, b := range bounds {
		if err := checkShape(b.Shape, b.Margin); err != nil {
			return nil, fmt.Errorf("outline %d: %w", k+1, err)
		}
		if err := r.addInset(b); err != nil {
			return nil, fmt.Errorf("outline %d: %w", k+1, err)
		}
	}
	for k, o := range keepOuts {
		if err := checkShape(o.Shape, o.Clearance); err != nil {
			return nil, fmt.Errorf("keep-clear %d: %w", k+1, err)
		}
		if err := r.addKeepOut(o); err != nil {
			return nil, fmt.Errorf("keep-clear %d: %w", k+1, err)
		}
	}
	if r.box.Empty() {
		return nil, ErrNoRoom
	}
	const areaCuts = 6
	r.area = r.areaIn(r.box, areaCuts)
	r.deepest = sync.OnceValue(r.findDeepest)
	r.hull = sync.OnceValue(r.cellHull)
	r.symmetries = sync.OnceValue(r.findSymmetries)
	if r.area == 0 && !r.Contains(r.deepest()) {
		return nil, ErrNoRoom
	}
	return r, nil
}

// hugeMM is beyond any lid; larger measures would drown a millimetre's digits.
const hugeMM = 1e6

func checkShape(s plane.Shape, margin float64) error {
	if s == nil {
		return errors.New("no shape given")
	}
	if err := s.Check(); err != nil {
		return err
	}
	if !(margin >= 0 && margin <= hugeMM) {
		return errors.New("the distance to keep must be zero or more")
	}
	b := s.Bounds()
	if m := max(-b.Min.X, -b.Min.Y, b.Max.X, b.Max.Y); m > hugeMM {
		return errors.New("the shape reaches further than a kilometre")
	}
	return nil
}

// Slack is how far p could move in any direction and stay in the region, in
// mm; negative outside. It is measured on the shapes as they were given, not
// on what the search made of them.
func (r *Region) Slack(p plane.Point) float64 {
	s := math.Inf(1)
	for _, b := range r.bounds {
		s = min(s, b.Shape.Distance(p)-b.Margin)
	}
	for _, o := range r.keepOuts {
		s = min(s, -o.Shape.Distance(p)-o.Clearance)
	}
	return s
}

// Contains reports whether a centre may lie at p.
func (r *Region) Contains(p plane.Point) bool { return r.Slack(p) >= -feasibleMM }

// Box is an upright rectangle around the region.
func (r *Region) Box() plane.Rect { return r.box }
