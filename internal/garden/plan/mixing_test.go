package plan

import "testing"

// mixing has every key that only mixing needs, once.
const mixing = `rootbell: 1
garden: A
place: {air_temperature: 21 °C, water_temperature: 20 °C, water_temperature_closed: 15 °C, coldest: 12 °C}
tools: {scale_step: 0.1 g, ec: meter, ec_scale: ppm 500}
tap: {alkalinity: 80 to 120 mg/L, phosphate_p: 0.3 mg/L, iron: 0.05 mg/L, boron: 0.02 mg/L, chloramine: 0 to 0.5 mg/L, softened: no}
fertilisers:
  - {name: Epsom salt, salt: MgSO4.7H2O}
  - {name: grow, label: {N: 3 %, P2O5: 1 %, K2O: 4 %}, nitrate_n: 2.6 %, ammonium_n: 0.4 %, urea_n: 0 %, form: liquid, density: 1.1 kg/L, dose: 5 mL per 10 L, part: A}
acids:
  - {name: pH down, acid: phosphoric, by_mass: 8.5 %, density: 1.05 kg/L}
  - {name: crystals, acid: citric monohydrate, by_mass: 100 %, solid: yes}
bases: [{name: pH up, base: potassium bicarbonate, by_mass: 100 %, solid: yes}]
blend: rain
stocks: {volume: 1 L, strength: 100}
spoons: [{name: small spoon, of: grow, mass: 4.2 g}]
bleach: {chlorine: 4.5 %}
tubs:
  - inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm}
    lid: {size: [54 cm, 38 cm]}
    cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}
    feed: {target: {N: 120 mg/L, NH4-N: 10 mg/L, K: 150 mg/L}, ec: 1.2 mS/cm}
`

func TestKeysOfMixing(t *testing.T) {
	p := mustParse(t, mixing)
	for path, same := range map[string]bool{
		"a formula":                 p.Fertilisers[0].Salt == "MgSO4.7H2O",
		"a dose":                    p.Fertilisers[1].Dose == Dose{MLPerL: 0.5, Text: "5 mL per 10 L"} && p.Fertilisers[1].Part == "A",
		"a form of nitrogen":        p.Fertilisers[1].NitrateN.Value == 0.026 && p.Fertilisers[1].UreaN.Set() && p.Fertilisers[1].Form == "liquid",
		"a solid":                   p.Acids[1].Solid.Value && !p.Acids[0].Solid.Given && p.Acids[1].Acid == "citric monohydrate",
		"a base":                    p.Bases[0].Base == "potassium bicarbonate",
		"what there is to blend":    p.Blend == "rain",
		"stocks":                    p.Stocks.Volume.Value == 1 && p.Stocks.Strength.Value == 100,
		"a spoon":                   p.Spoons[0].Mass.Value == 0.0042 && p.Spoons[0].Of == "grow",
		"bleach":                    p.Bleach.Chlorine.Value == 0.045,
		"a target":                  p.Tubs[0].Feed.Target["NH4-N"].Value == 10 && len(p.Tubs[0].Feed.Target) == 3,
		"a cold store":              p.Place.Coldest.Value == 12 && p.Place.WaterTemperature.Value == 20 && p.Place.WaterTemperatureClosed.Value == 15,
		"a scale of ppm":            p.Tools.ECScale == "ppm 500",
		"chloramine as an interval": p.Tap.Chloramine.High == 0.5 && p.Tap.PhosphateP.Low == 0.3,
		"not softened":              p.Tap.Softened == Tick{Given: true},
	} {
		if !same {
			t.Errorf("%s is not read", path)
		}
	}
	if q := mustParse(t, least); q.Stocks != nil || q.Bleach != nil || q.Tubs[0].Feed != nil || q.Blend != "" {
		t.Errorf("what was left out seems given: %+v", q)
	}
}

// A form of nitrogen, a target and a dose can be typed in a page, where they
// stand and where they do not stand yet.
func TestMixingIsEdited(t *testing.T) {
	text := []byte(mixing)
	for _, e := range []struct{ path, typed string }{
		{"fertilisers[1].dose", "2 mL/L"},
		{"tubs[0].feed.target.Mg", "24 mg/L"},
		{"tap.iron", "0.1 to 0.3 mg/L"},
		{"bases[0].by_mass", "98 %"},
		{"stocks.strength", "50"},
		{"fertilisers[0].dose", "0.2 g/L"},
		{"place.coldest", ""},
	} {
		var err error
		if text, err = Edit(text, e.path, e.typed); err != nil {
			t.Fatalf("%s: %v", e.path, err)
		}
	}
	p := mustParse(t, string(text))
	if p.Fertilisers[1].Dose.MLPerL != 2 || p.Tubs[0].Feed.Target["Mg"].Value != 24 || p.Tap.Iron.High != 0.3 || p.Fertilisers[0].Dose.GPerL != 0.2 || p.Place.Coldest.Set() || p.Stocks.Strength.Value != 50 {
		t.Errorf("read as %+v", p)
	}
	if _, err := Edit(text, "tubs[0].feed.target.Xx", "1 mg/L"); err == nil {
		t.Error("a target that no nutrient has is taken")
	}
}
