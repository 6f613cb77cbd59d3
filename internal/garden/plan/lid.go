package plan

// Lid is the lid, seen from above and lying on its tub. The origin of all x and
// y is the lower left of the flat part's bounding box, x to the right, y up.
type Lid struct {
	// Width and depth of the flat part of a rectangular lid.
	Size Pair `plan:"size" in:"5 cm to 3 m" one:"lid,required"`
	// Diameter of the flat part of a round lid.
	Diameter Length `plan:"diameter" in:"5 cm to 3 m" one:"lid,required"`
	// The flat part of any other lid, corner by corner.
	Outline []Pair `plan:"outline" in:"-1 m to 3 m" least:"3" one:"lid,required"`
	// Radius of the corners of a rectangular lid.
	CornerRadius Length `plan:"corner_radius" in:"0 mm to 1 m" default:"0 mm"`
	// Thickness of the lid where the holes go.
	Thickness Length `plan:"thickness" in:"0.5 mm to 10 cm" default:"2 mm; 30 mm for foam"`
	// Height of the lid's underside over the tub's rim, negative where it is sunk in.
	AboveRim Length `plan:"above_rim" in:"-20 cm to 20 cm" default:"0 mm, with a note"`
	// What the lid is made of.
	Material string `plan:"material" words:"plastic,foam" default:"plastic"`
	// Where no hole may go: handles, vents, ribs.
	KeepClear []KeepClear `plan:"keep_clear"`
	// Holes that are there already, or that are fixed.
	Holes []Hole `plan:"holes"`
}

// KeepClear is a shape on the lid where no hole may go.
type KeepClear struct {
	// From corner to corner: x0, y0, x1, y1.
	Rectangle Box `plan:"rectangle" in:"-1 m to 3 m" one:"shape,required"`
	// x, y, radius.
	Circle Disc `plan:"circle" in:"-1 m to 3 m" one:"shape,required"`
	// Corner by corner.
	Polygon []Pair `plan:"polygon" in:"-1 m to 3 m" least:"3" one:"shape,required"`
	// A straight rib from point to point; it needs a width.
	Rib Line `plan:"rib" in:"-1 m to 3 m" one:"shape,required" needs:"width"`
	// Width of the rib.
	Width Length `plan:"width" in:"0.5 mm to 50 cm" with:"rib"`
	// What is there.
	Why string `plan:"why"`
}

// Hole is a fixed hole.
type Hole struct {
	// x and y of its centre.
	At Pair `plan:"at,required" in:"-1 m to 3 m"`
}
