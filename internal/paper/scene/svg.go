package scene

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Drawing is a scene with a frame: what an SVG file holds.
type Drawing struct {
	Title, Desc string
	Frame       Box // what is shown, in mm
	Elements    []Element
	// Inline leaves out the style sheet, for a page that brings its own.
	Inline bool
}

// SVG is the drawing as one SVG document: width and height in mm, a view box in
// mm, so that it prints at true scale. Drawn coordinates count from the frame's
// upper left; data-x and data-y carry the plan's. What is not a finite number
// is left out.
func (d Drawing) SVG() []byte {
	w := svgWriter{frame: d.Frame}
	width, height := number(d.Frame.Width()), number(d.Frame.Height())
	w.printf(`<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img" class="drawing">`+"\n",
		width, height, width, height)
	w.printf("<title>%s</title>\n<desc>%s</desc>\n", xmlText(d.Title), xmlText(d.Desc))
	if !d.Inline {
		w.style()
	}
	for rest := d.Elements; len(rest) > 0; {
		if n := alike(rest); d.Inline && n > 1 {
			w.lines(rest[:n])
			rest = rest[n:]
			continue
		}
		w.element(rest[0])
		rest = rest[1:]
	}
	w.printf("</svg>\n")
	return []byte(w.String())
}

type svgWriter struct {
	strings.Builder
	frame Box
}

func (w *svgWriter) printf(format string, args ...any) {
	_, _ = fmt.Fprintf(w, format, args...) // a strings.Builder never fails
}

func (w *svgWriter) style() {
	w.printf("<style>\n")
	w.printf(".drawing{background:#fff}\n.drawing *{stroke-linejoin:round}\n")
	for _, c := range classes {
		s := strokes[c]
		if c == None {
			w.printf(".none{stroke:none}\n")
			continue
		}
		w.printf(".%s{stroke:#000;stroke-width:%s", s.name, number(s.widthMM))
		if len(s.dashMM) > 0 {
			dashes := make([]string, len(s.dashMM))
			for i, mm := range s.dashMM {
				dashes[i] = number(mm)
			}
			w.printf(";stroke-dasharray:%s", strings.Join(dashes, " "))
		}
		w.printf("}\n")
	}
	w.printf(".open{fill:none}\n.white{fill:#fff}\n.black{fill:#000}\n")
	w.printf(".sans,.sansbold{font-family:'DejaVu Sans Condensed','Noto Sans','Liberation Sans',Arial,sans-serif}\n")
	w.printf(".serif,.serifbold,.serifitalic{font-family:'DejaVu Serif Condensed','Noto Serif',Georgia,serif}\n")
	w.printf(".sansbold,.serifbold{font-weight:bold}\n.serifitalic{font-style:italic}\n")
	w.printf(".halo{paint-order:stroke;stroke:#fff;stroke-width:1}\n.reversed{fill:#fff}\n")
	w.printf("</style>\n")
}

func (w *svgWriter) x(p Point) string { return number(p.X - w.frame.Min.X) }
func (w *svgWriter) y(p Point) string { return number(w.frame.Max.Y - p.Y) }

func (w *svgWriter) element(e Element) {
	if !e.finite() {
		return
	}
	switch e := e.(type) {
	case Line:
		w.leaf("line", fmt.Sprintf(`class="%s" x1="%s" y1="%s" x2="%s" y2="%s"`,
			e.Class.Name(), w.x(e.From), w.y(e.From), w.x(e.To), w.y(e.To)), e.Mark)
	case Shape:
		w.leaf("path", fmt.Sprintf(`class="%s %s" d="%s"`, e.Class.Name(), e.Fill.name(), w.pathData(e.Path)), e.Mark)
	case Circle:
		w.leaf("circle", fmt.Sprintf(`class="%s %s" cx="%s" cy="%s" r="%s"`,
			e.Class.Name(), e.Fill.name(), w.x(e.Centre), w.y(e.Centre), number(e.RadiusMM)), e.Mark)
	case Text:
		w.text(e)
	case Group:
		w.printf("<g%s>\n%s", markAttributes(e.Mark), titleOf(e.Mark))
		for _, member := range e.Elements {
			w.element(member)
		}
		w.printf("</g>\n")
	}
}

// alike is how many lines without a mark and of one class the elements begin
// with.
func alike(elements []Element) (n int) {
	first, ok := elements[0].(Line)
	for ok && n < len(elements) {
		l, is := elements[n].(Line)
		if !is || l.Class != first.Class || l.Mark != (Mark{}) || !l.finite() {
			break
		}
		n++
	}
	return n
}

// lines are lines of one class as one path: squared paper is a third as long
// then.
func (w *svgWriter) lines(all []Element) {
	w.printf(`<path class="%s open" d="`, all[0].(Line).Class.Name())
	for _, e := range all {
		l := e.(Line)
		w.printf("M%s %sL%s %s", w.x(l.From), w.y(l.From), w.x(l.To), w.y(l.To))
	}
	w.printf("\"/>\n")
}

func (w *svgWriter) leaf(name, attributes string, mark Mark) {
	w.printf("<%s %s%s", name, attributes, markAttributes(mark))
	if mark.Title == "" {
		w.printf("/>\n")
		return
	}
	w.printf(">%s</%s>\n", titleOf(mark), name)
}

func (w *svgWriter) text(t Text) {
	class := typefaces[t.Face].name
	if t.Halo {
		class += " halo"
	}
	if t.Reversed {
		class += " reversed"
	}
	anchor := [...]string{"start", "middle", "end"}[t.Anchor]
	w.printf(`<text class="%s" x="%s" y="%s" font-size="%s" text-anchor="%s"`,
		class, w.x(t.At), w.y(t.At), number(t.SizeMM), anchor)
	if t.Turn != 0 {
		w.printf(` transform="rotate(%s %s %s)"`, number(-t.Turn), w.x(t.At), w.y(t.At))
	}
	w.printf("%s>%s%s</text>\n", markAttributes(t.Mark), titleOf(t.Mark), xmlText(t.Text))
}

func (w *svgWriter) pathData(p Path) string {
	var data strings.Builder
	for i, s := range p.pieces() {
		if i == 0 {
			fmt.Fprintf(&data, "M%s %s", w.x(s.from), w.y(s.from))
		}
		if s.bulge == 0 {
			fmt.Fprintf(&data, "L%s %s", w.x(s.to), w.y(s.to))
			continue
		}
		_, radius, _, sweep := s.arc()
		large, clockwise := 0, 0
		if math.Abs(sweep) > math.Pi {
			large = 1
		}
		if sweep < 0 {
			clockwise = 1
		}
		fmt.Fprintf(&data, "A%s %s 0 %d %d %s %s", number(radius), number(radius), large, clockwise, w.x(s.to), w.y(s.to))
	}
	if p.Closed {
		data.WriteString("Z")
	}
	return data.String()
}

func markAttributes(m Mark) string {
	var out strings.Builder
	if m.ID != "" {
		fmt.Fprintf(&out, ` id="%s"`, xmlText(m.ID))
	}
	if m.At != nil && m.At.finite() {
		fmt.Fprintf(&out, ` data-x="%s" data-y="%s"`, number(m.At.X), number(m.At.Y))
	}
	return out.String()
}

func titleOf(m Mark) string {
	if m.Title == "" {
		return ""
	}
	return "<title>" + xmlText(m.Title) + "</title>"
}

// number writes mm with at most three decimals, the same on every machine.
func number(v float64) string {
	if !finite(v) {
		return "0"
	}
	text := strconv.FormatFloat(v, 'f', 3, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

// xmlText escapes a text for content and attributes, and drops what XML 1.0
// cannot hold at all.
func xmlText(text string) string {
	var out strings.Builder
	for _, r := range text {
		switch {
		case r == '&':
			out.WriteString("&amp;")
		case r == '<':
			out.WriteString("&lt;")
		case r == '>':
			out.WriteString("&gt;")
		case r == '"':
			out.WriteString("&quot;")
		case r == '\'':
			out.WriteString("&#39;")
		case r == '\t' || r == '\n' || r == '\r':
			out.WriteByte(' ')
		case r < 0x20 || r == 0xFFFE || r == 0xFFFF || r == 0xFFFD:
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}
