package lessons

import (
	"fmt"
	"strings"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/lesson"
)

// Pupil is the pupil's copy of a sheet.
func Pupil(s lesson.Sheet, cover sheet.Lid, paper scene.Size) content.Sheet {
	title := s.Template.Title
	out := content.Sheet{Title: title, Block: cover.Block(drawing(s), paper)}
	out.Sections = append(out.Sections, content.Section{Heading: "Worked out by", Lines: []content.Line{"team or number ____________  date ____________"}})
	told := content.Section{Heading: "What we know", Cautions: s.Care, Paragraphs: []string{strings.Join(s.Told, " ")}}
	told.Paragraphs = append(told.Paragraphs, source(s))
	for _, o := range s.Odd {
		told.Paragraphs = append(told.Paragraphs, o.Short())
	}
	if s.Table != nil {
		told.Tables = []content.Table{table(s.Table, false)}
	}
	out.Sections = append(out.Sections, told)
	if s.Graph != nil {
		out.Sections = append(out.Sections, content.Section{Heading: s.Graph.Title, Figures: []content.Figure{figure(s, s.Filled, false)}})
	}
	for i, q := range s.Questions {
		out.Sections = append(out.Sections, question(s, i, q))
	}
	if s.Talk != "" {
		out.Sections = append(out.Sections, content.Section{Heading: "To talk about", Together: true, Paragraphs: []string{s.Talk}, Lines: []content.Line{rule}})
	}
	return out
}

// source says to pupils where the numbers come from.
func source(s lesson.Sheet) string {
	text := "The numbers come from the plan of our tub."
	switch {
	case s.FromPlan():
		text = "Our logbook is too short for this sheet. " + text
	case s.FromLog():
		text = "The numbers come from our logbook."
	}
	if s.Made {
		text += " Some are made up for practice."
	}
	return text
}

// rule is a line to write words on, over the width of the paper.
var rule = content.Line(strings.Repeat("_", 60))

func question(s lesson.Sheet, i int, q lesson.Question) content.Section {
	out := content.Section{Heading: fmt.Sprintf("Question %d", i+1), Together: true}
	text := q.Text
	for range q.Lines {
		out.Lines = append(out.Lines, rule)
	}
	if n, ok := q.Answer(); ok {
		shown := n.Show(s.System)
		if words := rounding(n, s.System, shown); words != "" {
			text += " " + words
		}
		for k, step := range q.Steps {
			out.Lines = append(out.Lines, answer(s, q, step, k < len(q.Steps)-1)...)
		}
	}
	out.Paragraphs = []string{text}
	return out
}

// answer is the line of one number: its sum in blanks, where it has a short one,
// and the answer.
func answer(s lesson.Sheet, q lesson.Question, n stepNumber, named bool) []content.Line {
	shown := n.Show(s.System)
	blank := strings.Repeat("_", len([]rune(result(shown)))+3)
	unit := unitOf(q, shown)
	lead := ""
	if named || len(q.Steps) > 1 {
		lead = n.Name + ": "
	}
	if sum, ok := blanked(n, s.System, shown); ok {
		return []content.Line{content.Line(strings.TrimRight(lead+sum+" = "+blank+" "+unit, " "))}
	}
	work := content.Line("My sum: " + strings.Repeat("_", 40))
	return []content.Line{work, content.Line(strings.TrimRight(lead+"answer "+blank+" "+unit, " "))}
}

// table is a sheet's table; what is asked is empty on the pupil's copy.
func table(t *lesson.Table, key bool) content.Table {
	out := content.Table{Caption: t.Caption}
	for i, h := range t.Heads {
		out.Columns = append(out.Columns, content.Column{Head: h, Number: i > 0})
	}
	for _, row := range t.Rows {
		var cells []string
		for _, c := range row {
			if c.Asked && !key {
				cells = append(cells, content.Blank)
				continue
			}
			cells = append(cells, c.Text)
		}
		out.Rows = append(out.Rows, cells)
	}
	return out
}
