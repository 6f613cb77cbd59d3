package plane

import (
	"errors"
	"fmt"
)

// Check says what makes the circle impossible, or nil.
func (c Circle) Check() error {
	if !c.Centre.Finite() || !finite(c.Radius) {
		return errors.New("the circle has a measure that is not a number")
	}
	if c.Radius <= 0 {
		return errors.New("the circle's radius must be above zero")
	}
	return nil
}

// Check says what makes the capsule impossible, or nil.
func (c Capsule) Check() error {
	if !c.A.Finite() || !c.B.Finite() || !finite(c.Width) {
		return errors.New("the rib has a measure that is not a number")
	}
	if c.Width < 0 {
		return errors.New("the rib's width must not be below zero")
	}
	return nil
}

// Check says what makes the rectangle impossible, or nil.
func (r Rect) Check() error {
	if !r.Min.Finite() || !r.Max.Finite() {
		return errors.New("the rectangle has a measure that is not a number")
	}
	if r.Width() <= 0 || r.Height() <= 0 {
		return errors.New("the rectangle's sides must be above zero")
	}
	return nil
}

// Check says what makes the rounded rectangle impossible, or nil.
func (r RoundedRect) Check() error {
	if err := r.Rect.Check(); err != nil {
		return err
	}
	if !finite(r.Radius) || r.Radius < 0 || 2*r.Radius > min(r.Width(), r.Height()) {
		return errors.New("the corner radius must be from zero to half the shorter side")
	}
	return nil
}

// Check says what makes the polygon impossible, or nil: fewer than three
// corners, a corner given twice, sides that cross or touch, no area.
// Corners are counted from 1 in the message.
func (p Polygon) Check() error {
	if len(p) < 3 {
		return errors.New("the outline needs at least three corners")
	}
	for k, c := range p {
		if !c.Finite() {
			return fmt.Errorf("corner %d is not a number", k+1)
		}
	}
	for i := range p {
		for j := range i {
			if p[i] == p[j] {
				return fmt.Errorf("corners %d and %d are the same place", j+1, i+1)
			}
		}
	}
	if i, j, bad := p.crossing(); bad {
		return fmt.Errorf("the side after corner %d crosses or touches the side after corner %d", i+1, j+1)
	}
	if p.area2() == 0 {
		return errors.New("the outline encloses no area")
	}
	return nil
}

// crossing finds two sides that meet where they must not.
func (p Polygon) crossing() (int, int, bool) {
	n := len(p)
	for i := range n {
		for j := i + 1; j < n; j++ {
			a, b := p.edge(i), p.edge(j)
			switch {
			case j == i+1 || (i == 0 && j == n-1):
				if i == 0 && j == n-1 {
					a, b = b, a
				}
				// Neighbours share a corner and nothing else, so the path may
				// not fold back on itself.
				if turn(a.A, a.B, b.B) == 0 && a.B.Sub(a.A).Dot(b.B.Sub(b.A)) < 0 {
					return i, j, true
				}
			case a.crosses(b):
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// Check says what makes the outline impossible, or nil: no edges, a gap
// between one edge and the next of more than 1e-6 mm, no area. Crossing arcs
// are not looked for.
func (o Outline) Check() error {
	const gapMM = 1e-6 // angles in radians cannot close an arc any better
	if len(o) == 0 {
		return errors.New("the outline has no edges")
	}
	for k, e := range o {
		next := o[(k+1)%len(o)]
		gap := e.End().To(next.Start())
		if !finite(gap) {
			return fmt.Errorf("edge %d is not a number", k+1)
		}
		if gap > gapMM {
			return fmt.Errorf("edge %d does not start where the one before it ends", (k+1)%len(o)+1)
		}
	}
	if o.Area() == 0 {
		return errors.New("the outline encloses no area")
	}
	return nil
}
