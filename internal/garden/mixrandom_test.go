package garden_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// drawnPlan is any tap, shelf and feed, as a teacher may type them.
func drawnPlan(t *rapid.T) string {
	pick := func(what string, of ...string) string { return rapid.SampledFrom(of).Draw(t, what) }
	lines := []string{
		"rootbell: 1", "garden: A", "units: " + pick("units", "metric", "us"),
		"tools: {" + pick("scale", "scale_step: 0.1 g, ", "scale_step: 1 g, ", "scale_step: 0.01 g, ", "") + "ec: meter, ec_scale: " + pick("meter", "mS/cm", "ppm 500", "ppm 640", "ppm 700") + "}",
		"tap: " + pick("tap", "unknown", "{}", "{ph: 7 to 8}", "{ec: 0.5 mS/cm}",
			"{alkalinity: 40 mg/L, ph: 7, chlorine: 0.2 to 1 mg/L}", "{alkalinity: 80 to 160 mg/L}",
			"{alkalinity: 290 mg/L, ph: 7.3, calcium: 110 mg/L, sodium: 70 mg/L, chloramine: 2 mg/L}", "{alkalinity: 120 mg/L, ph: 5, iron: 0.4 mg/L, boron: 1 mg/L}"),
		"blend: " + pick("blend", "none", "rain", "deionised"),
		"acids: " + pick("acid", "[]", "[{name: a, acid: phosphoric, by_mass: 8.5 %, density: 1.05 kg/L}]", "[{name: b, acid: citric, by_mass: 100 %, solid: yes}]",
			"[{name: c, acid: sulfuric, by_mass: 30 %, density: 1.22 kg/L}]", "[{name: d, acid: nitric, by_mass: 38 %}]"),
		"bases: " + pick("base", "[]", "[{name: e, base: potassium bicarbonate, by_mass: 100 %, solid: yes}]"),
		"feed: {" + pick("feed", "", "ec: 1.4 mS/cm", "ec: 3 mS/cm, ph: 6.2", "recipe: steiner", "target: {N: 100 mg/L, K: 120 mg/L, Ca: 80 mg/L}", "recipe: knop, ec: 0.9 mS/cm") + "}",
	}
	if rapid.Bool().Draw(t, "stocks") {
		lines = append(lines, fmt.Sprintf("stocks: {volume: 1 L, strength: %d}", rapid.IntRange(2, 500).Draw(t, "strength")))
	}
	lines = append(lines, "fertilisers:")
	dose := ""
	if rapid.Bool().Draw(t, "doses") {
		dose = ", dose: " + pick("dose", "1 g/L", "0.3 g/L", "2 g/gal")
	}
	for i := range rapid.IntRange(1, 5).Draw(t, "shelf") {
		lines = append(lines, fmt.Sprintf("  - {name: %s, %s%s}", pick("name", "a", "b", "c"), pick(fmt.Sprint("content ", i),
			"salt: calcium-nitrate-double-salt", "salt: KNO3", "salt: KH2PO4", "salt: MgSO4.7H2O", "salt: boric-acid", "salt: CuSO4.5H2O", "salt: sodium-molybdate", "salt: soap",
			"label: {N: 6.5 %, P2O5: 8 %, K2O: 27 %, Mg: 3 %, S: 4 %, Fe: 0.3 %, Mn: 0.06 %, B: 0.04 %}", "label: {N: 20 %, P2O5: 20 %, K2O: 20 %}, urea_n: 10 %", "label: {Si: 10 %}"), dose))
	}
	return strings.Join(lines, "\n") + `
tubs:
  - inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm}
    lid: {size: [54 cm, 38 cm]}
    cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}
    hole: 76 mm
`
}

// Whatever stands on the shelf and comes out of the tap: nothing breaks, every
// number can be followed with a pencil, every finding leads to its field and
// says what to do, what is weighed is what the class can weigh, and no acid is
// dosed on a guess.
func TestAnyMixIsSafe(t *testing.T) {
	memory := &counting{kept: map[string]any{}}
	drawn, mixed := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		drawn++
		body := drawnPlan(t)
		p, problems := plan.Parse("drawn", []byte(body))
		if len(problems) > 0 {
			t.Fatalf("%v\n%s", problems, body)
		}
		a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Memory: memory, Stages: garden.StageMix})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range a.Findings {
			if f.Field == "" || f.Line == 0 || f.Hint == "" || f.Text == "" {
				t.Errorf("%+v\n%s", f, body)
			}
		}
		keys := map[string]bool{}
		for _, n := range a.Numbers {
			if keys[n.Key] {
				t.Errorf("%s stands twice", n.Key)
			}
			keys[n.Key] = true
			if strings.Contains(n.Key, ".mix.") {
				walked(t, n)
			}
		}
		m := a.Tubs[0].Mix
		if m == nil {
			return
		}
		mixed++
		soundMix(t, p, m)
		if t.Failed() {
			t.Log(body)
		}
	})
	if inFull(drawn) && mixed*5 < drawn {
		t.Errorf("only %d of %d plans could be mixed: the test draws too little", mixed, drawn)
	}
}

func soundMix(t *rapid.T, p *plan.Plan, m *garden.Mix) {
	t.Helper()
	step := 1.0
	if p.Tools.ScaleStep.Set() {
		step = 1000 * float64(p.Tools.ScaleStep.Value)
	}
	for _, w := range m.Weigh {
		if w.Millilitres != nil || w.Spoons != nil {
			if math.Abs(math.Mod(2**w.Millilitres+0.5, 1)-0.5) > 1e-6 {
				t.Errorf("%s: %v mL from a syringe of half millilitres", w.Name, *w.Millilitres)
			}
			continue
		}
		if steps := w.RoundedGrams / step; math.Abs(steps-math.Round(steps)) > 1e-6 || math.Abs(w.RoundedGrams-w.Grams) > 2.001*step {
			t.Errorf("%s: %v g for %v on a scale of %v g", w.Name, w.RoundedGrams, w.Grams, step)
		}
	}
	told := p.Tap.Alkalinity.Set()
	if a := m.Acid; a != nil && (!told || m.Water.AlkalinityMgL < 60) && (a.DoseTodayML != nil || a.DoseTodayG != nil || a.MLOpen != nil || a.PlantedML != nil) {
		t.Errorf("acid on a guess: %+v", a)
	}
	if a := m.Acid; a != nil && a.PlantedPH != nil && *a.PlantedPH < 5.19 && (a.PlantedML != nil && *a.PlantedML > 0.01) {
		t.Errorf("a dose that takes a planted tub to pH %v", *a.PlantedPH)
	}
	// Three times what published recipes hold, and more only for a stronger feed;
	// the tap drawn here brings up to 1 mg/L of boron itself.
	for symbol, most := range map[string]float64{"Mn": 0.8, "B": 2.5, "Zn": 0.5, "Cu": 0.15, "Mo": 0.15} {
		if m.Way == garden.ByRecipe && m.ElementsMgL[symbol] > most*math.Max(1, *m.EC/1.4) {
			t.Errorf("%v mg/L of %s", m.ElementsMgL[symbol], symbol)
		}
	}
	if m.Band != nil && !(m.Band[0] <= *m.EC && *m.EC <= m.Band[1]) {
		t.Errorf("EC %v outside %v", *m.EC, *m.Band)
	}
	for i, s := range m.Steps {
		if s.Do == "" || s.When == "" || s.Who == "" || i > 0 && s.When == garden.DayBefore && m.Steps[i-1].When == garden.OnTheDay {
			t.Errorf("step %d: %+v", i, s)
		}
	}
}
