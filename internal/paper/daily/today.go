package daily

import (
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// today is the sheet for the wall.
func (p papers) today(paper scene.Size) []content.Sheet {
	t := p.a.Today
	bold, rest := t.Answer()
	do := content.Section{Heading: bold + " " + rest}
	if t.Back != nil {
		do.Cautions = []string{"First day after nobody came for " + days(t.Back.Days()) + ": take the return card before anything is touched."}
	}
	if words := t.AheadWords(); words != "" {
		do.Paragraphs = []string{words}
	}
	do.Steps = content.Steps{First: 1, Items: stepWords(t.Steps)}
	s := content.Sheet{Title: "Today, " + t.Day(p.a), Block: p.block("Today, "+t.Day(p.a), paper), Sections: []content.Section{do}}
	if len(t.More) > 0 {
		s.Sections = append(s.Sections, content.Section{Heading: "Due as well, after that", Steps: content.Steps{First: len(t.Steps) + 1, Items: stepWords(t.More)}})
	}
	if table, ok := p.levels(); ok {
		s.Sections = append(s.Sections, content.Section{Heading: "Write here, then into the logbook", Tables: []content.Table{table}})
	}
	wrong := content.Table{Caption: "What you see, and the first safe thing to do", Wordy: true, Columns: []content.Column{{Head: "what you see"}, {Head: "do"}}}
	for _, w := range t.Wrong {
		wrong.Rows = append(wrong.Rows, []string{w.See, w.Do})
	}
	var donts []string
	for _, d := range t.Donts {
		donts = append(donts, "do not "+d)
	}
	s.Sections = append(
		s.Sections,
		content.Section{Heading: "Something is wrong", Tables: []content.Table{wrong}},
		content.Section{Heading: "Please", List: donts},
		content.Section{Heading: "Who knows more", Lines: []content.Line{
			"Office, phone ______ Caretaker ______ Teacher ______ Towels lie ______",
		}},
	)
	return []content.Sheet{s}
}

// stepWords are steps as sentences.
func stepWords(steps []garden.Step) []string {
	var out []string
	for _, s := range steps {
		text := s.Head
		for _, l := range s.Lines {
			act := l.Act
			switch {
			case len(s.Lines) == 1 && act != "": // the head names the tub
				act = strings.ToUpper(act[:1]) + act[1:]
			case l.Tub != "":
				text += " " + l.Tub + ":"
			}
			if act != "" {
				text += " " + act + "."
			}
			text += " " + l.Why
		}
		out = append(out, text)
	}
	return out
}

// levels is the table of the tubs, with blanks for what is read today.
func (p papers) levels() (content.Table, bool) {
	t := content.Table{Caption: "The tubs", Columns: []content.Column{
		{Head: "tub"}, {Head: "line at"}, {Head: "last read"}, {Head: "level"}, {Head: "poured in"}, {Head: "pH"}, {Head: "EC"}, {Head: "team"},
	}}
	for _, tub := range p.a.Tubs {
		if tub.Today == nil {
			continue
		}
		read := "not yet"
		if tub.Today.ReadOn != "" {
			read = tub.Today.Level + ", " + tub.Today.ReadOn
		}
		t.Rows = append(t.Rows, []string{tub.Name, tub.Today.Line, read, content.Blank, content.Blank, content.Blank, content.Blank, content.Blank})
	}
	return t, len(t.Rows) > 0
}

func days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return itoa(n) + " days"
}
