package plan

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	document, err := jsonschema.UnmarshalJSON(strings.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.json", document); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// asData is the document as an editor sees it.
func asData(t *testing.T, text string) any {
	t.Helper()
	var data any
	if err := yaml.Unmarshal([]byte(text), &data); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return data
}

// A plan that is read is one that the schema takes: an editor must not mark
// what is right.
func TestSchemaTakesWhatIsRight(t *testing.T) {
	s := compiled(t)
	texts := map[string]string{"the least": least, "mixing": mixing, "the whole": whole, "metric starter": Starter(0), "US starter": Starter(1)}
	files, _ := filepath.Glob("../../../examples/*.yaml")
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts[file] = string(text)
	}
	for _, tick := range []string{"yes", "no", "true", "false", `"yes"`, `"no"`, `"true"`, `"false"`} {
		texts["tick "+tick] = least + "school: {adult_drills: " + tick + "}\n"
	}
	for _, length := range []string{"3 in", "1 1/2 in", `5'2"`, "5 ft 2 in", `"7,6 cm"`, "76mm", "2½ in", "0", "−2 mm"} {
		text := least + "place: {altitude: " + length + "}\n"
		mustParse(t, text)
		texts["length "+length] = text
	}
	texts["tap unknown"] = least + "tap: unknown\n"
	texts["tap interval"] = least + "tap: {ph: 7 to 8, calcium: 20–40 mg/L, ec: 360 µS/cm}\n"
	for _, dose := range []string{"2 mL/L", "5 mL per 10 L", "1 g/L", "1/2 tsp/gal", "0,5 g/L"} {
		text := least + "fertilisers: [{name: a, salt: KNO3, dose: \"" + dose + "\"}]\n"
		mustParse(t, text)
		texts["dose "+dose] = text
	}
	for name, text := range texts {
		if err := s.Validate(asData(t, text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What an editor can mark, it does.
func TestSchemaMarksWhatIsWrong(t *testing.T) {
	s := compiled(t)
	for name, text := range map[string]string{
		"no garden":           strings.Replace(least, "garden: A\n", "", 1),
		"another format":      strings.Replace(least, "rootbell: 1", "rootbell: 2", 1),
		"an unknown key":      least + "gardn: A\n",
		"a near word":         tub(rightTub + "    method: aireated\n"),
		"an unknown crop":     tub(rightTub + "    crop: basel\n"),
		"no unit":             tub(rightTub + "    hole: 76\n"),
		"a wrong dimension":   tub(rightTub + "    hole: 3 lb\n"),
		"not a number":        tub(rightTub + "    hole: wide\n"),
		"no shape":            tub(lidLine + cupLine),
		"two shapes":          tub(rightTub + "    round: {top: 40 cm, base: 36 cm, height: 25 cm}\n"),
		"crop and growing":    tub(rightTub + "    crop: basil\n    growing: [{crop: basil, plants: 3}]\n"),
		"one value for two":   tub(insideLine + "    lid: {size: [54 cm]}\n" + cupLine),
		"a rib without width": tub(insideLine + "    lid: {size: [54 cm, 38 cm], keep_clear: [{rib: [[0, 19 cm], [54 cm, 19 cm]]}]}\n" + cupLine),
		"neither yes nor no":  least + "school: {adult_drills: perhaps}\n",
		"half a plant":        tub(rightTub + "    plants: 7.5\n"),
		"a name with a slash": strings.Replace(tub(rightTub), "Heron", "../x", 1),
		"no tubs":             "rootbell: 1\ngarden: A\ntubs: []\n",
		"a nutrient":          least + "fertilisers: [{name: a, label: {K20: 5 %}}]\n",
		"a dose":              least + "fertilisers: [{name: a, salt: KNO3, dose: much}]\n",
		"an aim":              least + "feed: {target: {NO3: 5 mg/L}}\n",
		"two recipes":         least + "feed: {recipe: steiner, target: {N: 5 mg/L}}\n",
		"a day":               least + "school: {terms: [{from: 11.1.2027, to: 2027-04-01}]}\n",
	} {
		if p, _ := Parse(name, []byte(text)); p != nil {
			t.Errorf("%s: Parse takes it", name)
		}
		if err := s.Validate(asData(t, text)); err == nil {
			t.Errorf("%s: the schema takes it", name)
		}
	}
}

// The ranges in the tags can be read, each in its field's own unit, and every
// default and form is one.
func TestSpecification(t *testing.T) {
	seen := 0
	walkSpec(planType, "", func(path string, k Key) {
		seen++
		if _, hint := FormOf(k.Form); k.Form != "" && hint == "" {
			t.Errorf("%s.%s has the form %q, which is none", path, k.Name, k.Form)
		}
	})
	if seen < 100 {
		t.Errorf("only %d keys: the contract has more", seen)
	}
	checkRanges(t, planType, "")
}

// The shipped packages link neither library that writes or reads schemas.
func TestNoSchemaLibraryIsShipped(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "rootbell/cmd/rootbell", "rootbell/internal/garden/plan").Output()
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(out), "jsonschema") {
		t.Error("a JSON Schema library is linked")
	}
}
