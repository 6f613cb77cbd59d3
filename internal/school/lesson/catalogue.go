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
		{Number: 8, ID: "lid-area", Title: "How big is the lid?", Concept: "area and perimeter", Bands: []Band{Junior, Middle}, touches: []facts.ID{factCcss4Md3}, make: lidArea},
		{Number: 9, ID: "convert", Title: "The tub in other units", Concept: "converting units of volume", Bands: []Band{Junior, Middle}, touches: []facts.ID{factCcss4Md1, factCcss5Md1}, make: convert},
		{Number: 10, ID: "dose", Title: "How much plant food?", Concept: "multiplying and dividing measures", Bands: []Band{Junior}, touches: []facts.ID{factCcss4Md2}, make: dose},
		{Number: 11, ID: "box-volume", Title: "How much water is in the box?", Concept: "volume of a box", Bands: []Band{Junior}, touches: []facts.ID{factCcss5Md5}, make: boxVolume},
		{Number: 12, ID: "level-drop", Title: "How much water is gone?", Concept: "volume of a slice", Bands: []Band{Junior, Middle}, Log: true, touches: []facts.ID{factCcss5Md5, factNgss5Ls11}, make: levelDrop},
		{Number: 13, ID: "coordinates", Title: "Where are the holes?", Concept: "coordinates and distance", Bands: []Band{Junior, Middle}, Graph: true, touches: []facts.ID{factCcss5G1, factCcss5G2, factCcss8G7}, make: coordinates},
		{Number: 14, ID: "rate", Title: "How fast do the plants drink?", Concept: "unit rate", Bands: []Band{Middle}, Log: true, touches: []facts.ID{factCcss6Rp2, factCcss6Rp3}, make: rate},
		{Number: 15, ID: "dose-table", Title: "Is the dose proportional?", Concept: "ratio tables and proportion", Bands: []Band{Middle}, Graph: true, touches: []facts.ID{factCcss6Rp3, factCcss7Rp2, factCcss6Ee9}, make: doseTable},
		{Number: 16, ID: "seeds", Title: "How many seeds must we sow?", Concept: "percent and rounding up", Bands: []Band{Middle}, touches: []facts.ID{factCcss6Rp3}, make: seeds},
		{Number: 17, ID: "bounds", Title: "Between two boxes", Concept: "volume with fractions, lower and upper bound", Bands: []Band{Middle}, touches: []facts.ID{factCcss6G2}, make: bounds},
		{Number: 18, ID: "middle", Title: "What is a usual reading?", Concept: "mean, median, spread, and an odd one", Bands: []Band{Middle, Senior}, Log: true, touches: []facts.ID{factCcss6Sp5, factCcssHssId2, factNgssMsEts13}, make: middle},
		{Number: 19, ID: "hole-area", Title: "How much of the lid is cut away?", Concept: "area and circumference of a circle", Bands: []Band{Middle}, touches: []facts.ID{factCcss7G4, factCcss6Rp3}, make: holeArea},
		{Number: 20, ID: "scale", Title: "The lid as a scale drawing", Concept: "scale drawings", Bands: []Band{Middle}, touches: []facts.ID{factCcss7G1}, make: scaleDrawing},
		{Number: 21, ID: "dilute", Title: "How much water thins it?", Concept: "an equation, and a test of its answer", Bands: []Band{Middle, Senior}, Log: true, touches: []facts.ID{factCcss7Ee4, factCcssHsaCed1}, make: dilute},
		{Number: 22, ID: "buckets", Title: "How many buckets?", Concept: "volume of a cylinder", Bands: []Band{Middle}, touches: []facts.ID{factCcss8G9}, make: bucketfuls},
		{Number: 23, ID: "fit-line", Title: "What does the line say?", Concept: "a fitted line, prediction and residual", Bands: []Band{Middle, Senior}, Log: true, Graph: true, touches: []facts.ID{factCcss8Sp1, factCcss8Sp3, factCcss8F4, factCcssHssId6}, make: fitLine},
		{Number: 24, ID: "error-bounds", Title: "How sure is the volume?", Concept: "measurement error, and a formula rearranged", Bands: []Band{Senior}, touches: []facts.ID{factCcssHsnQ3, factCcssHsaCed4}, make: errorBounds},
		{Number: 25, ID: "away", Title: "Does the water last?", Concept: "an inequality with a constraint", Bands: []Band{Senior}, Log: true, touches: []facts.ID{factCcssHsaCed1, factCcssHsaCed3}, make: away},
		{Number: 26, ID: "ph-step", Title: "How much more acid?", Concept: "powers of ten", Bands: []Band{Middle, Senior}, Log: true, touches: []facts.ID{factCcss8Ee1}, make: phStep},
		{Number: 27, ID: "lamp-energy", Title: "What does the light cost?", Concept: "power, energy and price", Bands: []Band{Middle}, touches: []facts.ID{factCcss6Rp3}, make: lampEnergy},
		{Number: 28, ID: "two-sets", Title: "Are the two sets different?", Concept: "comparing two sets by centre and spread", Bands: []Band{Middle, Senior}, Log: true, touches: []facts.ID{factCcss7Sp3, factNgssMsLs15}, make: twoSets},
	}
}
