package scene

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// Size is a sheet of paper in mm, as it is held.
type Size struct{ Width, Height float64 }

// The papers, upright: ISO 216 and ANSI/ASME Y14.1.
var (
	A4     = Size{210, 297}
	Letter = Size{8.5 * 25.4, 11 * 25.4}
)

// Across is the sheet turned on its side.
func (s Size) Across() Size { return Size{s.Height, s.Width} }

// ErrNotFinite is given when a drawing holds a coordinate that is no number:
// nothing true could be printed.
var ErrNotFinite = errors.New("a drawing holds a place that is not a number")

// Press prints pages into one PDF, in black only.
type Press struct {
	pdf    *fpdf.Fpdf
	loaded map[Face]bool
	err    error
}

// NewPress begins a PDF. On is the date it is asked for, YYYY-MM-DD; it is
// written as the date of the document, so the same input gives the same bytes.
// Any other text gives the first day of 2000.
func NewPress(title, on string) *Press {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: A4.Width, Ht: A4.Height}})
	day, err := time.Parse(time.DateOnly, on)
	if err != nil {
		day = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(day)
	pdf.SetModificationDate(day)
	pdf.SetProducer("Rootbell", true)
	pdf.SetTitle(Sans.Clean(title), true)
	pdf.SetLang("en")
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.SetLineJoinStyle("round")
	return &Press{pdf: pdf, loaded: map[Face]bool{}}
}

// Page is a page of the press. Its coordinates are mm from the paper's lower
// left corner, y up.
type Page struct {
	press *Press
	Size  Size
}

// Page adds a sheet.
func (p *Press) Page(size Size) Page {
	// fpdf wants the sheet upright and turns it itself.
	orientation, upright := "P", size
	if size.Width > size.Height {
		orientation, upright = "L", size.Across()
	}
	p.pdf.AddPageFormat(orientation, fpdf.SizeType{Wd: upright.Width, Ht: upright.Height})
	return Page{p, size}
}

// Bytes is the finished document, or the first error met on the way.
func (p *Press) Bytes() ([]byte, error) {
	if p.err != nil {
		return nil, p.err
	}
	var out bytes.Buffer
	if err := p.pdf.Output(&out); err != nil {
		return nil, fmt.Errorf("write the PDF: %w", err)
	}
	return unscaled(out.Bytes())
}

// Draw prints elements given in the page's coordinates.
func (g Page) Draw(elements ...Element) {
	for _, e := range elements {
		if !e.finite() {
			g.press.fail(ErrNotFinite)
			continue
		}
		g.draw(e)
	}
}

// Window prints elements moved by a step and cut off outside the window, which
// is in the page's coordinates.
func (g Page) Window(window Box, by Point, elements []Element) {
	pdf := g.press.pdf
	pdf.ClipRect(window.Min.X, g.Size.Height-window.Max.Y, window.Width(), window.Height(), false)
	for _, e := range elements {
		moved := Moved(e, by)
		// Half a line's width may reach over the edge of the window.
		if moved.finite() && !moved.Bounds().Overlaps(window.Grown(Cut.WidthMM())) {
			continue
		}
		g.Draw(moved)
	}
	pdf.ClipEnd()
}

func (p *Press) fail(err error) {
	if p.err == nil {
		p.err = err
	}
}

func (g Page) draw(e Element) {
	switch e := e.(type) {
	case Line:
		g.path(Polyline(e.From, e.To), e.Class, Open)
	case Shape:
		g.path(e.Path, e.Class, e.Fill)
	case Circle:
		g.path(Disc(e.Centre, e.RadiusMM), e.Class, e.Fill)
	case Text:
		g.text(e)
	case Group:
		g.Draw(e.Elements...)
	}
}

func (g Page) path(p Path, class Class, fill Fill) {
	style := map[bool]string{true: "F", false: ""}[fill != Open]
	if class != None {
		style += "D"
	}
	pieces := p.pieces()
	if style == "" || len(pieces) == 0 {
		return
	}
	pdf := g.press.pdf
	pdf.SetDrawColor(0, 0, 0)
	pdf.SetLineWidth(class.WidthMM())
	pdf.SetDashPattern(strokes[class].dashMM, 0)
	ink := map[Fill]int{White: 255, Black: 0}[fill]
	pdf.SetFillColor(ink, ink, ink)
	pdf.MoveTo(pieces[0].from.X, g.Size.Height-pieces[0].from.Y)
	for _, s := range pieces {
		if s.bulge == 0 {
			pdf.LineTo(s.to.X, g.Size.Height-s.to.Y)
			continue
		}
		g.arcTo(s)
	}
	if p.Closed {
		pdf.ClosePath()
	}
	pdf.DrawPath(style)
}

// arcStep is the most one cubic turns: at an eighth of a circle it leaves the
// circle by 4e-6 of the radius.
const arcStep = math.Pi / 4

func (g Page) arcTo(s piece) {
	centre, radius, start, sweep := s.arc()
	n := max(1, int(math.Ceil(math.Abs(sweep)/arcStep-1e-9)))
	step := sweep / float64(n)
	reach := radius * 4 / 3 * math.Tan(step/4)
	for i := range n {
		sin0, cos0 := math.Sincos(start + step*float64(i))
		sin1, cos1 := math.Sincos(start + step*float64(i+1))
		from := Point{centre.X + radius*cos0, centre.Y + radius*sin0}
		to := Point{centre.X + radius*cos1, centre.Y + radius*sin1}
		c0 := from.Plus(Point{-sin0, cos0}.Times(reach))
		c1 := to.Minus(Point{-sin1, cos1}.Times(reach))
		h := g.Size.Height
		g.press.pdf.CurveBezierCubicTo(c0.X, h-c0.Y, c1.X, h-c1.Y, to.X, h-to.Y)
	}
}

// haloMM is how much ground a halo clears round the lettering.
const haloMM = 0.4

func (g Page) text(t Text) {
	text := t.Face.Clean(t.Text)
	if text == "" {
		return
	}
	pdf := g.press.pdf
	face := typefaces[t.Face]
	if !g.press.loaded[t.Face] {
		pdf.AddUTF8FontFromBytes(face.name, "", face.data)
		g.press.loaded[t.Face] = true
	}
	if t.Halo {
		g.halo(t)
	}
	pdf.SetFont(face.name, "", t.SizeMM/PointMM)
	ink := map[bool]int{true: 255, false: 0}[t.Reversed]
	pdf.SetTextColor(ink, ink, ink)
	x, y := t.At.X, g.Size.Height-t.At.Y
	if t.Turn != 0 {
		pdf.TransformBegin()
		pdf.TransformRotate(t.Turn, x, y)
	}
	width := t.Face.Width(text, t.SizeMM)
	pdf.Text(x-width*[...]float64{0, 0.5, 1}[t.Anchor], y, text)
	if t.Turn != 0 {
		pdf.TransformEnd()
	}
}

func (g Page) halo(t Text) {
	corners := t.corners()
	across := Point{haloMM, 0}.Turned(t.Turn)
	upright := Point{0, haloMM / 2}.Turned(t.Turn)
	g.path(Polygon(
		corners[0].Minus(across).Plus(upright), corners[1].Plus(across).Plus(upright),
		corners[2].Plus(across).Plus(upright), corners[3].Minus(across).Plus(upright),
	), None, White)
}
