package booklet

import (
	"fmt"
	"math"
	"strconv"

	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Section is all that the section drawing of one tub shows.
type Section struct {
	Cover
	cutaway.Cut
	Tub   string
	Stop  string
	Notes []string // what the drawing takes for granted, a line each
}

func (s Section) check() error {
	if err := s.Check(); err != nil {
		return fmt.Errorf("%s: %w", s.Tub, err)
	}
	return nil
}

// SectionSVG is the section to scale as one SVG document. It fails where a
// length is missing that the drawing rests on.
func SectionSVG(s Section) ([]byte, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	d := sectionDraft{Section: s, scale: s.pick()}
	d.draw()
	frame := scene.Bounds(d.elements).Grown(4)
	if s.Stop != "" {
		d.elements = append(d.elements, sheet.StopPlate(frame, s.Stop)...)
	}
	title := scene.BoxAt(frame.Min.Minus(scene.Point{Y: footMM}), max(frame.Width(), 150), footMM)
	d.elements = append(d.elements, s.lid().TitleBlock(title, s.title()+", 1 : "+d.scaleName(), scene.Size{})...)
	drawing := scene.Drawing{
		Title: s.title(), Desc: s.words(", 1 : " + d.scaleName()), Frame: frame.Union(title).Grown(1), Elements: d.elements,
	}
	return drawing.SVG(), nil
}

// Paper that the drawing itself may take, mm.
const (
	sectionWide = 156.0
	sectionHigh = 190.0
)

// pick is the largest usual scale at which the bay fits.
func (s Section) pick() float64 {
	high := s.ClearMM
	if high == 0 {
		high = s.FloorMM + s.LidFaceMM + math.Max(s.PlantMM, s.LampMM) + 60
	}
	for _, scale := range sheet.Scales {
		if math.Max(s.OutsideWidthMM+160, s.ShelfWideMM)/scale <= sectionWide && high/scale <= sectionHigh {
			return scale
		}
	}
	return sheet.Scales[len(sheet.Scales)-1]
}

// sectionDraft is a section being drawn. Its places are real mm with the tub's
// middle at x 0 and its inside floor at y 0.
type sectionDraft struct {
	Section
	scale    float64
	elements []scene.Element
}

func (d *sectionDraft) scaleName() string { return strconv.FormatFloat(d.scale, 'f', -1, 64) }

func (d *sectionDraft) at(x, y float64) scene.Point {
	return scene.Point{X: x / d.scale, Y: y / d.scale}
}

func (d *sectionDraft) add(elements ...scene.Element) { d.elements = append(d.elements, elements...) }

// small is a place in real mm on the paper.
func (d *sectionDraft) small(p scene.Point) scene.Point { return d.at(p.X, p.Y) }

func (d *sectionDraft) path(mm scene.Path) scene.Path { return mm.Mapped(d.small) }

func (d *sectionDraft) rectangle(mm scene.Box) scene.Path { return d.path(scene.Rectangle(mm)) }

func (d *sectionDraft) mark(mm float64) string { return sheet.Mark(mm, d.System) }
