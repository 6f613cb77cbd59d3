package scene

// Class is a line's meaning; its width and dashes follow from it. The widths
// and kinds follow the habit of ISO 128 (from memory).
type Class int

// The line classes. The zero value is Thin.
const (
	Thin    Class = iota // dimensions, leaders, rulers, hatching
	Cut                  // material that is cut
	Edge                 // edges seen, holes to drill
	Part                 // small parts
	Hidden               // hidden
	Centre               // centres, the edge of the region for centres
	Phantom              // a thing as it will be
	Lowest               // the lowest safe line
	None                 // no line: an area of its fill alone
)

type stroke struct {
	name    string
	widthMM float64
	dashMM  []float64
}

var strokes = map[Class]stroke{
	Thin:    {"n", 0.18, nil},
	Cut:     {"kk", 0.7, nil},
	Edge:    {"k", 0.5, nil},
	Part:    {"mm", 0.35, nil},
	Hidden:  {"hid", 0.25, []float64{1.8, 0.9}},
	Centre:  {"cen", 0.18, []float64{3.6, 0.9, 0.6, 0.9}},
	Phantom: {"pha", 0.18, []float64{3.6, 0.9, 0.6, 0.9, 0.6, 0.9}},
	Lowest:  {"lowl", 0.35, []float64{4.2, 1.2}},
	None:    {"none", 0, nil},
}

// classes is the order in which a style sheet lists them.
var classes = []Class{Cut, Edge, Part, Thin, Hidden, Centre, Phantom, Lowest, None}

// Name is the class's name in SVG.
func (c Class) Name() string { return strokes[c].name }

// WidthMM is the width of the line on paper in mm.
func (c Class) WidthMM() float64 { return strokes[c].widthMM }

// Fill is how an area is filled. The zero value leaves it open.
type Fill int

// The fills: nothing, the paper's white, the ink's black.
const (
	Open Fill = iota
	White
	Black
)

func (f Fill) name() string {
	return [...]string{"open", "white", "black"}[f]
}
