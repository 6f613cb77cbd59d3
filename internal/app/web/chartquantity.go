package web

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/chart"
	"rootbell/internal/paper/figure"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// quantityShown is one of the quantities with a chart.
type quantityShown struct {
	chart.Chart
	field reading.Field
	kind  quantity.Kind
	units quantity.System
	short string // as the answer calls it
	step  float64
	deeds map[reading.Deed]string // what is written on its chart
	fresh []reading.Deed          // after which it begins anew
	trend trend
}

// The least change that can be told with a classroom's instruments (common
// practice, no source): pH, mS/cm and °C.
const (
	tellPH    = 0.2
	tellEC    = 0.1
	tellWater = 1.0
)

// quantitiesOf are the quantities in the order of the page, in the plan's units.
func quantitiesOf(l *logbook, v reading.Vessel) []quantityShown {
	units := l.Plan.Units
	ph := quantityShown{field: reading.FieldPH, kind: quantity.PHScale, short: "pH", step: tellPH, fresh: []reading.Deed{reading.ChangedOut, reading.Corrected}, deeds: map[reading.Deed]string{reading.ChangedOut: "changed out", reading.Corrected: "pH corrected"}}
	ph.Chart = chart.Chart{Key: "ph", Name: "pH", Possible: chart.Range{Low: 0, High: 14}, Shown: chart.Range{Low: 5, High: 7}}
	ec := quantityShown{field: reading.FieldEC, kind: quantity.Conductivity, short: "EC", step: tellEC, fresh: []reading.Deed{reading.ChangedOut, reading.Fed}, deeds: map[reading.Deed]string{reading.ChangedOut: "changed out", reading.Fed: "fed"}}
	ec.Chart = chart.Chart{Key: "ec", Name: "EC at 25 °C", Possible: chart.Range{Low: 0, High: 20}, Shown: chart.Range{Low: 1, High: 2}}
	water := quantityShown{field: reading.FieldWater, kind: quantity.Temperature, short: "the water temperature"}
	water.Chart = chart.Chart{Key: "water", Name: "Water temperature", Possible: chart.Range{Low: 0, High: 50}, Shown: chart.Range{Low: 15, High: 25}, Tint: "water"}
	level := quantityShown{field: reading.FieldLevel, kind: quantity.Volume, short: "the level", deeds: map[reading.Deed]string{reading.ChangedOut: "changed out", reading.ToppedUp: "topped up", reading.Planted: "planted", reading.Harvested: "harvested"}}
	level.Chart = chart.Chart{Key: "level", Name: "Level", Tint: "water", Possible: chart.Range{High: float64(v.RimL)}}
	out := []quantityShown{ph, ec, water, level}
	for i := range out {
		q := &out[i]
		q.units = units
		unit := q.kind.Unit(units)
		q.Unit, q.Decimals = unit.Symbol, q.kind.Decimals[units]
		q.Possible, q.Shown = chart.Range{Low: q.shown(q.Possible.Low), High: q.shown(q.Possible.High)}, chart.Range{Low: q.shown(q.Shown.Low), High: q.shown(q.Shown.High)}
	}
	out[0].Unit = ""
	out[2].step = out[2].shown(tellWater) - out[2].shown(0)
	if target := l.Plan.Feed.PH; target.Set() {
		out[0].aim(float64(target.Value))
	}
	if target := l.Plan.Feed.EC; target.Set() {
		out[1].Shown = chart.Range{Low: max(0, float64(target.Value)-0.4), High: float64(target.Value) + 0.4}
		out[1].aim(float64(target.Value))
	}
	out[3].lines(l, v)
	return out
}

// shown is a value of a reading in the unit shown.
func (q *quantityShown) shown(v float64) float64 {
	return q.kind.Unit(q.units).From(q.kind.Metric.Base(v))
}

func (q *quantityShown) aim(v float64) {
	q.Lines = append(q.Lines, chart.Line{Value: v, Words: "target, " + q.number(v)})
}

// lines are the fill line and the lowest one of a level.
func (q *quantityShown) lines(l *logbook, v reading.Vessel) {
	for _, at := range l.a.Tubs[l.tub].Levels {
		if at.Lowest && v.LitresAtDepth != nil {
			low := q.shown(float64(v.LitresAtDepth(quantity.MM(at.DepthMM))))
			q.Lines = append(q.Lines, chart.Line{Value: low, Words: "lowest line, " + q.number(low), Kind: chart.Lowest})
		}
	}
	if v.FillL > 0 {
		fill := q.shown(float64(v.FillL))
		q.Lines = append(q.Lines, chart.Line{Value: fill, Words: "fill line, " + q.number(fill)})
		q.Shown = chart.Range{Low: fill * 0.5, High: fill}
	}
}

func (q *quantityShown) number(v float64) string {
	return quantity.FormatNumber(quantity.Round(v, q.Decimals), q.Decimals)
}

func (q *quantityShown) figure(v float64) string {
	if q.Unit == "" {
		return q.number(v)
	}
	return q.number(v) + "\u00a0" + q.Unit
}

// view draws a quantity and says what to see.
func (q *quantityShown) view(read *tubRead, days chart.Days, first bool) chartView {
	plain := reading.Points(read.entries, q.field, read.vessel)
	for i := range plain {
		plain[i].Low, plain[i].High = q.shown(plain[i].Low), q.shown(plain[i].High)
	}
	whole := q.points(plain)
	struck := q.struck(read)
	q.marks(read)
	q.Of = readingsIn(plain)
	q.Says = q.says(whole, read, days.Zone)
	v := chartView{Name: q.Name, Key: q.Key, Says: q.Says, Head: strings.TrimSpace("read " + q.Unit)}
	for _, w := range widths {
		c := q.Chart
		c.Points = withStruck(q.points(thinned(plain, chart.Room(w))), struck)
		drawing := svg(chart.Draw(c, days, w, first), true)
		if w == figure.Hand {
			v.Hand = drawing
		} else {
			v.Desk, v.Note = drawing, chart.Note(c)
		}
	}
	v.All = chart.Table(withStruck(whole, struck), q.Decimals, days)
	v.Rows = v.All[max(0, len(v.All)-mostRows):]
	v.Many = len(v.All) > mostDays
	if v.Many || len(v.All) == len(v.Rows) {
		v.All = nil
	}
	return v
}

// thinned keeps the highest and lowest of what is sure, and some of what is
// doubtful, so that a slip of the pen takes no true reading's place.
func thinned(points []reading.Point, most int) []reading.Point {
	if len(points) <= most {
		return points
	}
	var sure, doubtful []reading.Point
	for _, p := range points {
		if p.Doubtful {
			doubtful = append(doubtful, p)
		} else {
			sure = append(sure, p)
		}
	}
	doubtful = reading.Thin(doubtful, most/5)
	out := append(reading.Thin(sure, most-len(doubtful)), doubtful...)
	slices.SortStableFunc(out, func(a, b reading.Point) int { return a.At.Compare(b.At) })
	return out
}

func (q *quantityShown) points(plain []reading.Point) []chart.Point {
	out := make([]chart.Point, len(plain))
	for i, p := range plain {
		out[i] = chart.Point{At: p.At, Low: p.Low, High: p.High}
		if p.Doubtful {
			out[i].Kind = chart.Doubtful
		}
	}
	return out
}

// readingsIn counts the readings behind points: a level poured up gives two.
func readingsIn(points []reading.Point) int {
	n, last := 0, ""
	for _, p := range points {
		if p.ID != last {
			n, last = n+1, p.ID
		}
	}
	return n
}

// struck are the values that another one took the place of.
func (q *quantityShown) struck(read *tubRead) []chart.Point {
	var out []chart.Point
	for i := range read.entries {
		e := &read.entries[i]
		if len(e.Earlier) == 0 {
			continue
		}
		now := reading.Points([]reading.Entry{{Row: e.Row}}, q.field, read.vessel)
		for _, was := range e.Earlier {
			if !reading.SameTub(was.Tub, e.Tub) {
				continue
			}
			for _, p := range reading.Points([]reading.Entry{{Row: was}}, q.field, read.vessel) {
				if slices.ContainsFunc(now, func(n reading.Point) bool { return n.At.Equal(p.At) && n.Low == p.Low && n.High == p.High }) {
					continue
				}
				out = append(out, chart.Point{At: p.At, Low: q.shown(p.Low), High: q.shown(p.High), Kind: chart.Struck})
			}
		}
	}
	return out
}

func withStruck(points, struck []chart.Point) []chart.Point {
	if len(struck) == 0 {
		return points
	}
	out := append(slices.Clone(points), struck...)
	slices.SortStableFunc(out, func(a, b chart.Point) int { return a.At.Compare(b.At) })
	return out
}

// marks are what was done that the chart shows.
func (q *quantityShown) marks(read *tubRead) {
	for i := range read.entries {
		e := &read.entries[i]
		if q.field == reading.FieldLevel && e.Level.Filled.Set() && !e.Did(reading.ChangedOut) {
			q.Marks = append(q.Marks, chart.Mark{At: e.At, Words: "filled"})
			continue
		}
		for _, d := range e.Done {
			if words := q.deeds[d]; words != "" {
				q.Marks = append(q.Marks, chart.Mark{At: e.At, Words: words})
			}
		}
	}
}

// begun is the moment after which a quantity began anew: zero for never.
func (q *quantityShown) begun(read *tubRead) time.Time {
	for _, e := range slices.Backward(read.entries) {
		for _, d := range q.fresh {
			if e.Did(d) {
				return e.At
			}
		}
	}
	return time.Time{}
}

// says is the sentence over a chart: what to see.
func (q *quantityShown) says(points []chart.Point, read *tubRead, zone *time.Location) string {
	sure := slices.DeleteFunc(slices.Clone(points), func(p chart.Point) bool { return p.Kind != chart.Sure })
	if len(sure) == 0 {
		return "Not read in these days."
	}
	last := sure[len(sure)-1]
	day := func(t time.Time) string { return term.DateOf(t.In(zone)).Words() }
	stands := q.pointWords(last) + " on " + day(last.At)
	if q.field == reading.FieldLevel {
		return q.saysLevel(sure, stands)
	}
	q.trend = trendOf(sure, q.begun(read), q.step, zone)
	t := &q.trend
	switch {
	case len(sure) == 1:
		return "One reading: " + stands + ". Not enough to say where it goes."
	case t.way == wayUnknown:
		return capital(stands) + ". Not enough to say where it goes: that takes four readings on three days."
	case t.way == waySteady:
		return fmt.Sprintf("Steady: between %s and %s since %s. Last %s.", q.number(t.lowest), q.figure(t.highest), day(t.since), stands)
	case t.way == wayAbout:
		return fmt.Sprintf("It goes up and down: between %s and %s since %s. Last %s.", q.number(t.lowest), q.figure(t.highest), day(t.since), stands)
	}
	return fmt.Sprintf("%s: from about %s on %s to about %s on %s.", capital(string(t.way)), q.number(t.from), day(t.since), q.figure(t.to), day(last.At))
}

func (q *quantityShown) pointWords(p chart.Point) string {
	words := chart.Figure(p, q.Decimals)
	if q.Unit != "" {
		words += "\u00a0" + q.Unit
	}
	return words
}

// saysLevel is about what the tub loses.
func (q *quantityShown) saysLevel(sure []chart.Point, stands string) string {
	perDay, pairs, days := thirst(sure)
	const leastPairs, leastDays = 2, 2
	if pairs < leastPairs || days < leastDays {
		return capital(stands) + ". Not enough to say how fast it falls: that takes three readings over two days."
	}
	switch fine := q.kind.WithDecimals(1, 2).Decimals[q.units]; {
	case quantity.Round(perDay, fine) > 0:
		q.trend.way = wayFalling
		return fmt.Sprintf("The tub loses about %s\u00a0%s a day between fillings, by %s readings. Last %s.", quantity.FormatNumber(quantity.Round(perDay, fine), fine), q.Unit, quantity.InWords(pairs+1), stands)
	case quantity.Round(perDay, fine) < 0:
		q.trend.way = wayRising
		return "It rose without a filling written down. Was one forgotten? Last " + stands + "."
	}
	q.trend.way = waySteady
	return "Steady between fillings. Last " + stands + "."
}

// chartsAnswer is the first sentence of the page: where each quantity goes.
func chartsAnswer(tub string, all []quantityShown) string {
	var parts []string
	for _, w := range []way{wayRising, wayFalling, wayAbout, waySteady} {
		var names []string
		for i := range all {
			if all[i].trend.way == w {
				names = append(names, all[i].short)
			}
		}
		if len(names) > 0 {
			verb := " is "
			if len(names) > 1 {
				verb = " are "
			}
			parts = append(parts, listed(names)+verb+string(w))
		}
	}
	if len(parts) == 0 {
		return tub + ": not enough readings yet to say where anything goes."
	}
	return tub + ": " + strings.Join(parts, "; ") + "."
}

// listed names several things: 'pH, EC and level'.
func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
