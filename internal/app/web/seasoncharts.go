package web

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/chart"
	"rootbell/internal/paper/figure"
	"rootbell/internal/school/term"
)

// forecastOf is one quantity of a season's days: how it is drawn, and where its
// values stand.
type forecastOf struct {
	chart.Chart
	of    string // among the readings
	band  func(garden.SeasonDay) garden.Range
	shown func(float64) float64 // in the unit shown
	anew  bool                  // its band begins anew where the tub was filled
}

// bandRow is a day of a forecast's table.
type bandRow struct {
	Day  string
	Shut bool
	bandCell
}

type bandCell struct{ Read, Middle, Band string }

// dayRow is a day of the season with all that is told of it.
type dayRow struct {
	Day, Litres, What string
	Cells             []bandCell // of each chart, in their order
	Shut, Today       bool
}

// charts draws the quantities under one another over one row of days.
func (v *seasonOf) charts(o *opened) {
	if v.takeDays(); len(v.shown) == 0 {
		return
	}
	days := chart.Days{From: dayIn(v.shown[0].Date), To: dayIn(v.shown[len(v.shown)-1].Date), Zone: v.zone, Calendar: v.a.Term}
	if o.bound() {
		days.Now = o.Now
	}
	for i, q := range v.forecasts() {
		v.Charts = append(v.Charts, v.chart(q, days, i == 0))
	}
}

// The page shows so many days of a long season, beginning some days before
// today: nine weeks fit a page that is quick to load.
const (
	mostSeasonDays = 63
	daysBehind     = 14
)

// takeDays takes the days that are shown.
func (v *seasonOf) takeDays() {
	v.shown = v.s.Days
	if n := len(v.shown); n > mostSeasonDays {
		from := max(0, min(v.firstToday()-daysBehind, n-mostSeasonDays))
		if v.today.After(dayIn(v.shown[n-1].Date)) {
			from = n - mostSeasonDays
		}
		v.shown = v.shown[from : from+mostSeasonDays]
		v.Part = fmt.Sprintf("%d of %d days are shown, from %s to %s; all of them stand in the program's own table (rootbell season --json).", mostSeasonDays, n, wordsOf(v.shown[0].Date), wordsOf(v.shown[mostSeasonDays-1].Date))
	}
}

// forecasts are the quantities in the order of the page.
func (v *seasonOf) forecasts() []forecastOf {
	in := func(kind quantity.Kind, toBase float64) func(float64) float64 {
		return func(x float64) float64 { return kind.Unit(v.units).From(x * toBase) }
	}
	same := func(x float64) float64 { return x }
	level := forecastOf{of: "level", anew: true, shown: in(quantity.Length, 1), band: func(d garden.SeasonDay) garden.Range { return d.LevelMM }}
	level.Chart = chart.Chart{Key: "season-level", Name: "Level", Unit: quantity.Length.Unit(v.units).Symbol, Decimals: quantity.Length.Decimals[v.units], Tint: "water"}
	mass := forecastOf{of: "harvest", shown: in(quantity.SmallMass, 1e-3), band: func(d garden.SeasonDay) garden.Range { return d.MassG }}
	mass.Chart = chart.Chart{Key: "season-mass", Name: "Mass of its plants", Unit: quantity.SmallMass.Unit(v.units).Symbol, Decimals: quantity.SmallMass.Decimals[v.units], Tint: "plant", Shown: chart.Range{Low: 0, High: 1}}
	// Where the tub is filled at every other meeting, each filling thins the
	// solution by little, and the band runs on.
	ec := forecastOf{of: "ec", anew: v.fills() <= mostFills, shown: same, band: func(d garden.SeasonDay) garden.Range { return d.ECBand }}
	ec.Chart = chart.Chart{Key: "season-ec", Name: "EC at 25 °C", Unit: quantity.Conductivity.Unit(v.units).Symbol, Decimals: quantity.Conductivity.Decimals[v.units]}
	oxygen := forecastOf{shown: same, band: func(d garden.SeasonDay) garden.Range { return d.DOBand }}
	oxygen.Chart = chart.Chart{Key: "season-oxygen", Name: "Oxygen in the water", Unit: "mg/L", Decimals: 1}
	v.levelLines(&level)
	if v.s.NeededG > 0 {
		mass.Lines = append(mass.Lines, chart.Line{Value: mass.shown(v.s.NeededG), Words: "the meal needs " + v.mass(v.s.NeededG)})
	}
	all := []forecastOf{level, mass, ec, oxygen}
	for i := range all {
		q := &all[i]
		q.Says = v.says(q)
	}
	return slices.DeleteFunc(all, func(q forecastOf) bool {
		return !slices.ContainsFunc(v.shown, func(d garden.SeasonDay) bool { return q.band(d).P95 > 0 })
	})
}

// levelLines are the lowest line, and what was filled.
func (v *seasonOf) levelLines(q *forecastOf) {
	for _, at := range v.t.Levels {
		if at.Lowest {
			low := q.shown(at.DepthMM)
			q.Lines = append(q.Lines, chart.Line{Value: low, Words: "lowest line, " + q.figure(low), Kind: chart.Lowest})
		}
	}
	for _, d := range v.shown {
		if day := dayIn(d.Date); d.Filled && day.Set() && len(q.Marks) < mostFills {
			words := "fill"
			if day.Before(v.today) {
				words = "filled"
			}
			q.Marks = append(q.Marks, chart.Mark{At: v.leaves(day), Words: words})
		}
	}
}

// mostFills is how many fillings bear their word: a club that meets twice a week
// fills at each meeting, and the band shows that by itself.
const mostFills = 12

// fills is how often the tub is filled in the days shown.
func (v *seasonOf) fills() int {
	n := 0
	for _, d := range v.shown {
		if d.Filled {
			n++
		}
	}
	return n
}

// leaves is the moment that a season's day is told for.
func (v *seasonOf) leaves(d term.Date) time.Time { return v.a.Term.Leaves(d, v.zone) }

func (q *forecastOf) figure(x float64) string {
	return quantity.FormatNumber(x, q.Decimals) + "\u00a0" + q.Unit
}

func (q *forecastOf) number(x float64) string { return quantity.FormatNumber(x, q.Decimals) }

// chart draws one of them at both widths, with its table.
func (v *seasonOf) chart(q forecastOf, days chart.Days, first bool) seasonChart {
	q.Points = v.points(&q)
	q.Of = len(q.Points)
	out := seasonChart{Name: q.Name, Key: q.Key, Says: q.Says, Unit: q.Unit}
	for _, w := range widths {
		c := q.Chart
		c.Bands = v.bands(&q, w)
		drawing := svg(chart.Draw(c, days, w, first), true)
		if w == figure.Hand {
			out.Hand = drawing
		} else {
			out.Desk = drawing
		}
	}
	out.rows = v.rows(&q, days)
	out.Rows = fewRows(out.rows, v.firstToday())
	return out
}

// mostBand is how many days of a smooth band are drawn; of one that begins anew
// at each filling, as many as the drawing has room for.
func (q *forecastOf) mostBand(w figure.Width) int {
	switch {
	case q.anew && w == figure.Desk:
		return 130
	case q.anew:
		return 60
	}
	return 30
}

// bands are the runs of a forecast; each begins anew where the tub was filled.
// A day alone is no band and joins the run before it.
func (v *seasonOf) bands(q *forecastOf, w figure.Width) [][]chart.Band {
	var out [][]chart.Band
	step := (len(v.shown)-1)/q.mostBand(w) + 1
	for i, d := range v.shown {
		day := dayIn(d.Date)
		if !day.Set() {
			continue
		}
		anew := len(out) == 0 || q.anew && d.Filled && len(out[len(out)-1]) > 1
		turns := i == len(v.shown)-1 || q.anew && v.shown[i+1].Filled
		if !anew && !turns && i%step != 0 {
			continue
		}
		r := q.band(d)
		b := chart.Band{At: v.leaves(day), Low90: q.shown(r.P5), Low50: q.shown(r.P25), Mid: q.shown(r.P50), High50: q.shown(r.P75), High90: q.shown(r.P95)}
		if anew {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], b)
	}
	return out
}

// points are the readings of a quantity.
func (v *seasonOf) points(q *forecastOf) []chart.Point {
	var out []chart.Point
	for _, m := range v.s.Readings {
		if q.of != "" && m.Of == q.of {
			x := q.shown(m.Value)
			out = append(out, chart.Point{At: m.At, Low: x, High: x})
		}
	}
	return out
}

// rows are the days of a forecast's table.
func (v *seasonOf) rows(q *forecastOf, days chart.Days) []bandRow {
	read := map[term.Date]string{}
	for _, r := range chart.Table(q.Points, q.Decimals, days) {
		read[r.Day] = r.Read
	}
	var out []bandRow
	for _, d := range v.shown {
		r, day := q.band(d), dayIn(d.Date)
		out = append(out, bandRow{
			Day: day.Words(), Shut: !d.Open,
			bandCell: bandCell{read[day], q.number(q.shown(r.P50)), q.number(q.shown(r.P5)) + "\u00a0to\u00a0" + q.number(q.shown(r.P95))},
		})
	}
	return out
}

// firstToday is the place of today among the season's days, else of the first.
func (v *seasonOf) firstToday() int {
	return max(0, slices.IndexFunc(v.shown, func(d garden.SeasonDay) bool { return dayIn(d.Date) == v.today }))
}

// fewRows are the rows that stand beside a chart: from today on, evenly spaced
// to the last day.
func fewRows(all []bandRow, from int) []bandRow {
	left := all[from:]
	if len(left) < mostRows {
		left = all[max(0, len(all)-mostRows):]
	}
	if len(left) <= mostRows {
		return left
	}
	out := make([]bandRow, mostRows)
	for i := range out {
		out[i] = left[i*(len(left)-1)/(mostRows-1)]
	}
	return out
}

// says is the sentence over a chart: what to see.
func (v *seasonOf) says(q *forecastOf) string {
	ahead := v.shown[v.firstToday():]
	least, last := ahead[0], ahead[len(ahead)-1]
	for _, d := range ahead {
		if is, was := q.band(d), q.band(least); is.P5 < was.P5 || is.P5 == was.P5 && is.P50 < was.P50 {
			least = d
		}
	}
	low := fmt.Sprintf("%s, in the middle %s", q.figure(q.shown(q.band(least).P5)), q.number(q.shown(q.band(least).P50)))
	switch q.of {
	case "level":
		return fmt.Sprintf("It stands lowest on %s: in 1 of 20 cases under %s.", wordsOf(least.Date), low)
	case "harvest":
		return fmt.Sprintf("On %s the middle is %s; 9 in 10 cases lie from %s to %s.", wordsOf(last.Date), q.figure(q.shown(last.MassG.P50)), q.number(q.shown(last.MassG.P5)), q.figure(q.shown(last.MassG.P95)))
	case "ec":
		return fmt.Sprintf("The middle goes from %s to %s by %s. Plain water thins it, thirst thickens it.", q.number(ahead[0].ECBand.P50), q.figure(last.ECBand.P50), wordsOf(last.Date))
	}
	if q.number(q.band(least).P5) == q.number(0) {
		return fmt.Sprintf("Least on %s: in 1 of 20 cases none is left, in the middle %s.", wordsOf(least.Date), q.figure(q.band(least).P50))
	}
	return fmt.Sprintf("Least on %s: in 1 of 20 cases under %s.", wordsOf(least.Date), low)
}

// fill says up to where a tub is filled on a day.
func (v *seasonOf) fill(d garden.SeasonDay) string {
	if d.LineMM > 0 {
		return "Fill to " + quantity.Format(quantity.Length, d.LineMM, v.units) + "."
	}
	return "Fill."
}

// days are all days with what is told of them, each with what there is to do.
func (v *seasonOf) days() {
	todo := map[string][]string{}
	for _, t := range v.s.Tasks {
		todo[t.On] = append(todo[t.On], sentence(t.Do))
	}
	v.Volume = quantity.Volume.Unit(v.units).Symbol
	for i, d := range v.shown {
		day := dayIn(d.Date)
		row := dayRow{
			Day: day.Words(), Shut: !d.Open, Today: day == v.today,
			Litres: quantity.FormatNumber(quantity.Volume.Unit(v.units).From(quantity.Litre.Base(d.Litres)), quantity.Volume.Decimals[v.units]),
		}
		for _, c := range v.Charts {
			row.Cells = append(row.Cells, c.rows[i].bandCell)
		}
		what := todo[d.Date]
		if d.Filled {
			what = append(what, v.fill(d))
		}
		row.What = strings.Join(what, " ")
		v.Days = append(v.Days, row)
	}
}
