package plan

import (
	"fmt"
	"strings"
	"testing"
)

// changed is a plan's text with pieces replaced.
func changed(text string, pieces ...string) string {
	return strings.NewReplacer(pieces...).Replace(text)
}

func TestDifferences(t *testing.T) {
	tests := []struct {
		name, was, is string
		want          string // PATH | WORDS | OLD | NEW | OLD LINE > NEW LINE; one a line
	}{
		{"nothing", whole, whole, ""},
		{"a value", whole, changed(whole, "hole: 76 mm", "hole: 3 in"), "tubs[0].hole | tub Heron, hole | 76 mm | 3 in | 49>49"},
		{"a value that is new", least, least + "units: us\n", "units | units |  | us | 0>7"},
		{"a value that is gone", whole, changed(whole, "paper: A4\n", ""), "paper | paper | A4 |  | 4>0"},
		{"a value taken back", whole, changed(whole, "paper: A4\n", "paper:\n"), "paper | paper | A4 |  | 4>4"},
		{"a group that is new", least, least + "shelf: {width: 1 m, depth: 45 cm}\n", "shelf | shelf |  | width: 1 m, depth: 45 cm | 0>7"},
		{"one of a size", whole, changed(whole, "size: [54 cm, 38 cm]", "size: [54 cm, 40 cm]"), "tubs[0].lid.size | tub Heron, lid, size | 54 cm, 38 cm | 54 cm, 40 cm | 37>37"},
		{"two radii instead of one", whole, changed(whole, "corner_radius: 4 cm", "corner_radius: [4 cm, 3 cm]"), "tubs[0].lid.corner_radius | tub Heron, lid, corner radius | 4 cm | 4 cm, 3 cm | 38>38"},
		{"a word for a group", "tap: {ph: 7, ec: 1 mS/cm}\n", "tap: unknown\n", "tap | tap | ph: 7, ec: 1 mS/cm | unknown | 1>1"},
		{"a shape to keep clear", whole, changed(whole, "        - {circle: [27 cm, 36 cm, 1.5 cm], why: vent}\n", ""), "tubs[0].lid.keep_clear[1] | tub Heron, lid, shape to keep clear 2 | circle: [27 cm, 36 cm, 1.5 cm], why: vent |  | 44>0"},
		{"a hole more", whole, changed(whole, "holes: [{at: [12 cm, 9 cm]}]", "holes: [{at: [30 cm, 9 cm]}, {at: [12 cm, 9 cm]}]"), "tubs[0].lid.holes[0] | tub Heron, lid, hole 1 |  | at: [30 cm, 9 cm] | 0>47"},
		{"a hole elsewhere", whole, changed(whole, "holes: [{at: [12 cm, 9 cm]}]", "holes: [{at: [13 cm, 9 cm]}]"), "tubs[0].lid.holes[0].at | tub Heron, lid, hole 1, place | 12 cm, 9 cm | 13 cm, 9 cm | 47>47"},
		{"another shape", "tubs: [{lid: {keep_clear: [{circle: [1, 2, 3]}]}}]\n", "tubs: [{lid: {keep_clear: [{rectangle: [1, 2, 3, 4]}]}}]\n", "tubs[0].lid.keep_clear[0] | tub 1, lid, shape to keep clear 1 |  | rectangle: [1, 2, 3, 4] | 0>1\ntubs[0].lid.keep_clear[0] | tub 1, lid, shape to keep clear 1 | circle: [1, 2, 3] |  | 1>0"},
		{"a corner", whole, changed(whole, "[2 cm, 1 cm], [1 cm, 2 cm]", "[3 cm, 1 cm], [1 cm, 2 cm]"), "tubs[0].lid.keep_clear[2].polygon[1] | tub Heron, lid, shape to keep clear 3, polygon, corner 2 | 2 cm, 1 cm | 3 cm, 1 cm | 45>45"},
		{"a team", whole, changed(whole, "Slate, Jade", "Slate, Teal"), "school.teams[1] | school, team 2 | Jade | Teal | 20>20"},
		{"a new name", whole, changed(whole, "name: Otter", "name: Egret"), "tubs[1].name | tub Otter, name | Otter | Egret | 58>58"},
		{"a name in small letters", whole, changed(whole, "name: Otter", "name: otter"), "tubs[1].name | tub Otter, name | Otter | otter | 58>58"},
		{"a crop of several", whole, changed(whole, "{crop: basil, plants: 3}", "{crop: basil, plants: 4}"), "tubs[1].growing[0].plants | tub Otter, crop basil, plants | 3 | 4 | 59>59"},
		{"a tub that is gone", "tubs:\n  - name: A\n    hole: 1 in\n  - name: B\n    hole: 2 in\n", "tubs:\n  - name: B\n    hole: 3 in\n", "tubs[0].hole | tub B, hole | 2 in | 3 in | 5>3\ntubs[0] | tub A | name: A, hole: 1 in |  | 2>0"},
		{"another tub", "tubs:\n  - name: A\n    hole: 1 in\n", "tubs:\n  - name: B\n    hole: 2 in\n", "tubs[0] | tub B |  | name: B, hole: 2 in | 0>2\ntubs[0] | tub A | name: A, hole: 1 in |  | 2>0"},
		{"tubs that changed places", "tubs: [{name: A}, {name: B}]\n", "tubs: [{name: B}, {name: A}]\n", "tubs | tubs, order | A, B | B, A | 1>1"},
		{"a tub without a name", "tubs: [{crop: kale}]\n", "tubs: [{crop: mint}]\n", "tubs[0].crop | tub 1, crop | kale | mint | 1>1"},
		{"words that stand for keys", "tap: {ph: 7, nitrate_n: 1 mg/L}\nplace: {co2_closed: 420 ppm}\n", "tap: {ph: 8, nitrate_n: 2 mg/L}\nplace: {co2_closed: 400 ppm}\n", "tap.ph | tap, pH | 7 | 8 | 1>1\ntap.nitrate_n | tap, nitrate as nitrogen | 1 mg/L | 2 mg/L | 1>1\nplace.co2_closed | place, CO₂ when closed | 420 ppm | 400 ppm | 2>2"},
		{"a comment", least, least + "# the end\n", " | only comments or layout |  |  | 7>7"},
		{"quotes", least, changed(least, "garden: A", "garden: 'A'"), " | only comments or layout |  |  | 2>2"},
		{"another order of keys", "garden: A\nunits: us\n", "units: us\ngarden: A\n", " | only comments or layout |  |  | 1>1"},
		{"an empty list", least, least + "lamps: []\n", " | only comments or layout |  |  | 7>7"},
		{"a broken text", least, least + "lamps: [\n", " | the text, which cannot be read key by key |  |  | 7>7"},
		{"a second key", "garden: A\ngarden: B\n", "garden: A\ngarden: C\n", "garden | garden | B | C | 2>2"},
		{"an unknown key", "colour: [red]\n", "colour: [blue]\n", "colour[0] | colour 1 | red | blue | 1>1"},
	}
	for _, tt := range tests {
		var got []string
		for _, d := range Differences([]byte(tt.was), []byte(tt.is)) {
			got = append(got, fmt.Sprintf("%s | %s | %s | %s | %d>%d", d.Path, d.Words, d.Old, d.New, d.OldLine, d.NewLine))
		}
		if strings.Join(got, "\n") != tt.want {
			t.Errorf("%s:\n  %s\nwant\n  %s", tt.name, strings.Join(got, "\n  "), strings.ReplaceAll(tt.want, "\n", "\n  "))
		}
	}
}
