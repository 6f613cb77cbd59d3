package classroom

import (
	"fmt"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/stations"
)

// StationName is what a place of the lesson is called.
func StationName(s garden.ClassStation) string {
	switch s.Kind {
	case stations.Jar:
		return "The still jar"
	case stations.Draw:
		return "Draw your plant"
	case stations.Board:
		return "The graph on the board"
	case stations.Strip:
		return "The strip"
	}
	return "At the tub " + s.Tub
}

// stations are a plan of the lesson, and a card for each station.
func (p papers) stations(paper scene.Size) []content.Sheet {
	l := p.c.Lesson
	plan := content.Sheet{Title: "Ten minutes at the tub", Block: p.block("Ten minutes at the tub", paper), Sections: []content.Section{
		{Heading: "How it goes", List: LessonWords(l)},
		{Heading: "Who stands where", Tables: []content.Table{Rounds(l)}},
		{Heading: "Have ready", List: p.ready()},
	}}
	cards := content.Sheet{Title: "Station cards", Block: p.block("Station cards", paper)}
	for i, s := range l.Stations {
		section := content.Section{Heading: StationName(s), Whole: true, Steps: content.Steps{First: 1, Items: p.station(s.Kind)}}
		section.Paragraphs = []string{p.next(i)}
		cards.Sections = append(cards.Sections, section)
	}
	return []content.Sheet{plan, cards}
}

// LessonWords say how the ten minutes go.
func LessonWords(l *garden.ClassLesson) []string {
	var out []string
	if l.Parts > 1 {
		out = append(out, fmt.Sprintf("All at once is too many. The class comes in %d parts, on %d days: up to %d at a time.", l.Parts, l.Parts, l.Pupils))
	}
	if len(l.Groups) == 1 {
		return append(out, fmt.Sprintf("All stand at the tub together for %d minutes.", l.Each))
	}
	sizes := map[int]bool{}
	for _, g := range l.Groups {
		sizes[g.Pupils] = true
	}
	least, most := l.Groups[len(l.Groups)-1].Pupils, l.Groups[0].Pupils
	size := fmt.Sprint(most)
	if len(sizes) > 1 {
		size = fmt.Sprintf("%d or %d", least, most)
	}
	out = append(out, fmt.Sprintf("%d groups of %s. Each stays %d minutes at a station, then all move on to the next.", len(l.Groups), size, l.Each))
	if l.Rest > 0 {
		out = append(out, fmt.Sprintf("%d of the %d minutes are left to begin and to end.", l.Rest, l.Minutes))
	}
	return append(out, "Nobody pours, and nobody lifts a lid without the teacher.")
}

// Rounds is the table of who is where, a row for each station.
func Rounds(l *garden.ClassLesson) content.Table {
	t := content.Table{Caption: fmt.Sprintf("Each round takes %d minutes", l.Each), Columns: []content.Column{{Head: "station"}}}
	n := len(l.Stations)
	for r := range n {
		t.Columns = append(t.Columns, content.Column{Head: fmt.Sprintf("round %d", r+1)})
	}
	for i, s := range l.Stations {
		row := []string{StationName(s)}
		for r := range n {
			row = append(row, l.Groups[((i-r)%n+n)%n].Name)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// next tells the order in which the groups come, and where a group goes then.
func (p papers) next(i int) string {
	l := p.c.Lesson
	n := len(l.Stations)
	if n == 1 {
		return fmt.Sprintf("You stay %d minutes.", l.Each)
	}
	return fmt.Sprintf("You stay %d minutes. Then go to: %s.", l.Each, StationName(l.Stations[(i+1)%n]))
}

// ready is what the teacher puts out.
func (p papers) ready() []string {
	out := []string{"A dry floor, two towels, and this plan."}
	for _, s := range p.c.Lesson.Stations {
		switch s.Kind {
		case stations.AtTub:
			out = append(out, "At the tub "+s.Tub+": the dipstick.")
		case stations.Jar:
			out = append(out, p.jarWords())
		case stations.Draw:
			out = append(out, "To draw: the slips 'Adopt a hole', pencils, a ruler.")
		case stations.Board:
			out = append(out, "On the board: the axes of a graph, the day across and the level up, with the readings so far.")
		case stations.Strip:
			out = append(out, "For the strips: a cup of water that an adult drew from the tub, strips, their box.")
		}
	}
	if jars := p.jars(); jars > 0 {
		out = append(out, fmt.Sprintf("%d still jars for the pairs that have no hole: %s", jars, jarHow))
	}
	return out
}

const jarHow = "a jar with one plant in a net cup, water from the tub up to the cup's bottom, wrapped so that no light gets in, with a flap to look at the roots."

func (p papers) jarWords() string {
	if p.jars() > 0 {
		return "The still jar: one of the pairs' jars."
	}
	return "The still jar: " + jarHow
}

// jars is how many pairs have no hole.
func (p papers) jars() int {
	n := 0
	for _, a := range p.c.Lesson.Adopted {
		n = max(n, a.Jar)
	}
	return n
}

// station is what a station's card says to pupils.
func (p papers) station(kind stations.Kind) []string {
	young := p.young()
	switch kind {
	case stations.Jar:
		return pick(young, []string{"Open the flap. Look at the roots.", "What colour are they?", "Close the flap. Roots like the dark."},
			[]string{"Open the flap. Look at the roots. Are they white or brown?", "Where does the water end? Are there roots above it?", "Close the flap: roots like the dark."})
	case stations.Draw:
		return pick(young, []string{"Draw your plant.", "Count its leaves.", "Write the number down."},
			[]string{"Draw your plant from the side, as big as it is.", "Count its leaves. Write the number next to the hole.", "Write down one thing that is new since last time."})
	case stations.Board:
		return pick(young, []string{"Look at the dots. Do they go up or down?", "Add the dot for today.", "Where will the next dot be? Show it."},
			[]string{"Add the dot for today: the day across, the level up.", "Does the line go up or down? How fast?", "Where will the dot be in a week? Mark it with a small cross."})
	case stations.Strip:
		return pick(young, []string{"Dip the strip in the cup.", "Find its colour on the box.", "Say the two numbers next to it."},
			[]string{"Dip a strip in the cup. Take it out when the box says.", "Hold it next to the colours. Which two is it between?", "Write both down. Do all of you see the same?"})
	}
	look := pick(young, []string{"Find your hole. Look at your plant.", "Put the stick in the small hole. Say the number."},
		[]string{"Find your hole. How does your plant look?", "Put the dipstick straight down the small hole. Read it, then let the next one read it.", "Do you all read the same? Write down the number in the middle."})
	if p.aerated() {
		look = append(look, "Listen for the bubbles.")
	}
	return append(look, "Leave plugs and lamp alone.")
}

func pick(young bool, a, b []string) []string {
	if young {
		return a
	}
	return b
}

// slug of the list of a table; kept short for the slip.
func pairWords(a garden.ClassAdoption) string {
	if len(a.Numbers) == 1 {
		return "Number " + a.Who()
	}
	return strings.TrimSpace("Numbers " + a.Who())
}
