package web

import (
	"fmt"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// choosePage is the page Choose. What the shopping lacks a price of is asked for,
// so that its fields rest on the assessment.
func choosePage() *formPage {
	return &formPage{
		name: "choose", title: "Choose", drawing: "Buy or build",
		scripts: []string{"working.js"}, styles: []string{paperStyle, chooseStyle},
		assess:    (*Server).mixedInFull,
		asksFirst: true,
		fields:    func(f *form, a *garden.Assessment, _ int) any { return chooseFormOf(f, a) },
		work:      func(o *opened, a *garden.Assessment, f *form, _ int) any { return chooseWorkOf(o, a, f) },
		lists:     (*form).listChanges,
		press:     (*posting).pressChoose,
		home:      (*form).intoKit,
		last:      lastBelow,
		tries:     &formTries{parts: []string{"choose-answer", "choose-findings", "choose-side", "choose-options", "choose-deep"}, wrong: lastHere, full: notYet},
	}
}

// pressChoose adds an offer or takes one out. Where one was begun, saving adds it
// too: what was typed is not lost for the wrong button.
func (p *posting) pressChoose(do string) {
	if do == "save" && p.f.kitBegun() {
		do = "offer"
	}
	word, index, _ := strings.Cut(do, "-")
	var err error
	text := p.text
	switch word {
	case "offer":
		item, problem := p.f.kitItem()
		if problem != nil {
			p.problems = append(p.problems, *problem)
			return
		}
		text, err = plan.Append(text, "offers", item)
	case "without":
		text, err = plan.Remove(text, fmt.Sprintf("offers[%s]", index))
	default:
		return
	}
	p.done(text, err, "offers", "change it on the page 'plan as text'")
}
