package meal

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
)

func value(id facts.ID) float64 { return Facts.Get(id).Value }

// Reply is what somebody answered at a gate.
type Reply string

// The replies. Unknown is also what was not answered.
const (
	Unknown Reply = ""
	Yes     Reply = "yes"
	No      Reply = "no"
)

// Gate is a question that comes before eating.
type Gate struct {
	ID     string
	Asks   string
	Good   Reply  // with which the gate opens
	Closed string // what is done where it stays closed
	Ask    string // what is done where nobody knows
	Who    string // decides
	Final  bool   // closed, nothing that was grown there is eaten
	Source string
}

const (
	kitchen = "the school's kitchen or food service"
	health  = "the school nurse or first aid"
	garden  = "the teacher who runs the garden"
	usda    = "USDA Food and Nutrition Service, Handling Fresh Produce in Classrooms, read"
	memory  = "usual food-safety advice, from memory"
)

// Gates that the judgement itself looks at.
const (
	permission = "permission"
	poured     = "unknown"
)

// Practice is the source of a rule that has none.
const Practice = "common practice, no source"

var gates = []Gate{
	{
		ID: permission, Asks: "Has the kitchen, or whoever decides on food at this school, said yes?", Good: Yes,
		Closed: "Weigh the harvest and write it down. It is not eaten here.", Ask: "Ask before the harvest. Rules differ from place to place.",
		Who: kitchen, Final: true, Source: "rules of states and towns differ: some certify school gardens first, others keep training records; read",
	},
	{
		ID: poured, Asks: "Did anybody pour anything into the tub that this garden does not use?", Good: No,
		Closed: "Nobody eats from this tub. Keep the bottle and its label.", Ask: "Ask the class and whoever looks in. Until it is known nobody eats from this tub.",
		Who: garden, Final: true, Source: Practice,
	},
	{
		ID: "past", Asks: "Is the tub new, or is it known that it only ever held food or water?", Good: Yes,
		Closed: "Nobody eats from this tub. What grew in it counts for the lesson.", Ask: "Ask who gave the tub. Until it is known nobody eats from it.",
		Who: garden, Final: true, Source: Practice,
	},
	{
		ID: "rinsed", Asks: "Was the tub rinsed after the last cleaning, until a strip showed no chlorine?", Good: Yes,
		Closed: "Nobody eats what stood in that water. Rinse, test, fill anew, and grow again.", Ask: "Look in the logbook, or dip a chlorine strip. Any colour: nobody eats.",
		Who: garden, Final: true, Source: Practice,
	},
	{
		ID: "sprayed", Asks: "Was anything sprayed on the plants?", Good: No,
		Closed: "Nobody eats them, unless the label allows it and the waiting days are over.", Ask: "Ask. Until it is known nobody eats them.",
		Who: garden, Final: true, Source: Practice,
	},
	{
		ID: "sound", Asks: "Are leaves and roots sound: no slime, no mould, no smell?", Good: Yes,
		Closed: "What is slimy, mouldy or smells is thrown away with its neighbours in that tub.", Ask: "Lift the lid and look at each root.",
		Who: garden, Source: Practice,
	},
	{
		ID: "ill", Asks: "Is everyone who touches the food well, today and in the last " + quantity.InWords(int(value(factIllDays))) + " days?", Good: Yes,
		Closed: "Who is not well does another job. Nobody asks who it is or what it is.", Ask: "Say the rule to all, and let everyone choose a job.",
		Who: health, Source: memory,
	},
	{
		ID: "allergies", Asks: "Has the school's own list of allergies been looked at, by the one who keeps it?", Good: Yes,
		Closed: "Only those eat for whom it has been looked at.", Ask: "Ask the one who keeps the list. No allergy is written down in this program.",
		Who: health, Source: Practice,
	},
	{
		ID: "cold", Asks: "Does what is cut stay at 5 °C (41 °F) or under until it is eaten, with a thermometer beside it?", Good: Yes,
		Closed: "Cut just before the meal. Cut leaves that stood out of the cold are thrown away.", Ask: "Put a thermometer in the fridge the day before.",
		Who: kitchen, Source: usda,
	},
	{
		ID: "water", Asks: "Is there drinking water to wash leaves and hands?", Good: Yes,
		Closed: "No washing, no eating. The water of the tub is not for washing.", Ask: "Ask the caretaker which tap is drinking water.",
		Who: garden, Source: usda,
	},
}

// Gates are the questions in their order.
func Gates() []Gate { return append([]Gate(nil), gates...) }
