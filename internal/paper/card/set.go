package card

import (
	"strconv"
	"strings"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// Lengths of a page in mm.
const (
	sideMM = 12.0
	footMM = 11.0 // the title block
	lineMM = 8.5  // a line to write on

	usualRowMM = 8.6 // of a table
)

// PDF prints the card on a size of paper: its sheets one after another, each
// over as many pages as it takes.
func (c Card) PDF(paper scene.Size) ([]byte, error) {
	press := scene.NewPress(c.Title+": "+c.Cover.Garden, c.Cover.On)
	var drawn [][]Page
	if c.Drawn != nil {
		drawn = c.Drawn(paper)
	}
	for i, s := range c.Sheets(paper) {
		if i < len(drawn) && len(drawn[i]) > 0 {
			for _, page := range drawn[i] {
				press.Page(page.Size).Draw(page.Elements...)
			}
			continue
		}
		for _, page := range c.fitted(s, paper) {
			press.Page(paper).Draw(page...)
		}
	}
	return press.Bytes()
}

// leastPoints is the smallest type of these papers.
const leastPoints = 11

func (c Card) least() float64 { return max(c.Least, leastPoints) }

// fitted lays a sheet on one page in the largest type that does, no smaller than
// leastPoints; else over several.
func (c Card) fitted(s content.Sheet, paper scene.Size) [][]scene.Element {
	for {
		pages := c.pages(s, paper)
		if len(pages) == 1 || c.Points <= c.least() {
			return pages
		}
		c.Points = max(c.Points-0.5, c.least())
	}
}

// block is one thing that is not parted over two pages.
type block func(*scene.Column)

// pages lays a sheet. What no page holds is left out rather than looped on.
func (c Card) pages(s content.Sheet, paper scene.Size) [][]scene.Element {
	var out [][]scene.Element
	var column *scene.Column
	begin := func() {
		column = scene.NewColumn(scene.Box{
			Min: scene.Point{X: sideMM, Y: sideMM + footMM + 3},
			Max: scene.Point{X: paper.Width - sideMM, Y: paper.Height - sideMM},
		})
		c.head(column, s.Title)
	}
	end := func() {
		foot := scene.BoxAt(scene.Point{X: sideMM, Y: sideMM}, paper.Width-2*sideMM, footMM)
		out = append(out, append(c.Cover.TitleBlock(foot, s.Block.Drawing, paper), column.Elements...))
	}
	begin()
	for _, b := range c.blocks(s) {
		trial := *column
		if b(&trial); trial.Full() {
			end()
			begin()
			b(column)
			continue
		}
		column = &trial
	}
	end()
	return out
}

func (c Card) head(column *scene.Column, title string) {
	size := 22 * scene.PointMM
	if box, ok := column.Take(10.5); ok {
		column.Elements = append(column.Elements, scene.Text{
			At: box.Min.Plus(scene.Point{Y: 2.5}), Text: scene.Serif.Fitted(title, size, box.Width()), SizeMM: size, Face: scene.Serif,
		})
	}
	column.Rule(scene.Part, 0.6)
	column.Rule(scene.Part, 2.4)
}

func (c Card) style(face scene.Face) scene.Style {
	return scene.Style{Face: face, SizeMM: c.Points * scene.PointMM, Leading: 1.26}
}

// blocks are a sheet's parts in order; a heading stays with what it heads.
func (c Card) blocks(s content.Sheet) []block {
	var out []block
	if s.Stop != "" {
		out = append(out, func(column *scene.Column) { c.caution(column, s.Stop) })
	}
	for _, section := range s.Sections {
		parts := c.parts(section)
		if len(parts) == 0 {
			continue
		}
		first := parts[0]
		parts[0] = func(column *scene.Column) {
			c.heading(column, section.Heading)
			first(column)
		}
		switch {
		case section.Whole:
			parts = []block{c.cutOut(parts)}
		case section.Together:
			parts = []block{together(parts)}
		}
		out = append(out, parts...)
	}
	return out
}

func (c Card) heading(column *scene.Column, words string) {
	style := c.style(scene.SerifBold)
	style.SizeMM += scene.PointMM
	column.Gap(1.8)
	column.Text(style, words)
	column.Gap(0.8)
}

// together is a section that no page parts.
func together(parts []block) block {
	return func(column *scene.Column) {
		for _, part := range parts {
			part(column)
		}
	}
}

// cutOut is a section with a broken line round it to cut along.
func (c Card) cutOut(parts []block) block {
	const pad = 4.0
	return func(column *scene.Column) {
		column.Gap(2)
		from := column.Left()
		inner := column.Box
		column.Box.Min.X, column.Box.Max.X = inner.Min.X+pad, inner.Max.X-pad
		column.Gap(1)
		for _, part := range parts {
			part(column)
		}
		column.Gap(2)
		column.Box = inner
		frame := scene.Box{Min: scene.Point{X: inner.Min.X, Y: inner.Min.Y + column.Left()}, Max: scene.Point{X: inner.Max.X, Y: inner.Min.Y + from}}
		column.Elements = append(column.Elements, scene.Shape{Path: scene.Rectangle(frame), Class: scene.Hidden})
		column.Gap(3)
	}
}

// parts are the blocks of a section under its heading.
func (c Card) parts(s content.Section) []block {
	var out []block
	for _, words := range s.Cautions {
		out = append(out, func(column *scene.Column) { c.caution(column, words) })
	}
	for _, words := range s.Paragraphs {
		out = append(out, func(column *scene.Column) {
			column.Text(c.style(scene.Serif), words)
			column.Gap(1.2)
		})
	}
	for i, words := range s.Steps.Items {
		out = append(out, func(column *scene.Column) {
			style := c.style(scene.Serif)
			style.Indent = style.SizeMM * 2
			column.Step(style, strconv.Itoa(s.Steps.First+i)+".", scene.SansBold, words)
			column.Gap(1.1)
		})
	}
	for _, f := range s.Figures {
		if f.Print != nil {
			out = append(out, func(column *scene.Column) { c.figure(column, f) })
		}
	}
	for _, l := range s.Lines {
		out = append(out, func(column *scene.Column) { c.line(column, l) })
	}
	for _, t := range s.Tables {
		if t.Ticked() {
			for i := range t.Rows {
				out = append(out, func(column *scene.Column) { c.tick(column, t, i) })
			}
			continue
		}
		if t.Wordy && len(t.Columns) == 2 {
			for i := range t.Rows {
				out = append(out, func(column *scene.Column) { c.pair(column, t, i) })
			}
			continue
		}
		out = append(out, func(column *scene.Column) { c.table(column, t) })
	}
	for _, words := range s.List {
		out = append(out, func(column *scene.Column) { c.item(column, words) })
	}
	return out
}

// caution is framed, with a thick bar before it that a photocopier keeps.
func (c Card) caution(column *scene.Column, words string) {
	const bar, pad = 3, 2.2
	style := c.style(scene.SansBold)
	lines := style.Face.Wrap(words, style.SizeMM, column.Box.Width()-bar-2*pad)
	lead := style.SizeMM * style.Leading
	box, ok := column.Take(float64(len(lines))*lead + 2*pad)
	if !ok {
		return
	}
	column.Elements = append(
		column.Elements,
		scene.Shape{Path: scene.Rectangle(box), Class: scene.Part},
		scene.Shape{Path: scene.Rectangle(scene.BoxAt(box.Min, bar, box.Height())), Class: scene.Part, Fill: scene.Black},
	)
	for i, line := range lines {
		at := scene.Point{X: box.Min.X + bar + pad, Y: box.Max.Y - pad - float64(i)*lead - lead*0.76}
		column.Elements = append(column.Elements, scene.Text{At: at, Text: line, SizeMM: style.SizeMM, Face: style.Face})
	}
	column.Gap(2)
}

// figure is a drawing at true size, in the middle, with its caption under it.
func (c Card) figure(column *scene.Column, f content.Figure) {
	column.Gap(1)
	box, ok := column.Take(f.Print.Frame.Height())
	if !ok {
		return
	}
	by := box.Min.Minus(f.Print.Frame.Min)
	by.X += max(box.Width()-f.Print.Frame.Width(), 0) / 2
	for _, e := range f.Print.Elements {
		column.Elements = append(column.Elements, scene.Moved(e, by))
	}
	column.Gap(0.8)
	column.Text(scene.Style{Face: scene.Sans, SizeMM: c.least() * scene.PointMM}, f.Caption)
	column.Gap(1.6)
}

// item is one of a list; what is not to be done has the word before it.
func (c Card) item(column *scene.Column, words string) {
	style := c.style(scene.Serif)
	label := "–"
	if rest, not := strings.CutPrefix(words, "not "); not {
		label, words = "not", rest
	}
	style.Indent = style.SizeMM * 2.6
	column.Step(style, label, scene.SansBold, words)
	column.Gap(0.6)
}

// line is a sentence with blanks to write in.
func (c Card) line(column *scene.Column, l content.Line) {
	style := c.style(scene.Serif)
	box, ok := column.Take(max(lineMM, style.SizeMM*1.7))
	if !ok {
		return
	}
	base := box.Min.Y + 2.2
	words, letters := 0.0, 0
	for _, s := range l.Spans() {
		words += style.Face.Width(s.Text, style.SizeMM)
		letters += s.Width
	}
	if letters == 0 {
		letters = 1
	}
	each := (box.Width() - words) / float64(letters)
	if c.HandMM > 0 {
		each = min(each, c.HandMM)
	}
	x := box.Min.X
	for _, s := range l.Spans() {
		if s.Width > 0 {
			long := each * float64(s.Width)
			column.Elements = append(column.Elements, scene.Line{From: scene.Point{X: x + 1, Y: base - 0.6}, To: scene.Point{X: x + long - 1.5, Y: base - 0.6}, Class: scene.Thin})
			x += long
			continue
		}
		column.Elements = append(column.Elements, scene.Text{At: scene.Point{X: x, Y: base}, Text: s.Text, SizeMM: style.SizeMM, Face: style.Face})
		x += style.Face.Width(s.Text, style.SizeMM)
	}
}

// pair is a row of two columns of words, each over as many lines as it takes;
// over the first one stands the caption.
func (c Card) pair(column *scene.Column, t content.Table, row int) {
	const seen = 0.27 // of the width
	size := max(c.Points-1, leastPoints) * scene.PointMM
	left, right := scene.Style{Face: scene.SansBold, SizeMM: size, Leading: 1.26}, scene.Style{Face: scene.Serif, SizeMM: size, Leading: 1.26}
	if row == 0 {
		column.Text(scene.Style{Face: scene.Sans, SizeMM: leastPoints * scene.PointMM}, t.Caption)
		column.Gap(0.6)
		column.Rule(scene.Part, 1)
	}
	width, lead := column.Box.Width(), size*left.Leading
	a := left.Face.Wrap(t.Rows[row][0], size, width*seen-3)
	b := right.Face.Wrap(t.Rows[row][1], size, width*(1-seen))
	box, ok := column.Take(float64(max(len(a), len(b))) * lead)
	if !ok {
		return
	}
	write := func(lines []string, x float64, face scene.Face) {
		for i, line := range lines {
			at := scene.Point{X: box.Min.X + x, Y: box.Max.Y - float64(i)*lead - lead*0.76}
			column.Elements = append(column.Elements, scene.Text{At: at, Text: line, SizeMM: size, Face: face})
		}
	}
	write(a, 0, left.Face)
	write(b, width*seen, right.Face)
	column.Gap(0.6)
	column.Rule(scene.Thin, 0.9)
}

func (c Card) table(column *scene.Column, t content.Table) {
	column.Gap(1)
	column.Text(scene.Style{Face: scene.Sans, SizeMM: c.least() * scene.PointMM}, t.Caption)
	shares := make([]float64, len(t.Columns))
	for i, col := range t.Columns {
		wide := scene.Sans.Width(col.Head, 1)
		for _, row := range t.Rows {
			if i < len(row) {
				wide = max(wide, scene.SansBold.Width(row[i], 1))
			}
		}
		shares[i] = max(wide, 3)
	}
	row := c.RowMM
	if row == 0 {
		row = usualRowMM
	}
	column.Table(t.Set(c.least()*scene.PointMM, row, shares...))
	column.Gap(2.5)
}
