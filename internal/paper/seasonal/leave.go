package seasonal

import (
	"fmt"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/term"
)

// weekendHours is the longest stretch that counts as a weekend, in hours: from
// Friday noon to Monday noon.
const weekendHours = 72

// bearable is the risk under which a closed stretch needs nothing more: 1 in 20.
const bearable = 0.05

// long tells whether a stretch has a sheet of its own: longer than a weekend, or
// one for which something is to be done.
func long(l garden.LeaveIt) bool {
	return l.Hours > weekendHours || l.Risk >= bearable || l.Take >= 0
}

// leaveIt is a sheet for each stretch of a tub that has one, then one for all
// short ones.
func (p papers) leaveIt(tub int, paper scene.Size) []content.Sheet {
	var out []content.Sheet
	var usual []garden.LeaveIt
	for _, l := range p.a.Tubs[tub].Season.Closed {
		if long(l) {
			out = append(out, p.leaveOf(tub, l, paper))
		} else {
			usual = append(usual, l)
		}
	}
	if len(usual) > 0 {
		out = append(out, p.weekends(tub, usual, paper))
	}
	return out
}

// leaveOf is the sheet of one stretch.
func (p papers) leaveOf(tub int, l garden.LeaveIt, paper scene.Size) content.Sheet {
	t := &p.a.Tubs[tub]
	title := fmt.Sprintf("Leave-it sheet: %s, %s to %s", t.Name, l.From.Format("2 Jan"), l.To.Format("2 Jan"))
	s := content.Sheet{Title: title, Block: p.block(title, paper)}
	s.Sections = append(
		s.Sections,
		content.Section{Heading: p.nobody(l), Paragraphs: p.risks(tub, l)},
		content.Section{Heading: "Tick off, in this order", Tables: []content.Table{p.ticks(tub, l)}},
		content.Section{Heading: "If something fails meanwhile", Lines: []content.Line{"Caretaker, phone ______________ Teacher, phone ______________"}, Tables: []content.Table{p.fails(l)}},
	)
	if others := otherWays(l); len(others.Rows) > 0 {
		s.Sections = append(s.Sections, content.Section{Heading: "What else could be done", Tables: []content.Table{others}})
	}
	return s
}

// taken is the way that the sheet takes: the season's, else where it has none
// that is enough the one that leaves least. found is false where none is needed,
// or none is known.
func taken(l garden.LeaveIt) (way garden.LeaveDo, enough, found bool) {
	i := takenAt(l)
	if i < 0 {
		return way, false, false
	}
	return l.Options[i], l.Options[i].Risk < bearable, true
}

// takenAt is its place among the options; -1 for none.
func takenAt(l garden.LeaveIt) int {
	if l.Take >= 0 && l.Take < len(l.Options) {
		return l.Take
	}
	least := -1
	if l.Risk < bearable {
		return least
	}
	for i, o := range l.Options {
		if o.Risk < l.Risk && (least < 0 || o.Risk < l.Options[least].Risk) {
			least = i
		}
	}
	return least
}

// nobody says from when to when nobody comes.
func (p papers) nobody(l garden.LeaveIt) string {
	why := ""
	if l.Why != "" {
		why = " (" + l.Why + ")"
	}
	return fmt.Sprintf("Nobody comes from %s to %s%s: %s", moment(l.From), moment(l.To), why, hours(l.Hours))
}

// risks say what may happen, when, and what is left of it.
func (p papers) risks(tub int, l garden.LeaveIt) []string {
	lowest := "the lowest line"
	if mm, ok := p.lowest(tub); ok {
		lowest += ", " + p.mark(mm) + ","
	}
	words := "Left as it is, the water falls below " + lowest + " in " + chance(l.Risk) + " cases"
	if l.RiskHigh > l.Risk && chance(l.RiskHigh) != chance(l.Risk) {
		words += ", in a thirsty class in " + chance(l.RiskHigh)
	}
	out := []string{words + "." + p.dry(l)}
	way, enough, found := taken(l)
	switch {
	case found && enough:
		out = append(out, "With what is ticked off below it is "+chance(way.Risk)+". The way taken: "+sentence(way.Do))
	case found:
		out = append(out, "Nothing that was tried brings it under 1 in 20. The best of it leaves "+chance(way.Risk)+": "+sentence(way.Do)+" Safer: harvest all of it before, or ask the school whether somebody may look in.")
	case l.Risk >= bearable:
		out = append(out, "Nothing that was tried brings it under 1 in 20. Harvest before, or ask the school whether somebody may look in.")
	case p.still(tub):
		out = append(out, "That is under 1 in 20: nothing more is needed.")
	default:
		out = append(out, "That is under 1 in 20: filling up to the line is enough.")
	}
	if d, forward, ok := clockChange(l.From, l.To); ok && len(p.a.Plan.Lamps) > 0 {
		out = append(out, clockWords(d, forward))
	}
	return out
}

// dry says when the line is reached.
func (p papers) dry(l garden.LeaveIt) string {
	switch {
	case l.RunsDryP50 != nil && l.RunsDryP95 != nil:
		return " Half of the cases are there by " + moment(*l.RunsDryP50) + ", the first (1 in 20) by " + moment(*l.RunsDryP95) + "."
	case l.RunsDryP95 != nil:
		return " The first (1 in 20) are there by " + moment(*l.RunsDryP95) + "."
	}
	return ""
}

// clockWords say what a change of the school's clock does to a timer.
func clockWords(d term.Date, forward bool) string {
	way := "back"
	if forward {
		way = "forward"
	}
	return "The clocks go " + way + " on " + d.Words() + ". A timer without a clock of its own does not: set it anew afterwards."
}

// step is a row of the tick list.
type step struct{ when, what, much string }

// ticks is the list of what is done before the last person leaves.
func (p papers) ticks(tub int, l garden.LeaveIt) content.Table {
	t := content.Table{
		Caption: "What is done before nobody comes",
		Columns: []content.Column{{Head: "when"}, {Head: "what"}, {Head: "how much"}, {Head: "done", Tick: true}}, Wordy: true,
	}
	for _, s := range p.steps(tub, l) {
		t.Rows = append(t.Rows, []string{whole(s.when), s.what, s.much, content.Blank})
	}
	return t
}

// Minutes before leaving at which each thing is begun (common practice, no
// source: a lesson's end with some minutes to spare).
const (
	readMin, takeOutMin, fillMin, timerMin, cansMin, lookMin = 60, 50, 35, 20, 15, 10
)

func (p papers) steps(tub int, l garden.LeaveIt) []step {
	way, _, _ := taken(l)
	does := func(kind string) bool { return strings.Contains("+"+way.Kind+"+", "+"+kind+"+") }
	at := func(minutes int) string { return clock(l.From.Add(-time.Duration(minutes) * time.Minute)) }
	line := p.lineFor(tub, l, way)
	var out []step
	add := func(when, what, much string) { out = append(out, step{when, what, much}) }

	before := "the school day before"
	if d, ok := p.a.Term.Previous(term.DateOf(l.From)); ok {
		before = d.Words()
	}
	if does("still") {
		add(before, "Look at the line: for ten days it has been lowered by stages. If it has not, this way is not open: take another.", "")
	}
	if !p.still(tub) || way.LineMM > 0 || way.Litres > 0 {
		add(before, "Stand plain tap water in open cans, so that it loses its chlorine and comes to the room's warmth.", p.toStand(way))
	}
	if does("visit") {
		add(before, "Hand over the visitor card. Show the tub, its line, the towels and this sheet.", "")
	}
	sockets := "Ask that the sockets stay on and that heating stays as usual."
	if len(p.a.Plan.Lamps) > 0 {
		sockets += " An adult sets the timer by a phone's clock."
	}
	add(before, sockets, "")
	add(at(readMin), "Read level, pH and EC. Write them into the logbook.", "level ______")
	switch {
	case does("harvest"):
		add(at(takeOutMin), "Harvest, by the tub's harvest rule: wash hands, clean scissors, outer and largest plants first.", plants(way.Plants))
	case does("fewer"):
		add(at(takeOutMin), "Take plants out of the lid, root and all, and close the holes.", plants(way.Plants))
	}
	if p.still(tub) && way.LineMM <= 0 {
		add(at(fillMin), "Do not fill it up. A still tub's roots need the air over the water.", "")
	} else {
		add(at(fillMin), p.fillWords(tub, line), "up to "+p.mark(line)+p.pouring(way))
	}
	if does("lamp") {
		add(at(timerMin), "An adult with dry hands sets the lamp's timer to fewer hours a day"+whole(lit(way))+".", lampHours(way.Hours))
	} else if len(p.a.Plan.Lamps) > 0 {
		add(at(timerMin), "Look at the lamp's timer: it shows the right time and stays as it is.", "")
	}
	if does("visit") {
		add(at(cansMin), "Put the cans of stood water beside the tub, covered, marked 'plain water, not for drinking'.", p.litres(way.Litres))
	}
	look := "Look: each cup in its hole, empty holes covered, floor and plugs dry, nothing on the shelf above."
	if !p.still(tub) {
		look = "Look and listen: bubbles, each cup in its hole, empty holes covered, floor and plugs dry, cords with a loop that hangs lower than the socket."
	}
	add(at(lookMin), look, "")
	add(clock(l.From), "Hang the puddle card on the door. The last one leaves.", "")
	back := term.DateOf(l.To).Words()
	add(back, "At "+clock(l.To)+", the return card in hand: before anything is poured in, read the level.", "level ______")
	if does("lamp") {
		add(back, "An adult with dry hands sets the lamp's timer back to its usual hours.", "")
	}
	return out
}

// lit is from when to when the lamp is lit in a way that shortens its day.
func lit(way garden.LeaveDo) string {
	if way.Timer == "" {
		return ""
	}
	return ": " + way.Timer
}

// lineFor is the line up to which the tub is filled, in mm over its floor.
func (p papers) lineFor(tub int, l garden.LeaveIt, way garden.LeaveDo) float64 {
	if way.LineMM > 0 {
		return way.LineMM
	}
	return p.lineOn(tub, term.DateOf(l.From))
}

// fillWords say how the tub is filled, and what bounds it.
func (p papers) fillWords(tub int, line float64) string {
	if p.still(tub) {
		return "Fill up with stood water or the solution that 'Today' names. A still tub's line never rises by more than " + p.stillRaise() + ": its roots need the air."
	}
	words := "Fill up with stood water or the solution that 'Today' names, by jug, watching the dipstick."
	if top, ok := p.top(tub); ok && line < top {
		words += " Never over " + p.mark(top) + "."
	}
	return words
}

// stillRaiseMM is the most by which the line of a tub without a pump may rise
// (the rule of the leave-it plan; common practice, no source).
const stillRaiseMM = 20

// stillRaise is that bound as a ruler shows it, never more.
func (p papers) stillRaise() string {
	return sheet.MarkDown(stillRaiseMM, p.a.Plan.Units) + "\u00a0" + sheet.UnitName(p.a.Plan.Units)
}

// pouring is how much filling takes, in about the middle of cases.
func (p papers) pouring(way garden.LeaveDo) string {
	if way.PourL > 0 {
		return ", about " + p.litres(way.PourL)
	}
	return ""
}

// toStand is how much water is stood out.
func (p papers) toStand(way garden.LeaveDo) string {
	switch {
	case way.PourL+way.Litres > 0 && way.PourL > 0:
		return p.litres(way.PourL + way.Litres)
	case way.Litres > 0:
		return p.litres(way.Litres) + " and what the filling takes"
	}
	return "what the filling takes"
}

func plants(n int) string {
	if n <= 0 {
		return ""
	}
	return count(n, "plant", "plants")
}

// lampHours are hours of lamp a day.
func lampHours(h float64) string {
	if h <= 0 {
		return "off"
	}
	return strings.TrimSuffix(quantity.FormatNumber(h, 1), ".0") + " h a day"
}

// fails is what a power cut and a pump that stops do. Bubbles stop in both, so
// what becomes of the oxygen is said once.
func (p papers) fails(l garden.LeaveIt) content.Table {
	t := content.Table{Caption: "What a failure does, and when", Wordy: true, Columns: []content.Column{{Head: "what fails"}, {Head: "what it does"}}}
	add := func(what, does string) { t.Rows = append(t.Rows, []string{what, does}) }
	if c := l.PumpFailure; c != nil {
		add("the pump stops", "No bubbles: "+c.Breath()+outlasts(c.To2, l.Hours))
	}
	if c := l.PowerCut; c != nil {
		lamp := ""
		if len(p.a.Plan.Lamps) > 0 {
			lamp = ", the lamp is off, and a timer may go on at another hour"
		}
		add("power cut", "Counted with "+hours(c.Hours)+": the pump stops as above"+lamp+". The water falls below the lowest line in "+chance(c.Risk)+" cases.")
	} else if len(p.a.Plan.Lamps) > 0 {
		add("power cut", "The lamp is off, the leaves drink less, and a timer may go on at another hour. A tub without a pump needs no power.")
	}
	add("water on the floor", garden.Puddle)
	return t
}

// outlasts says where the oxygen lasts longer than nobody comes.
func outlasts(h, stretch float64) string {
	if h > stretch {
		return " That is longer than nobody comes."
	}
	return " Whoever comes first stirs the water with a clean jug and calls an adult to the plug."
}

// otherWays are the options that are not taken.
func otherWays(l garden.LeaveIt) content.Table {
	t := content.Table{Caption: "Each by itself, and the risk that is left", Wordy: true, Columns: []content.Column{{Head: "risk left, in 100"}, {Head: "what is done"}}}
	for i, o := range l.Options {
		if i != takenAt(l) {
			t.Rows = append(t.Rows, []string{quantity.InHundred(o.Risk) + " in 100", sentence(o.Do)})
		}
	}
	return t
}

// weekends is the sheet for weekends and other short stretches.
func (p papers) weekends(tub int, all []garden.LeaveIt, paper scene.Size) content.Sheet {
	t := &p.a.Tubs[tub]
	title := "Leave-it sheet: " + t.Name + ", short stretches"
	last := content.Table{Caption: "At the end of the last lesson before each", Wordy: true, Columns: []content.Column{
		{Head: "nobody from"}, {Head: "until, and the risk to fall below the lowest line"}, {Head: "fill to"}, {Head: "done", Tick: true},
	}}
	for _, l := range all {
		line := "not at all"
		if !p.still(tub) {
			line = p.mark(p.lineOn(tub, term.DateOf(l.From)))
		}
		last.Rows = append(last.Rows, []string{
			moment(l.From), fmt.Sprintf("%s, %s, risk %s in 100", moment(l.To), hours(l.Hours), quantity.InHundred(l.Risk)), line, content.Blank,
		})
	}
	look, fill := "Look at floor, cups and plugs.", "Do not fill it up: a still tub's roots need the air over the water."
	if !p.still(tub) {
		look = "Look for bubbles, at floor, cups and plugs."
		fill = "Fill up to the line of the table, with water that has stood for a day or the solution that 'Today' names."
	}
	return content.Sheet{Title: title, Block: p.block(title, paper), Sections: []content.Section{
		{Heading: "Each time", Steps: content.Steps{First: 1, Items: []string{
			"Read the level and write it into the logbook.",
			fill,
			look,
		}}},
		{Heading: "Weekends, and days between lessons", Tables: []content.Table{last}},
		{Heading: "Something is wrong", Cautions: []string{"Water on the floor, or a wet plug. " + garden.Puddle}},
	}}
}
