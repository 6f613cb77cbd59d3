package garden

import (
	"fmt"
	"math"

	"rootbell/internal/base/plane"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/netcup"
)

// Lid is where the holes go.
type Lid struct {
	Layouts []Layout `json:"layouts"`
	Chosen  string   `json:"chosen"`
	AirLine *AirLine `json:"air_line"`
	Service *Opening `json:"service"`

	Outline  plane.Shape `json:"-"`
	Clear    []Clear     `json:"-"`
	Wall     plane.Shape `json:"-"`
	EdgeMM   float64     `json:"-"`
	WallMM   float64     `json:"-"`
	ClearMM  float64     `json:"-"`
	ErrorMM  float64     `json:"-"`
	HoleMM   float64     `json:"-"`
	StepMM   float64     `json:"-"`
	Thick    float64     `json:"-"`
	TubIndex int         `json:"-"`
	Foam     bool        `json:"-"`
	Section  *Section    `json:"-"`
}

// Layout is one way to lay the holes, with what a ruler reads off it.
type Layout struct {
	Name       string  `json:"name"`
	SpacingMM  float64 `json:"min_spacing_mm"`
	BoundMM    float64 `json:"upper_bound_mm"`
	WebMM      float64 `json:"min_web_mm"`
	EdgeMM     float64 `json:"min_edge_mm"`
	WorstWebMM float64 `json:"worst_web_mm"` // after marking and drilling errors
	Marks      int     `json:"marks"`        // different measures to set out
	Loss       float64 `json:"loss"`         // share of the widest spacing given up
	Holes      []Hole  `json:"holes"`
	// Symmetric tells that the layout is its own mirror image or half-turn,
	// and SymmetryCost what share of the least distance that costs on the
	// ruler (said also where it was too dear to take).
	Symmetric    bool    `json:"symmetric"`
	SymmetryCost float64 `json:"symmetry_cost"`

	Pair [2]int `json:"-"`
}

// Hole is one hole in the plan's coordinates.
type Hole struct {
	N          int     `json:"n"`
	XMM        float64 `json:"x_mm"`
	YMM        float64 `json:"y_mm"`
	DiameterMM float64 `json:"diameter_mm"`
}

// Opening is another hole through the lid.
type Opening struct {
	XMM        float64 `json:"x_mm"`
	YMM        float64 `json:"y_mm"`
	DiameterMM float64 `json:"diameter_mm"`
}

// AirLine is the hole for the air line, in the lid or in the tub's wall.
type AirLine struct {
	XMM        float64 `json:"x_mm"`
	YMM        float64 `json:"y_mm"`
	On         string  `json:"on"`
	HeightMM   float64 `json:"height_mm"`
	DiameterMM float64 `json:"diameter_mm"`
}

// Layout of the chosen name; ok is false where it was not found.
func (l *Lid) Layout(name string) (Layout, bool) {
	for _, x := range l.Layouts {
		if x.Name == name {
			return x, true
		}
	}
	return Layout{}, false
}

// layOut lays the holes in all three ways and places what else goes through
// the lid.
func (t *tubState) layOut(r *lidRegion, p *Plants) error {
	n := p.Count
	fits, found, err := t.mostSafe(r, n)
	if err != nil {
		return err
	}
	if fits < n {
		_, field := t.wanted()
		t.stop("do-not-fit", field, fmt.Sprintf("%s: %d holes do not fit with enough plastic between them; %d do, and they are drawn.", t.name, n, fits), "Plant fewer, use smaller cups or a bigger lid.")
		n, p.Count = fits, fits
		t.out.Crops = t.shared(n)
		if n == 0 {
			return nil
		}
	}
	l := &Lid{
		Outline: r.outline, Clear: r.clear, Wall: r.wall, EdgeMM: r.margins.Edge.Base, WallMM: r.margins.Wall.Base,
		ClearMM: r.margins.Clear.Base, ErrorMM: r.margins.Error.Base, HoleMM: r.hole, StepMM: t.step(), Thick: t.setup.ThicknessMM, TubIndex: t.index, Foam: t.wish.Foam,
	}
	t.out.Lid = l
	points, err := t.three(r, n, found)
	if err != nil {
		return err
	}
	bound := t.bound(r, n)
	for _, name := range []string{"widest", "rows", "ruler"} {
		if laid, ok := points[name]; ok {
			l.Layouts = append(l.Layouts, t.measured(r, name, laid, bound))
		}
	}
	for i := range l.Layouts {
		if l.Layouts[i].Name == "ruler" && len(r.fixed) <= n {
			l.Layouts[i].Symmetric = r.ruled.Symmetric
			l.Layouts[i].SymmetryCost = quantity.Round(r.ruled.SymmetryCost, 5)
		}
		if w := l.Layouts[0].SpacingMM; w > 0 {
			l.Layouts[i].Loss = quantity.Round(1-l.Layouts[i].SpacingMM/w, 5)
		}
	}
	l.Chosen = t.typed.Layout
	if l.Chosen == "" {
		l.Chosen = "ruler"
	}
	chosen, ok := l.Layout(l.Chosen)
	if !ok && len(l.Layouts) > 0 {
		t.warn("layout-missing", t.field+".layout", fmt.Sprintf("%s: with the ruler's step no layout '%s' keeps enough plastic between so many holes; '%s' is shown.", t.name, l.Chosen, l.Layouts[0].Name), "Plant fewer, or use a finer ruler_step.")
		l.Chosen, chosen = l.Layouts[0].Name, l.Layouts[0]
	}
	t.webs(r, chosen)
	t.closer(chosen, p)
	t.openings(r, l, chosen)
	l.Section = t.section(r, chosen)
	return nil
}

// mostSafe is n where so many holes can keep the least distance of all, else
// the most that can, and those laid as wide as they go; nothing is laid where
// more holes are there already than that. The error is the context's end.
func (t *tubState) mostSafe(r *lidRegion, n int) (int, *lid.Optima, error) {
	if len(r.fixed) > n {
		return n, nil, nil
	}
	found, err := r.Optima(t.ctx, n, t.search(r))
	apart := r.margins.Apart.Base
	if len(r.fixed) == n || err == nil && (n == 1 || found.Widest().ExactSpacing >= apart-spacingSlackMM) {
		return n, found, t.ctx.Err()
	}
	fits := len(r.fixed)
	if most, err := r.MostAt(t.ctx, apart, t.search(r)); err == nil {
		fits = min(most.Count, n)
	}
	if fits == 0 || t.ctx.Err() != nil {
		return 0, nil, t.ctx.Err()
	}
	found, err = r.Optima(t.ctx, fits, t.search(r))
	return fits, found, ended(t.ctx, err)
}

func (t *tubState) search(r *lidRegion) lid.Search {
	return lid.Search{Fixed: r.fixed, Effort: t.in.Effort, Seed: t.in.Seed}
}

// step is the ruler's step in mm.
func (t *tubState) step() float64 {
	const quarterInch = 25.4 / 4
	standard := netcup.RulerStepMM()
	if t.plan.Units == quantity.US {
		standard = quarterInch
	}
	return float64(t.plan.Tools.RulerStep.Or(quantity.MM(standard)))
}

// three lays n holes in each way, the optima for which are found already; a
// layout that cannot be is left out. Where more holes are there already than
// plants, the best of them are chosen instead.
func (t *tubState) three(r *lidRegion, n int, found *lid.Optima) (map[string][]plane.Point, error) {
	out := map[string][]plane.Point{}
	if len(r.fixed) > n {
		chosen, err := lid.Choose(t.ctx, r.fixed, n, nil)
		if err != nil {
			return nil, t.ctx.Err()
		}
		var points []plane.Point
		for _, k := range chosen.Holes {
			points = append(points, r.fixed[k])
		}
		t.chosenNote(n, len(r.fixed), chosen)
		return map[string][]plane.Point{"widest": points, "rows": points, "ruler": points}, nil
	}
	ruler := lid.Ruler{Step: t.step()}
	// A layout of ours never lets lips touch or leaves too little plastic.
	safe := func(l lid.Layout) bool { return n == 1 || l.Measured.Spacing >= r.margins.Apart.Base-spacingSlackMM }
	if l, err := r.Rows(t.ctx, n, ruler, r.fixed); err == nil && safe(l.Layout) {
		out["rows"] = l.Layout.Points
	}
	if found != nil {
		out["widest"] = found.Widest().Points
		if l, err := r.Snap(t.ctx, n, ruler, t.search(r), found); err == nil && safe(l.Layout) {
			out["ruler"] = l.Layout.Points
			r.ruled = l
		}
	}
	widened(r, out)
	return out, t.ctx.Err()
}

// widened hands the widest layout the points of another that came out wider:
// rounding may cost a layout a hundredth of a millimetre that marks on the
// ruler keep.
func widened(r *lidRegion, out map[string][]plane.Point) {
	for _, name := range []string{"rows", "ruler"} {
		if points, ok := out[name]; ok && len(points) > 1 && r.Remeasure(points).Spacing > r.Remeasure(out["widest"]).Spacing {
			out["widest"] = points
		}
	}
}

// chosenNote says which of the holes that are there to use, and how sure that
// is the best choice.
func (t *tubState) chosenNote(n, of int, c lid.Chosen) {
	sure := "no choice of so many is further apart"
	if !c.Proved {
		sure = "the best found; the search stopped before it was proved"
	}
	t.note("holes-chosen", t.field+".lid.holes", fmt.Sprintf("%s: of the %d holes that are there, %d are used, the ones furthest apart (%s).", t.name, of, n, sure), "Cap every other hole: light in the water grows algae.")
}

// measured reads a layout off its points, to a hundredth of a millimetre.
func (t *tubState) measured(r *lidRegion, name string, points []plane.Point, bound working.Number) Layout {
	m := r.Remeasure(points)
	l := Layout{
		Name: name, SpacingMM: quantity.Round(m.Spacing, 2), BoundMM: math.Ceil(bound.Base*100) / 100, Marks: m.Marks, Pair: m.Pair,
		WebMM: math.Inf(1), EdgeMM: math.Inf(1), WorstWebMM: math.Inf(1),
	}
	e := r.margins.Error.Base
	for i, p := range points {
		l.Holes = append(l.Holes, Hole{N: i + 1, XMM: quantity.Round(p.X, 2), YMM: quantity.Round(p.Y, 2), DiameterMM: r.hole})
		edge := r.outline.Distance(p)
		l.EdgeMM = min(l.EdgeMM, edge)
		least := edge
		for _, c := range r.clear {
			least = min(least, -c.Shape.Distance(p))
		}
		l.WebMM = min(l.WebMM, least-r.hole/2)
		l.WorstWebMM = min(l.WorstWebMM, least-r.hole/2-e)
	}
	if len(points) > 1 {
		l.WebMM = min(l.WebMM, m.Spacing-r.hole)
		l.WorstWebMM = min(l.WorstWebMM, m.Spacing-r.hole-2*e)
	}
	l.WebMM, l.EdgeMM, l.WorstWebMM = quantity.Round(l.WebMM, 2), quantity.Round(l.EdgeMM, 2), quantity.Round(l.WorstWebMM, 2)
	t.pairWorking(name, points, m, r)
	return l
}

var distanceLaw = working.Must(working.Law{
	Symbol: "d", Kind: quantity.Length.WithDecimals(2, 3), Formula: "sqrt((x-u)^2+(y-v)^2)",
	Where: []working.Symbol{
		working.Letter("x", "right, first hole", quantity.Length),
		working.Letter("y", "up, first hole", quantity.Length),
		working.Letter("u", "right, second hole", quantity.Length),
		working.Letter("v", "up, second hole", quantity.Length),
	},
	Basis: working.BySearch, Source: "the two holes closest to each other, measured with Pythagoras; the places come from the search",
})

// pairWorking enters the closest pair of a layout, which a pencil can check.
func (t *tubState) pairWorking(name string, points []plane.Point, m lid.Measure, r *lidRegion) {
	if len(points) < 2 {
		return
	}
	i, j := m.Pair[0], m.Pair[1]
	fine := quantity.Length.WithDecimals(2, 3)
	at := func(k int, axis string, v float64) working.Number {
		return t.book.Found(fmt.Sprintf("lid.%s.hole_%d_%s", name, k+1, axis), fmt.Sprintf("hole %d of %s, %s", k+1, name, axis), map[string]string{"right": "x", "up": "y"}[axis], fine, v, "search: the places of the layout")
	}
	d := t.book.Work(distanceLaw, "lid."+name+".min_spacing", fmt.Sprintf("least distance of %s, holes %d and %d", name, i+1, j+1),
		at(i, "right", points[i].X), at(i, "up", points[i].Y), at(j, "right", points[j].X), at(j, "up", points[j].Y))
	t.book.Work(webLaw, "lid."+name+".web_between", "plastic between those two holes, worst case", d, t.book.Typed("hole", "hole to cut", "h", quantity.SmallLength, r.hole, 0), r.margins.Error)
}

var webLaw = working.Must(working.Law{
	Symbol: "w", Kind: quantity.SmallLength, Formula: "d-h-2*e",
	Where: []working.Symbol{working.Letter("d", "centre to centre", quantity.Length), working.Letter("h", "hole", quantity.SmallLength), working.Letter("e", "marking and drilling error", quantity.SmallLength)},
	Basis: working.OfTrade, Source: "both holes off towards each other by the whole error",
})

// webs judges what is left beside the holes in the worst case.
func (t *tubState) webs(r *lidRegion, l Layout) {
	least, warn, stuff := r.margins.Web.Base, netcup.WebWarnMM(), "plastic"
	if t.wish.Foam {
		stuff = "foam"
	}
	field := t.field + ".layout"
	if len(t.typed.Lid.Holes) > 0 {
		field = t.field + ".lid.holes"
	}
	text := fmt.Sprintf("%s: in the worst case of marking and drilling %s of %s is left beside a hole.", t.name, t.small(max(l.WorstWebMM, 0)), stuff)
	switch worst := l.WorstWebMM; {
	case worst < least-spacingSlackMM:
		t.stop("web-thin", field, text, fmt.Sprintf("At least %s must stay (common practice). Move the fixed hole, or use a smaller hole.", t.small(least)))
		return
	case worst < warn:
		t.warn("web-narrow", field, text, "Mark and start the holes with care, the outermost last.")
	}
	if edge := l.EdgeMM - r.hole/2 - r.margins.Error.Base; t.wish.Foam && edge < netcup.FoamEdgeMM()-spacingSlackMM {
		t.stop("foam-edge", field, fmt.Sprintf("%s: in the worst case %s of foam is left between a hole and the board's edge.", t.name, t.small(max(edge, 0))),
			fmt.Sprintf("At least %s must stay (common practice). Move the fixed hole, or use a bigger board.", t.small(netcup.FoamEdgeMM())))
	}
}

// closer says where the layout shown keeps less than the spacing wanted.
func (t *tubState) closer(l Layout, p *Plants) {
	if p.Count < 2 || l.SpacingMM >= t.growth.spacing.Base-spacingSlackMM {
		return
	}
	text := fmt.Sprintf("%s: the layout '%s' keeps %s between centres; %s was wanted.", t.name, l.Name, t.mm(l.SpacingMM), t.says(t.growth.spacing))
	if n, _ := t.wanted(); n > 0 {
		t.warn("closer-than-wanted", t.field+".spacing.between", text, "Plant fewer, or harvest smaller.")
		return
	}
	t.note("closer-than-wanted", t.field+".layout", text, "That is what marks on the ruler cost; 'widest' keeps more.")
}
