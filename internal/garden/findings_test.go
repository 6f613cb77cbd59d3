package garden_test

import (
	"slices"
	"strings"
	"testing"

	"rootbell/internal/base/finding"
)

const (
	stop = finding.Stop
	warn = finding.Warn
	note = finding.Note
)

// spoiled is a plan in which one thing is wrong, and the finding that says so.
type spoiled struct {
	name  string
	plan  string // clean.yaml where empty
	edits []edit
	level finding.Level
	code  string
	field string
	says  []string // words that the text or the hint must have
}

var holesAndCups = []spoiled{
	{"the hole lets the cup fall through", "", []edit{{"tubs[0].hole", "79 mm"}}, stop, "hole-too-big", "tubs[0].hole", []string{"73.0", "76.0"}},
	{"just as wide as the lip less 6 mm", "", []edit{{"tubs[0].hole", "77 mm"}}, stop, "hole-too-big", "tubs[0].hole", []string{"76.0"}},
	{"the cup does not go in", "", []edit{{"tubs[0].hole", "70 mm"}}, stop, "hole-too-small", "tubs[0].hole", []string{"73.0", "76.0"}},
	{"just as wide as the cup", "", []edit{{"tubs[0].hole", "72 mm"}}, stop, "hole-too-small", "tubs[0].hole", []string{"73.0", "76.0"}},
	{"no hole can be right", "", []edit{{"tubs[0].hole", ""}, {"tubs[0].cup.rim", "78 mm"}}, stop, "cup-lip-narrow", "tubs[0].cup", []string{"72.0", "78.0"}},
	{"no hole is named", "", []edit{{"tubs[0].hole", ""}}, note, "hole-chosen", "tubs[0].hole", []string{"trial hole"}},
	{"no shop has the saw", "", []edit{{"tubs[0].hole", "74.5 mm"}}, note, "saw-uncommon", "tubs[0].hole", []string{"73.0", "76.0"}},
	{"the cup stands on the floor", "", []edit{{"tubs[0].cup.depth", "225 mm"}}, stop, "cup-too-deep", "tubs[0].cup.depth", []string{"22.5", "22.0"}},
}

var linesAndWater = []spoiled{
	{"no root reaches the water", "", []edit{{"tubs[0].fill_depth", "15 cm"}}, stop, "fill-under-cup", "tubs[0].fill_depth", []string{"15.0", "15.7"}},
	{"it would slop over", "", []edit{{"tubs[0].fill_depth", "19.5 cm"}}, stop, "fill-over-freeboard", "tubs[0].fill_depth", []string{"19.5", "19.0"}},
	{"a short cup in a full tub", "", []edit{{"tubs[0].cup.depth", "25 mm"}}, stop, "fill-over-freeboard", "tubs[0].cup.depth", []string{"19.0"}},
	{"the collar stays wet", "", []edit{{"tubs[0].fill_depth", "18.8 cm"}}, warn, "cup-too-wet", "tubs[0].fill_depth", []string{"3.1", "3.0"}},
	{"nothing is left to fall", "", []edit{{"tubs[0].cup.depth", "12 cm"}}, warn, "no-reserve", "tubs[0]", []string{"7.7", "8.0"}},
	{"more than may be filled in", "", []edit{{"tubs[0].max_fill", "20 L"}}, stop, "over-max-fill", "tubs[0].max_fill", []string{"25.8", "20 L"}},
	{"the lid's height was not measured", "", []edit{{"tubs[0].lid.above_rim", ""}}, note, "above-rim", "tubs[0].lid", []string{"0.5"}},
	{"the tub is low", "", []edit{{"tubs[0].inside.height", "17 cm"}}, note, "tub-height", "tubs[0].inside", []string{"17.0", "18.0", "40.0"}},
	{"corners rounder than the tub", "", []edit{{"tubs[0].inside.corner_radius", "20 cm"}}, stop, "tub-measures", "tubs[0].inside", []string{"radius"}},
	{"pourings that do not rise", "testdata/poured.yaml", []edit{{"tubs[0].poured[1].depth", "4 cm"}}, stop, "tub-measures", "tubs[0].poured", []string{"10 L"}},
	{"inside and outside swapped", "", []edit{{"tubs[0].outside.size[0]", "50 cm"}}, stop, "inside-over-outside", "tubs[0].inside", nil},
	{"higher inside than outside", "", []edit{{"tubs[0].outside.height", "21 cm"}}, stop, "inside-over-outside", "tubs[0].inside", nil},
	{"few litres a plant", "", []edit{{"tubs[0].litres_per_plant", "0.75 gal"}}, note, "litres-with-refills", "tubs[0].litres_per_plant", []string{"2.84", "4.00", "no source"}},
	{"a poured tub has no wall", "testdata/poured.yaml", nil, note, "wall-unknown", "tubs[0]", nil},
	{"the pump stands under water", "", []edit{{"tubs[0].air.pump", "below water"}}, warn, "pump-below-water", "tubs[0].air.pump", []string{"above the water", "check valve"}},
}

var lidsAndLayouts = []spoiled{
	{"kept clear beside the lid", "", []edit{{"tubs[0].lid.keep_clear[1].circle[0]", "80 cm"}}, stop, "keep-clear-off-lid", "tubs[0].lid.keep_clear[1]", []string{"lower left"}},
	{"all of the lid is kept clear", "", []edit{{"tubs[0].lid.keep_clear[0].rectangle[2]", "54 cm"}, {"tubs[0].lid.keep_clear[0].rectangle[1]", "0 cm"}, {"tubs[0].lid.keep_clear[0].rectangle[3]", "38 cm"}}, stop, "no-room", "tubs[0].lid", nil},
	{"the edge takes it all", "", []edit{{"tubs[0].spacing.edge", "20 cm"}}, stop, "no-room", "tubs[0].lid", nil},
	{"more plants than holes", "", []edit{{"tubs[0].plants", "60"}}, stop, "do-not-fit", "tubs[0].plants", []string{"60"}},
	{"more plants than the water feeds", "", []edit{{"tubs[0].plants", "8"}}, warn, "over-limit", "tubs[0].plants", []string{"8", "6", "nutrient volume"}},
	{"more plants than the lid spaces", "", []edit{{"tubs[0].plants", "11"}}, warn, "closer-than-wanted", "tubs[0].spacing.between", []string{"14.5"}},
	{"closer than lips and plastic allow", "", []edit{{"tubs[0].spacing.between", "8 cm"}}, warn, "closer-than-safe", "tubs[0].spacing.between", []string{"8.0", "95.0"}},
	{"a hole that is there beside the lid", "testdata/polygon-rib.yaml", []edit{{"tubs[0].lid.holes[0].at[0]", "80 cm"}}, stop, "hole-off-lid", "tubs[0].lid.holes[0].at", []string{"lower left"}},
	{"a hole too near the edge", "testdata/polygon-rib.yaml", []edit{{"tubs[0].lid.holes[0].at[0]", "5 cm"}}, stop, "web-thin", "tubs[0].lid.holes", []string{"12.0"}},
	{"a hole near the edge", "testdata/polygon-rib.yaml", []edit{{"tubs[0].lid.holes[0].at[0]", "5.3 cm"}}, warn, "web-narrow", "tubs[0].lid.holes", []string{"13.0"}},
	{"a lid rounder than itself", "", []edit{{"tubs[0].lid.corner_radius", "20 cm"}}, stop, "lid-shape", "tubs[0].lid", nil},
	{"a shape that crosses itself", "testdata/polygon-rib.yaml", []edit{{"tubs[0].lid.keep_clear[1].polygon[2][0]", "4 cm"}, {"tubs[0].lid.keep_clear[1].polygon[2][1]", "0 cm"}}, stop, "keep-clear-shape", "tubs[0].lid.keep_clear[1]", nil},
	{"a lid wider than its tub", "", []edit{{"tubs[0].lid.size[0]", "57 cm"}}, warn, "lid-over-outside", "tubs[0].lid.size", nil},
	{"no room for the service hole", "testdata/crammed.yaml", nil, warn, "no-service-hole", "tubs[0].lid", []string{"32.0"}},
}

var roomAndPeople = []spoiled{
	{"the shelf bends", "", []edit{{"shelf.rated_load", "40 kg"}, {"tubs[0].plants", "6"}}, stop, "shelf-overloaded", "shelf.rated_load", []string{"never moved"}},
	{"no plant at all", "", []edit{{"shelf.rated_load", "40 kg"}}, stop, "no-plant", "tubs[0]", []string{"shelf"}},
	{"wider than the bay", "", []edit{{"shelf.width", "50 cm"}}, stop, "wider-than-shelf", "shelf.width", []string{"56.0", "50.0"}},
	{"deeper than the board", "", []edit{{"shelf.depth", "39 cm"}}, stop, "deeper-than-shelf", "tubs[0].outside", []string{"40.0", "39.0"}},
	{"no rating", "", []edit{{"shelf.rated_load", ""}}, warn, "shelf-unrated", "shelf", []string{"floor"}},
	{"the crop meets the lamp", "", []edit{{"shelf.clear_height", "45 cm"}}, warn, "no-headroom", "shelf.clear_height", []string{"25.0", "21.0"}},
	{"the outside was not measured", "testdata/poured.yaml", nil, note, "no-outside", "tubs[0]", nil},
	{"no shelf", "testdata/polygon-rib.yaml", nil, note, "no-shelf", "garden", []string{"rated_load"}},
	{"no adult drills", "", []edit{{"school.adult_drills", "no"}}, warn, "adult-drills", "school.adult_drills", []string{"Pupils do not drill"}},
	{"nobody said whether an adult drills", "", []edit{{"school.adult_drills", ""}}, warn, "adult-drills", "school.adult_drills", nil},
	{"no crop", "", []edit{{"tubs[0].crop", ""}}, note, "crop", "tubs[0]", []string{"leaf lettuce"}},
	{"no errors of the tools", "", []edit{{"tools.marking_error", ""}, {"tools.drilling_error", ""}}, note, "tool-errors", "tools", []string{"3.5"}},
}

// A plan with one thing wrong says that thing, at its place; the plain one does
// not.
func TestEachThingWrongIsSaid(t *testing.T) {
	clean := edited(t, "testdata/clean.yaml")
	for _, c := range slices.Concat(holesAndCups, linesAndWater, lidsAndLayouts, roomAndPeople, calendars) {
		t.Run(c.code+"/"+c.name, func(t *testing.T) {
			name := c.plan
			if name == "" {
				name = "testdata/clean.yaml"
			}
			p := parsed(t, name, text(t, name, c.edits...))
			a := assessed(t, p)
			f, ok := found(a, c.code)
			if !ok {
				t.Fatalf("not said; but %v", codes(a))
			}
			if f.Level != c.level || f.Field != c.field {
				t.Errorf("%s at %s, want %s at %s", f.Level, f.Field, c.level, c.field)
			}
			line, column := p.Where(c.field)
			if f.Line != line || f.Column != column || line < 3 {
				t.Errorf("placed at %d:%d, and %s stands at %d:%d", f.Line, f.Column, c.field, line, column)
			}
			if f.Hint == "" || strings.Contains(f.Text+f.Hint, "%!") {
				t.Errorf("text %q, hint %q", f.Text, f.Hint)
			}
			for _, word := range c.says {
				if !strings.Contains(f.Text+" "+f.Hint, word) {
					t.Errorf("%q says nothing of %s", f.Text+" "+f.Hint, word)
				}
			}
			if _, said := found(clean, c.code); said {
				t.Errorf("the plain tub has %s as well", c.code)
			}
			document(t, a)
		})
	}
}

func TestThePlainTubHasNothingToSay(t *testing.T) {
	want := []string{"note litres-once at tubs[0].litres_per_plant", "note lux-hours at lux[0]"}
	if got := codes(edited(t, "testdata/clean.yaml")); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Stops come first, then warnings, then notes.
func TestFindingsComeByWeight(t *testing.T) {
	a := edited(t, "testdata/clean.yaml", edit{"tubs[0].hole", "79 mm"}, edit{"school.adult_drills", "no"}, edit{"tubs[0].lid.above_rim", ""})
	for i := 1; i < len(a.Findings); i++ {
		if a.Findings[i].Level > a.Findings[i-1].Level {
			t.Errorf("%v", codes(a))
		}
	}
	if a.Findings[0].Code != "hole-too-big" {
		t.Errorf("%v", codes(a))
	}
}

// Where a field points: a finding about a value stands at that value's line and
// column in the text.
func TestFindingsPointAtTheirValue(t *testing.T) {
	body := text(t, "testdata/clean.yaml", edit{"tubs[0].hole", "79 mm"})
	f, _ := found(assessed(t, parsed(t, "plan", body)), "hole-too-big")
	line := strings.Split(string(body), "\n")[f.Line-1]
	if f.Column < 1 || !strings.HasPrefix(line[f.Column-1:], "79 mm") {
		t.Errorf("%d:%d is in %q", f.Line, f.Column, line)
	}
}

// What rests on the impossible is left out: no water of a tub that cannot be,
// no holes where none can be right, and no working of either. What does not
// rest on it is still there.
func TestWhatRestsOnTheImpossibleIsLeftOut(t *testing.T) {
	const water, places, weight = `"volume_fill_l":null`, `"lid":null`, `"mass_filled_kg":null`
	for _, c := range []struct {
		code   string
		edits  []edit
		nulls  []string
		absent []string // beginnings of keys
		there  string   // a key
	}{
		{"tub-measures", []edit{{"tubs[0].inside.corner_radius", "20 cm"}}, []string{water, places, weight, `"plants":null`}, []string{"volume", "fill", "limit", "lid", "mass", "area"}, "shelf.allowed"},
		{"inside-over-outside", []edit{{"tubs[0].outside.height", "21 cm"}}, []string{water, places, weight, `"plants":null`}, []string{"volume", "fill", "limit", "lid", "mass", "area"}, "crops.leaf_lettuce.spacing_young"},
		{"cup-too-deep", []edit{{"tubs[0].cup.depth", "225 mm"}}, []string{water, places, weight, `"fill_depth_mm":null`}, []string{"volume", "limit", "lid.", "mass", "fill", "cup_bottom", "low"}, "shelf.allowed"},
		{"fill-over-freeboard", []edit{{"tubs[0].fill_depth", "23 cm"}}, []string{water, places, weight, `"fill_depth_mm":null`}, []string{"volume", "limit", "lid.", "mass", "fill"}, "shelf.allowed"},
		{"cup-lip-narrow", []edit{{"tubs[0].hole", ""}, {"tubs[0].cup.rim", "78 mm"}}, []string{places, weight, `"plants":null`}, []string{"hole", "margin", "lid.", "limit_lid"}, "tubs.Plain.volume_fill"},
		{"lid-shape", []edit{{"tubs[0].lid.corner_radius", "20 cm"}}, []string{places, weight, `"plants":null`}, []string{"lid.", "limit_lid"}, "tubs.Plain.volume_fill"},
		{"no-room", []edit{{"tubs[0].spacing.edge", "20 cm"}}, []string{places, weight, `"plants":null`}, []string{"lid.", "limit_lid"}, "tubs.Plain.volume_fill"},
		{"wider-than-shelf", []edit{{"shelf.width", "50 cm"}}, nil, []string{"limit_shelf", "mass_grown"}, "tubs.Plain.volume_fill"},
	} {
		t.Run(c.code, func(t *testing.T) {
			a := edited(t, "testdata/clean.yaml", c.edits...)
			if _, ok := found(a, c.code); !ok {
				t.Fatalf("%v", codes(a))
			}
			doc := string(document(t, a))
			for _, null := range c.nulls {
				if !strings.Contains(doc, null) {
					t.Errorf("no %s in the document", null)
				}
			}
			for _, n := range a.Numbers {
				for _, start := range c.absent {
					if strings.HasPrefix(n.Key, "tubs.Plain."+start) {
						t.Errorf("%s = %v stands on the impossible", n.Key, n.Value)
					}
				}
			}
			number(t, a, c.there)
		})
	}
}
