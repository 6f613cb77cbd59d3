// Package cutaway is a tub cut upright along its length with all that hangs and
// stands in it, as shapes in real millimetres that paper and page draw alike.
package cutaway

import (
	"fmt"
	"math"
	"slices"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Cut is a tub cut upright, the shelf it stands on, the plants and the lamp.
// Lengths are in mm; heights count from the tub's inside floor unless they say
// else. In shapes x is 0 at the tub's middle and y at its inside floor.
type Cut struct {
	AtMM float64 // where it is cut, up from the lid's lower edge

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

	WallGuessed bool     // whether the wall was never measured
	Guessed     []string // what was not measured and is drawn all the same, a sentence each
}

// Width is a width at a height.
type Width = garden.WidthAt

// Of is the cut through one tub of an assessment; ok is false where no lid
// could be laid out.
func Of(a *garden.Assessment, tub int) (c Cut, ok bool) {
	t := a.Tubs[tub]
	if t.Lid == nil || t.Lid.Section == nil {
		return Cut{}, false
	}
	s, cup := t.Lid.Section, a.Plan.Tubs[tub].Cup
	c = Cut{
		AtMM: s.YMM, Profile: s.Wall,
		FloorMM: s.FloorMM, LidWidthMM: s.LidToMM - s.LidFromMM, LidThicknessMM: s.LidThicknessMM, LidFaceMM: s.LidFaceMM,
		LidShiftMM: (s.LidFromMM+s.LidToMM)/2 - s.MiddleMM,
		Cup:        sheet.Cup{BodyMM: float64(cup.Body.Value), RimMM: float64(cup.Rim.Value), DepthMM: float64(cup.Depth.Value)},
		FillMM:     s.FillMM, LaterFillMM: s.LaterMM, LowestMM: s.LowestMM, Aerated: s.Aerated, StoneMM: s.StoneMM,
		PlantMM: s.PlantMM, SpreadMM: s.SpreadMM, LampMM: s.LampMM, LampWideMM: s.LampLengthMM,
		ShelfWideMM: s.ShelfMM, ClearMM: s.ClearMM,
	}
	for _, x := range s.CupsMM {
		c.CupsAtMM = append(c.CupsAtMM, x-s.LidFromMM)
	}
	slices.Sort(c.CupsAtMM)
	if len(c.Profile) == 0 {
		c.Profile = []Width{{HeightMM: 0, MM: c.LidWidthMM}, {HeightMM: s.RimMM, MM: c.LidWidthMM}}
		c.WallGuessed = true
		c.Guessed = append(c.Guessed, "The wall was not measured: it is drawn straight, as wide as the lid.")
	}
	c.OutsideWidthMM = max(s.OutsideWidthMM, c.LidWidthMM, c.Profile[len(c.Profile)-1].MM)
	if s.OutsideWidthMM == 0 {
		c.Guessed = append(c.Guessed, "The outside was not measured.")
	}
	return c, true
}

// mostMM is the most a length can be: a bay of a shelf, not a building.
const mostMM = 5000

// Check says what is wrong with a cut that cannot be drawn, or nil.
func (c Cut) Check() error {
	if len(c.Profile) < 2 {
		return fmt.Errorf("the section needs the tub's width at two heights")
	}
	values := []float64{
		c.OutsideWidthMM, c.FloorMM, c.LidWidthMM, c.LidThicknessMM, c.LidFaceMM, c.FillMM, c.LaterFillMM, c.LowestMM,
		c.StoneMM, c.PlantMM, c.SpreadMM, c.LampMM, c.LampWideMM, c.ShelfWideMM, c.ClearMM, c.Cup.BodyMM, c.Cup.RimMM, c.Cup.DepthMM,
		math.Abs(c.LidShiftMM),
	}
	for _, w := range c.Profile {
		values = append(values, w.HeightMM, w.MM)
	}
	for _, v := range append(values, c.CupsAtMM...) {
		if !(v >= 0 && v <= mostMM) { // written so that what is no number fails too
			return fmt.Errorf("a section with a length of %g mm cannot be drawn; lengths must be 0 to %d mm", v, mostMM)
		}
	}
	if c.OutsideWidthMM <= 0 || c.LidFaceMM <= 0 {
		return fmt.Errorf("the section needs the tub's outside width and the height of its lid")
	}
	return nil
}

// HalfInside is half the inside width at a height, straight between the widths
// that are known.
func (c Cut) HalfInside(height float64) float64 {
	p := c.Profile
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

// Rim is the height of the tub's inside rim.
func (c Cut) Rim() float64 { return c.Profile[len(c.Profile)-1].HeightMM }

// OnLid is the place of a length along the lid, from its left end.
func (c Cut) OnLid(x float64) float64 { return c.LidShiftMM - c.LidWidthMM/2 + x }

func box(x0, y0, x1, y1 float64) scene.Box {
	return scene.Box{Min: scene.Point{X: x0, Y: y0}, Max: scene.Point{X: x1, Y: y1}}
}
