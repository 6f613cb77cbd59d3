// Package lessons sets the sheets of sums: the pupil's copy with blanks as wide
// as what goes in, and the key with its working.
package lessons

import (
	"fmt"

	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/lesson"
)

// Type sizes in points, and the room for a letter written by hand.
const (
	pupilPoints = 13 // at least
	roomyPoints = 17 // where a sheet stays on one page
	keyPoints   = 11
	handMM      = 4.6
	earlyHandMM = 6.0
	pupilRowMM  = 7.0
	keyRowMM    = 6.2
)

// Cards are all lesson sheets of an assessment that was asked for its class, and
// their keys; none where it has no sheet. The revision stands in the title
// blocks.
func Cards(a *garden.Assessment, revision string) []card.Card {
	if a.Class == nil || len(a.Class.Sheets) == 0 {
		return nil
	}
	p := papers{cover: sheet.CoverOf(a, revision)}
	for _, s := range a.Class.Sheets {
		p.sheets = append(p.sheets, s.Lesson)
	}
	return []card.Card{
		p.card("lesson-sheets.pdf", "Lesson sheets", "A sheet of sums for each template, from the class's own tub and logbook: the pupil's copies.", false),
		p.card("lesson-keys.pdf", "Keys to the lesson sheets", "The answers with their working, and what each sheet teaches.", true),
	}
}

// Single is one sheet by itself, or its key.
func Single(a *garden.Assessment, s lesson.Sheet, key bool, revision string) card.Card {
	p := papers{cover: sheet.CoverOf(a, revision), sheets: []lesson.Sheet{s}}
	name := fmt.Sprintf("lesson-%02d-%s-%s-%d", s.Template.Number, s.Template.ID, garden.Slug(s.Tub), s.Number)
	if key {
		return p.card(name+"-key.pdf", "Key: "+s.Template.Title, "The answers with their working.", true)
	}
	return p.card(name+".pdf", s.Template.Title, "A sheet of sums, "+string(s.Band)+".", false)
}

// papers are sheets to be set under one cover.
type papers struct {
	cover  sheet.Lid
	sheets []lesson.Sheet
}

func (p papers) card(name, title, about string, key bool) card.Card {
	c := card.Card{Name: name, Title: title, About: about, Points: keyPoints, RowMM: keyRowMM, Cover: p.cover}
	if !key {
		c.Points, c.Least, c.HandMM = roomyPoints, pupilPoints, handMM
		c.RowMM = pupilRowMM
		if len(p.sheets) == 1 && p.sheets[0].Band == lesson.Early {
			c.HandMM = earlyHandMM
		}
	}
	c.Sheets = func(paper scene.Size) []content.Sheet {
		var out []content.Sheet
		for _, s := range p.sheets {
			if key {
				out = append(out, Key(s, p.cover, paper))
			} else {
				out = append(out, Pupil(s, p.cover, paper))
			}
		}
		return out
	}
	return c
}

// drawing is what stands in the title block of a sheet.
func drawing(s lesson.Sheet) string {
	return fmt.Sprintf("lesson %d, %s, variant %d", s.Template.Number, s.Band, s.Number)
}
