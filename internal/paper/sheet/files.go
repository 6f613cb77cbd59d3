package sheet

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"

	"rootbell/internal/paper/scene"
)

// LidSVG is the lid at true scale as one SVG document: the plan's coordinates
// stand in data-x and data-y, rulers along the lower and the left edge, and the
// title block under it.
func LidSVG(l Lid) ([]byte, error) {
	if err := l.Check(scene.A4); err != nil {
		return nil, err
	}
	elements, frame := l.picture()
	title := scene.BoxAt(frame.Min.Minus(scene.Point{Y: titleMM}), max(frame.Width(), 150), titleMM-1)
	elements = append(elements, l.TitleBlock(title, "Lid of "+l.Tub, scene.Size{})...)
	frame = frame.Union(title.Grown(1))
	drawing := scene.Drawing{Title: "Lid of " + l.Tub, Desc: l.description(" at true scale"), Frame: frame, Elements: elements}
	return drawing.SVG(), nil
}

// picture is the lid with its rulers, and the stop across it where there is one.
func (l Lid) picture() ([]scene.Element, scene.Box) {
	elements := append(l.draft().drawing(), l.rulers()...)
	if l.Stop != "" {
		elements = append(elements, StopPlate(l.Outline.Bounds(), l.Stop)...)
	}
	return elements, l.Outline.Bounds().Grown(rulerRoomMM)
}

// description says in words what a drawing shows that is made at a scale.
func (l Lid) description(scale string) string {
	box := l.Outline.Bounds()
	text := fmt.Sprintf("The lid of %s seen from above%s, %s by %s %s, with %d holes for cups.",
		l.Tub, scale, l.mark(box.Width()), l.mark(box.Height()), UnitName(l.System), len(l.Holes))
	for _, h := range l.Holes {
		text += fmt.Sprintf(" Hole %d: %s right, %s up.", h.N, l.mark(h.XMM), l.mark(h.YMM))
	}
	if l.Stop != "" {
		text = capital(StopWords(l.Stop)) + ". " + text
	}
	return text
}

// LidDXF is the lid as a DXF of release 12 in mm: cup holes on layer HOLES,
// the outline on LID, keep-clears on CLEAR, the air line on AIR, the service
// hole on SERVICE, a 100 mm line on CHECK and words on TEXT.
func LidDXF(l Lid) ([]byte, error) {
	if err := l.Check(scene.A4); err != nil {
		return nil, err
	}
	elements := l.draft().drawing()
	box := l.Outline.Bounds()
	words := scene.Mark{Layer: "TEXT"}
	line := func(row int, text string) {
		at := scene.Point{X: box.Min.X, Y: box.Min.Y - 15 - 7*float64(row)}
		elements = append(elements, scene.Text{At: at, Text: text, SizeMM: 5, Mark: words})
	}
	check := box.Min.Minus(scene.Point{Y: 8})
	elements = append(elements, scene.Line{
		From: check, To: check.Plus(scene.Point{X: barMM}), Mark: scene.Mark{Layer: "CHECK"},
	})
	for i, text := range l.fileWords() {
		line(i, text)
	}
	if l.Stop != "" {
		line(2, StopWords(l.Stop))
	}
	for _, h := range l.Holes {
		elements = append(elements, scene.Text{
			At: h.At().Plus(scene.Point{X: 3, Y: 3}), Text: itoa(h.N), SizeMM: numberMM, Mark: words,
		})
	}
	return scene.DXF(elements), nil
}

// fileWords stand in the file for a machine under the line to measure.
func (l Lid) fileWords() []string {
	return []string{
		"Units: millimetres. The line above is 100 mm long.",
		"Lid of " + l.Tub + ", " + l.garden() + ", " + l.On + ". Seen from above, lid on.",
	}
}

func (l Lid) garden() string {
	if l.Invented {
		return l.Garden + " (invented)"
	}
	return l.Garden
}

// LidCSV is the cup holes as RFC 4180 text: n, x_mm, y_mm, diameter_mm.
func LidCSV(l Lid) ([]byte, error) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	if err := w.WriteAll(l.holeRows()); err != nil {
		return nil, fmt.Errorf("write the holes as CSV: %w", err)
	}
	return out.Bytes(), nil
}

// holeRows are the cup holes under their heads.
func (l Lid) holeRows() [][]string {
	rows := [][]string{{"n", "x_mm", "y_mm", "diameter_mm"}}
	for _, h := range l.Holes {
		rows = append(rows, []string{itoa(h.N), hundredths(h.XMM), hundredths(h.YMM), hundredths(h.SizeMM)})
	}
	return rows
}

// hundredths writes mm to 0.01, without ending zeros.
func hundredths(mm float64) string {
	return strconv.FormatFloat(noMinusZero(mm, 2), 'f', -1, 64)
}
