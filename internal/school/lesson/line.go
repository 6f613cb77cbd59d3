package lesson

import (
	"fmt"
	"math"
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// pairs are points of a scatter plot; the last one that does not stand out is
// held back to be predicted.
type pairs struct {
	x, y         []working.Number
	xName, yName string
	xKind, yKind quantity.Kind
	xWord        func(float64) string // 'on day 12'
	lastX, lastY working.Number
	names        []string
	odd          []bool
}

// grown are heights by day; else litres by depth, from the tub's own shape.
func (w *bench) grown() (p pairs, ok bool) {
	if s, have := w.fieldSeries(reading.FieldHeight, 5, 8); have {
		w.fromLogbook(s)
		p = pairs{xName: "time", yName: "height", xKind: plain("d", 0), yKind: s.kind, xWord: func(x float64) string { return fmt.Sprintf("on day %.0f", x) }}
		for i, d := range s.data {
			x := w.logged("day", "day of "+d.on, fmt.Sprintf("x%d", i+1), p.xKind, d.day-s.data[0].day, d.on)
			y := w.logged("height", "height on "+d.on, fmt.Sprintf("y%d", i+1), p.yKind, d.value, d.on)
			p.x, p.y, p.names, p.odd = append(p.x, x), append(p.y, y), append(p.names, d.on), append(p.odd, d.odd != "")
		}
		w.tell("Day 0 is %s. The height is that of the tallest plant.", s.data[0].on)
		return p.heldBack(), true
	}
	w.fromPlanAlone()
	if w.t.LitresAt == nil || w.t.Height <= 0 {
		return p, false
	}
	p = pairs{xName: "depth", yName: "water", xKind: plain(w.unit(tenthLong), 0), yKind: plain(w.unit(tenthLitre), 1)}
	unit := w.unit(tenthLong)
	p.xWord = func(x float64) string { return fmt.Sprintf("at a depth of %.0f %s", x, unit) }
	most := math.Floor(w.in(tenthLong, w.t.Height))
	step := max(math.Floor(most/7), 1)
	from := float64(w.pick(1, int(step)))
	for i := range 7 {
		deep := from + float64(i)*step
		if deep > most {
			break
		}
		mm := tenthLong.Unit(w.t.System).Base(deep)
		litres := w.in(tenthLitre, w.t.LitresAt(mm).Base())
		p.x = append(p.x, w.number("depth", "depth", fmt.Sprintf("x%d", i+1), p.xKind, deep, "a mark of the ruler"))
		p.y = append(p.y, w.number("water", "water at that depth", fmt.Sprintf("y%d", i+1), p.yKind, litres, "the tub's shape"))
		p.names, p.odd = append(p.names, fmt.Sprintf("%.0f %s", deep, unit)), append(p.odd, false)
	}
	w.tell("This is how much water stands in %s at each depth.", w.t.Name)
	if len(p.x) < 5 {
		return p, false
	}
	return p.heldBack(), true
}

// heldBack keeps a point for the prediction.
func (p pairs) heldBack() pairs {
	n := len(p.x) - 1
	for n > 0 && p.odd[n] {
		n--
	}
	p.lastX, p.lastY = p.x[n], p.y[n]
	p.x, p.y, p.names = slices.Delete(p.x, n, n+1), slices.Delete(p.y, n, n+1), slices.Delete(p.names, n, n+1)
	return p
}

func (p pairs) table() *Table {
	head := func(name string, k quantity.Kind) string {
		if k.Metric.Symbol == "" {
			return name
		}
		return name + ", " + k.Metric.Symbol
	}
	t := &Table{Caption: "The points", Heads: []string{"point", head(p.xName, p.xKind) + " (x)", head(p.yName, p.yKind) + " (y)"}}
	for i := range p.x {
		t.Rows = append(t.Rows, []Cell{{Text: fmt.Sprint(i + 1)}, {Text: quantity.FormatNumber(p.x[i].Base, p.xKind.Decimals[0])}, {Text: quantity.FormatNumber(p.y[i].Base, p.yKind.Decimals[0])}})
	}
	return t
}

func (p pairs) graph() *Graph {
	g := &Graph{Title: "Scatter plot"}
	g.X = axis(p.xName, p.xKind.Metric.Symbol, max(top(bases(p.x)), p.lastX.Base), 14)
	g.Y = axis(p.yName, p.yKind.Metric.Symbol, max(top(bases(p.y)), p.lastY.Base), 14)
	for i := range p.x {
		g.Points = append(g.Points, Point{X: p.x[i].Base, Y: p.y[i].Base})
	}
	return g
}

func bases(n []working.Number) []float64 {
	out := make([]float64, len(n))
	for i, v := range n {
		out[i] = v.Base
	}
	return out
}

func fitLine(w *bench) {
	p, ok := w.grown()
	if !ok || len(p.x) < 3 {
		w.without("There are too few heights in the logbook, and the tub's shape is not known.")
		return
	}
	w.out.Table, w.out.Graph = p.table(), p.graph()
	perUnit := p.yKind.Metric.Symbol + "/" + p.xKind.Metric.Symbol
	slopeKind, startKind := plain(perUnit, 3), plain(p.yKind.Metric.Symbol, 2)
	w.ask(w.drawing("Mark each point on the graph. ", "Look at the points on the graph. ") + "Draw a straight line that runs close to all of them.").Says = "The line of the key is the one with the least sum of squares. A line drawn by eye lies near it."
	var slope, start working.Number
	if w.Band == Senior {
		slope, start = w.leastSquares(p, slopeKind, startKind)
	} else {
		n := len(p.x) - 1
		slope = w.work(riseLaw, slopeKind, "slope", "slope from the first point to the last", p.y[n], p.y[0], p.x[n], p.x[0])
		w.ask(fmt.Sprintf("How steep is it from the first point to the last? That is the slope (%s).", perUnit), slope)
		taken := w.again(slope)
		start = w.work(interceptOne, startKind, "start", "where that line begins", p.y[0], taken, p.x[0])
		w.ask("Where does that line meet the side of the graph, at x = 0?", start)
	}
	w.predicted(p, w.again(slope), w.again(start))
	a, b := fit(bases(p.x), bases(p.y))
	w.out.Graph.Line = &[2]float64{a, b}
	w.out.Talk = "Would the line still hold a month later? Say why or why not."
	w.out.TalkKey = "No. A line holds near the points it was drawn through. Growth slows down, and a tub has a rim."
}

// interceptOne is where a line through one point begins.
var interceptOne = law("a", number, "u-b*c", "the line through the first point", working.Letter("u", "the first height", number), working.Letter("b", "the slope", number), working.Letter("c", "the first day", number))

// leastSquares asks for the four sums and the line they give.
func (w *bench) leastSquares(p pairs, slopeKind, startKind quantity.Kind) (slope, start working.Number) {
	n := len(p.x)
	digits := p.yKind.Decimals[0]
	kind := func(d int) quantity.Kind { return plain("", d) }
	sum := func(letter string, d int, key, name, row string, in []working.Number) working.Number {
		return w.work(totalLaw(letter, row, n, "a number of the row", number), kind(d), key, name, in...)
	}
	x := sum("X", 0, "sum_x", "sum of x", "x", p.x)
	y := sum("Y", digits, "sum_y", "sum of y", "y", p.y)
	xy := w.work(crossLaw("P", "x", "y", n), kind(digits), "sum_xy", "sum of x times y", append(slices.Clone(p.x), p.y...)...)
	xx := w.work(crossLaw("Q", "x", "x", n), kind(0), "sum_xx", "sum of x times x", p.x...)
	w.ask("Work out the sums of x, y, x times y, and x times x.", x, y, xy, xx)
	count := w.count("points", "how many points", "n", n, "the table")
	slope = w.work(slopeLaw, slopeKind, "slope", "slope of the fitted line", count, xy, x, y, xx)
	w.ask("What is the slope of the line with the least sum of squares?", slope)
	taken := w.again(slope)
	start = w.work(interceptLaw, startKind, "start", "where the fitted line begins", y, taken, x, count)
	w.ask("Where does it begin, at x = 0?", start)
	return slope, start
}

// predicted asks for the point that was held back, and how far it lies off.
func (w *bench) predicted(p pairs, slope, start working.Number) {
	said := w.work(onLineLaw, finer(p.yKind), "predicted", "predicted", start, slope, p.lastX)
	w.ask(fmt.Sprintf("What does your line say %s?", p.xWord(p.lastX.Base)), said)
	measured := "We measured %s."
	if w.out.From == fromPlan {
		measured = "By the tub's shape it is %s."
	}
	q := w.ask(fmt.Sprintf(measured+" How far is that from what the line said? Above is plus, below is minus.", w.says(p.lastY)), w.work(residualLaw, finer(p.yKind), "residual", "measured less predicted", p.lastY, w.again(said)))
	q.Says = "This is the residual: what the line does not tell."
}
