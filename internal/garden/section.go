package garden

import (
	"math"

	"rootbell/internal/base/plane"
)

// Section is a tub cut upright along its length, for a drawing. Heights count
// from the inside floor in mm, x is the plan's on the lid.
type Section struct {
	YMM      float64 // where it is cut
	MiddleMM float64 // x of the opening's middle
	RimMM    float64 // height of the inside rim

	// Wall is the inside width at rising heights; empty for a poured tub, whose
	// wall nobody measured.
	Wall []WidthAt

	OutsideWidthMM float64 // 0 where it was not measured
	FloorMM        float64 // from the shelf to the inside floor; 0 where not known

	LidFromMM, LidToMM        float64 // x of the lid's ends at the cut
	LidFaceMM, LidThicknessMM float64 // upper face, and thickness
	CupsMM                    []float64

	FillMM, LaterMM, LowestMM float64 // Later is 0 where the line stays, Lowest where there is none
	Aerated                   bool
	StoneMM                   float64 // 0 without one
	PlantMM, SpreadMM         float64 // the tallest crop over the lid, and the width it is given

	LampMM, LampLengthMM float64 // the lowest lamp over the lid; 0 without one
	ShelfMM, ClearMM     float64 // width of the bay and its clear height; 0 where not measured
}

// WidthAt is the inside width at a height.
type WidthAt struct{ HeightMM, MM float64 }

// section is the cut through most of the holes of a layout.
func (t *tubState) section(r *lidRegion, laid Layout) *Section {
	s := &Section{
		MiddleMM: r.centre.X, RimMM: t.shape.HeightMM(),
		LidFaceMM: t.shape.HeightMM() + t.setup.AboveRimMM + t.setup.ThicknessMM, LidThicknessMM: t.setup.ThicknessMM,
		Aerated: !t.setup.Still, PlantMM: t.growth.height.Base, SpreadMM: t.growth.spacing.Base,
	}
	// Two cups that both lie this close to the cut never overlap in the drawing.
	near := t.cup.BodyMM / 6
	s.YMM = busiest(laid.Holes, near, r.centre.Y)
	for _, h := range laid.Holes {
		if math.Abs(h.YMM-s.YMM) <= near {
			s.CupsMM = append(s.CupsMM, h.XMM)
		}
	}
	s.LidFromMM, s.LidToMM = chord(r.outline, s.YMM)
	s.Wall = t.wallAlong(r.centre, s.YMM)
	if t.setup.Stones > 0 && s.Aerated {
		for _, n := range t.lines.Lowest.Inputs {
			if n.Symbol == "s" {
				s.StoneMM = n.Base
			}
		}
	}
	t.sectionLines(s)
	t.around(s, r.centre.Y)
	return s
}

// sectionLines are the lines of the water.
func (t *tubState) sectionLines(s *Section) {
	for _, l := range t.out.Levels {
		switch {
		case l.Lowest:
			s.LowestMM = l.DepthMM
		case l.Words == fillLater:
			s.LaterMM = l.DepthMM
		}
	}
	s.FillMM = t.lines.Fill.Base
}

// around is what the plan says of the tub's outside, the bay and the lamps;
// middleMM is the opening's y.
func (t *tubState) around(s *Section, middleMM float64) {
	if o := t.typed.Outside; o != nil {
		s.OutsideWidthMM = float64(o.Size[0].Value)
		if aside := 2 * (s.YMM - middleMM); t.shape.IsRound() && math.Abs(aside) < s.OutsideWidthMM {
			s.OutsideWidthMM = math.Sqrt(s.OutsideWidthMM*s.OutsideWidthMM - aside*aside)
		}
		if o.Height.Set() {
			s.FloorMM = max(float64(o.Height.Value)-s.LidFaceMM, 0)
		}
	}
	if b := t.plan.Shelf; b != nil {
		s.ShelfMM, s.ClearMM = float64(b.Width.Value), float64(b.ClearHeight.Value)
	}
	for _, l := range t.plan.Lamps {
		over := float64(l.AboveLid.Value)
		if over > 0 && (s.LampMM == 0 || over < s.LampMM) {
			s.LampMM, s.LampLengthMM = over, float64(l.Length.Value)
		}
	}
}

// wallAlong is the inside width along a cut; the heights are close enough that
// the bent wall of a round tub, cut beside its middle, looks it.
func (t *tubState) wallAlong(centre plane.Point, y float64) []WidthAt {
	const pieces = 8
	var out []WidthAt
	for k := range pieces + 1 {
		height := t.shape.HeightMM() * float64(k) / pieces
		wall := t.wallAt(height, centre)
		if wall == nil {
			return nil
		}
		from, to := chord(wall, y)
		out = append(out, WidthAt{HeightMM: height, MM: to - from})
	}
	return out
}

// busiest is the y of the hole that has most others near the same y; of equal
// ones the one nearest to the middle, then the first.
func busiest(holes []Hole, near, middle float64) float64 {
	best, most := middle, 0
	for _, h := range holes {
		n := 0
		for _, o := range holes {
			if math.Abs(o.YMM-h.YMM) <= near {
				n++
			}
		}
		if n > most || n == most && math.Abs(h.YMM-middle) < math.Abs(best-middle) {
			best, most = h.YMM, n
		}
	}
	return best
}

// chord is where a shape begins and ends along a level line, found by looking
// every so often and halving; both are the middle where the line misses it.
func chord(s plane.Shape, y float64) (from, to float64) {
	const looks, halvings = 400, 30
	box := s.Bounds()
	at := func(k int) float64 { return box.Min.X + box.Width()*float64(k)/looks }
	inside := func(x float64) bool { return s.Distance(plane.Point{X: x, Y: y}) >= 0 }
	first, last := -1, -1
	for k := range looks + 1 {
		if inside(at(k)) {
			if first < 0 {
				first = k
			}
			last = k
		}
	}
	if first < 0 {
		return box.Centre().X, box.Centre().X
	}
	edge := func(in, out float64) float64 {
		for range halvings {
			if m := (in + out) / 2; inside(m) {
				in = m
			} else {
				out = m
			}
		}
		return in
	}
	return edge(at(first), at(max(first-1, 0))), edge(at(last), at(min(last+1, looks)))
}
