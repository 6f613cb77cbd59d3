// Package content is what a paper says, apart from how it is set: the steps,
// tables, cautions, blanks and pictures that the printed sheet and the page on
// a screen have in common.
package content

import "rootbell/internal/paper/scene"

// Sheet is one paper, or the part of one that is about one tub.
type Sheet struct {
	Title    string
	Block    Block
	Stop     string // 'do not drill: REASON'; empty when nothing stops it
	Sections []Section
}

// Block is the title block.
type Block struct {
	Garden   string // with '(invented)' behind it where it is
	Invented bool
	Drawing  string
	Units    string // of the marks
	Revision string
	Date     string // YYYY-MM-DD
	Paper    string // A4 or Letter; empty for a file without a size of paper
}

// Section is a part under one heading. What is empty is left out; the fields
// stand in the order in which they are read.
type Section struct {
	Heading    string
	Whole      bool // to be cut out: framed, and not parted over two pages
	Together   bool // not parted over two pages
	Cautions   []string
	Paragraphs []string
	Steps      Steps
	Figures    []Figure
	Asks       []Ask
	Lines      []Line
	Tables     []Table
	List       []string
}

// Steps are done in order, numbered from First; the zero value has none.
type Steps struct {
	First int
	Items []string
}

// Figure is a picture for a page. It is never true to scale there.
type Figure struct {
	Caption string
	// Desc says what is seen, for who cannot see it.
	Desc string
	// SVG is an svg element without any style of its own.
	SVG string
	// WidthMM is how wide the drawing is, whose letters are some 3 mm high.
	WidthMM float64
	// Print is what the paper itself has of it, at true size; nil for a picture
	// that is only for the page, or that the paper draws by itself.
	Print *Print
}

// Print is a drawing as it is printed.
type Print struct {
	Frame    scene.Box // what is shown, in mm
	Elements []scene.Element
}

// NotToScale belongs in the caption of a drawing that is true on paper.
const NotToScale = "This picture is not to scale."

// FigureOf draws elements for a page that brings its own style sheet. The name
// is what the picture is called; the frame is what is shown, in mm.
func FigureOf(name, caption, desc string, frame scene.Box, elements []scene.Element) Figure {
	drawing := scene.Drawing{Title: name, Desc: desc, Frame: frame, Elements: elements, Inline: true}
	return Figure{Caption: caption, Desc: desc, SVG: string(drawing.SVG()), WidthMM: frame.Width()}
}

// PrintedOf is FigureOf for a drawing that stands on the paper too.
func PrintedOf(name, caption, desc string, frame scene.Box, elements []scene.Element) Figure {
	out := FigureOf(name, caption, desc, frame, elements)
	out.Print = &Print{Frame: frame, Elements: elements}
	return out
}

// Ask is a blank box for one number.
type Ask struct {
	Letter string // on the drawing; empty where there is none
	Words  string
	Unit   string
}
