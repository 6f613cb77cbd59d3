package season

import (
	"fmt"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
)

// grams and litres are amounts as a sentence has them.
func grams(g float64, s quantity.System) string {
	return quantity.Format(quantity.SmallMass, quantity.Gram.Base(g), s)
}

func litres(l float64, s quantity.System) string {
	return quantity.Format(quantity.Volume, quantity.Litre.Base(l), s)
}

func number(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// clock is a time of day as a timer has it.
func clock(minutes int) string {
	return fmt.Sprintf("%02d:%02d", minutes/60%24, minutes%60)
}

func taskWords(t Task, s quantity.System) string {
	switch t.Kind {
	case "order":
		return "Order " + t.Crop + " " + t.What + ": they must be there by " + t.Before.Words() + "."
	case "sow":
		if t.Count == 0 {
			return "Sow " + t.Crop + "."
		}
		return "Sow " + t.Crop + ": " + number(t.Count, "seed", "seeds") + " in " + number(t.Cells, "cell", "cells") + "."
	case "thin":
		return "Thin " + t.Crop + ": leave one seedling in each cell, cut the others off."
	case "transplant":
		return "Move " + number(t.Count, "plant", "plants") + " of " + t.Crop + " into the tub."
	case "lamp":
		return "Raise the lamp to " + quantity.FormatMark(t.MM, s) + " over the lid."
	case "lower":
		return "From now on fill up to " + quantity.FormatMark(t.MM, s) + " over the floor only: let the water fall to it."
	case "change-out":
		return "Change the water."
	case "harvest":
		return "Harvest."
	case "meal":
		if t.Count > 0 {
			return "Meal for " + strconv.Itoa(t.Count) + "."
		}
		return "Meal."
	}
	return ""
}

func taskWhy(t Task, s quantity.System) string {
	switch t.Kind {
	case "sow":
		return "More seeds than plants: some do not come up, and some do not get through."
	case "thin":
		return "Two in one cell take each other's light."
	case "lamp":
		return "Plants would soon be too near to it."
	case "lower":
		why := "Roots hang in the water now. Those in the air over it take oxygen from there."
		if t.What == byStages {
			why += " No more than " + quantity.FormatMark(value(factLowerRate), s) + " a day, so that roots can follow."
		}
		return why
	case "change-out":
		return "What plants leave behind adds up."
	}
	return ""
}

func moveWords(m Move, s quantity.System) string {
	sure := quantity.Chance(m.Chance)
	switch m.Kind {
	case "tubs":
		return "Grow in " + number(m.Count, "tub", "tubs") + " like this one: then it is enough in " + sure + " seasons."
	case "portion":
		return "Plan " + grams(m.G, s) + " for each eater: that much is there in " + sure + " seasons."
	case "eaters":
		return "Plan for " + number(m.Count, "eater", "eaters") + ": for so many it is enough in " + sure + " seasons."
	case "smaller":
		return "Pick plants of " + grams(m.G, s) + ": in " + sure + " seasons they are that large."
	case "later":
		return "Hold the meal on " + m.On.Words() + ": then it is ready in " + sure + " seasons."
	case "seedlings":
		return "Buy seedlings and move them in on " + m.On.Words() + ": then it is ready in " + sure + " seasons."
	}
	if m.Hours > 0 {
		return "Light the lamp for " + strconv.FormatFloat(m.Hours, 'f', -1, 64) + " hours a day: then it is ready in " + sure + " seasons."
	}
	return "Give " + strconv.FormatFloat(m.Times, 'f', -1, 64) + " times the light: then it is ready in " + sure + " seasons."
}

// optionWords are those of each way in its order, joined.
func optionWords(o Option, s quantity.System) string {
	var all []string
	for _, way := range strings.Split(o.Kind, "+") {
		all = append(all, wayWords(way, o, s))
	}
	if o.Short {
		all = append(all, "What stays is enough for the meal in "+quantity.Chance(o.Meal)+" seasons.")
	}
	return strings.Join(all, " ")
}

func wayWords(way string, o Option, s quantity.System) string {
	switch way {
	case "fill":
		return "Fill up to " + quantity.FormatMark(o.LineMM, s) + " over the floor before you leave: about " + litres(o.PourL, s) + "."
	case "lamp":
		return "Set the timer to " + o.Timer() + ", " + strconv.FormatFloat(o.LampHours, 'f', -1, 64) + " hours a day, and back when somebody is there again."
	case "harvest":
		return "Harvest " + number(o.taken(), "plant", "plants") + " first, whole: " + stay(o.Left) + "."
	case "fewer":
		return "Take out " + number(o.taken(), "plant", "plants") + ", though not ready yet: " + stay(o.Left) + "."
	case "visit":
		if o.VisitFrom.IsZero() {
			return "One visit with at most " + litres(VisitLitres(), s) + " of water helps, but on no day does it serve a class that drinks 30 % more."
		}
		return "One visit between " + o.VisitFrom.Format("Mon 2 Jan") + " and " + o.VisitTo.Format("Mon 2 Jan") + ": pour in up to the line, at most " + litres(o.VisitL, s) + " of tap water that has stood for a day or is treated, and nothing else."
	case "still":
		return "Leave it the still way, with the pump off: roots have grown in the air under the lid."
	}
	return ""
}

// Timer is from when to when the lamp is lit then; empty where it stays as it is.
func (o Option) Timer() string {
	if o.LampHours <= 0 {
		return ""
	}
	return clock(o.Off.FromMin) + " to " + clock(o.Off.ToMin)
}

// stay says how many plants are left for what comes.
func stay(n int) string {
	if n == 1 {
		return "1 stays"
	}
	return strconv.Itoa(n) + " stay"
}

func (o Option) taken() (n int) {
	for _, k := range o.Plants {
		n += k
	}
	return n
}
