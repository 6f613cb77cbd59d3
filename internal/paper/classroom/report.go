package classroom

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// report is one page from the data: what was grown, spent and learned, and how
// the forecasts did. What no data tells is left to write in.
func (p papers) report(paper scene.Size) []content.Sheet {
	s := content.Sheet{Title: "Report", Block: p.block("Report", paper), Sections: []content.Section{
		{Heading: "What it was", Paragraphs: []string{p.what()}},
		{Heading: "Grown", Tables: []content.Table{p.grown()}, Lines: []content.Line{"Harvested, by the scale ____________ Portions eaten ________ Given away ________"}},
		{Heading: "Spent", Paragraphs: p.spent(), Lines: []content.Line{"On receipts, all together ____________ Paid by ____________________"}},
		{Heading: "Learned", Paragraphs: p.learned()},
	}}
	if truth := p.truth(); len(truth) > 0 {
		s.Sections = append(s.Sections, content.Section{Heading: "Forecast against what came", List: truth})
	}
	s.Sections = append(s.Sections, content.Section{Heading: "In our words", Lines: []content.Line{
		"What went wrong, and what we did ________________________",
		"____________________________________________",
		"What we do next year ________________________________",
	}})
	return []content.Sheet{s}
}

// what is the garden in two sentences; learners are a number only.
func (p papers) what() string {
	r := p.c.Report
	var tubs []string
	for _, t := range p.a.Tubs {
		tubs = append(tubs, t.Name)
	}
	out := fmt.Sprintf("%s: %s of nutrient solution (%s) in a classroom.", p.a.Garden, counted(len(tubs), "tub", "tubs"), listed(tubs))
	if r.Learners > 0 {
		out += fmt.Sprintf(" %s took part.", counted(r.Learners, "learner", "learners"))
	}
	if p.c.Term != nil {
		out += fmt.Sprintf(" The term runs from %s to %s.", p.c.Term.From.Long(), p.c.Term.To.Long())
	}
	switch {
	case r.Readings == 0:
		out += " The logbook is empty so far: what follows is the plan."
	case r.From == r.To:
		out += fmt.Sprintf(" The logbook has %s, of %s.", counted(r.Readings, "reading", "readings"), dayWords(r.From))
	default:
		out += fmt.Sprintf(" The logbook has %s, from %s to %s.", counted(r.Readings, "reading", "readings"), dayWords(r.From), dayWords(r.To))
	}
	return out
}

// grown has a row for each tub.
func (p papers) grown() content.Table {
	t := content.Table{Caption: "From the plan and the logbook", Columns: []content.Column{
		{Head: "tub"}, {Head: "crop"}, {Head: "harvested on"}, {Head: "plants", Number: true}, {Head: "readings", Number: true}, {Head: "poured in", Number: true}, {Head: "tallest", Number: true},
	}}
	for i, r := range p.c.Report.Tubs {
		harvested, tallest := p.harvested(r), "–"
		if r.TallestMM > 0 {
			tallest = quantity.Format(quantity.Length, r.TallestMM, p.a.Plan.Units)
		}
		poured := "–"
		if r.Readings > 0 {
			poured = p.litres(r.PouredL)
		}
		t.Rows = append(t.Rows, []string{r.Name, crops(p.a.Tubs[i]), harvested, fmt.Sprint(r.Plants), fmt.Sprint(r.Readings), poured, tallest})
	}
	return t
}

// harvested are the days, and what was picked on all of them where the logbook
// has it.
func (p papers) harvested(r garden.ReportTub) string {
	if len(r.Harvested) == 0 {
		return "–"
	}
	var days, what []string
	for _, d := range r.Harvested {
		days = append(days, dayWords(d))
	}
	if r.Picked > 0 {
		what = append(what, counted(r.Picked, "plant", "plants"))
	}
	if r.PickedG > 0 {
		what = append(what, quantity.Format(quantity.SmallMass, quantity.Gram.Base(r.PickedG), p.a.Plan.Units))
	}
	out := strings.Join(days, ", ")
	if len(what) > 0 {
		out += ": " + strings.Join(what, ", ")
	}
	return out
}

func (p papers) litres(l float64) string {
	return quantity.Format(quantity.Volume, quantity.Litre.Base(l), p.a.Plan.Units)
}

func crops(t garden.Tub) string {
	var out []string
	for _, c := range t.Crops {
		out = append(out, c.Name)
	}
	if len(out) == 0 {
		return "–"
	}
	return strings.Join(out, ", ")
}

// spent is what the shopping list comes to where it has the teacher's prices.
func (p papers) spent() []string {
	r := p.c.Report
	switch {
	case r.Priced == 0 && r.Priceless == 0:
		return []string{"The plan gives no shopping list yet."}
	case r.Priced == 0:
		return []string{"The plan has no prices. Write them there, and the sum stands here."}
	case r.Priceless > 0:
		return []string{fmt.Sprintf("%s for the %s of the shopping list that have a price in the plan; %s none.", p.a.Money(r.Spent), counted(r.Priced, "line", "lines"), have(r.Priceless))}
	}
	return []string{p.a.Money(r.Spent) + ", by the shopping list and its prices."}
}

func have(n int) string {
	if n == 1 {
		return "1 has"
	}
	return fmt.Sprintf("%d have", n)
}

// mostConcepts is how many concepts are named; more is a list and no report.
const mostConcepts = 6

// learned are the ideas of the lesson sheets that the garden gives, and what the
// class found out about its own tubs.
func (p papers) learned() []string {
	var concepts []string
	for _, s := range p.c.Sheets {
		if s.Concept != "" && !slices.Contains(concepts, s.Concept) {
			concepts = append(concepts, s.Concept)
		}
	}
	var out []string
	if n := len(concepts); n > 0 {
		more := ""
		if n > mostConcepts {
			concepts, more = concepts[:mostConcepts], ", and more"
		}
		out = append(out, fmt.Sprintf("There are %s from this garden's own numbers: %s%s.", counted(len(p.c.Sheets), "lesson sheet", "lesson sheets"), strings.Join(concepts, "; "), more))
	}
	if f := p.c.Fairness; f != nil {
		out = append(out, fmt.Sprintf("A rota shares the jobs over %s. %s", counted(p.openWeeks(), "week", "weeks"), f.Says[0]))
	}
	out = append(out, p.found()...)
	if len(out) == 0 {
		out = append(out, "The plan names no pupils or teams yet, so there is no rota to tell of.")
	}
	return out
}

// mostTubs is how many tubs the report tells of one by one, so that it stays one
// page.
const mostTubs = 4

// verbs say what a factor that was learned is about.
var verbs = map[string]string{"growth": "grow", "thirst": "drink"}

// found is how the class's own plants differ from the model, a sentence a tub.
func (p papers) found() []string {
	var out []string
	for _, t := range p.a.Tubs {
		if t.Season == nil {
			continue
		}
		var parts []string
		for _, l := range t.Season.Learnt {
			if verb := verbs[l.Of]; verb != "" {
				parts = append(parts, fmt.Sprintf("%s %.2f times", verb, l.Band.P50))
			}
		}
		if len(parts) > 0 && len(out) < mostTubs {
			out = append(out, fmt.Sprintf("%s: these plants %s what the model says.", t.Name, listed(parts)))
		}
	}
	return out
}

func (p papers) openWeeks() int {
	n := 0
	for _, w := range p.c.Rota {
		if w.Open {
			n++
		}
	}
	return n
}

// ofWords are what a score is of.
var ofWords = map[string]string{"level": "level", "ec": "EC", "height": "height", "harvest": "harvest", "leaves": "leaves"}

// truth is how earlier forecasts did, where any could be scored: a sentence a
// tub. A fair band holds nine of ten.
func (p papers) truth() []string {
	var out []string
	for _, t := range p.a.Tubs {
		if t.Season == nil {
			continue
		}
		var parts []string
		for _, s := range t.Season.Score {
			if of := ofWords[s.Of]; of != "" && s.Count > 0 {
				parts = append(parts, fmt.Sprintf("%s %d of %d", of, s.InWide, s.Count))
			}
		}
		if len(parts) > 0 && len(out) < mostTubs {
			out = append(out, t.Name+", readings in the band that should hold nine of ten: "+listed(parts)+".")
		}
	}
	return out
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func listed(all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}

// sentence begins with a capital letter and ends with a stop.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	if !strings.HasPrefix(text, "pH") {
		text = strings.ToUpper(text[:1]) + text[1:]
	}
	if !strings.ContainsRune(".?", rune(text[len(text)-1])) {
		text += "."
	}
	return text
}
