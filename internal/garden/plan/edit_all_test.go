package plan

import (
	"fmt"
	"testing"
)

func TestEditAll(t *testing.T) {
	tests := []struct {
		name, text string
		changes    []Change
		want       string
	}{
		{"what stands there", least, []Change{{"garden", "A"}, {"tubs[0].lid.size[0]", "54 cm"}, {"shelf.width", ""}}, least},
		{"a size", "tubs:\n  - lid: {thickness: 2 mm} # flat\n", []Change{{"tubs[0].lid.size[0]", "54 cm"}, {"tubs[0].lid.size[1]", "38 cm"}}, "tubs:\n  - lid: {thickness: 2 mm, size: [54 cm, 38 cm]} # flat\n"},
		{"half a size", "tubs:\n  - lid: {thickness: 2 mm}\n", []Change{{"tubs[0].lid.size[0]", ""}, {"tubs[0].lid.size[1]", "38 cm"}}, "tubs:\n  - lid: {thickness: 2 mm, size: [\"\", 38 cm]}\n"},
		{"a group", "garden: A # mine\n", []Change{{"shelf.width", "120 cm"}, {"shelf.depth", "45 cm"}, {"place.co2", ""}}, "garden: A # mine\nshelf: {width: 120 cm, depth: 45 cm}\n"},
		{"a group in a tub", "tubs:\n  - name: A\n    # end\n", []Change{{"tubs[0].air.flow", "2 L/min"}, {"tubs[0].air.stones", "2"}}, "tubs:\n  - name: A\n    air: {flow: 2 L/min, stones: 2}\n    # end\n"},
		{"another shape", "tubs:\n  - name: A\n    inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm} # measured\n    hole: 3 in\n", []Change{
			{"tubs[0].inside.top[0]", ""},
			{"tubs[0].inside.top[1]", ""},
			{"tubs[0].inside.base[0]", ""},
			{"tubs[0].inside.base[1]", ""},
			{"tubs[0].inside.height", ""},
			{"tubs[0].round.top", "40 cm"},
			{"tubs[0].round.base", "36 cm"},
			{"tubs[0].round.height", "25 cm"},
		}, "tubs:\n  - name: A\n    hole: 3 in\n    round: {top: 40 cm, base: 36 cm, height: 25 cm}\n"},
		{"a hole more", "tubs:\n  - lid:\n      holes: [{at: [1 cm, 2 cm]}]\n", []Change{{"tubs[0].lid.holes[1].at[0]", "3 cm"}, {"tubs[0].lid.holes[1].at[1]", "4 cm"}}, "tubs:\n  - lid:\n      holes: [{at: [1 cm, 2 cm]}, {at: [3 cm, 4 cm]}]\n"},
		{"the first hole", "tubs:\n  - lid:\n      holes:\n", []Change{{"tubs[0].lid.holes[0].at[1]", "4 cm"}, {"tubs[0].lid.holes[0].at[0]", "3 cm"}}, "tubs:\n  - lid:\n      holes: [{at: [3 cm, 4 cm]}]\n"},
		{"a shape behind dashes", "tubs:\n  - lid:\n      keep_clear:\n        - {why: vent}\n", []Change{{"tubs[0].lid.keep_clear[1].circle[2]", "1 cm"}, {"tubs[0].lid.keep_clear[1].why", "a, b"}}, "tubs:\n  - lid:\n      keep_clear:\n        - {why: vent}\n        - {circle: [\"\", \"\", 1 cm], why: \"a, b\"}\n"},
		{"a polygon", "tubs:\n  - lid: {}\n", []Change{{"tubs[0].lid.outline[0][0]", "0"}, {"tubs[0].lid.outline[0][1]", "1 cm"}, {"tubs[0].lid.outline[1][0]", "2 cm"}}, "tubs:\n  - lid: {outline: [[0, 1 cm], [2 cm, \"\"]]}\n"},
		{"a second tub", "tubs:\n  - name: A\n    hole: 3 in # saw\n", []Change{{"tubs[1].name", "B"}, {"tubs[1].cup.rim", "83 mm"}}, "tubs:\n  - name: A\n    hole: 3 in # saw\n  - name: B\n    cup: {rim: 83 mm}\n"},
		{"two teams taken out", "school: {teams: [Slate, Jade, Amber, Opal]}\n", []Change{{"school.teams[0]", ""}, {"school.teams[2]", ""}, {"school.teams[3]", "Teal"}}, "school: {teams: [Jade, Teal]}\n"},
		{"figures instead of unknown", "tap: unknown # yet\n", []Change{{"tap.ph", "7.6"}, {"tap.ec", "0.3 mS/cm"}}, "tap: {ph: 7.6, ec: 0.3 mS/cm} # yet\n"},
		{"unknown instead of figures", "tap: {ph: 7.6} # city\n", []Change{{"tap", "unknown"}}, "tap: unknown # city\n"},
		{"two radii instead of one", "tubs:\n  - inside: {corner_radius: 4 cm}\n", []Change{{"tubs[0].inside.corner_radius[1]", "3 cm"}}, "tubs:\n  - inside: {corner_radius: [4 cm, 3 cm]}\n"},
		{"one radius instead of two", "tubs:\n  - inside: {corner_radius: [4 cm, 3 cm]}\n", []Change{{"tubs[0].inside.corner_radius", "2 cm"}}, "tubs:\n  - inside: {corner_radius: 2 cm}\n"},
		{"a price and a nutrient", "prices: {tub: 12}\nfertilisers: [{name: a}]\n", []Change{{"prices.air_pump", "9.50"}, {"fertilisers[0].label.K2O", "8 %"}}, "prices: {tub: 12, air_pump: 9.50}\nfertilisers: [{name: a, label: {K2O: 8 %}}]\n"},
	}
	for _, tt := range tests {
		got, refused := EditAll([]byte(tt.text), tt.changes)
		if len(refused) > 0 || string(got) != tt.want {
			t.Errorf("%s:\n%q %v, want\n%q", tt.name, got, refused, tt.want)
		}
	}
}

// Every change that cannot be made is told, and the others are made.
func TestEditAllRefuses(t *testing.T) {
	got, refused := EditAll([]byte("garden: A\ntubs: [{name: B}]\n"), []Change{
		{"garden", "C"},
		{"colour", "red"},
		{"tubs[0].hole", "3\nin"},
		{"tubs[2].name", "D"},
		{"tubs[0].lid.holes[1].at[0]", "3 cm"},
		{"tubs", "none"},
		{"", "x"},
		{"units", "us"},
	})
	want := []Refusal{
		{"colour", "a plan has no colour"},
		{"tubs[0].hole", "there is a line end or an invisible character in it"},
		{"tubs[2].name", "there is no tub 3, name yet: the list has 1"},
		{"tubs[0].lid.holes[1].at[0]", "there is no tub B, lid, hole 2, place, x yet: add the ones before it first"},
		{"tubs", "tubs is a group or a list: name the value in it"},
		{"", "no value is named"},
	}
	if fmt.Sprint(refused) != fmt.Sprint(want) {
		t.Errorf("refused\n%v, want\n%v", refused, want)
	}
	if text := "garden: C\ntubs: [{name: B}]\nunits: us\n"; string(got) != text {
		t.Errorf("the text is %q, want %q", got, text)
	}
	broken := "garden: [A\n"
	got, refused = EditAll([]byte(broken), []Change{{"garden", "B"}})
	if string(got) != broken || len(refused) != 1 || refused[0].Path != "" {
		t.Errorf("a broken text gives %q, %v", got, refused)
	}
}

func TestValuesOfATextWithProblems(t *testing.T) {
	text := []byte("rootbell: 1\ngarden: 'it''s A'\nunits: foo\nshelf: {width: 120 lb, colour: red}\ntubs:\n  - name: Heron\n    hole:\n    lid: {holes: [{at: [1 cm, 2 cm]}, {at: [3 cm]}]}\n")
	for _, tt := range []struct {
		path, typed  string
		line, column int
		ok           bool
	}{
		{"garden", "it's A", 2, 9, true},
		{"units", "foo", 3, 8, true},
		{"shelf.width", "120 lb", 4, 16, true},
		{"shelf.colour", "red", 4, 32, true},
		{"tubs[0].lid.holes[1].at[0]", "3 cm", 8, 45, true},
		{"tubs[0].lid.holes[1].at[1]", "", 8, 44, false},
		{"tubs[0].hole", "", 7, 5, false},
		{"tubs[0].lid", "", 8, 10, false},
		{"tubs[1].name", "", 5, 1, false},
		{"", "", 1, 1, false},
	} {
		typed, line, column, ok := Value(text, tt.path)
		if typed != tt.typed || line != tt.line || column != tt.column || ok != tt.ok {
			t.Errorf("%s: %q at %d:%d, %v; want %q at %d:%d, %v", tt.path, typed, line, column, ok, tt.typed, tt.line, tt.column, tt.ok)
		}
	}
	for path, want := range map[string]int{"tubs": 1, "tubs[0].lid.holes": 2, "lamps": 0, "shelf": 0, "garden": 0, "": 0} {
		if got := Items(text, path); got != want {
			t.Errorf("%s has %d items, want %d", path, got, want)
		}
	}
	for path, want := range map[string]bool{"tubs": true, "tubs[0].lid": true, "tubs[0].hole": false, "lamps": false, "units": true, "": false} {
		if got := Has(text, path); got != want {
			t.Errorf("%s stands there: %v", path, got)
		}
	}
	// Behind a broken place the rest is read all the same.
	if typed, _, _, ok := Value([]byte("garden: [A\nunits: us\n"), "units"); typed != "us" || !ok {
		t.Errorf("behind a broken place units is %q", typed)
	}
	if _, line, column, ok := Value([]byte("\x00"), "units"); ok || line != 1 || column != 1 {
		t.Error("a text that is none has a value")
	}
}

func TestPathWords(t *testing.T) {
	for path, want := range map[string]string{
		"":                                    "",
		"garden":                              "garden",
		"tubs[0]":                             "tub Heron",
		"tubs[2].poured[1].depth":             "tub Wren 2-b, pouring 2, depth",
		"tubs[7].hole":                        "tub 8, hole",
		"tubs[0].inside.top[1]":               "tub Heron, inside, top, depth",
		"tubs[0].inside.corner_radius[1]":     "tub Heron, inside, corner radius, at the base",
		"tubs[0].lid.holes[2]":                "tub Heron, lid, hole 3",
		"tubs[0].lid.holes":                   "tub Heron, lid, holes",
		"tubs[0].lid.holes[0].at[1]":          "tub Heron, lid, hole 1, place, y",
		"tubs[0].lid.keep_clear[1].circle[2]": "tub Heron, lid, shape to keep clear 2, circle, radius",
		"tubs[0].lid.keep_clear[2].polygon[1][0]": "tub Heron, lid, shape to keep clear 3, polygon, corner 2, x",
		"tubs[0].lid.keep_clear[3].rib[1][1]":     "tub Heron, lid, shape to keep clear 4, rib, end 2, y",
		"tubs[0].lid.keep_clear":                  "tub Heron, lid, shapes to keep clear",
		"tubs[1].growing[1].plants":               "tub Otter, crop pak choi, plants",
		"school.closed[1].why":                    "school, closed stretch 2, reason",
		"school.ages[0]":                          "school, ages, youngest",
		"lamps[0].lit[1]":                         "lamp bay lamp, hours of light, to",
		"place.air_temperature_closed":            "place, air temperature when closed",
		"fertilisers[1].label.K2O":                "fertiliser school mix, label, K2O",
		"prices.saw":                              "prices, saw",
		"tap.ph":                                  "tap, pH",
	} {
		if got := PathWords([]byte(whole), path); got != want {
			t.Errorf("%s is said as %q, want %q", path, got, want)
		}
	}
}

// Many forms' fields, of which most say what stands there already.
func BenchmarkEditAll(b *testing.B) {
	changes := []Change{
		{"garden", "Fernhollow science room"},
		{"tubs[0].hole", "3 in"},
		{"tubs[0].lid.size[0]", "54 cm"},
		{"tubs[0].lid.size[1]", "39 cm"},
		{"tubs[0].cup.rim", "83 mm"},
		{"tubs[0].cup.body", "72 mm"},
		{"tubs[0].lid.corner_radius", "4 cm"},
	}
	for b.Loop() {
		if _, refused := EditAll([]byte(whole), changes); len(refused) > 0 {
			b.Fatal(refused)
		}
	}
}

func TestATubCalledTubIsSaidOnce(t *testing.T) {
	if got, want := PathWords([]byte("tubs:\n  - {name: Tub 1, hole: 3 in}\n"), "tubs[0].hole"), "Tub 1, hole"; got != want {
		t.Errorf("said as %q, want %q", got, want)
	}
}
