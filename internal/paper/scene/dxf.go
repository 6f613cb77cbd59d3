package scene

import (
	"fmt"
	"slices"
	"strings"
)

// DXF is the elements that have a layer, as an ASCII DXF of release 12
// (AC1009) in millimetres. Circles stay circles, and a path is a polyline with
// bulges. Groups are walked through; what is not a finite number is left out.
func DXF(elements []Element) []byte {
	w := dxfWriter{}
	w.section("HEADER", func() {
		w.pairs(9, "$ACADVER", 1, "AC1009", 9, "$INSUNITS", 70, 4, 9, "$MEASUREMENT", 70, 1)
	})
	w.section("TABLES", func() { w.tables(elements) })
	w.section("ENTITIES", func() {
		for _, e := range elements {
			w.entity(e)
		}
	})
	w.pairs(0, "EOF")
	return []byte(w.String())
}

type dxfWriter struct{ strings.Builder }

// pairs writes group codes and their values by turns.
func (w *dxfWriter) pairs(codesAndValues ...any) {
	for i := 0; i+1 < len(codesAndValues); i += 2 {
		value := codesAndValues[i+1]
		if mm, ok := value.(float64); ok {
			value = dxfNumber(mm)
		}
		_, _ = fmt.Fprintf(w, "%3d\r\n%v\r\n", codesAndValues[i], value)
	}
}

func (w *dxfWriter) section(name string, body func()) {
	w.pairs(0, "SECTION", 2, name)
	body()
	w.pairs(0, "ENDSEC")
}

func (w *dxfWriter) tables(elements []Element) {
	w.pairs(0, "TABLE", 2, "LTYPE", 70, 1)
	w.pairs(0, "LTYPE", 2, "CONTINUOUS", 70, 0, 3, "Solid line", 72, 65, 73, 0, 40, 0.0)
	w.pairs(0, "ENDTAB")
	layers := layersOf(elements, []string{"0"})
	w.pairs(0, "TABLE", 2, "LAYER", 70, len(layers))
	for _, layer := range layers {
		// Colour 7 is the one that shows on white and on black.
		w.pairs(0, "LAYER", 2, dxfText(layer), 70, 0, 62, 7, 6, "CONTINUOUS")
	}
	w.pairs(0, "ENDTAB")
	w.pairs(0, "TABLE", 2, "STYLE", 70, 1)
	w.pairs(0, "STYLE", 2, "STANDARD", 70, 0, 40, 0.0, 41, 1.0, 50, 0.0, 71, 0, 42, 2.5, 3, "txt", 4, "")
	w.pairs(0, "ENDTAB")
}

// layersOf are the layers in the order they first appear.
func layersOf(elements []Element, known []string) []string {
	for _, e := range elements {
		if g, ok := e.(Group); ok {
			known = layersOf(g.Elements, known)
		}
		if layer := markOf(e).Layer; layer != "" && !slices.Contains(known, layer) {
			known = append(known, layer)
		}
	}
	return known
}

func markOf(e Element) Mark {
	switch e := e.(type) {
	case Line:
		return e.Mark
	case Shape:
		return e.Mark
	case Circle:
		return e.Mark
	case Text:
		return e.Mark
	case Group:
		return e.Mark
	}
	return Mark{}
}

func (w *dxfWriter) entity(e Element) {
	if g, ok := e.(Group); ok {
		for _, member := range g.Elements {
			w.entity(member)
		}
		return
	}
	layer := dxfText(markOf(e).Layer)
	if layer == "" || !e.finite() {
		return
	}
	switch e := e.(type) {
	case Line:
		w.pairs(0, "LINE", 8, layer, 10, e.From.X, 20, e.From.Y, 30, 0.0, 11, e.To.X, 21, e.To.Y, 31, 0.0)
	case Circle:
		w.pairs(0, "CIRCLE", 8, layer, 10, e.Centre.X, 20, e.Centre.Y, 30, 0.0, 40, e.RadiusMM)
	case Text:
		w.text(e, layer)
	case Shape:
		w.polyline(e.Path, layer)
	}
}

func (w *dxfWriter) text(t Text, layer string) {
	anchor := map[Anchor]int{Start: 0, Middle: 1, End: 2}[t.Anchor]
	// The height of DXF lettering is that of a capital.
	w.pairs(0, "TEXT", 8, layer, 10, t.At.X, 20, t.At.Y, 30, 0.0, 40, t.SizeMM*capital, 1, dxfText(t.Text),
		50, t.Turn, 7, "STANDARD", 72, anchor, 11, t.At.X, 21, t.At.Y, 31, 0.0)
}

// capital is a capital's height against the type size.
const capital = 0.73

func (w *dxfWriter) polyline(p Path, layer string) {
	closed := 0
	if p.Closed {
		closed = 1
	}
	w.pairs(0, "POLYLINE", 8, layer, 66, 1, 10, 0.0, 20, 0.0, 30, 0.0, 70, closed)
	for _, v := range p.Vertices {
		w.pairs(0, "VERTEX", 8, layer, 10, v.X, 20, v.Y, 30, 0.0, 42, v.Bulge)
	}
	w.pairs(0, "SEQEND", 8, layer)
}

func dxfNumber(v float64) string {
	text := strings.TrimRight(fmt.Sprintf("%.6f", v), "0")
	if strings.HasSuffix(text, ".") {
		text += "0"
	}
	if text == "-0.0" {
		return "0.0"
	}
	return text
}

// dxfText is a text as release 12 can hold it: one line of ASCII, other
// characters as \U+XXXX, which readers of later releases show.
func dxfText(text string) string {
	var out strings.Builder
	for _, r := range text {
		switch {
		case r == '⌀':
			out.WriteString("%%c")
		case r < 0x20 || r == 0x7F:
			out.WriteByte(' ')
		case r < 0x7F:
			out.WriteRune(r)
		case r <= 0xFFFF:
			fmt.Fprintf(&out, `\U+%04X`, r)
		default:
			out.WriteByte('?')
		}
	}
	return out.String()
}
