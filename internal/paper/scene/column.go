package scene

// Column lays text, tables and drawings under one another in a box on a page.
// What does not fit is left out and reported by Full, so nothing runs over an
// edge or over its neighbour.
type Column struct {
	Box      Box
	Elements []Element
	// Blocks are the boxes laid so far, top down; a test holds them apart.
	Blocks []Box

	top  float64
	full bool
}

// NewColumn begins at the top of the box.
func NewColumn(box Box) *Column { return &Column{Box: box, top: box.Max.Y} }

// Left is the height still free in mm.
func (c *Column) Left() float64 { return c.top - c.Box.Min.Y }

// Full says whether something did not fit.
func (c *Column) Full() bool { return c.full }

// Gap leaves mm free.
func (c *Column) Gap(mm float64) { c.top -= mm }

// roundingMM forgives the rounding of sums of heights.
const roundingMM = 1e-6

// Take claims the next mm of height over the column's width; ok is false, and
// the column full, when they are not there.
func (c *Column) Take(mm float64) (Box, bool) {
	if c.full || mm > c.Left()+roundingMM {
		c.full = true
		return Box{}, false
	}
	block := Box{Point{c.Box.Min.X, c.top - mm}, Point{c.Box.Max.X, c.top}}
	c.top -= mm
	c.Blocks = append(c.Blocks, block)
	return block, true
}

// Style is how running text is set.
type Style struct {
	Face    Face
	SizeMM  float64
	Leading float64 // line height as a multiple of the size; 0 for 1.3
	Indent  float64 // mm from the column's left edge
}

func (s Style) leadMM() float64 {
	if s.Leading == 0 {
		return s.SizeMM * 1.3
	}
	return s.SizeMM * s.Leading
}

// baseline is where the base line of a line of type lies under its top.
func (s Style) baseline() float64 { return s.leadMM()/2 + s.SizeMM*(ascent-descent)/2 }

// Text lays a paragraph.
func (c *Column) Text(style Style, text string) {
	c.labelled(style, "", Style{}, text)
}

// Step lays a paragraph with a label, its number, hung before it.
func (c *Column) Step(style Style, label string, labelFace Face, text string) {
	c.labelled(style, label, Style{Face: labelFace}, text)
}

func (c *Column) labelled(style Style, label string, labelStyle Style, text string) {
	lines := style.Face.Wrap(text, style.SizeMM, c.Box.Width()-style.Indent)
	block, ok := c.Take(float64(len(lines)) * style.leadMM())
	if !ok {
		return
	}
	for i, line := range lines {
		at := Point{block.Min.X + style.Indent, block.Max.Y - float64(i)*style.leadMM() - style.baseline()}
		if i == 0 && label != "" {
			// The label ends a little before the text, so numbers stand in line.
			c.Elements = append(c.Elements, Text{
				At: Point{at.X - style.SizeMM*0.5, at.Y}, Text: label,
				SizeMM: style.SizeMM, Face: labelStyle.Face, Anchor: End,
			})
		}
		c.Elements = append(c.Elements, Text{At: at, Text: line, SizeMM: style.SizeMM, Face: style.Face})
	}
}

// Rule draws a level line across the column and leaves gap mm under it.
func (c *Column) Rule(class Class, gap float64) {
	block, ok := c.Take(class.WidthMM() + gap)
	if !ok {
		return
	}
	y := block.Max.Y - class.WidthMM()/2
	c.Elements = append(c.Elements, Line{From: Point{block.Min.X, y}, To: Point{block.Max.X, y}, Class: class})
}

// Figure lays elements, drawn in their own mm, into the column at true size
// with their lower left corner on the block's; frame is what is shown of them.
func (c *Column) Figure(frame Box, elements []Element) {
	block, ok := c.Take(frame.Height())
	if !ok {
		return
	}
	for _, e := range elements {
		c.Elements = append(c.Elements, Moved(e, block.Min.Minus(frame.Min)))
	}
}

// Columns divides a box into n columns with gutters between them.
func Columns(box Box, n int, gutter float64) []Box {
	width := (box.Width() - gutter*float64(n-1)) / float64(n)
	out := make([]Box, n)
	for i := range out {
		out[i] = BoxAt(Point{box.Min.X + float64(i)*(width+gutter), box.Min.Y}, width, box.Height())
	}
	return out
}
