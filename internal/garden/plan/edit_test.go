package plan

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestEdits(t *testing.T) {
	tests := []struct {
		name, text, path, typed, want string
	}{
		{"a plain value", "garden: A # mine\nunits: us\n", "garden", "B", "garden: B # mine\nunits: us\n"},
		{"a value in quotes", "garden: 'it''s' # mine\n", "garden", "that's", "garden: 'that''s' # mine\n"},
		{"a value in double quotes", `garden: "A"` + "\n", "garden", `6" pots`, `garden: "6\" pots"` + "\n"},
		{"a value that needs quotes", "garden: A\n", "garden", "A: # 1", "garden: \"A: # 1\"\n"},
		{"a comma in braces", "shelf: {width: 120 cm, depth: 45 cm}\n", "shelf.width", "120,5 cm", "shelf: {width: \"120,5 cm\", depth: 45 cm}\n"},
		{"a comma outside", "tubs:\n  - hole: 76 mm\n", "tubs[0].hole", "7,6 cm", "tubs:\n  - hole: 7,6 cm\n"},
		{"feet and inches", "tubs:\n  - hole: 76 mm\n", "tubs[0].hole", `5'2"`, "tubs:\n  - hole: 5'2\"\n"},
		{"an item of a list", "tubs:\n  - lid: {size: [54 cm, 38 cm]}\n", "tubs[0].lid.size[1]", "40 cm", "tubs:\n  - lid: {size: [54 cm, 40 cm]}\n"},
		{"a key with nothing behind it", "garden:\nunits: us\n", "garden", "A", "garden: A\nunits: us\n"},
		{"null", "garden: ~ # none\n", "garden", "A", "garden: A # none\n"},
		{"taking a value back", "shelf: {width: 120 cm, depth: 45 cm}\n", "shelf.width", "", "shelf: {depth: 45 cm}\n"},
		{"taking a required value back", "garden: A # mine\nunits: us\n", "garden", "", "garden: \"\" # mine\nunits: us\n"},
		{"a new key in braces", "shelf: {width: 120 cm} # bay\n", "shelf.depth", "45 cm", "shelf: {width: 120 cm, depth: 45 cm} # bay\n"},
		{"a new key in empty braces", "shelf: {}\n", "shelf.depth", "45 cm", "shelf: {depth: 45 cm}\n"},
		{"a new key in braces over lines", "shelf: {\n  width: 120 cm, # bay\n  }\n", "shelf.depth", "45 cm", "shelf: {\n  width: 120 cm, depth: 45 cm, # bay\n  }\n"},
		{"a new key in a block", "tubs:\n  - name: A # one\n    hole: 3 in # saw\n\n  - name: B\n", "tubs[0].layout", "rows", "tubs:\n  - name: A # one\n    hole: 3 in # saw\n    layout: rows\n\n  - name: B\n"},
		{"a new key behind an inner block", "tubs:\n  - lid:\n      thickness: 2 mm\nunits: us\n", "tubs[0].hole", "3 in", "tubs:\n  - lid:\n      thickness: 2 mm\n    hole: 3 in\nunits: us\n"},
		{"a new key at the end", "garden: A", "units", "us", "garden: A\nunits: us"},
		{"a new key with CRLF", "garden: A\r\nunits: us\r\n", "paper", "A4", "garden: A\r\nunits: us\r\npaper: A4\r\n"},
		{"a new group", "garden: A\n", "shelf.width", "120 cm", "garden: A\nshelf: {width: 120 cm}\n"},
		{"a new group in a group", "tubs:\n  - name: A\n", "tubs[0].lid.material", "foam", "tubs:\n  - name: A\n    lid: {material: foam}\n"},
		{"a new group behind an empty key", "garden: A\nshelf:\n", "shelf.width", "120 cm", "garden: A\nshelf: {width: 120 cm}\n"},
		{"a text with problems", "garden: A\nunits: foo\n", "units", "us", "garden: A\nunits: us\n"},
		{"a byte-order mark", "\ufeffgarden: A\n", "garden", "É", "\ufeffgarden: É\n"},
		{"no-break spaces", "shelf:\u00a0{width: 120\u00a0cm, depth: 45\u00a0cm}\n", "shelf.depth", "50\u00a0cm", "shelf:\u00a0{width: 120\u00a0cm, depth: 50\u00a0cm}\n"},
	}
	for _, tt := range tests {
		got, err := Edit([]byte(tt.text), tt.path, tt.typed)
		if err != nil || string(got) != tt.want {
			t.Errorf("%s:\n%q (%v), want\n%q", tt.name, got, err, tt.want)
		}
	}
}

func TestEditsThatCannotBe(t *testing.T) {
	tests := []struct{ text, path, typed, want string }{
		{least, "tubs[0].holes", "3 in", "a plan has no tubs[0].holes"},
		{least, "tubs[7].hole", "3 in", "there is no tub 8, hole yet: the list has 1"},
		{least, "tubs[0].lid", "3 in", "tub 1, lid is a group or a list: name the value in it"},
		{least, "tubs[0].hole.x", "3 in", "a plan has no tubs[0].hole.x"},
		{least, "garden", "a\nb", "there is a line end or an invisible character in it"},
		{least, "garden", strings.Repeat("x", 81), "this is longer than 80 characters"},
		{least, "garden", "\xff", "this is not text"},
		{least, "", "x", "no value is named"},
		{"", "garden", "x", "the plan is empty: begin with the one that 'rootbell new' writes"},
		{"garden: [x\n", "garden", "x", "line 1, column 9: a list that begins with [ is not closed: change that in the text first"},
	}
	for _, tt := range tests {
		got, err := Edit([]byte(tt.text), tt.path, tt.typed)
		if err == nil || err.Error() != tt.want {
			t.Errorf("%s = %s: %q, %v; want %s", tt.path, tt.typed, got, err, tt.want)
		}
	}
}

// Whatever is typed, at whatever value or missing key of the examples: the text
// then holds it there, and the bytes around it are the old ones.
func TestEditKeepsTheRest(t *testing.T) {
	var texts [][]byte
	for _, name := range []string{"fernhollow", "saltbrook"} {
		text, err := os.ReadFile("../../../examples/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, text, bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n")))
	}
	texts = append(texts, []byte(whole), []byte(Starter(0)), []byte(Starter(1)))
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(texts).Draw(t, "text")
		path := rapid.SampledFrom([]string{
			"garden", "units", "tubs[0].hole", "tubs[0].lid.size[0]", "tubs[0].cup.rim", "tubs[0].fill_depth", "tubs[0].inside.corner_radius",
			"shelf.width", "place.co2", "place.time_zone", "school.arrive", "school.meal.eaters", "prices.tub", "tubs[0].air.pump", "tools.ph",
			"tap.ph", "feed.ec", "currency", "tubs[0].lid.above_rim", "tubs[0].spacing.between", "tubs[0].max_fill",
		}).Draw(t, "path")
		typed := rapid.OneOf(
			rapid.SampledFrom([]string{"3 in", "2,5 cm", `5'2"`, "yes", "null", "~", "- 1", "-1", "# x", "a: b", "[x]", "{x}", "'", `"`, `\`, "12 µS/cm", " x ", "", "!x", "&x", "*x", "%", "@", "? x", "|", ">", "---", "...", "<<", "a:", "a #b", "0x1", "80 to 120 mg/L"}),
			rapid.StringMatching(`[ -~µ°½−é]{0,30}`),
		).Draw(t, "typed")
		edited, err := Edit(text, path, typed)
		if err != nil {
			if strings.Contains(err.Error(), "is a group or a list") {
				return
			}
			t.Fatalf("%s = %q: %v", path, typed, err)
		}
		again := Read(edited)
		if again.sick != nil {
			t.Fatalf("%s = %q gives a text that cannot be read: %v", path, typed, again.sick)
		}
		n, _, left := again.root.follow(splitPath(path))
		if typed == "" && (len(left) > 0 || n.shape == absent) {
			return
		}
		if len(left) > 0 || n.text != typed {
			t.Fatalf("%s = %q is read back as %q", path, typed, n.text)
		}
		keepsTheRest(t, text, edited, path)
		// Editing back gives the value that was there; a value that was there
		// without quotes gives the very text.
		if was, _, left := Read(text).root.follow(splitPath(path)); len(left) == 0 && was.shape == scalar && was.quote == 0 && typed != "" && n.quote == 0 {
			again, err := Edit(edited, path, was.text)
			if err != nil || !bytes.Equal(again, text) {
				t.Fatalf("%s: editing back gives another text (%v)", path, err)
			}
		}
	})
}

// keepsTheRest cuts what the two texts have in common at both ends: nothing of
// the old text may be in between but the old token, and every line of the old
// text but one is there still.
func keepsTheRest(t *rapid.T, old, edited []byte, path string) {
	was, is := bytes.Split(old, []byte("\n")), bytes.Split(edited, []byte("\n"))
	start := 0
	for start < len(was) && start < len(is) && bytes.Equal(was[start], is[start]) {
		start++
	}
	end := 0
	for end < len(was)-start && end < len(is)-start && bytes.Equal(was[len(was)-1-end], is[len(is)-1-end]) {
		end++
	}
	if changed := len(was) - start - end; changed > 1 {
		t.Fatalf("%s: %d lines changed", path, changed)
	}
	if changed := len(is) - start - end; changed > 1 {
		t.Fatalf("%s: %d lines are new", path, changed)
	}
	if start+end < len(was) {
		if comment := bytes.Index(was[start], []byte(" # ")); comment >= 0 && !bytes.HasSuffix(is[start], was[start][comment:]) {
			t.Fatalf("%s: the comment of the line is gone: %s", path, is[start])
		}
	}
}
