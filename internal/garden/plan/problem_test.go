package plan

import (
	"strings"
	"testing"
)

// tub is the least plan with other lines for the tub.
func tub(lines string) string {
	return "rootbell: 1\ngarden: A\ntubs:\n  - name: Heron\n" + lines
}

const (
	insideLine = "    inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm}\n"
	lidLine    = "    lid: {size: [54 cm, 38 cm]}\n"
	cupLine    = "    cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}\n"
	rightTub   = insideLine + lidLine + cupLine
)

func TestOneProblem(t *testing.T) {
	tests := []struct {
		name, text string
		want       string // LINE:COLUMN: what | hint | field
	}{
		{"nothing", "", "1:1: the plan is empty | 'rootbell new' writes one to begin with | "},
		{"comments alone", "# one\n# two\n", "1:1: the plan is empty | 'rootbell new' writes one to begin with | "},
		{"no keys", "hello\n", "1:1: a plan begins with keys, such as rootbell: 1 | 'rootbell new' writes one to begin with | "},
		{"binary", "rootbell: 1\ngar\x00den: A\n", "2:4: this is not plain text | save the plan as plain text (UTF-8) | "},
		{"not UTF-8", "garden: caf\xe9\n", "1:12: this is not plain text | save the plan as plain text (UTF-8) | "},
		{"UTF-16", "\xff\xfer\x00", "1:1: the file is saved as UTF-16 | save the plan as plain text (UTF-8) | "},
		{"huge", strings.Repeat("#", 1<<20+1), "1:1: the file is larger than 1 MiB, so it is not a plan | check that it is the right file | "},
		{"old line ends", "rootbell: 1\rgarden: A\r", "1:12: a line ends here without a line feed | save the plan with the usual line ends | "},
		{"a newer format", "rootbell: 2\nanything: else\n", "1:11: rootbell: format '2' is not known; this program reads format 1 | it was written for a newer program; use that one | rootbell"},
		{"no format", "garden: A\ntubs:\n  - name: Heron\n" + rightTub, "1:1: the plan has no rootbell | add rootbell: … | rootbell"},
		{"an empty key that is wanted", "rootbell: 1\ngarden:\ntubs:\n  - name: Heron\n" + rightTub, "2:1: the plan has no garden | add garden: … | garden"},
		{"no tubs", "rootbell: 1\ngarden: A\ntubs: []\n", "3:7: tubs: at least 1 entry is wanted here, not 0 | add what is missing | tubs"},
		{"two documents", least + "---\nrootbell: 1\n", "7:1: only one document is taken | leave out the line with ---, and keep one garden in one file | "},
		{"an anchor", tub(rightTub + "    hole: &h 76 mm\n"), "8:11: anchors (&) and aliases (*) are not taken in a plan | write the value out, or quote it if the sign belongs to the text | tubs[0].hole"},
		{"a tag", tub(rightTub + "    hole: !mm 76\n"), "8:11: tags (!) are not taken in a plan | leave the tag out, or quote the text if the sign belongs to it | tubs[0].hole"},
		{"a merge key", tub(rightTub + "    <<: {hole: 76 mm}\n"), "8:5: merge keys (<<) are not taken in a plan | write the keys out | tubs[0]"},
		{"text over lines", tub(rightTub + "    crop: leaf\n      lettuce\n"), "8:11: this text goes on over several lines | write it on one line, in quotes if it has : # , [ ] { or } in it | tubs[0].crop"},
		{"a text block", tub(rightTub + "    crop: |\n      leaf lettuce\n"), "8:11: a text over several lines is not taken | write it on one line | tubs[0].crop"},
		{"a tab", tub(rightTub + "\thole: 76 mm\n"), "8:1: a tab stands where spaces are needed | indent with spaces | "},
		{"a second colon", tub(rightTub + "    hole: 3: 76 mm\n"), "8:11: a second colon stands here, or the next line is indented deeper than this one | quote a text with a colon in it, such as \"06:00\"; give keys of one group the same indent | "},
		{"an open bracket", tub(insideLine + "    lid: {size: [54 cm, 38 cm}\n" + cupLine), "6:30: a list that begins with [ is not closed before this | close it with ], and put commas between its values | "},
		{"an open quote", tub(rightTub + "    hole: \"3 in\n"), "8:11: a quotation mark is not closed | close it on the same line; a text with a quote in it goes into the other kind of quotes | "},
		{"a key twice", tub(rightTub + "    hole: 76 mm\n    hole: 3 in\n"), "9:5: the key 'hole' is here a second time; the first is in line 8 | keep one of the two | tubs[0].hole"},
		{"a near miss", tub(rightTub + "    spaceing: {edge: 6 cm}\n"), "8:5: the key 'spaceing' is not known here | did you mean spacing? | tubs[0].spaceing"},
		{"a key in the wrong place", least + "hole: 76 mm\n", "7:1: the key 'hole' is not known here | it belongs to tubs; check the indent | hole"},
		{"an unknown key", tub(insideLine + "    lid: {size: [54 cm, 38 cm], colour: grey}\n" + cupLine), "6:33: the key 'colour' is not known here | known here: size, diameter, outline, corner_radius, thickness, above_rim, material, keep_clear, holes | tubs[0].lid.colour"},
		{"a near crop", tub(rightTub + "    crop: basel\n"), "8:11: crop: 'basel' is not known here | did you mean basil? | tubs[0].crop"},
		{"a part of a crop", tub(rightTub + "    crop: letuce\n"), "8:11: crop: 'letuce' is not known here | did you mean leaf lettuce? | tubs[0].crop"},
		{"a word", tub(rightTub + "    method: aireated\n"), "8:13: method: 'aireated' is not known here | did you mean aerated? It may be aerated or still | tubs[0].method"},
		{"a wrong dimension", tub(rightTub + "    hole: 3 lb\n"), "8:11: hole: lb is not a unit of length | use mm, cm, m, in or ft | tubs[0].hole"},
		{"no unit", tub(rightTub + "    hole: 76\n"), "8:11: hole: '76' has no unit | add one, such as mm, cm, m, in or ft | tubs[0].hole"},
		{"not a number", tub(rightTub + "    hole: .nan\n"), "8:11: hole: '.nan' is not a number one can measure | type the figure, such as 3 in | tubs[0].hole"},
		{"out of range", tub(rightTub + "    hole: 76 cm\n"), "8:11: hole: '76 cm' is outside the range taken here | it may be 10 mm to 250 mm | tubs[0].hole"},
		{"a comma in a list", tub(insideLine + "    lid: {size: [54,5 cm, 38 cm]}\n" + cupLine), "6:18: size: the comma in '54,5 cm' ends the value inside [ ] and { } | quote it, \"54,5 cm\", or write 54.5 cm | tubs[0].lid.size[0]"},
		{"a comma in a group", tub(insideLine + lidLine + "    cup: {body: 7,2 cm, rim: 83 mm, depth: 65 mm}\n"), "7:17: body: the comma in '7,2 cm' ends the value inside [ ] and { } | quote it, \"7,2 cm\", or write 7.2 cm | tubs[0].cup.body"},
		{"a comma behind a nought", tub(insideLine + "    lid: {size: [54 cm, 38 cm], holes: [{at: [0,5 cm, 9 cm]}]}\n" + cupLine), "6:47: at: the comma in '0,5 cm' ends the value inside [ ] and { } | quote it, \"0,5 cm\", or write 0.5 cm | tubs[0].lid.holes[0].at[0]"},
		{"two values without a blank", tub(insideLine + "    lid: {size: [54 cm, 38 cm], holes: [{at: [0,5 lb]}]}\n" + cupLine), "6:49: at: lb is not a unit of length | use mm, cm, m, in or ft | tubs[0].lid.holes[0].at[1]"},
		{"one value for two", tub(insideLine + "    lid: {size: [54 cm]}\n" + cupLine), "6:17: size: 2 values are wanted here, not 1 | separate them by commas; a decimal comma needs quotes, such as \"2,5 cm\" | tubs[0].lid.size"},
		{"a value for a group", tub(insideLine + lidLine + "    cup: 72 mm\n"), "7:10: cup: a group of keys is wanted here | write body, rim or depth, each with a value | tubs[0].cup"},
		{"a list for a value", tub(rightTub + "    hole: [76 mm]\n"), "8:11: hole: one value is wanted here, not a list | write the value without [ ] or dashes | tubs[0].hole"},
		{"a group for a value", tub(rightTub + "    hole: {at: 76 mm}\n"), "8:11: hole: one value is wanted here, not a group of keys | write the value behind the colon | tubs[0].hole"},
		{"a value for a list", tub(rightTub + "    growing: basil\n"), "8:14: growing: a list is wanted here | write it as [a, b], or one value a line behind dashes | tubs[0].growing"},
		{"no shape", tub(lidLine + cupLine), "4:5: tub 1 has none of inside, round or poured | add the one that fits | tubs[0]"},
		{"two shapes", tub(rightTub + "    round: {top: 40 cm, base: 36 cm, height: 25 cm}\n"), "8:5: round stands beside inside, and only one of inside, round or poured can be | keep the one that fits | tubs[0].round"},
		{"no cup", tub(insideLine + lidLine), "4:5: tub 1 has no cup | add cup: … | tubs[0].cup"},
		{"a name with a slash", "rootbell: 1\ngarden: A\ntubs:\n  - name: ../x\n" + rightTub, "4:11: name: '../x' does not have the form wanted here | write 1 to 24 letters, digits, spaces or hyphens | tubs[0].name"},
		{"a name twice", "rootbell: 1\ngarden: A\ntubs:\n  - name: Big Heron\n" + rightTub + "  - name: big-heron\n" + rightTub, "8:11: name: there is a tub 'Big Heron' in line 4 already | give each tub a name of its own; case, spaces and hyphens do not tell names apart | tubs[1].name"},
		{"half a plant", tub(rightTub + "    plants: 7.5\n"), "8:13: plants: '7.5' is not a number of plants | write best, or a whole number from 1 to 200 | tubs[0].plants"},
		{"half a stone", tub(rightTub + "    air: {stones: 1.5}\n"), "8:19: stones: '1.5' is not a whole number | write it in digits, such as 8 | tubs[0].air.stones"},
		{"neither yes nor no", least + "school: {adult_drills: perhaps}\n", "7:24: adult_drills: 'perhaps' is neither yes nor no | write yes or no | school.adult_drills"},
		{"no such day", least + "school: {terms: [{from: 2027-02-30, to: 2027-04-01}]}\n", "7:25: from: '2027-02-30' is not a day of the calendar | write year-month-day, such as 2027-01-11 | school.terms[0].from"},
		{"no such time", least + "school: {arrive: \"25:00\"}\n", "7:18: arrive: '25:00' is not a time of day | write it like \"08:30\" | school.arrive"},
		{"a stretch without end", least + "school: {closed: [{from: 2027-02-15}]}\n", "7:20: from is here without to | add to: … | school.closed[0].to"},
		{"a rib without width", tub(insideLine + "    lid: {size: [54 cm, 38 cm], keep_clear: [{rib: [[0, 19 cm], [54 cm, 19 cm]]}]}\n" + cupLine), "6:47: rib is here without width | add width: … | tubs[0].lid.keep_clear[0].width"},
		{"a width without rib", tub(insideLine + "    lid: {size: [54 cm, 38 cm], keep_clear: [{circle: [5 cm, 5 cm, 1 cm], width: 2 cm}]}\n" + cupLine), "6:75: width is for rib, which is not here | add rib, or leave width out | tubs[0].lid.keep_clear[0].width"},
		{"a circle without radius", tub(insideLine + "    lid: {size: [54 cm, 38 cm], keep_clear: [{circle: [5 cm, 5 cm, 0]}]}\n" + cupLine), "6:68: circle: a circle needs a radius | write x, y, radius | tubs[0].lid.keep_clear[0].circle[2]"},
		{"corners the wrong way round", tub(insideLine + "    lid: {size: [54 cm, 38 cm], keep_clear: [{rectangle: [3 cm, 0, 1 cm, 9 cm]}]}\n" + cupLine), "6:68: rectangle: the rectangle has no area | write x0, y0, x1, y1 with x1 right of x0 and y1 above y0 | tubs[0].lid.keep_clear[0].rectangle[2]"},
		{"a nutrient", least + "fertilisers: [{name: a, label: {K20: 5 %}}]\n", "7:33: the nutrient 'K20' is not known | did you mean K2O? | fertilisers[0].label.K20"},
		{"a salt that is no formula", least + "fertilisers: [{name: a, salt: a salt}]\n", "7:31: salt: 'a salt' does not have the form wanted here | write its name, such as magnesium-sulfate, or its formula, such as MgSO4.7H2O | fertilisers[0].salt"},
		{"a form without a label", least + "fertilisers: [{name: a, salt: KNO3, nitrate_n: 5 %}]\n", "7:37: nitrate_n is for label, which is not here | add label, or leave nitrate_n out | fertilisers[0].nitrate_n"},
		{"a dose without water", least + "fertilisers: [{name: a, salt: KNO3, dose: 2 mL}]\n", "7:43: dose: '2 mL' is not a dose | write so much for so much water, such as 2 mL/L, 5 mL per 10 L or 1 g/L | fertilisers[0].dose"},
		{"a dose for no water", least + "fertilisers: [{name: a, salt: KNO3, dose: 2 mL per 0 L}]\n", "7:43: dose: '2 mL per 0 L' is a dose for no water | write it for a litre, such as 2 mL/L | fertilisers[0].dose"},
		{"a dose of stock", least + "fertilisers: [{name: a, salt: KNO3, dose: 200 mL/L}]\n", "7:43: dose: '200 mL/L' is no dose of a feed | it is more than nothing and at most 50 mL or g for each litre | fertilisers[0].dose"},
		{"a target", least + "feed: {target: {NO3: 5 mg/L}}\n", "7:17: the nutrient 'NO3' is not known | write N, NH4-N, P, K, Ca, Mg, S, Fe, Mn, B, Zn, Cu or Mo | feed.target.NO3"},
		{"a target beside a recipe", least + "feed: {recipe: steiner, target: {N: 5 mg/L}}\n", "7:25: target stands beside recipe, and only one of recipe or target can be | keep the one that fits | feed.target"},
		{"bleach without its figure", least + "bleach: {}\n", "7:9: bleach has no chlorine | add chlorine: … | bleach.chlorine"},
		{"a price with a sign", least + "prices: {tub: €12}\n", "7:15: tub: '€12' does not begin with a number | type a number, such as 5 | prices.tub"},
		{"an unknown tap word", least + "tap: hard\n", "7:6: tap: a group of keys is wanted here | write ph, alkalinity, ec, calcium, magnesium, sodium, potassium, chloride, sulfate, nitrate_n, phosphate_p, iron, boron, chlorine, chloramine or softened, each with a value | tap"},
		{"a thousands comma", least + "tubs_: 1\n", "7:1: the key 'tubs_' is not known here | did you mean tubs? | tubs_"},
		{"an interval the wrong way round", least + "tap: {calcium: 80 to 20 mg/L}\n", "7:16: calcium: '80 to 20 mg/L' begins with the larger figure | write the smaller one first | tap.calcium"},
		{"too many ages", least + "school: {ages: [8, 9, 10]}\n", "7:16: ages: at most 2 entries are wanted here, not 3 | leave out what is too much | school.ages"},
		{"more keys than a plan has", strings.Repeat("a: b\n", 10000), "1:1: the text holds more than a plan can | check that it is the right file | "},
		{"more tubs than a plan has", "rootbell: 1\ngarden: A\ntubs:\n" + strings.Repeat("- a\n", 501), "4:1: tubs: at most 500 entries are wanted here, not 501 | leave out what is too much | tubs"},
		{"deep brackets", "a: " + strings.Repeat("[", 2000) + "\n", "1:36: the brackets or dashes are nested too deep | a plan is nested at most a few steps deep | "},
		{"deep dashes", strings.Repeat("- ", 2000) + "a\n", "1:65: the brackets or dashes are nested too deep | a plan is nested at most a few steps deep | "},
	}
	for _, tt := range tests {
		p, problems := Parse("plan", []byte(tt.text))
		var got []string
		for _, problem := range problems {
			got = append(got, problem.String()+" | "+problem.Hint+" | "+problem.Field)
		}
		if p != nil || len(got) != 1 || got[0] != tt.want {
			t.Errorf("%s:\n  %s\nwant\n  %s", tt.name, strings.Join(got, "\n  "), tt.want)
		}
	}
}

// Every problem of a plan is said at once, in the order of the text, also those
// behind a place that cannot be read.
func TestAllProblemsAtOnce(t *testing.T) {
	text := `rootbell: 1
garden: [oops
units: metrick
place: {co2: 800 mg/L, humidty: 50 %}
tubs:
  - name: Heron
    crop: leef lettuce
    inside: {top: [52 cm, 36 cm], base: [46,5 cm, 30 cm], height: 22}
    lid:
      size: [54 cm, 38 cm]
      size: [54 cm, 38 cm]
      thickness: 2 m
      keep_clear: [{circle: [27 cm, 36 cm]}]
    cup: {body: 72 mm, rim: 8,3 cm, depth: 65 C}
  - name: heron
    lid: {diameter: &d 42 cm}
    hole: 3
`
	want := []string{
		"2:9: this bracket is not closed",
		"3:8: units: 'metrick' is not known here",
		"4:14: co2: mg/L is not a unit of mole fraction",
		"4:24: the key 'humidty' is not known here",
		"7:11: crop: 'leef lettuce' is not known here",
		"8:42: base: the comma in '46,5 cm' ends the value inside [ ] and { }",
		"8:67: height: '22' has no unit",
		"11:7: the key 'size' is here a second time; the first is in line 10",
		"12:18: thickness: '2 m' is outside the range taken here",
		"13:29: circle: 3 values are wanted here, not 2",
		"14:29: rim: the comma in '8,3 cm' ends the value inside [ ] and { }",
		"14:44: depth: °C is not a unit of length",
		"15:11: name: there is a tub 'Heron' in line 6 already",
		"16:21: anchors (&) and aliases (*) are not taken in a plan",
		"17:11: hole: '3' has no unit",
	}
	_, problems := Parse("plan", []byte(text))
	for i := range max(len(want), len(problems)) {
		var w, g string
		if i < len(want) {
			w = want[i]
		}
		if i < len(problems) {
			g = problems[i].String()
		}
		if w != g {
			t.Errorf("problem %d is\n  %s\nwant\n  %s", i+1, g, w)
		}
	}
}

func TestManyProblemsAreCut(t *testing.T) {
	var b strings.Builder
	b.WriteString(least)
	for range 400 {
		b.WriteString("  - hole: 3\n")
	}
	if _, problems := Parse("plan", []byte(b.String())); len(problems) != mostProblems {
		t.Errorf("%d problems are told", len(problems))
	}
}
