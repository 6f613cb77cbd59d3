package booklet

import (
	"fmt"
	"math"
	"strconv"

	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Section is all that the section drawing of one tub shows: the shelf, the tub
// cut through, what hangs and stands in it, the plants and the lamp. Lengths
// are in mm; heights count from the tub's inside floor unless they say else.
type Section struct {
	Cover
	Tub string

	// Profile is the inside width at a height, from the floor to the rim.
	Profile        []Width
	OutsideWidthMM float64 // the widest, lid on
	FloorMM        float64 // thickness under the inside floor, with the feet

	LidWidthMM, LidThicknessMM float64
	LidFaceMM                  float64 // height of the lid's upper face
	LidShiftMM                 float64 // how far the lid's middle lies right of the tub's
	Cup                        sheet.Cup
	CupsAtMM                   []float64 // centres along the section, from the lid's left end

	FillMM      float64 // the line on transplant day
	LaterFillMM float64 // the line once roots hang; 0 where it stays
	LowestMM    float64 // the lowest safe line

	Aerated    bool
	StoneMM    float64 // height of the air stone; 0 without one
	PlantMM    float64 // height over the lid at harvest
	SpreadMM   float64 // width of a plant at harvest
	LampMM     float64 // the lamp's underside over the lid; 0 without one
	LampWideMM float64

	ShelfWideMM float64 // 0 where it was not measured
	ClearMM     float64 // from the shelf to the next one; 0 where unknown
	Stop        string
	Notes       []string // what the drawing takes for granted, a line each
}

// Width is a width at a height.
type Width struct{ HeightMM, MM float64 }

// mostSectionMM is the most a length can be: a bay of a shelf, not a building.
const mostSectionMM = 5000

func (s Section) check() error {
	if len(s.Profile) < 2 {
		return fmt.Errorf("the section of %s needs the tub's width at two heights", s.Tub)
	}
	values := []float64{
		s.OutsideWidthMM, s.FloorMM, s.LidWidthMM, s.LidThicknessMM, s.LidFaceMM, s.FillMM, s.LaterFillMM, s.LowestMM,
		s.StoneMM, s.PlantMM, s.SpreadMM, s.LampMM, s.LampWideMM, s.ShelfWideMM, s.ClearMM, s.Cup.BodyMM, s.Cup.RimMM, s.Cup.DepthMM,
	}
	for _, w := range s.Profile {
		values = append(values, w.HeightMM, w.MM)
	}
	values = append(values, math.Abs(s.LidShiftMM))
	for _, v := range append(values, s.CupsAtMM...) {
		if !(v >= 0 && v <= mostSectionMM) {
			return fmt.Errorf("a section of %s with a length of %g mm cannot be drawn; lengths must be 0 to %d mm", s.Tub, v, mostSectionMM)
		}
	}
	if s.OutsideWidthMM <= 0 || s.LidFaceMM <= 0 {
		return fmt.Errorf("the section of %s needs the tub's outside width and the height of its lid", s.Tub)
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

func (d *sectionDraft) box(x0, y0, x1, y1 float64) scene.Box {
	return scene.Box{Min: d.at(x0, y0), Max: d.at(x1, y1)}
}

func (d *sectionDraft) mark(mm float64) string { return sheet.Mark(mm, d.System) }

// halfInside is half the inside width at a height, straight between the widths
// that are known.
func (s Section) halfInside(height float64) float64 {
	p := s.Profile
	for i := 1; i < len(p); i++ {
		if height <= p[i].HeightMM || i == len(p)-1 {
			rise := p[i].HeightMM - p[i-1].HeightMM
			if rise <= 0 {
				return p[i].MM / 2
			}
			share := math.Max(0, math.Min(1, (height-p[i-1].HeightMM)/rise))
			return (p[i-1].MM + share*(p[i].MM-p[i-1].MM)) / 2
		}
	}
	return 0
}

func (s Section) rim() float64 { return s.Profile[len(s.Profile)-1].HeightMM }
