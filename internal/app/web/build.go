package web

import (
	"fmt"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

const lastDrawn = "The drawing shows the last numbers that could be worked out."

// buildPage is the page Build.
func buildPage() *formPage {
	return &formPage{
		name: "build", title: "Build", ofTub: true, drawing: "lid and section",
		scripts: []string{"working.js", "fold.js"},
		assess:  (*Server).assess,
		fields:  func(f *form, _ *garden.Assessment, tub int) any { return buildFormOf(f, tub) },
		work:    func(o *opened, a *garden.Assessment, f *form, tub int) any { return buildWorkOf(o, a, f, tub) },
		lists:   (*form).holesChange,
		press:   (*posting).pressBuild,
		last:    lastDrawn,
		tries: &formTries{
			parts: []string{"answer", "lid", "layouts", "findings", "limits", "section"},
			wrong: lastDrawn,
			full:  "Not in the plan yet. What is drawn is the best layout.",
			quick: "Still improving the layout.",
		},
	}
}

// pressBuild keeps a place of the lid clear, adds or takes out a tub, or frees
// the holes.
func (p *posting) pressBuild(do string) {
	list := fmt.Sprintf("tubs[%d].lid.keep_clear", p.tub)
	var err error
	text := p.text
	switch word, index, _ := strings.Cut(do, "-"); word {
	case "drop":
		text, err = plan.Remove(text, list+"["+index+"]")
	case "keep":
		var item string
		if item, err = p.f.keepItem(); err == nil {
			text, err = plan.Append(text, list, item)
		}
	case "another":
		text, err = plan.Append(text, "tubs", anotherTub(plan.Read(text), p.tub, p.f.asked))
		p.added = err == nil
	case "without":
		text, err = plan.Remove(text, fmt.Sprintf("tubs[%d]", p.tub))
		p.tub = 0
	case "free":
		text, err = plan.Replace(text, fmt.Sprintf("tubs[%d].lid.holes", p.tub), "[]")
	default:
		return
	}
	p.done(text, err, list, "Fill the fields, or change it on the page 'plan as text'.")
}
