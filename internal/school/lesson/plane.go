package lesson

import (
	"fmt"
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// onGrid are at most so many holes with their coordinates as they are shown.
func (w *bench) onGrid(kind quantity.Kind, most int) []Hole {
	holes := w.t.Holes
	if len(holes) > most {
		from := w.pick(0, len(holes)-most)
		holes = holes[from : from+most]
	}
	unit := kind.Unit(w.t.System)
	out := make([]Hole, len(holes))
	for i, h := range holes {
		out[i] = Hole{h.N, unit.Base(quantity.Round(unit.From(h.X), kind.Decimals[w.t.System])), unit.Base(quantity.Round(unit.From(h.Y), kind.Decimals[w.t.System]))}
	}
	return out
}

// mostHoles is how many holes a pupil plots.
const mostHoles = 12

func coordinates(w *bench) {
	if len(w.t.Holes) < 3 {
		w.without("The lid has fewer than three holes.")
		return
	}
	kind := tenthLong
	holes := w.onGrid(kind, mostHoles)
	g := &Graph{Title: "The lid on squared paper", Same: true}
	g.X, g.Y = axis("x", w.unit(kind), w.in(kind, w.t.Lid.Long), 14), axis("y", w.unit(kind), w.in(kind, w.t.Lid.Wide), 14)
	g.X.Step = max(g.X.Step, g.Y.Step)
	g.Y.Step = g.X.Step
	g.X.To, g.Y.To = math.Ceil(w.in(kind, w.t.Lid.Long)/g.X.Step-1e-9)*g.X.Step, math.Ceil(w.in(kind, w.t.Lid.Wide)/g.X.Step-1e-9)*g.X.Step
	t := &Table{Caption: "Where the middle of each hole is", Heads: []string{"hole", "x, " + w.unit(kind), "y, " + w.unit(kind)}}
	for _, h := range holes {
		x, y := w.in(kind, h.X), w.in(kind, h.Y)
		g.Points = append(g.Points, Point{X: x, Y: y, Label: fmt.Sprint(h.N)})
		t.Rows = append(t.Rows, []Cell{{Text: fmt.Sprint(h.N)}, {Text: quantity.FormatNumber(x, 1)}, {Text: quantity.FormatNumber(y, 1)}})
	}
	w.out.Graph, w.out.Table = g, t
	w.tell("We look at the lid of %s from above. x counts to the right and y counts up, from the corner at the lower left.", w.t.Name)
	w.ask(w.drawing("Mark each hole on the squared paper.", "Find each hole on the squared paper.")).Says = "The crosses lie as on the graph of the key."
	l, words := gridLaw, "How far is it along the lines of the grid"
	if w.Band != Junior {
		l, words = straight, "How far is it in a straight line"
	}
	i, j := nearest(holes)
	pair := fmt.Sprintf("%d and %d", holes[i].N, holes[j].N)
	q := w.ask("Which two holes are the closest?")
	q.Lines, q.Says = 1, "Holes "+pair+"; others may be as close."
	w.ask(fmt.Sprintf("%s from hole %d to hole %d?", words, holes[i].N, holes[j].N), w.apart(l, kind, "closest", "between the closest holes", holes[i], holes[j]))
	a := w.pick(0, len(holes)-2)
	b := w.pick(a+1, len(holes)-1)
	if a != i || b != j {
		w.ask(fmt.Sprintf("%s from hole %d to hole %d?", words, holes[a].N, holes[b].N), w.apart(l, kind, "ends", "between these holes", holes[a], holes[b]))
	}
	w.out.Talk = "Why do the holes keep apart?"
	w.out.TalkKey = "Each plant needs room and light. The plastic between two holes must hold, too."
}

// apart is a distance between two holes by a law.
func (w *bench) apart(l *working.Law, kind quantity.Kind, key, name string, a, b Hole) working.Number {
	at := func(part string, h Hole, symbol string, v float64) working.Number {
		return w.plan(part, fmt.Sprintf("%s of hole %d", part, h.N), symbol, kind, v)
	}
	return w.work(l, kind, key, name, at("x", a, "a", a.X), at("x", b, "b", b.X), at("y", a, "c", a.Y), at("y", b, "d", b.Y))
}

// scales are those in which a lid is drawn.
var scales = []float64{2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30}

func scaleDrawing(w *bench) {
	if len(w.t.Holes) < 2 || w.t.Lid.Long <= 0 {
		w.without("The lid has fewer than two holes.")
		return
	}
	scale := scales[len(scales)-1]
	for _, s := range scales {
		if w.t.Lid.Long/s <= 150 && w.t.Lid.Wide/s <= 95 {
			scale = s
			break
		}
	}
	if w.Seed%2 == 0 {
		for _, s := range scales {
			if s > scale {
				scale = s
				break
			}
		}
	}
	g := &Graph{Title: "The lid of " + w.t.Name + " as a scale drawing", Scale: scale, X: Axis{To: w.t.Lid.Long}, Y: Axis{To: w.t.Lid.Wide}, Round: w.t.Lid.Round, Discs: w.t.Hole}
	for _, h := range w.t.Holes {
		g.Points = append(g.Points, Point{X: h.X, Y: h.Y, Label: fmt.Sprint(h.N)})
	}
	w.out.Graph = g
	w.tell("The lid is drawn at 1 to %.0f. Print the sheet at 100 %%, or the drawing is wrong.", scale)
	kind := quantity.SmallLength.WithDecimals(0, 2)
	times := w.count("scale", "the scale", "s", int(scale), "the drawing")
	n := len(w.t.Holes)
	asked := [][2]int{{0, n - 1}}
	if n > 2 {
		asked = append(asked, [2]int{0, w.pick(1, n-2)})
	}
	for k, p := range asked {
		a, b := w.t.Holes[p[0]], w.t.Holes[p[1]]
		drawn := w.plan("drawn", fmt.Sprintf("from %d to %d on the drawing", a.N, b.N), "d", kind, math.Hypot(a.X-b.X, a.Y-b.Y)/scale)
		q := w.ask(fmt.Sprintf("Measure from the middle of hole %d to the middle of hole %d, in %s. How far is it on the real lid?", a.N, b.N, w.unit(kind)),
			w.work(scaledLaw, tenthLong, fmt.Sprintf("real_%d", k+1), "on the real lid", drawn, times))
		slip := fmt.Sprintf("One millimetre more or less on the drawing makes %.0f mm on the lid.", scale)
		if !w.metric() {
			slip = fmt.Sprintf("A tenth of an inch more or less on the drawing makes %.1f in on the lid.", scale/10)
		}
		q.Says = fmt.Sprintf("By the plan it is %s. %s", w.show(tenthLong, math.Hypot(a.X-b.X, a.Y-b.Y)), slip)
	}
	w.out.Talk = "Why is a long distance on the drawing better to measure than a short one?"
	w.out.TalkKey = "The error of the ruler stays the same. On a long distance it is a smaller share."
}
