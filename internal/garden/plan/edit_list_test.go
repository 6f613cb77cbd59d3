package plan

import (
	"strings"
	"testing"
)

// edits are texts before and after an edit that is told by its path and value.
type edits []struct{ name, text, path, value, want string }

func (all edits) check(t *testing.T, edit func(text []byte, path, value string) ([]byte, error)) {
	t.Helper()
	for _, tt := range all {
		for _, end := range []string{"\n", "\r\n"} {
			in, want := strings.ReplaceAll(tt.text, "\n", end), strings.ReplaceAll(tt.want, "\n", end)
			got, err := edit([]byte(in), tt.path, tt.value)
			if err != nil || string(got) != want {
				t.Errorf("%s:\n%q (%v), want\n%q", tt.name, got, err, want)
			}
		}
	}
}

// refusals are edits that cannot be, and what is said.
type refusals []struct{ text, path, value, want string }

func (all refusals) check(t *testing.T, edit func(text []byte, path, value string) ([]byte, error)) {
	t.Helper()
	for _, tt := range all {
		got, err := edit([]byte(tt.text), tt.path, tt.value)
		if err == nil || got != nil || err.Error() != tt.want {
			t.Errorf("%s = %s: %q, %v; want %s", tt.path, tt.value, got, err, tt.want)
		}
	}
}

func TestAppend(t *testing.T) {
	edits{
		{"to a list in brackets", "a: 1\nschool: {teams: [Slate, Jade]} # two\n", "school.teams", "Amber", "a: 1\nschool: {teams: [Slate, Jade, Amber]} # two\n"},
		{"to an empty list", "tubs:\n  - lid:\n      holes: []   # none yet\n", "tubs[0].lid.holes", "{at: [12 cm, 9 cm]}", "tubs:\n  - lid:\n      holes: [{at: [12 cm, 9 cm]}]   # none yet\n"},
		{"to a key with nothing behind it", "tubs:\n  - lid:\n      holes:   # none yet\n", "tubs[0].lid.holes", "{at: [12 cm, 9 cm]}", "tubs:\n  - lid:\n      holes: [{at: [12 cm, 9 cm]}]   # none yet\n"},
		{"to null", "school: {teams: ~}\n", "school.teams", "Slate", "school: {teams: [Slate]}\n"},
		{"to a list that is not there", "tubs:\n  - lid:\n      size: [54 cm, 38 cm] # flat part\n    hole: 3 in\n", "tubs[0].lid.holes", "{at: [12 cm, 9 cm]}", "tubs:\n  - lid:\n      size: [54 cm, 38 cm] # flat part\n      holes: [{at: [12 cm, 9 cm]}]\n    hole: 3 in\n"},
		{"to a list whose group is not there", "garden: A\n", "school.closed", "{day: 2027-03-08, why: staff day}", "garden: A\nschool: {closed: [{day: 2027-03-08, why: staff day}]}\n"},
		{"to a list in braces that is not there", "school: {pupils: 26}\n", "school.teams", "Slate", "school: {pupils: 26, teams: [Slate]}\n"},
		{"to a list behind dashes", "school:\n  closed:\n    - {day: 2027-03-08} # staff day\n# the rest\nunits: us\n", "school.closed", "{day: 2027-03-09, why: snow}", "school:\n  closed:\n    - {day: 2027-03-08} # staff day\n    - {day: 2027-03-09, why: snow}\n# the rest\nunits: us\n"},
		{"to dashes without indent", "lamps:\n- name: a\nunits: us\n", "lamps", "{name: b}", "lamps:\n- name: a\n- name: b\nunits: us\n"},
		{"words behind dashes", "school:\n  teams:\n    - Slate\n", "school.teams", "red, or green", "school:\n  teams:\n    - Slate\n    - red, or green\n"},
		{"words in brackets", "school: {teams: [Slate]}\n", "school.teams", "red, or green", "school: {teams: [Slate, \"red, or green\"]}\n"},
		{"behind the last line", "school:\n  teams:\n    - Slate", "school.teams", "Jade", "school:\n  teams:\n    - Slate\n    - Jade"},
		{"behind the comments of the last item", "tubs:\n  - name: A\n    # deep\n  # shallow\nunits: us\n", "tubs", "{name: B}", "tubs:\n  - name: A\n    # deep\n  - name: B\n  # shallow\nunits: us\n"},
		{"over lines", "school:\n  teams: [\n    Slate, # grey\n    Jade # green\n  ]\n", "school.teams", "Amber", "school:\n  teams: [\n    Slate, # grey\n    Jade, Amber # green\n  ]\n"},
		{
			"a tub like the one before",
			"tubs:\n  - name: A # one\n    lid:\n        size: [1 m, 2 m]\n        keep_clear:\n          - {circle: [1 cm, 2 cm, 3 mm]}\n    cup: {body: 72 mm}\n\n# Prices\nprices: {tub: 12}\n", "tubs",
			"{name: B, lid: {size: [2 m, 1 m], keep_clear: [{why: vent}, {why: rib}], holes: []}, cup: {body: 60 mm}, method: still}",
			"tubs:\n  - name: A # one\n    lid:\n        size: [1 m, 2 m]\n        keep_clear:\n          - {circle: [1 cm, 2 cm, 3 mm]}\n    cup: {body: 72 mm}\n  - name: B\n    lid:\n        size: [2 m, 1 m]\n        keep_clear:\n          - {why: vent}\n          - {why: rib}\n        holes: []\n    cup: {body: 60 mm}\n    method: still\n\n# Prices\nprices: {tub: 12}\n",
		},
		{"a tub behind wide dashes", "tubs:\n-   name: A\n    hole: 3 in\n", "tubs", "{name: B, hole: 2 in}", "tubs:\n-   name: A\n    hole: 3 in\n-   name: B\n    hole: 2 in\n"},
		{"a text with problems", "garden: A\nunits: foo\nlamps: [{nam: a}]\n", "lamps", "{name: b}", "garden: A\nunits: foo\nlamps: [{nam: a}, {name: b}]\n"},
	}.check(t, Append)
	refusals{
		{least, "tubs[0].lid.size", "3 cm", "tub 1, lid, size is no list"},
		{least, "garden", "x", "garden is no list"},
		{least, "tubs[0].hols", "x", "a plan has no tubs[0].hols"},
		{least, "tubs[3].lid.holes", "{at: [1 cm, 1 cm]}", "there is no tub 4, lid, holes yet: the list has 1"},
		{least, "tubs[0].lid.holes", "{at: [1 cm, 1 cm]", "'{at: [1 cm, 1 cm]' is not one group or list: check its brackets and commas"},
		{least, "tubs[0].lid.holes", "{at: 1}, {at: 2}", "'{at: 1}, {at: 2}' is not one group or list: check its brackets and commas"},
		{least, "tubs[0].lid.holes", "{at: 1} # here", "'{at: 1} # here' is not one group or list: check its brackets and commas"},
		{least, "tubs[0].lid.holes", "{at: &a 1}", "'{at: &a 1}' is not one group or list: check its brackets and commas"},
		{least, "tubs[0].lid.holes", "{at:\n 1}", "there is a line end or an invisible character in it"},
		{least, "lamps", " ", "no value is given"},
		{"garden: A\nlamps: bright\n", "lamps", "{name: a}", "lamps is no list in the text: change it there"},
		{"hello\n", "lamps", "{name: a}", "the plan has no keys: begin with the one that 'rootbell new' writes"},
		{"", "lamps", "{name: a}", "the plan is empty: begin with the one that 'rootbell new' writes"},
	}.check(t, Append)
}

func TestRemove(t *testing.T) {
	edits{
		{"an item in brackets", "school: {teams: [Slate, Jade, Amber]} # three\n", "school.teams[1]", "", "school: {teams: [Slate, Amber]} # three\n"},
		{"the first item in brackets", "school: {teams: [Slate, Jade]}\n", "school.teams[0]", "", "school: {teams: [Jade]}\n"},
		{"the last item in brackets", "school: {teams: [Slate, Jade]}\n", "school.teams[1]", "", "school: {teams: [Slate]}\n"},
		{"the only item in brackets", "school: {teams: [ Slate ]}\n", "school.teams[0]", "", "school: {teams: []}\n"},
		{"an item behind a dash", "lamps:\n  # over the bay\n  - {name: a} # one\n  # over the door\n  - {name: b} # two\nunits: us\n", "lamps[0]", "", "lamps:\n  # over the bay\n  # over the door\n  - {name: b} # two\nunits: us\n"},
		{"the only item behind a dash", "lamps: # all\n  # over the bay\n  - {name: a} # one\nunits: us\n", "lamps[0]", "", "lamps: [] # all\n  # over the bay\nunits: us\n"},
		{"an item of many lines", "tubs:\n  - name: A\n    lid:\n      # flat\n      size: [1 m, 1 m] # wide\n\n  # The second.\n  - name: B\n    hole: 3 in\n", "tubs[0]", "", "tubs:\n\n  # The second.\n  - name: B\n    hole: 3 in\n"},
		{"the last item of many lines", "tubs:\n  - name: A\n  - name: B\n    hole: 3 in # saw\nunits: us", "tubs[1]", "", "tubs:\n  - name: A\nunits: us"},
		{"an item at the end", "tubs:\n  - name: A\n  - name: B\n    hole: 3 in", "tubs[1]", "", "tubs:\n  - name: A"},
		{"a key in braces", "shelf: {width: 1 m, depth: 45 cm} # bay\n", "shelf.width", "", "shelf: {depth: 45 cm} # bay\n"},
		{"the only key in braces", "garden: A\nshelf: {width: 1 m} # bay\n", "shelf.width", "", "garden: A\nshelf: {} # bay\n"},
		{"a key of its own line", "garden: A\n# how\nunits: us # mine\npaper: A4\n", "units", "", "garden: A\n# how\npaper: A4\n"},
		{"a group of lines", "tubs:\n  - name: A\n    lid: # flat\n      size: [1 m, 1 m]\n      holes:\n        - {at: [1 cm, 1 cm]}\n    hole: 3 in\n", "tubs[0].lid", "", "tubs:\n  - name: A\n    hole: 3 in\n"},
		{"the first key behind a dash", "tubs:\n  - name: A # one\n    hole: 3 in\n", "tubs[0].name", "", "tubs:\n  - hole: 3 in\n"},
		{"the first key behind a dash, a comment below", "tubs:\n  - name: A # one\n    # the saw\n    hole: 3 in\n", "tubs[0].name", "", "tubs:\n  -\n    # the saw\n    hole: 3 in\n"},
		{"the only key behind a dash", "tubs:\n  - name: A # one\n", "tubs[0].name", "", "tubs:\n  - {} # one\n"},
		{"the only key of a group", "garden: A\nshelf: # bay\n  width: 1 m\nunits: us\n", "shelf.width", "", "garden: A\nshelf: {} # bay\nunits: us\n"},
		{"an empty key", "garden: A\nshelf:\nunits: us\n", "shelf", "", "garden: A\nunits: us\n"},
		{"a key that is not known", "garden: A\ncolour: red\n", "colour", "", "garden: A\n"},
		{"the last line", "garden: A\nunits: us", "units", "", "garden: A"},
		{"from lines in brackets", "lamps: [\n  {name: a}, # one\n  # the second\n  {name: b}, # two\n  {name: c} # three\n]\n", "lamps[1]", "", "lamps: [\n  {name: a}, # one\n  # the second\n  {name: c} # three\n]\n"},
		{"the last of lines in brackets", "lamps: [\n  {name: a}, # one\n  {name: b} # two\n]\n", "lamps[1]", "", "lamps: [\n  {name: a}, # one\n]\n"},
		{"the only one of lines in brackets", "lamps: [\n  {name: a} # one\n]\n", "lamps[0]", "", "lamps: [\n]\n"},
		{"a list in a list", "tubs:\n  - lid:\n      outline:\n        - - 1 cm\n          - 2 cm\n        - [3 cm, 4 cm]\n", "tubs[0].lid.outline[0][0]", "", "tubs:\n  - lid:\n      outline:\n        - - 2 cm\n        - [3 cm, 4 cm]\n"},
	}.check(t, func(text []byte, path, _ string) ([]byte, error) { return Remove(text, path) })
	refusals{
		{least, "tubs[1]", "", "there is no tub 2 in the plan"},
		{least, "units", "", "there is no units in the plan"},
		{least, "", "", "no value is named"},
		{"garden: A\n", "garden", "", "garden is all that the plan has"},
	}.check(t, func(text []byte, path, _ string) ([]byte, error) { return Remove(text, path) })
}

func TestReplace(t *testing.T) {
	edits{
		{"a value", "tap: unknown # yet\n", "tap", "{ph: 7.6}", "tap: {ph: 7.6} # yet\n"},
		{"a group in braces", "tap: {ph: 7.6, ec: 1} # city\n", "tap", "unknown", "tap: unknown # city\n"},
		{"a list in brackets", "tubs:\n  - lid:\n      holes: [{at: [1 cm, 1 cm]}] # two\n", "tubs[0].lid.holes", "[{at: [2 cm, 2 cm]}, {at: [5 cm, 5 cm]}]", "tubs:\n  - lid:\n      holes: [{at: [2 cm, 2 cm]}, {at: [5 cm, 5 cm]}] # two\n"},
		{"a list behind dashes", "tubs:\n  - lid:\n      holes: # two\n        # left\n        - {at: [1 cm, 1 cm]}\n        - {at: [1 cm, 2 cm]} # right\n    hole: 3 in\n", "tubs[0].lid.holes", "[]", "tubs:\n  - lid:\n      holes: [] # two\n        # left\n    hole: 3 in\n"},
		{"a group of lines", "tubs:\n  - lid: # flat\n      size: [1 m, 1 m]\n      thickness: 2 mm # thin\n    hole: 3 in\n", "tubs[0].lid", "{diameter: 40 cm}", "tubs:\n  - lid: {diameter: 40 cm} # flat\n    hole: 3 in\n"},
		{"an item of lines", "tubs:\n  - name: A\n    hole: 3 in # saw\n  - name: B\n", "tubs[0]", "{name: C}", "tubs:\n  - {name: C} # saw\n  - name: B\n"},
		{"what is not there", "tubs:\n  - name: A\n", "tubs[0].round", "{top: 40 cm}", "tubs:\n  - name: A\n    round: {top: 40 cm}\n"},
		{"a key with nothing behind it", "shelf: # bay\nunits: us\n", "shelf", "{width: 1 m}", "shelf: {width: 1 m} # bay\nunits: us\n"},
	}.check(t, Replace)
	refusals{
		{least, "tubs[0].lid.holes", "", "no value is given"},
		{least, "tubs[0].lid.hles", "[]", "a plan has no tubs[0].lid.hles"},
		{least, "tubs[0].lid.holes", "[", "'[' is not one group or list: check its brackets and commas"},
	}.check(t, Replace)
}

func TestClear(t *testing.T) {
	edits{
		{"a key that may be left out", "garden: A\nunits: us # mine\n", "units", "", "garden: A\n"},
		{"a required key", "garden: A # mine\nunits: us\n", "garden", "", "garden: \"\" # mine\nunits: us\n"},
		{"the last key of a group", "garden: A\nshelf: {width: 1 m}\n", "shelf.width", "", "garden: A\n"},
		{"the last key of a required group", "tubs:\n  - name: A\n    lid: {thickness: 2 mm}\n", "tubs[0].lid.thickness", "", "tubs:\n  - name: A\n    lid: {}\n"},
		{"the last of a choice's required keys", "tubs:\n  - name: A\n    round: {top: \"\", base: 30 cm, height:}\n", "tubs[0].round.base", "", "tubs:\n  - name: A\n"},
		{"one of a size", "tubs:\n  - lid: {size: [54 cm, 38 cm]}\n", "tubs[0].lid.size[0]", "", "tubs:\n  - lid: {size: [\"\", 38 cm]}\n"},
		{"the last of a size", "tubs:\n  - lid: {size: [\"\", 38 cm], thickness: 2 mm}\n", "tubs[0].lid.size[1]", "", "tubs:\n  - lid: {thickness: 2 mm}\n"},
		{"a place in a list", "school: {teams: [Slate, Jade]}\n", "school.teams[0]", "", "school: {teams: [Jade]}\n"},
		{"what is not there", "garden: A\n", "shelf.width", "", "garden: A\n"},
		{"a whole group", "garden: A\nshelf: # bay\n  width: 1 m\n", "shelf", "", "garden: A\n"},
		{"the only key of all", "units: us\n", "units", "", "units: \"\"\n"},
	}.check(t, func(text []byte, path, _ string) ([]byte, error) { return Clear(text, path) })
}
