package garden

import (
	"slices"

	"rootbell/internal/school/steering"
)

// Wrong is something that may be wrong in the morning, and the first safe thing
// to do about it.
type Wrong struct{ See, Do string }

// Puddle is what is done about water on the floor, wherever it is said.
const Puddle = "Keep everyone away. Nobody touches plug or switch. An adult who need not step in the water cuts the circuit at the board, then calls the caretaker."

// wrong is the table of what may be wrong.
func (d *desk) wrong(tubs []*deskTub) []Wrong {
	out := []Wrong{{"water on the floor", Puddle}}
	still := func(k *deskTub) bool { return k.t.setup.Still }
	if slices.ContainsFunc(tubs, func(k *deskTub) bool { return !still(k) }) {
		out = append(out, Wrong{"no bubbles", "Floor, plug and hands dry: an adult looks at plug, socket and tube, and stirs the water with a clean jug. Anything wet: as for water on the floor."})
	}
	var low, lines []string
	for _, k := range tubs {
		if k.lowest.Symbol != "" && !still(k) {
			low = append(low, k.t.name+" "+Mark(k.t.lines.Lowest.Base, d.Plan.Units))
			lines = append(lines, k.t.name+" "+k.out.Line)
		}
	}
	if len(low) > 0 {
		out = append(out, Wrong{"water under " + listed(low), "Fill it up to the line (" + listed(lines) + ") with water that has stood for a day. Write down how much."})
	}
	if slices.ContainsFunc(tubs, still) {
		out = append(out, Wrong{"a still tub nearly empty", "Raise its line by " + Mark(float64(steering.StillRaiseMM()), d.Plan.Units) + " at most. Its roots need the air above the water."})
	}
	if len(d.Plan.Lamps) > 0 {
		out = append(out, Wrong{"lamp off", "Leave it. Write it in the logbook."})
	}
	return append(out, Wrong{"brown roots, bad smell", "Close the lid, wash hands, tell the teacher. Nobody eats from that tub."})
}

// donts are the five things that a stranger may not do, with the heaviest tub's
// mass.
func (d *desk) donts() []string {
	plug := "unplug anything"
	if len(d.Plan.Lamps) > 0 {
		plug = "unplug the pump or the lamp"
	}
	lift := "lift a tub, or drag it"
	heaviest := 0.0
	for i, t := range d.states {
		if t.mass.Symbol != "" && t.mass.Base > heaviest {
			heaviest = t.mass.Base
			lift = "lift a tub: " + d.Tubs[i].Name + " weighs " + d.say(t.mass)
		}
	}
	return []string{
		"pour in anything that this list does not name: no plant food, no acid",
		"let a pupil touch a plug, the pump or a bottle",
		plug,
		lift,
		"pick or eat anything; the water is not for drinking",
	}
}
