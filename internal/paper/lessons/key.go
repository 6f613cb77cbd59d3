package lessons

import (
	"fmt"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/lesson"
)

type stepNumber = working.Number

// Key is the key of a sheet, with the working of each answer.
func Key(s lesson.Sheet, cover sheet.Lid, paper scene.Size) content.Sheet {
	title := "Key: " + s.Template.Title
	out := content.Sheet{Title: title, Block: cover.Block("key to "+drawing(s), paper)}
	about := content.Section{Heading: "What it teaches", Paragraphs: []string{
		capital(s.Template.Concept) + ". For " + string(s.Band) + ", " + s.Band.Ages() + ". " + s.Tub + ". " + s.From,
		strings.Join(s.Told, " "),
	}, Cautions: s.Care}
	for _, o := range s.Odd {
		about.Paragraphs = append(about.Paragraphs, o.Says())
	}
	if s.Table != nil {
		about.Tables = []content.Table{table(s.Table, true)}
	}
	out.Sections = append(out.Sections, about)
	if s.Graph != nil {
		out.Sections = append(out.Sections, content.Section{Heading: s.Graph.Title, Figures: []content.Figure{figure(s, true, true)}})
	}
	for i, q := range s.Questions {
		section := content.Section{Heading: fmt.Sprintf("Question %d", i+1), Paragraphs: []string{q.Text}}
		for _, n := range q.Steps {
			section.List = append(section.List, Working(q, n, s.System))
		}
		if q.Says != "" {
			section.List = append(section.List, q.Says)
		}
		out.Sections = append(out.Sections, section)
	}
	if s.Talk != "" {
		out.Sections = append(out.Sections, content.Section{Heading: "To talk about", Paragraphs: []string{s.Talk}, List: []string{s.TalkKey}})
	}
	out.Sections = append(out.Sections, touches(s))
	return out
}

// Working is one number of the key: what it is, its formula, the numbers put in
// and the result.
func Working(q lesson.Question, n working.Number, s quantity.System) string {
	shown := n.Show(s)
	text := n.Name + ": " + n.Symbol
	if n.Law != nil {
		text += " = " + Written(shown.Formula) + " = " + Written(shown.PutIn)
	}
	text += " = " + result(shown)
	if unit := unitOf(q, shown); unit != "" {
		text += " " + unit
	}
	if words := rounding(n, s, shown); words != "" {
		text += ", rounded"
	}
	return text + "."
}

// touches is what codes of standards a sheet touches.
func touches(s lesson.Sheet) content.Section {
	t := content.Table{Caption: "It gives practice with a part of each; it does not cover one. In our words", Wordy: true, Columns: []content.Column{{Head: "code"}, {Head: "about"}}}
	for _, std := range s.Template.Standards() {
		t.Rows = append(t.Rows, []string{std.Of + " " + std.Code, capital(std.Says) + ". " + capital(std.Fact.Says()) + "."})
	}
	return content.Section{Heading: "Touches", Tables: []content.Table{t}}
}

func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
