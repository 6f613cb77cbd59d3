package seasonal

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// visit is one visit to the room within a closed stretch, for all tubs that
// need it.
type visit struct {
	l     garden.LeaveIt // the stretch, of the first tub
	from  time.Time      // window that serves every tub
	to    time.Time
	needs []need
	taken bool // a tub's leave-it sheet counts on it
}

// need is what one tub takes at the visit.
type need struct {
	tub    int
	litres float64
	lineMM float64
}

// visits are the closed stretches in which a visit is taken, or would help.
func (p papers) visits() []visit {
	var out []visit
	for _, i := range p.tubs {
		for _, l := range p.a.Tubs[i].Season.Closed {
			way, taken, ok := visitOf(l)
			if !ok {
				continue
			}
			at := slices.IndexFunc(out, func(v visit) bool { return v.l.From.Equal(l.From) })
			if at < 0 {
				out = append(out, visit{l: l, from: *way.VisitA, to: *way.VisitB})
				at = len(out) - 1
			}
			v := &out[at]
			if way.VisitA.After(v.from) {
				v.from = *way.VisitA
			}
			if way.VisitB.Before(v.to) {
				v.to = *way.VisitB
			}
			v.taken = v.taken || taken
			v.needs = append(v.needs, need{tub: i, litres: way.Litres, lineMM: p.lineFor(i, l, way)})
		}
	}
	slices.SortStableFunc(out, func(a, b visit) int { return a.from.Compare(b.from) })
	return out
}

// visitings are the visits that are counted on, on the first day of their window.
func (p papers) visitings() []job {
	var out []job
	for _, v := range p.visits() {
		if v.taken {
			out = append(out, job{on: term.DateOf(v.from), kind: visiting, nth: len(out) + 1, do: p.window(v) + ". The visitor card says what is done."})
		}
	}
	return out
}

// visitOf is the visit of a stretch: that of the way taken, else of the first
// way that has one.
func visitOf(l garden.LeaveIt) (way garden.LeaveDo, counted, ok bool) {
	whole := func(o garden.LeaveDo) bool { return o.VisitA != nil && o.VisitB != nil && o.Litres > 0 }
	if i := takenAt(l); i >= 0 && whole(l.Options[i]) {
		return l.Options[i], true, true
	}
	if i := slices.IndexFunc(l.Options, whole); i >= 0 {
		return l.Options[i], false, true
	}
	return way, false, false
}

// visitor is a card for each visit.
func (p papers) visitor(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for _, v := range p.visits() {
		title := fmt.Sprintf("Visitor card, %s to %s", v.l.From.Format("2 Jan"), v.l.To.Format("2 Jan"))
		s := content.Sheet{Title: title, Block: p.block(title, paper)}
		when := content.Section{Heading: p.window(v), Cautions: []string{"Before going in, look from the door. Water on the floor, or a wet plug: " + garden.Puddle}}
		if !v.taken {
			when.Paragraphs = []string{"The leave-it sheets do not count on this visit. It is for a school that allows one, and makes the stretch safer."}
		}
		s.Sections = append(
			s.Sections, when,
			content.Section{Heading: "In order, ten minutes", Steps: content.Steps{First: 1, Items: p.visitSteps(v)}},
			content.Section{Heading: "The tubs", Tables: []content.Table{p.visitTable(v)}},
			content.Section{Heading: "Please", List: []string{
				"do not pour in anything else: no plant food, no bottle from the shelf",
				"do not touch plugs or sockets",
				"do not lift or drag a tub",
				"do not pick, eat or drink anything of it",
			}},
			content.Section{Heading: "Who knows more", Lines: []content.Line{
				"Teacher, phone ______________ Caretaker, phone ______________",
				"Cans and towels stand ______________ The board is ______________",
			}},
		)
		out = append(out, s)
	}
	return out
}

// window says when the visit is.
func (p papers) window(v visit) string {
	zone := ""
	if name := p.a.Plan.Place.TimeZone; name != "" {
		zone = ", by the clock of " + name
	}
	if v.to.Before(v.from) {
		return "Come twice: the tubs' windows do not meet. First by " + moment(v.to) + ", again after " + moment(v.from) + zone
	}
	return "Come once, between " + moment(v.from) + " and " + moment(v.to) + zone
}

func (p papers) visitSteps(v visit) []string {
	read := "Dip the dipstick into each tub through the small hole. Write the level below."
	out := []string{"An adult comes, with dry hands. Look at plugs and cords without touching them."}
	if slices.ContainsFunc(v.needs, func(n need) bool { return !p.still(n.tub) }) {
		out = append(out, "Look and listen: each pump makes bubbles. No bubbles: phone the teacher, and stir the water with a clean jug for a minute.")
	}
	out = append(
		out, read,
		"Pour plain water from the cans that stand ready into each tub, slowly, until its line or until its can is empty, whichever comes first. Never straight from the tap.",
		"Carry a can no more than half full: "+p.heavy()+".",
		"Look at the lamp: is it on or off as its timer says? Does the timer show the time of a phone?",
	)
	const dial = "It is set by turning its dial, with dry hands, and stays plugged in."
	clock := "The timer shows another time, as after a power cut: " + strings.ToLower(dial[:1]) + dial[1:]
	if d, forward, ok := clockChange(v.l.From, v.l.To); ok {
		clock = clockWords(d, forward) + " " + dial
	}
	return append(out, clock, "Wipe up each drip. Close the lid's small hole. Write down day and hour.")
}

// heavy says what water weighs (a litre of it a kilogram, a US gallon 8.34 lb).
func (p papers) heavy() string {
	if p.a.Plan.Units == garden.US {
		return "a gallon weighs over 8 lb"
	}
	return "a litre weighs a kilogram"
}

func (p papers) visitTable(v visit) content.Table {
	t := content.Table{Caption: "At most so much plain water, and never over the line", Columns: []content.Column{
		{Head: "tub"}, {Head: "pour at most"}, {Head: "up to the line"}, {Head: "level found"}, {Head: "poured in"}, {Head: "bubbles"},
	}}
	for _, n := range v.needs {
		bubbles := content.Blank
		if p.still(n.tub) {
			bubbles = "no pump"
		}
		line := p.mark(n.lineMM)
		if p.still(n.tub) {
			line = p.stillRaise() + " over what is found"
		}
		t.Rows = append(t.Rows, []string{p.a.Tubs[n.tub].Name, p.litres(n.litres), line, content.Blank, content.Blank, bubbles})
	}
	return t
}
