package web

import (
	"context"
	"fmt"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// mixPage is the page Mix.
func mixPage() *formPage {
	return &formPage{
		name: "mix", title: "Mix", ofTub: true, drawing: "nutrient solution",
		scripts: []string{"working.js"}, styles: []string{mixStyle},
		assess: (*Server).mixedInFull,
		fields: func(f *form, _ *garden.Assessment, tub int) any { return mixFormOf(f, tub) },
		work:   func(o *opened, a *garden.Assessment, f *form, tub int) any { return mixWorkOf(o, a, f, tub) },
		press:  (*posting).pressMix,
		home:   (*form).intoBottle,
		last:   lastBelow,
		tries:  &formTries{parts: []string{"mix-answer", "mix-findings", "mix-steps", "mix-meter", "mix-deep"}, wrong: lastHere, full: notYet},
	}
}

// mixedInFull works a mix out, of which there is no quick answer.
func (s *Server) mixedInFull(ctx context.Context, o *opened, _ lid.Effort) (*garden.Assessment, error) {
	return s.mixed(ctx, o)
}

// pressMix puts a bottle or a bag on the shelf, or takes one off it, or the acid
// or the base.
func (p *posting) pressMix(do string) {
	word, index, _ := strings.Cut(do, "-")
	var err error
	text := p.text
	field := "fertilisers"
	switch word {
	case "shelf":
		item, problem := p.f.bottleItem()
		if problem != nil {
			p.problems = append(p.problems, *problem)
			return
		}
		text, err = plan.Append(text, field, item)
	case "off":
		text, err = plan.Remove(text, fmt.Sprintf("%s[%s]", field, index))
	case "noacid":
		field = "acids[0]"
		text, err = plan.Remove(text, field)
	case "nobase":
		field = "bases[0]"
		text, err = plan.Remove(text, field)
	default:
		return
	}
	p.done(text, err, field, "change it on the page 'plan as text'")
}
