package lesson

import "rootbell/internal/base/facts"

// Templates are all templates, by number.
func Templates() []Template {
	return []Template{
		{Number: 1, ID: "empty-holes", Title: "How many holes are empty?", Concept: "taking away", Bands: []Band{Early}, touches: []facts.ID{factCcss1Oa1}, make: emptyHoles},
		{Number: 2, ID: "taller", Title: "How much taller?", Concept: "difference of two lengths", Bands: []Band{Early}, Log: true, touches: []facts.ID{factCcss2Md4, factNgss2Ls21}, make: taller},
		{Number: 3, ID: "sleeps", Title: "How many sleeps?", Concept: "counting days over months", Bands: []Band{Early, Junior}, touches: []facts.ID{factCcss2Oa1, factNgss3Ls11}, make: sleeps},
		{Number: 4, ID: "jugs", Title: "How many jugs fill the tub?", Concept: "division with a remainder", Bands: []Band{Early, Junior}, touches: []facts.ID{factCcss3Md2, factNgss2Ls21}, make: jugs},
		{Number: 5, ID: "light-hours", Title: "How long is the light on?", Concept: "elapsed time", Bands: []Band{Junior}, touches: []facts.ID{factCcss3Md1}, make: lightHours},
		{Number: 6, ID: "added-up", Title: "How much water did we pour in?", Concept: "adding and subtracting volumes", Bands: []Band{Junior}, Log: true, touches: []facts.ID{factCcss3Md2, factNgss5Ls11}, make: addedUp},
		{Number: 7, ID: "bars", Title: "What do the bars say?", Concept: "a bar graph with a scale", Bands: []Band{Junior}, Log: true, Graph: true, touches: []facts.ID{factCcss3Md3}, make: bars},
		{Number: 9, ID: "convert", Title: "The tub in other units", Concept: "converting units of volume", Bands: []Band{Junior, Middle}, touches: []facts.ID{factCcss4Md1, factCcss5Md1}, make: convert},
		{Number: 18, ID: "middle", Title: "What is a usual reading?", Concept: "mean, median, spread, and an odd one", Bands: []Band{Middle, Senior}, Log: true, touches: []facts.ID{factCcss6Sp5, factCcssHssId2, factNgssMsEts13}, make: middle},
		{Number: 23, ID: "fit-line", Title: "What does the line say?", Concept: "a fitted line, prediction and residual", Bands: []Band{Middle, Senior}, Log: true, Graph: true, touches: []facts.ID{factCcss8Sp1, factCcss8Sp3, factCcss8F4, factCcssHssId6}, make: fitLine},
	}
}
