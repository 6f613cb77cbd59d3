package web

import (
	"fmt"
	"html/template"
	"math"
	"slices"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/figure"
	"rootbell/internal/paper/pack"
)

// buildWork is what the garden's assessment says of one tub, ready to be shown.
// Each of its parts is replaced by itself while a teacher types.
type buildWork struct {
	ID, Tub   string
	Index     int
	Example   bool
	Stop      string
	Answer    answerView
	Lid       pictures
	Holes     []holeView
	Unit      string
	Layouts   []layoutView
	Bound     string
	Findings  []findingView
	Further   []findingView // beyond the first three
	Limits    []limitView
	Workings  []workingView
	Section   pictures
	Papers    []pack.Paper
	Improving bool
}

// pictures is one drawing for a desk and for a hand.
type pictures struct {
	Desk, Hand template.HTML
	Note       string
}

type answerView struct{ Count, Plants, Because, More string }

type holeView struct {
	N        int
	X, Y     string
	XMM, YMM float64
	Fixed    bool
	Error    *problemView // of what was typed here
}

type layoutView struct {
	Name    string
	Title   string
	About   string
	Chosen  bool
	Picture template.HTML
	Rows    [][2]string
}

type limitView struct {
	Name    string
	Plants  string
	Moves   string
	Decides bool
}

type findingView struct {
	finding.Finding
	Level   string
	Address string
	Where   string
}

// shownNumbers are the numbers of a tub that Build shows, by the end of their key.
var shownNumbers = []string{"volume_solution", "fill_depth", "volume_reserve", "mass_filled", "mass_grown", "days_to_lowest", "room_for_plants"}

// buildWorkOf shows a tub of an assessment.
func buildWorkOf(o *opened, a *garden.Assessment, f *form, index int) *buildWork {
	t := &a.Tubs[index]
	w := &buildWork{ID: o.ID, Example: o.Example, Tub: t.Name, Index: index, Stop: a.StopOf(index), Answer: answerOf(a, t)}
	w.Unit = map[quantity.System]string{quantity.Metric: "cm", quantity.US: "inches"}[a.Plan.Units]
	if t.Lid != nil {
		w.lid(a, index)
	}
	w.Findings, w.Further = foremostOf(findingsOf(o, a, f, func(one finding.Finding) bool {
		return !ofAnotherTub(one.Field, index) && !saidOfAnother(a, one.Text, index)
	}, nowhere))
	w.limits(t)
	w.Workings = numbersOf(o, a, "tubs."+garden.Slug(t.Name)+".", shownNumbers...)
	w.Section = pictures{svg(figure.Section(a, index, figure.Desk)), svg(figure.Section(a, index, figure.Hand)), figure.SectionNote(a, index, figure.Desk)}
	for _, p := range pack.Build(a) {
		if p.Tub == "" || p.Tub == t.Name {
			w.Papers = append(w.Papers, p)
		}
	}
	w.typed(f, index)
	return w
}

// svg marks a drawing of our own as HTML.
func svg(text string, ok bool) template.HTML {
	if !ok {
		return ""
	}
	return template.HTML(text) //nolint:gosec // drawn by package figure, which escapes what a teacher typed
}

func answerOf(a *garden.Assessment, t *garden.Tub) answerView {
	if t.Plants == nil {
		return answerView{Because: "Not worked out yet: something below has to be settled first."}
	}
	v := answerView{Count: quantity.InWords(t.Plants.Count), Plants: "plants"}
	if t.Plants.Count == 1 {
		v.Plants = "plant"
	}
	if t.Plants.Binds != "" {
		v.Because = "because of the " + t.Plants.Binds
	}
	if t.FillDepthMM != nil && t.VolumeSolution != nil {
		v.More = fmt.Sprintf("Filled to %s, %s holds %s of nutrient solution.", quantity.Format(quantity.Length, *t.FillDepthMM, a.Plan.Units), t.Name, quantity.Format(quantity.Volume, *t.VolumeSolution*quantity.Litre.Scale, a.Plan.Units))
	}
	if n, ok := t.Plants.Limits[garden.ByLid]; ok && n > t.Plants.Count {
		v.More += fmt.Sprintf(" The lid would hold %s.", quantity.InWords(n))
	}
	return v
}

func (w *buildWork) lid(a *garden.Assessment, index int) {
	l := a.Tubs[index].Lid
	desk, note, drawn := figure.LidNoted(a, index, l.Chosen, figure.Desk)
	w.Lid = pictures{svg(desk, drawn), svg(figure.Lid(a, index, l.Chosen, figure.Hand)), note}
	if w.Example {
		w.Lid.Desk, w.Lid.Hand = still(w.Lid.Desk), still(w.Lid.Hand)
	}
	fixed := a.Plan.Tubs[index].Lid.Holes
	if chosen, ok := l.Layout(l.Chosen); ok {
		for _, h := range chosen.Holes {
			w.Holes = append(w.Holes, holeView{
				N: h.N, XMM: h.XMM, YMM: h.YMM, X: markOf(h.XMM, a.Plan.Units), Y: markOf(h.YMM, a.Plan.Units),
				Fixed: slices.ContainsFunc(fixed, func(f planHole) bool { return near(f, h.XMM, h.YMM) }),
			})
		}
	}
	layouts := slices.Clone(l.Layouts)
	slices.SortStableFunc(layouts, func(x, y garden.Layout) int { return rankOf(x.Name) - rankOf(y.Name) })
	for _, x := range layouts {
		w.Layouts = append(w.Layouts, layoutOf(a, index, l, x))
		if x.BoundMM > 0 && len(x.Holes) > 1 {
			w.Bound = fmt.Sprintf("No layout of %s can keep more than %s between centres on this lid: that is proved.", quantity.InWords(len(x.Holes)), quantity.Format(quantity.Length, x.BoundMM, a.Plan.Units))
		}
	}
}

// still is a drawing whose holes cannot be moved, and so are no buttons.
func still(drawing template.HTML) template.HTML {
	return template.HTML(strings.ReplaceAll(string(drawing), `tabindex="0" role="button"`, `role="img"`))
}

// rankOf puts the layout for a ruler first: it is what a class can mark.
func rankOf(layout string) int { return slices.Index([]string{"ruler", "widest", "rows"}, layout) }

var layoutWords = map[string][2]string{
	"ruler":  {"Ruler", "on the marks of your ruler"},
	"widest": {"Widest", "as far apart as can be"},
	"rows":   {"Rows", "straight rows, quick to mark"},
}

func layoutOf(a *garden.Assessment, index int, l *garden.Lid, x garden.Layout) layoutView {
	v := layoutView{Name: x.Name, Title: layoutWords[x.Name][0], About: layoutWords[x.Name][1], Chosen: x.Name == l.Chosen}
	v.Picture = svg(figure.Layout(a, index, x.Name, figure.Desk))
	system := a.Plan.Units
	if len(x.Holes) > 1 {
		v.Rows = append(v.Rows, [2]string{"least between centres", quantity.Format(quantity.Length.WithDecimals(1, 2), x.SpacingMM, system)})
		if x.BoundMM > 0 {
			v.Rows = append(v.Rows, [2]string{"of the bound, at least", fmt.Sprintf("%.0f\u00a0%%", math.Floor(100*x.SpacingMM/x.BoundMM))})
		}
	}
	v.Rows = append(v.Rows,
		[2]string{"least plastic, worst case", quantity.Format(quantity.SmallLength, x.WorstWebMM, system)},
		[2]string{"measures to mark", fmt.Sprint(x.Marks)})
	return v
}

// ofAnotherTub tells whether a field belongs to another tub than this one.
func ofAnotherTub(path string, index int) bool {
	of := index
	return scans(path, "tubs[%d]", &of) && of != index
}

func (w *buildWork) limits(t *garden.Tub) {
	if t.Plants == nil {
		return
	}
	for _, name := range garden.LimitNames() {
		n, ok := t.Plants.Limits[name]
		if !ok {
			continue
		}
		w.Limits = append(w.Limits, limitView{name, fmt.Sprint(n), t.Plants.Moves[name], name == t.Plants.Binds})
	}
	slices.SortStableFunc(w.Limits, func(x, y limitView) int { return t.Plants.Limits[x.Name] - t.Plants.Limits[y.Name] })
}

// typed puts what was posted over what is in the plan where it could not be
// saved, so that nothing typed is lost.
func (w *buildWork) typed(f *form, tub int) {
	if len(f.problems) == 0 {
		return
	}
	for i := range w.Layouts {
		if name := f.posted.Get(fmt.Sprintf("tubs[%d].layout", tub)); name != "" {
			w.Layouts[i].Chosen = w.Layouts[i].Name == name
		}
	}
	if f.posted.Get("holes") != fmt.Sprint(tub) {
		return
	}
	for i := range w.Holes {
		h := &w.Holes[i]
		if x, y := holeField(h.N, "x"), holeField(h.N, "y"); f.posted.Has(x) && f.posted.Has(y) {
			h.X, h.Y, h.Fixed = f.posted.Get(x), f.posted.Get(y), f.posted.Get(holeField(h.N, "fixed")) != ""
		}
	}
	fixed := f.fixedHoles(tub)
	for _, p := range f.problems {
		var index int
		if !scans(p.Field, fmt.Sprintf("tubs[%d].lid.holes[%%d]", tub), &index) || index >= len(fixed) {
			continue
		}
		if at := slices.IndexFunc(w.Holes, func(h holeView) bool { return h.N == fixed[index].n }); at >= 0 && w.Holes[at].Error == nil {
			v := f.problem(p, tub)
			w.Holes[at].Error = &v
		}
	}
}
