package classroom

import (
	"fmt"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/jobs"
)

// jobs are the cards of the jobs, each to be cut out.
func (p papers) jobCards(paper scene.Size) []content.Sheet {
	s := content.Sheet{Title: "Job cards", Block: p.block("Job cards", paper)}
	for _, j := range p.c.Jobs {
		steps := p.steps(j)
		section := content.Section{Heading: j.Name, Whole: true, Steps: content.Steps{First: 1, Items: steps}, List: p.never()}
		if j.Kind == garden.JobOwn {
			section.Lines = []content.Line{"1. ______________________________", "2. ______________________________"}
		}
		s.Sections = append(s.Sections, section)
	}
	return []content.Sheet{s}
}

// carry is how much a pupil carries at once, in words; empty where nothing is
// carried without an adult's hand.
func (p papers) carry() string {
	if p.c.CarryL == nil {
		return ""
	}
	return p.jug(*p.c.CarryL)
}

// Of a US gallon, in litres (NIST Handbook 44, appendix C).
const quartLitres = 0.946352946

// jug is what is carried at once as a jug has its marks: whole litres, or whole
// quarts and gallons, never more than the litres.
func (p papers) jug(litres float64) string {
	if p.a.Plan.Units != quantity.US {
		return quantity.FormatNumber(litres, 0) + "\u00a0L"
	}
	quarts := int(litres / quartLitres)
	if quarts >= 4 {
		return fmt.Sprintf("%d\u00a0gal", quarts/4)
	}
	return fmt.Sprintf("%d\u00a0qt", quarts)
}

// byAge is how much is carried at once where the plan tells no age.
func (p papers) byAge() string { return "Fill it with no more than this: " + p.ages() + "." }

func (p papers) ages() string {
	var out []string
	for _, c := range jobs.Carries() {
		out = append(out, fmt.Sprintf("from age %d: %s", c.FromAge, p.jug(c.Litres)))
	}
	return strings.Join(out, ", ")
}

// CarryWords say how much a pupil of the class carries at once, and what no
// pupil does.
func CarryWords(a *garden.Assessment) string {
	p := papers{a: a, c: a.Class}
	const adults = " Concentrates, plugs, saws, knives and full tubs are for adults."
	switch most := p.carry(); {
	case most != "":
		return fmt.Sprintf("At most %s in a jug at once: the youngest is %d.", most, p.c.Youngest) + adults
	case p.c.Youngest > 0:
		return "Nothing is carried without an adult's hand." + adults
	}
	return "In a jug at once: " + p.ages() + "." + adults
}

// never ends each card: what is not a pupil's to touch.
func (p papers) never() []string {
	return []string{
		"not for you: plugs, knives, saws, acid, feed bottles, a full tub. Those are for adults.",
		"Water on the floor? Stop. Stay away. Tell your teacher.",
		"Wash your hands at the end.",
	}
}

// steps are what the card of a job says, in words of the class's age.
func (p papers) steps(j garden.ClassJob) []string {
	switch j.Kind {
	case garden.JobLook:
		return p.look()
	case garden.JobLevel:
		return p.level()
	case garden.JobEC:
		return p.meter()
	case garden.JobPH:
		return p.acidity()
	case garden.JobBoth:
		return p.both()
	case garden.JobLog:
		return p.log()
	case garden.JobAll:
		return append(append(p.look(), p.level()...), p.log()...)
	}
	return []string{"Ask your teacher to show you this job first. Write the steps down here.", "Do just that. Is it not as you know it? Stop and ask."}
}

func (p papers) look() []string {
	var out []string
	if p.young() {
		out = []string{"Look at each plant.", "Are the leaves green?", "Look for bugs."}
	} else {
		out = []string{"Look at each plant, hole by hole.", "Are its leaves green and firm? Count the ones that are not.", "Look for bugs under the leaves. Touch no leaf with wet hands."}
	}
	if p.aerated() {
		out = append(out, "Listen. Do you hear bubbles?")
	}
	if len(p.a.Plan.Lamps) > 0 {
		out = append(out, "Is the lamp on? Do not look into it.")
	}
	return append(out, "Tell what you saw. It goes in the logbook.")
}

func (p papers) level() []string {
	carry := "An adult carries the water. You hold the cup."
	if most := p.carry(); most != "" {
		carry = "Carry the jug with both hands. Fill it with " + most + " and no more."
	} else if p.c.Youngest == 0 {
		carry = "Carry the jug with both hands. " + p.byAge()
	}
	if p.young() {
		return []string{"Put the stick in the small hole. Hold it up straight.", "Take it out. Where does the wet part end?", "Say the number.", "Ask how much to pour in.", carry, "Stop at the line.", "Wipe up each drop."}
	}
	return []string{
		"Put the dipstick straight down the small hole.", "Take it out. Read where the wet part ends.",
		"Write the number down before you pour.", "Ask how much to pour in. Use water that has stood for a day.",
		carry, "Pour slowly. Stop at the line.", "Wipe up each drop.",
	}
}

func (p papers) meter() []string {
	if p.young() {
		return []string{"An adult fills a cup from the tub.", "Put the EC meter in the cup. Wait.", "Say the number.", "Rinse the tip. Put the cap on."}
	}
	return []string{
		"Ask an adult to fill a cup from the tub.", "Rinse the tip of the EC meter. Put it in the cup.",
		"Wait until the number stands still. Write it down.", "Rinse the tip again. Put the cap back on.",
		"Add nothing to the tub. An adult does that.",
	}
}

func (p papers) acidity() []string {
	switch p.a.Plan.Tools.PH {
	case "meter":
		if p.young() {
			return []string{"Put the pH meter in the cup. Wait.", "Say the number. Put the cap on."}
		}
		return []string{"Put the pH meter in a cup from the tub. Wait until the number stands still.", "Write it down. Rinse the tip and put the cap back on.", "Add nothing to change it. An adult does that."}
	case "drops":
		return []string{"An adult puts the drops in a small glass from the tub.", "Hold the glass next to the colours on the box.", "Which two is it between? Write both down.", "Add nothing to the tub. An adult does that."}
	}
	if p.young() {
		return []string{"An adult fills a cup from the tub.", "Dip the strip in the cup. Take it out.", "Find its colour on the box.", "Say the two numbers next to it."}
	}
	return []string{"Ask an adult to fill a cup from the tub.", "Dip a strip in. Take it out when the box says.", "Hold it next to the colours on the box. Which two is it between?", "Write both down. Add nothing to change it: an adult does that."}
}

// both is EC and pH out of one cup.
func (p papers) both() []string {
	out := p.meter()
	if !p.young() {
		out = out[:len(out)-1] // the last line of both cards is the same
	}
	for _, step := range p.acidity() {
		if step != out[0] {
			out = append(out, step)
		}
	}
	return out
}

func (p papers) log() []string {
	if p.young() {
		return []string{"Ask for the numbers.", "Write the day.", "Write each number.", "Write no names."}
	}
	return []string{
		"Write the day and the time in the logbook.", "Ask each job for its number. Write it down with its unit.",
		"Does a number look odd? Ask them to read it again.", "Write what was seen and what was done.",
		"Write the team or the job. Write no names.",
	}
}
