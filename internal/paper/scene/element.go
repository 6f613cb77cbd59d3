package scene

// Element is one thing drawn: Line, Shape, Circle, Text or Group.
type Element interface {
	// Bounds is the smallest box round the thing, line width left out.
	Bounds() Box
	finite() bool
}

// Mark ties an element to what it stands for. The zero value ties it to
// nothing.
type Mark struct {
	ID    string // the SVG id
	Title string // what a reader is told, SVG title
	Layer string // the DXF layer; without one the element is left out of a DXF
	At    *Point // the coordinates of the plan: data-x and data-y
}

// Line is a straight line.
type Line struct {
	From, To Point
	Class    Class
	Mark     Mark
}

// Shape is a path drawn and perhaps filled.
type Shape struct {
	Path  Path
	Class Class
	Fill  Fill
	Mark  Mark
}

// Circle is a full circle, which stays a circle in SVG and DXF.
type Circle struct {
	Centre   Point
	RadiusMM float64
	Class    Class
	Fill     Fill
	Mark     Mark
}

// Anchor says which end of a text stands at its point.
type Anchor int

// The anchors. The zero value is Start.
const (
	Start Anchor = iota
	Middle
	End
)

// Text is one line of lettering. At is on the base line; SizeMM is the type
// size (the em). Halo clears the ground behind it, Reversed sets it white.
type Text struct {
	At       Point
	Text     string
	SizeMM   float64
	Face     Face
	Anchor   Anchor
	Turn     float64 // degrees, counter-clockwise
	Halo     bool
	Reversed bool
	Mark     Mark
}

// Group is a number of elements that belong together.
type Group struct {
	Elements []Element
	Mark     Mark
}

// Bounds is the box from end to end.
func (l Line) Bounds() Box { return EmptyBox().With(l.From).With(l.To) }

// Bounds is the box round the path.
func (s Shape) Bounds() Box { return s.Path.Bounds() }

// Bounds is the box round the circle.
func (c Circle) Bounds() Box { return (Box{c.Centre, c.Centre}).Grown(c.RadiusMM) }

// Bounds is the box round the lettering, from under the descenders to over the
// capitals, as the face measures it.
func (t Text) Bounds() Box {
	box := EmptyBox()
	for _, corner := range t.corners() {
		box = box.With(corner)
	}
	return box
}

// Bounds is the box round all members.
func (g Group) Bounds() Box { return Bounds(g.Elements) }

// Bounds is the smallest box round all the elements.
func Bounds(elements []Element) Box {
	box := EmptyBox()
	for _, e := range elements {
		box = box.Union(e.Bounds())
	}
	return box
}

// Shares of the type size that lettering reaches below and above the base line.
const (
	descent = 0.24
	ascent  = 0.76
)

func (t Text) corners() [4]Point {
	width := t.Face.Width(t.Text, t.SizeMM)
	left := 0.0
	switch t.Anchor {
	case Middle:
		left = -width / 2
	case End:
		left = -width
	}
	low, high := -descent*t.SizeMM, ascent*t.SizeMM
	corners := [4]Point{{left, low}, {left + width, low}, {left + width, high}, {left, high}}
	for i, c := range corners {
		corners[i] = c.Turned(t.Turn).Plus(t.At)
	}
	return corners
}

func (l Line) finite() bool   { return l.From.finite() && l.To.finite() }
func (s Shape) finite() bool  { return s.Path.finite() }
func (c Circle) finite() bool { return c.Centre.finite() && finite(c.RadiusMM) && c.RadiusMM >= 0 }
func (t Text) finite() bool {
	return t.At.finite() && finite(t.SizeMM) && t.SizeMM > 0 && finite(t.Turn)
}

func (g Group) finite() bool {
	for _, e := range g.Elements {
		if !e.finite() {
			return false
		}
	}
	return true
}

// Moved is the element moved by a step; the plan's coordinates in its mark stay.
func Moved(e Element, by Point) Element {
	return Mapped(e, 1, func(p Point) Point { return p.Plus(by) })
}

// Mapped is the element with its points moved and its radii scaled; type sizes
// and line widths stay. The move may turn, shift and scale evenly.
func Mapped(e Element, scale float64, move func(Point) Point) Element {
	switch e := e.(type) {
	case Line:
		e.From, e.To = move(e.From), move(e.To)
		return e
	case Shape:
		e.Path = e.Path.Mapped(move)
		return e
	case Circle:
		e.Centre, e.RadiusMM = move(e.Centre), e.RadiusMM*scale
		return e
	case Text:
		e.At = move(e.At)
		return e
	case Group:
		members := make([]Element, len(e.Elements))
		for i, member := range e.Elements {
			members[i] = Mapped(member, scale, move)
		}
		e.Elements = members
		return e
	}
	return e
}
