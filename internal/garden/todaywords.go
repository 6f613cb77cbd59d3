package garden

import (
	"fmt"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/steering"
)

func upper(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// Answer is the morning in two sentences: how much there is to do, and what to
// know of it.
func (t *Today) Answer() (bold, rest string) {
	switch {
	case !t.Open && t.Next.Set():
		return "Nobody comes today.", "The next list is for " + t.Next.Words() + "."
	case !t.Open:
		return "Nobody comes today.", "No school day follows in the plan."
	case t.Leak():
		return "Look for a leak first.", "Nothing is poured in before that."
	}
	rest = "Nothing is mixed today."
	if t.Mixed {
		rest = "Solution is poured in today."
	}
	switch t.Jobs {
	case 0:
		return "Look, read the level, write it down.", "Nothing else is due."
	case 1:
		return "One job today.", rest
	}
	return upper(quantity.InWords(t.Jobs)) + " jobs today.", rest
}

// Leak tells whether more water is gone than thirst explains, from any tub.
func (t *Today) Leak() bool {
	for _, s := range t.Steps {
		if s.Do == steering.SeekLeak {
			return true
		}
	}
	return false
}

// Day is the day in words, with its week of the term.
func (t *Today) Day(a *Assessment) string {
	if !t.On.Set() {
		return "any day"
	}
	text := t.On.Words()
	if i, ok := a.Term.TermAt(t.On); ok {
		text += fmt.Sprintf(", week %d", a.Term.WeekOf(i, t.On))
	}
	return text
}

// AheadWords says when next nobody comes for long; empty where that is far off.
func (t *Today) AheadWords() string {
	if t.Ahead == nil {
		return ""
	}
	a := t.Ahead
	text := fmt.Sprintf("From %s nobody comes for %s days, until %s.", a.Since.Format("Mon 2 Jan, 15:04"), quantity.InWords(a.Days()), a.Until.Format("Mon 2 Jan, 15:04"))
	if !a.Eve {
		text += " " + a.Before().Words() + " has its own list: fill every tub up to its line."
	}
	if a.Short {
		text += " One tub does not last that long."
	}
	return text
}

// Hints tells whether a step says how something is done, or what would move it.
func (s Step) Hints() bool {
	for _, l := range s.Lines {
		if l.How != "" {
			return true
		}
	}
	return false
}
