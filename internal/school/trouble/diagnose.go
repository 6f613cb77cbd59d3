package trouble

import (
	"slices"
	"sort"
)

// Ask is what somebody sees at a tub, and what is known of it.
type Ask struct {
	Seen  []string // ids of signs; what is no sign is left out
	Known Known
}

// Answer is what to do first, and what it may be.
type Answer struct {
	Danger  []Step // first of all, before anything else; none where nothing is dangerous
	Enough  bool   // whether there is enough to say
	Says    string // the answer in a sentence
	First   string // the safest first step
	Causes  []Likely
	Look    []string // what to look at next
	Measure []string
}

// Step is one thing that is done at once.
type Step struct {
	Sign Sign
	Do   string
	Call string
}

// Likely is a cause with its reasons.
type Likely struct {
	Cause
	Points  int
	For     []string // what speaks for it
	Against []string
}

// Points that a reading or the history gives or takes.
const (
	pointsTold    = 2
	pointsAgainst = 3
)

// dangers are what is done at once.
var dangers = map[string]Step{
	"hot-plug":       {Do: "Keep everyone away. Nobody touches plug, cable or pump. An adult cuts the circuit at the board.", Call: "the caretaker, and a licensed electrician before it runs again"},
	"wet-floor":      {Do: "Keep everyone away. Nobody touches plug or switch. An adult who need not step in the water cuts the circuit at the board, then the floor is dried.", Call: "the caretaker"},
	"splash":         {Do: "Rinse with plenty of running water for 20 minutes. Swallowed: rinse the mouth, do not make sick.", Call: "the school's first aid at once, with the label of the bottle in hand"},
	"unknown-liquid": {Do: "Nobody eats from this tub, and nobody puts a hand in. Close the lid, keep the bottle, write down the day.", Call: "the teacher who runs the garden decides; where a poison is possible all of it is thrown away"},
}

// Diagnose says what to do first and what may be wrong. It gives no dose of
// anything: what an adult mixes is Mix's and Today's.
func Diagnose(a Ask) Answer {
	var out Answer
	for _, s := range signs {
		if step, ok := dangers[s.ID]; ok && slices.Contains(a.Seen, s.ID) {
			step.Sign = s
			out.Danger = append(out.Danger, step)
		}
	}
	all := a.weigh()
	out.rank(all)
	if len(out.Danger) > 0 {
		out.First = out.Danger[0].Do
	}
	out.Says = out.says(a)
	return out
}

// weigh is every cause that something speaks for, the likeliest first.
func (a Ask) weigh() []Likely {
	var out []Likely
	for _, c := range causes {
		l := Likely{Cause: c}
		matched := 0
		for _, s := range signs { // in their order, whatever the order of asking
			if p := c.seen[s.ID]; p > 0 && slices.Contains(a.Seen, s.ID) {
				l.Points += p
				matched = max(matched, p)
				l.For = append(l.For, lower(s.Words))
			}
		}
		// Readings alone are Today's; here they only speak for what is seen. A
		// meter that nobody checked is named beside whatever is seen.
		if matched == 0 && (c.ID != "number" || len(a.Seen) == 0) {
			continue
		}
		for _, k := range c.told {
			if says, holds, _ := a.Known.told(k); holds {
				l.Points += pointsTold
				l.For = append(l.For, says)
			}
		}
		for _, k := range c.against {
			if says, holds, _ := a.Known.told(k); holds {
				l.Points -= pointsAgainst
				l.Against = append(l.Against, says)
			}
		}
		if l.Points > 0 {
			out = append(out, l)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Points > out[j].Points })
	return out
}

// mostNamed is how many causes are named.
const mostNamed = 4

// rank takes the causes that are near the best, and the safest first step among
// them: one that does no harm where it was another of them.
func (out *Answer) rank(all []Likely) {
	if len(all) == 0 {
		return
	}
	best := all[0].Points
	out.Enough = float64(best) >= value(factScoreEnough)
	for _, l := range all {
		if len(out.Causes) < mostNamed && float64(l.Points) >= value(factScoreNear)*float64(best) {
			out.Causes = append(out.Causes, l)
		}
	}
	safest := out.Causes[0]
	for _, l := range out.Causes[1:] {
		if l.Risk < safest.Risk && safest.Risk == ChangeOver {
			safest = l
		}
	}
	out.First = safest.First
	if !out.Enough {
		out.First = "Write it down with the day. Look at what is named below, and come back. Nothing is poured in."
	}
	for _, l := range out.Causes {
		for _, m := range l.Measure {
			if !slices.Contains(out.Measure, m) {
				out.Measure = append(out.Measure, m)
			}
		}
	}
}

func (out *Answer) says(a Ask) string {
	out.look(a)
	switch {
	case len(out.Danger) > 0:
		return "First of all: " + lower(out.Danger[0].Sign.Words) + "."
	case len(a.Seen) == 0:
		return "Tick what is seen. One sure sign is better than five guesses."
	case !out.Enough:
		return "Not enough to say."
	case len(out.Causes) > 1 && out.Causes[1].Points == out.Causes[0].Points:
		return "It may be one of two: " + out.Causes[0].Name + " Or: " + out.Causes[1].Name
	}
	return "Most likely: " + out.Causes[0].Name
}

// look are the signs that would tell the causes apart: those that weigh most
// and were not ticked.
func (out *Answer) look(a Ask) {
	for _, l := range out.Causes {
		for _, s := range signs {
			if l.seen[s.ID] >= 2 && !slices.Contains(a.Seen, s.ID) && !slices.Contains(out.Look, s.Words) {
				out.Look = append(out.Look, s.Words)
			}
		}
	}
	if len(out.Look) > 5 {
		out.Look = out.Look[:5]
	}
}

// lower begins a sign's words in the middle of a sentence.
func lower(s string) string {
	if s == "" {
		return s
	}
	return string(s[0]|0x20) + s[1:]
}
