package garden

import (
	"fmt"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/netcup"
	"rootbell/internal/science/tub"
)

// tubState is one tub while it is worked out.
type tubState struct {
	*assessor
	index int
	typed *plan.Tub
	field string
	name  string
	book  *working.Book
	shape tub.Shape
	setup tub.Setup
	lines tub.Lines
	cup   netcup.Cup
	out   Tub

	fill   working.Number // water up to the fill line
	wet    bool           // whether the fill line lies in the tub, so that fill holds
	wish   netcup.Wish
	growth growth
	cups   working.Number // how many stand in it; without a symbol where that is not known

	solution working.Number // up to the fill line, likewise
	mass     working.Number // of the tub filled, likewise
}

// tub works out one tub. The error is that the context ended.
func (a *assessor) tub(i int) (*tubState, error) {
	t := &tubState{assessor: a, index: i, typed: &a.plan.Tubs[i], field: fmt.Sprintf("tubs[%d]", i)}
	t.name = t.typed.Name
	t.out.Name = t.name
	t.book = a.book.In("tubs." + Slug(t.name))
	t.cup = netcup.Cup{BodyMM: float64(t.typed.Cup.Body.Value), RimMM: float64(t.typed.Cup.Rim.Value), DepthMM: float64(t.typed.Cup.Depth.Value)}
	t.holes()
	t.crops()
	if !t.inside() {
		return t, nil
	}
	t.water()
	if err := t.plants(); err != nil {
		return nil, err
	}
	t.filled()
	t.lit()
	t.breathe()
	return t, nil
}

// Slug is a tub's name in keys and file names.
func Slug(name string) string { return strings.ReplaceAll(name, " ", "-") }

// inside makes the shape. A contradiction among its measures is a stop, and
// all that rests on them is left out.
func (t *tubState) inside() bool {
	var err error
	field := t.field
	switch p := t.typed; {
	case p.Round != nil:
		field += ".round"
		t.shape, err = tub.NewRound(float64(p.Round.Top.Value), float64(p.Round.Base.Value), float64(p.Round.Height.Value))
	case len(p.Poured) > 0:
		field += ".poured"
		steps := make([]tub.Pour, len(p.Poured))
		for i, s := range p.Poured {
			steps[i] = tub.Pour{Volume: s.Volume.Value, DepthMM: float64(s.Depth.Value)}
		}
		t.shape, err = tub.NewPoured(steps)
	default:
		field += ".inside"
		i := p.Inside
		t.shape, err = tub.NewRect(size(i.Top), size(i.Base), float64(i.Height.Value), float64(i.CornerRadius.Top.Value), float64(i.CornerRadius.Base.Value))
	}
	if err != nil {
		t.stop("tub-measures", field, fmt.Sprintf("%s: %s.", t.name, err), "Measure the tub again and correct the plan.")
		return false
	}
	if !t.insideFitsOutside(field) {
		return false
	}
	least, most := tub.Reach()
	if h := t.shape.HeightMM(); h < least || h > most {
		t.note("tub-height", field, fmt.Sprintf("%s is %s high inside. For a classroom %s to %s is handy.", t.name, t.mm(h), t.mm(least), t.mm(most)),
			"Lower, and little is left for a weekend; higher, and a child cannot reach the floor.")
	}
	return true
}

func size(p plan.Pair) [2]float64 { return [2]float64{float64(p[0].Value), float64(p[1].Value)} }

func (t *tubState) insideFitsOutside(field string) bool {
	o := t.typed.Outside
	if o == nil {
		return true
	}
	length, width, _, known := t.shape.Wall(t.shape.HeightMM())
	bigger := o.Height.Set() && t.shape.HeightMM() >= float64(o.Height.Value)
	if known && o.Size.Set() {
		bigger = bigger || max(length, width) > max(float64(o.Size[0].Value), float64(o.Size[1].Value)) || min(length, width) > min(float64(o.Size[0].Value), float64(o.Size[1].Value))
	}
	if bigger {
		t.stop("inside-over-outside", field, fmt.Sprintf("%s is bigger inside than outside.", t.name), "One of the two was measured wrong, or their numbers are swapped.")
	}
	return !bigger
}

// water enters the lines and what stands up to them.
func (t *tubState) water() {
	p := t.typed
	lidField := t.field + ".lid"
	foam := p.Lid.Material == "foam"
	t.setup = tub.Setup{
		Still: p.Method == "still", AboveRimMM: netcup.DeckOffsetMM(), ThicknessMM: netcup.ThicknessMM(foam),
		CupDepthMM: t.cup.DepthMM, CupBodyMM: t.cup.BodyMM, TapeErrorMM: float64(t.plan.Tools.TapeError.Or(quantity.MM(tub.TapeErrorMM()))),
	}
	if p.Lid.AboveRim.Set() {
		t.setup.AboveRimMM = float64(p.Lid.AboveRim.Value)
	} else {
		t.note("above-rim", lidField, fmt.Sprintf("%s: the lid is taken to lie level with the tub's rim. Were it %s higher, the cups would hang and the water stand %s higher too.", t.name, t.mm(5), t.mm(5)),
			"Lay a ruler across the rim and measure up to the lid's underside: above_rim.")
	}
	if p.Lid.Thickness.Set() {
		t.setup.ThicknessMM = float64(p.Lid.Thickness.Value)
	}
	if p.FillDepth.Set() {
		v := float64(p.FillDepth.Value)
		t.setup.FillDepthMM = &v
	}
	if p.Air.StoneHeight.Set() {
		v := float64(p.Air.StoneHeight.Value)
		t.setup.StoneHeightMM = &v
	}
	if p.Outside != nil {
		t.setup.EmptyMass = p.Outside.EmptyMass.Value
	}
	t.lines = t.shape.Lines(working.NewBook(), t.setup) // looked at before any is entered
	t.checkLines()
	if t.wet = t.lines.Fill.Base > 0 && t.lines.Fill.Base <= t.shape.HeightMM() && t.lines.CupBottom.Base > 0; !t.wet {
		return
	}
	t.lines = t.shape.Lines(t.book, t.setup)
	t.out.Shape, t.out.Levels = t.shape, t.levels()
	t.out.FillDepthMM = in(t.lines.Fill, quantity.Millimetre, 1)
	t.fill = t.shape.Water(t.book, "volume_fill", "water up to the fill line", t.lines.Fill, t.setup.TapeErrorMM)
	t.out.VolumeFillL = in(t.fill, quantity.Litre, 3)
	t.setup.Stones = t.stones()
	if most := p.MaxFill; most.Set() && quantity.L(quantity.Litre.From(t.fill.Base)) > most.Value {
		t.stop("over-max-fill", t.field+".max_fill", fmt.Sprintf("%s would hold %s, more than the %s you allow.", t.name, t.says(t.fill), most.Text), "Lower fill_depth, or use deeper cups so that the water stands lower.")
	}
	t.reserves()
}

// stones is how many air stones lie in the tub: as typed, else one for each
// 20 L begun; none when still.
func (t *tubState) stones() int {
	const litresEach = 20
	switch {
	case t.typed.Air.Stones.Given:
		return t.typed.Air.Stones.Value
	case t.setup.Still:
		return 0
	}
	return 1 + int(quantity.Litre.From(t.fill.Base)/litresEach*(1-1e-9))
}

func (t *tubState) checkLines() {
	l := t.lines
	fillField := t.field + ".cup.depth"
	if t.typed.FillDepth.Set() {
		fillField = t.field + ".fill_depth"
	}
	switch {
	case l.CupBottom.Base <= 0:
		t.stop("cup-too-deep", t.field+".cup.depth", fmt.Sprintf("%s: a cup %s deep would stand on the tub's floor, %s under the lid.", t.name, t.mm(t.cup.DepthMM), t.mm(t.shape.HeightMM())), "Use a shorter cup or a deeper tub.")
	case l.Fill.Base < l.CupBottom.Base:
		t.stop("fill-under-cup", fillField, fmt.Sprintf("%s: the water stands %s deep, and the cups end at %s: on transplant day no root reaches it.", t.name, t.says(l.Fill), t.says(l.CupBottom)), "Fill higher, or leave fill_depth out and it is worked out.")
	case l.Fill.Base > l.Highest.Base:
		t.stop("fill-over-freeboard", fillField, fmt.Sprintf("%s: filled to %s, but the highest safe line is %s: it would slop over the rim.", t.name, t.says(l.Fill), t.says(l.Highest)), "Use deeper cups, so that the water may stand lower.")
	}
	if over := l.Fill.Base - l.CupBottom.Base; l.CupBottom.Base > 0 && over > tub.MostOverCup() {
		t.warn("cup-too-wet", fillField, fmt.Sprintf("%s: the cups stand %s in the water. Over %s the stem's collar stays wet and rots.", t.name, t.mm(over), t.mm(tub.MostOverCup())), "Lower the fill line.")
	}
	if !t.setup.Still && l.CupBottom.Base > 0 && l.Lowered.Base <= l.Lowest.Base {
		t.warn("no-reserve", t.field, fmt.Sprintf("%s: once the line is lowered to %s nothing is left above the lowest safe line, %s.", t.name, t.says(l.Lowered), t.says(l.Lowest)), "Use a deeper tub or a shorter cup, and top up every open day.")
	}
}

// reserves enters the water between the lines, and the days it lasts.
func (t *tubState) reserves() {
	l := t.lines
	tape := t.setup.TapeErrorMM
	if l.Lowest.Base >= l.Fill.Base || l.Lowest.Base > t.shape.HeightMM() {
		return
	}
	lowest := t.shape.Water(t.book, "volume_lowest", "water up to the lowest safe line", l.Lowest, tape)
	reserve := tub.Reserve(t.book, "volume_reserve", "water between fill line and lowest line, transplant day", t.fill, lowest)
	t.out.VolumeReserveL = in(reserve, quantity.Litre, 3)
	later := reserve
	if l.Lowered.Base > l.Lowest.Base && l.Lowered.Base <= t.shape.HeightMM() && !t.setup.Still {
		low := t.shape.Water(t.book, "volume_lowered", "water up to the lowered line", l.Lowered, tape)
		later = tub.Reserve(t.book, "volume_reserve_lowered", "water between lowered line and lowest line", low, lowest)
	}
	if use := t.typed.DailyTopup; use.Set() && use.Value > 0 {
		tub.Lasts(t.book, later, use.Value)
	}
}

// filled enters what the tub weighs once the number of plants is known.
func (t *tubState) filled() {
	if !t.wet || t.out.Plants == nil {
		return
	}
	t.cups = t.book.Typed("cups", "net cups", "n", quantity.Count, float64(t.out.Plants.Count), 0)
	if t.setup.Still {
		t.setup.Stones = 0
	}
	load := t.shape.Load(t.book, t.lines, t.setup, t.fill, t.cups)
	t.solution, t.mass = load.Solution, load.Mass
	t.out.DisplacedL = in(load.Displaced, quantity.Litre, 3)
	t.out.VolumeSolution = in(load.Solution, quantity.Litre, 3)
	t.out.MassFilledKG = in(load.Mass, quantity.Kilogram, 2)
	t.grown(load.Mass)
}
