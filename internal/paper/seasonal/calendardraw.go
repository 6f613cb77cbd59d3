package seasonal

import (
	"strings"

	"rootbell/internal/paper/card"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// Lengths of the drawn calendar in mm.
const (
	sideMM   = 12.0
	footMM   = 11.0 // the title block
	titleMM  = 14.0
	headMM   = 7.0  // the names of the days
	numberMM = 21.5 // the column of the weeks
	slimMM   = 10.5 // a day of the week without school
	padMM    = 1.2
	hatchMM  = 2.4
)

// Type sizes in points: what a wall is read from, and the least that is printed.
const (
	wallPoints  = 14.0
	leastPoints = 11.0
	leading     = 1.2
)

// mostWeeks is as many weeks as one page holds in the smallest type.
const mostWeeks = 20

// acrossPoints is the type from which on the page lies across, as a wall
// calendar does; under it the way is taken that has the larger type.
const acrossPoints = 13.0

// drawnCalendar draws the weeks; the days in words are set.
func (p papers) drawnCalendar(paper scene.Size) [][]card.Page {
	w, ok := p.wall()
	if !ok {
		return nil
	}
	var pages []card.Page
	for _, part := range w.chunks(mostWeeks) {
		page, points := p.calendarPage(part, paper.Across())
		if points < acrossPoints {
			if upright, larger := p.calendarPage(part, paper); larger > points {
				page = upright
			}
		}
		pages = append(pages, page)
	}
	return [][]card.Page{pages}
}

// calendarPage is one page of the calendar, in the largest type that fits; 0
// points where none does and cells are cut.
func (p papers) calendarPage(w wall, size scene.Size) (page card.Page, points float64) {
	inner := scene.Box{Min: scene.Point{X: sideMM, Y: sideMM}, Max: scene.Point{X: size.Width - sideMM, Y: size.Height - sideMM}}
	foot := scene.BoxAt(inner.Min, inner.Width(), footMM)
	out := p.cover.TitleBlock(foot, "Wall calendar", size)
	out = append(out, calendarTitle(inner, p.head(w))...)
	notes := scene.NewColumn(scene.Box{Min: scene.Point{X: inner.Min.X, Y: foot.Max.Y + 2}, Max: scene.Point{X: inner.Max.X, Y: foot.Max.Y + 2 + 30}})
	style := scene.Style{Face: scene.Serif, SizeMM: leastPoints * scene.PointMM, Leading: leading}
	for _, line := range p.everyDay() {
		notes.Text(style, line)
	}
	used := notes.Box.Height() - notes.Left()
	for _, e := range notes.Elements {
		out = append(out, scene.Moved(e, scene.Point{Y: used - notes.Box.Height()}))
	}
	box := scene.Box{Min: scene.Point{X: inner.Min.X, Y: foot.Max.Y + 2 + used + 1}, Max: scene.Point{X: inner.Max.X, Y: inner.Max.Y - titleMM}}
	g := w.grid(box)
	if g.fits {
		points = g.size / scene.PointMM
	}
	return card.Page{Size: size, Elements: append(out, g.elements()...)}, points
}

func calendarTitle(inner scene.Box, head string) []scene.Element {
	const big = 22 * scene.PointMM
	y := inner.Max.Y - 8
	return []scene.Element{
		scene.Text{At: scene.Point{X: inner.Min.X, Y: y}, Text: "Wall calendar", SizeMM: big, Face: scene.Serif},
		scene.Text{At: scene.Point{X: inner.Max.X, Y: y}, Text: head, SizeMM: wallPoints * scene.PointMM, Face: scene.Serif, Anchor: scene.End},
		scene.Line{From: scene.Point{X: inner.Min.X, Y: y - 3.2}, To: scene.Point{X: inner.Max.X, Y: y - 3.2}, Class: scene.Part},
	}
}

// grid is how a calendar fills its box at a type size.
type grid struct {
	wall
	box   scene.Box
	size  float64 // of the type, in mm
	lefts [8]float64
	rows  []float64     // height of each week
	cells [][7][]string // the lines of each day, wrapped
	fits  bool
}

// grid lays the weeks into a box in the largest type that fits.
func (w wall) grid(box scene.Box) grid {
	var g grid
	for points := wallPoints; points >= leastPoints; points -= 0.5 {
		if g = w.laid(box, points*scene.PointMM); g.fits {
			break
		}
	}
	return g
}

// laid wraps every cell at a type size; a week is as high as its fullest day.
func (w wall) laid(box scene.Box, size float64) grid {
	g := grid{wall: w, box: box, size: size}
	broad := float64(w.openDays())
	each := (box.Width() - numberMM - slimMM*(7-broad)) / max(broad, 1)
	g.lefts[0] = box.Min.X + numberMM
	for k := range 7 {
		wide := slimMM
		if w.broad[k] {
			wide = each
		}
		g.lefts[k+1] = g.lefts[k] + wide
	}
	room := box.Height() - headMM
	used := 0.0
	lead := size * leading
	for _, one := range w.weeks {
		var lines [7][]string
		most := 1
		for k, d := range one.days {
			lines[k] = g.wrapped(k, d)
			most = max(most, len(lines[k]))
		}
		g.cells = append(g.cells, lines)
		g.rows = append(g.rows, float64(most)*lead+padMM)
		used += g.rows[len(g.rows)-1]
	}
	g.fits = used <= room
	spare := (room - used) / float64(len(g.rows))
	if g.fits {
		for i := range g.rows {
			g.rows[i] += spare
		}
		return g
	}
	// Even the smallest type is too much: each week has the same height, and what
	// is cut stands in the list of days.
	for i := range g.rows {
		g.rows[i] = room / float64(len(g.rows))
	}
	return g
}

// numberWidth is the room of a day's number at the left of its first line.
func (g grid) numberWidth(d daily) float64 {
	return max(scene.SansBold.Width("00", g.size), scene.SansBold.Width(d.number(), g.size)) + 1.2
}

// number is a day's number, with the month on its first day where there is room.
func (d daily) number() string {
	if d.at.Day == 1 && d.broad {
		return d.at.Short()
	}
	return itoa(d.at.Day)
}

// wrapped are the lines of a cell. The first begins after the day's number.
func (g grid) wrapped(k int, d daily) []string {
	if !d.shown {
		return nil
	}
	words := d.lines
	if reason := d.reason(); reason != "" {
		words = append([]string{reason}, words...)
	}
	width := g.lefts[k+1] - g.lefts[k] - 2*padMM
	var out []string
	for _, w := range words {
		first := width
		if len(out) == 0 {
			first -= g.numberWidth(d)
		}
		out = append(out, flowed(w, g.size, first, width)...)
	}
	return out
}

// flowed breaks words into lines, the first of another width than the rest. It
// is empty where not even a word goes into it.
func flowed(words string, size, first, rest float64) []string {
	var out []string
	line, room := "", first
	for _, word := range strings.Fields(words) {
		joined := strings.TrimSpace(line + " " + word)
		if scene.Sans.Width(joined, size) <= room {
			line = joined
			continue
		}
		if line != "" || len(out) == 0 && first < rest {
			out = append(out, line)
		}
		parts := scene.Sans.Wrap(word, size, rest)
		out = append(out, parts[:len(parts)-1]...)
		line, room = parts[len(parts)-1], rest
	}
	return append(out, line)
}

func (g grid) elements() []scene.Element {
	out := g.heads()
	top := g.box.Max.Y - headMM
	for i, one := range g.weeks {
		bottom := top - g.rows[i]
		out = append(out, g.weekName(one, top)...)
		for k, d := range one.days {
			box := scene.Box{Min: scene.Point{X: g.lefts[k], Y: bottom}, Max: scene.Point{X: g.lefts[k+1], Y: top}}
			out = append(out, g.day(box, d, g.cells[i][k])...)
		}
		out = append(out, scene.Line{From: scene.Point{X: g.box.Min.X, Y: bottom}, To: scene.Point{X: g.box.Max.X, Y: bottom}, Class: scene.Thin})
		top = bottom
	}
	return out
}

func (g grid) heads() []scene.Element {
	y := g.box.Max.Y - headMM
	out := []scene.Element{scene.Line{From: scene.Point{X: g.box.Min.X, Y: y}, To: scene.Point{X: g.box.Max.X, Y: y}, Class: scene.Part}}
	const size = leastPoints * scene.PointMM
	out = append(out, scene.Text{At: scene.Point{X: g.box.Min.X, Y: y + 1.8}, Text: "week", SizeMM: size})
	for k := range 7 {
		out = append(out, scene.Text{At: scene.Point{X: g.lefts[k] + padMM, Y: y + 1.8}, Text: g.weeks[0].monday.Add(k).Weekday().String()[:3], SizeMM: size})
	}
	return out
}

func (g grid) weekName(w week, top float64) []scene.Element {
	y := top - g.size*leading*0.8
	out := []scene.Element{scene.Text{At: scene.Point{X: g.lefts[0] - padMM, Y: y}, Text: w.monday.Short(), SizeMM: leastPoints * scene.PointMM, Anchor: scene.End}}
	if w.number > 0 {
		out = append(out, scene.Text{At: scene.Point{X: g.box.Min.X, Y: y}, Text: itoa(w.number), SizeMM: g.size, Face: scene.SansBold})
	}
	return out
}

// day draws one cell: hatched where nobody comes, with ground cleared for words.
func (g grid) day(box scene.Box, d daily, lines []string) []scene.Element {
	out := []scene.Element{scene.Line{From: box.Min, To: scene.Point{X: box.Min.X, Y: box.Max.Y}, Class: scene.Thin}}
	if !d.shown {
		return out
	}
	closed := d.at.Kind != term.Open
	if closed {
		out = append(out, scene.Hatch(scene.Rectangle(box), hatchMM, 45, scene.Thin)...)
	}
	lead := g.size * leading
	at := func(line int) scene.Point {
		return scene.Point{X: box.Min.X + padMM, Y: box.Max.Y - padMM/2 - lead*(float64(line)+0.8)}
	}
	out = append(out, scene.Text{At: at(0), Text: d.number(), SizeMM: g.size, Face: scene.SansBold, Halo: closed})
	room := int((box.Height() - padMM/2) / lead)
	for i, line := range lines {
		if i >= room {
			break
		}
		from := at(i)
		if i == 0 {
			from.X += g.numberWidth(d)
		}
		if i == room-1 && i+1 < len(lines) {
			line = scene.Sans.Fitted(line+" and more", g.size, box.Max.X-padMM-from.X)
		}
		out = append(out, scene.Text{At: from, Text: line, SizeMM: g.size, Halo: closed})
	}
	return out
}
