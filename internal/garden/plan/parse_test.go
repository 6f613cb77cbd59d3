package plan

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
)

// least is the smallest plan there can be.
const least = `rootbell: 1
garden: A
tubs:
  - inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm}
    lid: {size: [54 cm, 38 cm]}
    cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}
`

func mustParse(t *testing.T, text string) *Plan {
	t.Helper()
	p, problems := Parse("plan", []byte(text))
	for _, problem := range problems {
		t.Errorf("%s (%s)", problem, problem.Hint)
	}
	if p == nil {
		t.FailNow()
	}
	return p
}

func TestTheLeastPlan(t *testing.T) {
	p := mustParse(t, least)
	if p.Rootbell != 1 || p.Garden != "A" || p.Units != quantity.Metric || len(p.Tubs) != 1 {
		t.Errorf("read as %+v", p)
	}
	tub := p.Tubs[0]
	if tub.Inside.Top[0].Value != 520 || tub.Inside.Height.Text != "22 cm" || tub.Cup.Rim.Value != 83 || tub.Lid.Size[1].Value != 380 {
		t.Errorf("the tub is read as %+v", tub)
	}
	if tub.Hole.Set() || tub.Plants.Given || tub.Outside != nil || tub.Lid.AboveRim.Set() || p.Shelf != nil || p.School.AdultDrills.Given {
		t.Errorf("what was left out seems given: %+v", tub)
	}
}

func TestExamplesAndStarters(t *testing.T) {
	files, err := filepath.Glob("../../../examples/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		mustParse(t, string(text))
	}
	for _, s := range []quantity.System{quantity.Metric, quantity.US} {
		if p := mustParse(t, Starter(s)); p.Units != s || len(p.Tubs) != 1 {
			t.Errorf("the %s starter shows %s and has %d tubs", s, p.Units, len(p.Tubs))
		}
	}
}

// whole has every key of the first stage, once; those of mixing stand in mixing.
const whole = `rootbell: 1
garden: Fernhollow science room
units: metric
paper: A4
currency: EUR
place: {time_zone: Europe/Dublin, altitude: 80 m, air_temperature: 21 °C, air_temperature_closed: 16 °C, humidity: 50 %, co2: 800 ppm, co2_closed: 420 ppm}
tools: {ruler_step: 5 mm, tape_error: 2 mm, marking_error: 2 mm, drilling_error: 1.5 mm, scale_step: 0.1 g, ph: strips, ec: meter}
shelf: {width: 120 cm, depth: 45 cm, clear_height: 85 cm, rated_load: 80 kg}
tap: {ph: 7.6, alkalinity: 80 to 120 mg/L, ec: 0.36 mS/cm, calcium: 45 mg/L, magnesium: 8 mg/L, sodium: 14 mg/L, potassium: 2 mg/L,
      chloride: 20 mg/L, sulfate: 25 mg/L, nitrate_n: 2 mg/L, chlorine: 0.4 mg/L}
school:
  terms: [{from: 2027-01-11, to: 2027-04-02}]
  open_days: [mon, tue, wed, thu, fri]
  arrive: "08:30"
  leave: 3:30 pm
  closed: [{from: 2027-02-15, to: 2027-02-19, why: break}, {day: 2027-03-08, why: staff day}]
  meal: {day: 2027-03-24, eaters: 26, portion: 20 g, chance: 80 %}
  pupils: 26
  ages: [8, 10]
  teams: [Slate, Jade, Amber, Opal]
  adult_drills: "yes"
  visits: false
lamps: [{name: bay lamp, flux: 110 µmol/s, power: 44 W, length: 110 cm, width: 8 cm, above_lid: 30 cm, lit: ["06:00", "22:00"]}]
fertilisers:
  - {name: calcium nitrate, salt: calcium-nitrate-double-salt}
  - {name: school mix, label: {N: 6.5 %, P2O5: 8 %, K2O: 27 %}}
acids: [{name: pH down, acid: phosphoric, by_mass: 8.5 %, density: 1.05 kg/L}]
feed: {recipe: lettuce-modified-sonneveld, ec: 1.4 mS/cm, ph: 5.8}
tubs:
  - name: Heron
    crop: leaf lettuce
    plants: best
    method: aerated
    inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm, corner_radius: [4 cm, 3 cm]}
    outside: {size: [56 cm, 40 cm], height: 24 cm, empty_mass: 1.9 kg}
    lid:
      size: [54 cm, 38 cm]
      corner_radius: 4 cm
      thickness: 2 mm
      above_rim: −2 mm
      material: plastic
      keep_clear:
        - {rectangle: [0 cm, 15 cm, 3 cm, 23 cm], why: handle}
        - {circle: [27 cm, 36 cm, 1.5 cm], why: vent}
        - {polygon: [[1 cm, 1 cm], [2 cm, 1 cm], [1 cm, 2 cm]]}
        - {rib: [[0, 19 cm], [54 cm, 19 cm]], width: 8 mm}
      holes: [{at: [12 cm, 9 cm]}]
    cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}
    hole: 76 mm
    spacing: {between: 14.5 cm, edge: 6 cm, clear: 20 mm}
    layout: ruler
    litres_per_plant: 3 L
    air: {flow: 2 L/min, stones: 1, stone_height: 25 mm, tube: 6 mm, pump: above water}
    fill_depth: 16 cm
    max_fill: 25 L
    harvest_mass: 100 g
    daily_topup: 0.8 L
  - name: Otter
    growing: [{crop: basil, plants: 3}, {crop: pak choi, plants: 3}]
    plants: 6
    round: {top: 40 cm, base: 36 cm, height: 25 cm}
    lid: {diameter: 42 cm}
    cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}
  - name: Wren 2-b
    poured: [{volume: 5 L, depth: 4.1 cm}, {volume: 10 L, depth: 8 cm}]
    lid: {outline: [[0, 0], [40 cm, 0], [40 cm, 30 cm], [0, 30 cm]]}
    cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}
offers: [{name: kit on offer, price: 92.00, delivery: 6.50, per_crop: 9.00, sites: 15, pattern: {rows: 3, columns: 5, pitch: 11 cm}, volume: 17 L, includes: [pump, stone, cups]}]
prices: {tub: 12.00, saw: 14.00}
`

func TestTheWholeDocument(t *testing.T) {
	p := mustParse(t, whole)
	for path, same := range map[string]bool{
		"tap as an interval":           p.Tap.Alkalinity.Low == 80 && p.Tap.Alkalinity.High == 120 && !p.Tap.Unknown,
		"a tick in quotes":             p.School.AdultDrills == Tick{true, true},
		"a tick as false":              p.School.Visits == Tick{false, true},
		"a time of day in the morning": p.School.Arrive == Clock{510, true},
		"a time of day with pm":        p.School.Leave == Clock{930, true},
		"a day":                        p.School.Closed[1].Day.String() == "2027-03-08",
		"one crop":                     p.Tubs[0].Crop == "leaf lettuce" && p.Tubs[0].Plants.Best,
		"several crops":                p.Tubs[1].Growing[1] == Growing{"pak choi", Whole{3, true}} && p.Tubs[1].Plants.Number == 6,
		"two radii":                    p.Tubs[0].Inside.CornerRadius.Top.Value == 40 && p.Tubs[0].Inside.CornerRadius.Base.Value == 30,
		"a recessed lid":               p.Tubs[0].Lid.AboveRim.Value == -2,
		"a rib":                        p.Tubs[0].Lid.KeepClear[3].Rib[1][0].Value == 540 && p.Tubs[0].Lid.KeepClear[3].Width.Value == 8,
		"a fixed hole":                 p.Tubs[0].Lid.Holes[0].At[1].Value == 90,
		"litres as litres a day":       p.Tubs[0].DailyTopup.Value == 0.8,
		"a label":                      p.Fertilisers[1].Label["K2O"].Value == 0.27 && len(p.Fertilisers[1].Label) == 3,
		"a price":                      p.Prices["saw"].Value == 14,
		"a pattern":                    p.Offers[0].Pattern.Columns.Value == 5,
	} {
		if !same {
			t.Errorf("%s is not read", path)
		}
	}
}

// The same document, however an editor saves it.
func TestHowEditorsSave(t *testing.T) {
	for name, text := range map[string]string{
		"byte-order mark": "\ufeff" + whole,
		"CRLF":            strings.ReplaceAll(whole, "\n", "\r\n"),
		"no-break spaces": strings.NewReplacer(" cm", "\u00a0cm", " %", "\u202f%", "plants: ", "plants:\u00a0").Replace(whole),
		"no last newline": strings.TrimSuffix(whole, "\n"),
		"comments":        strings.ReplaceAll(whole, "\n", " # a comment: [with, signs]\n"),
	} {
		p := mustParse(t, text)
		if p.Tubs[0].Inside.Top[0].Value != 520 || p.Tubs[1].Name != "Otter" || p.Tubs[0].Lid.KeepClear[0].Why != "handle" {
			t.Errorf("%s: read as %+v", name, p.Tubs[0])
		}
	}
}

func TestWhereThingsStand(t *testing.T) {
	p := mustParse(t, whole)
	for _, tt := range []struct {
		path         string
		line, column int
	}{
		{"garden", 2, 9},
		{"place.co2", 6, 127},
		{"tap.chlorine", 10, 73},
		{"school.terms[0].to", 12, 34},
		{"tubs", 29, 1},
		{"tubs[0]", 30, 5},
		{"tubs[0].hole", 49, 11},
		{"tubs[0].lid", 36, 5},
		{"tubs[0].lid.keep_clear[0].rectangle[2]", 43, 37},
		{"tubs[1].hole", 58, 5},      // left out: the tub
		{"tubs[1].lid.size", 62, 10}, // left out: the lid
		{"tubs[7].hole", 29, 1},
		{"feed", 28, 7},
		{"", 1, 1},
		{"no such thing", 1, 1},
		{"tubs[x", 1, 1},
	} {
		if line, column := p.Where(tt.path); line != tt.line || column != tt.column {
			t.Errorf("%s stands at %d:%d, want %d:%d", tt.path, line, column, tt.line, tt.column)
		}
	}
	if text, ok := p.Typed("school.adult_drills"); text != "yes" || !ok {
		t.Errorf("adult_drills was typed as %q, %v", text, ok)
	}
	if _, ok := p.Typed("tubs[0].lid"); ok {
		t.Error("a group is no typed value")
	}
}
