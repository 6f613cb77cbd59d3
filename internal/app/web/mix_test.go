package web_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"rootbell/internal/garden/plan"
)

// mixForm is a form of the page Mix that began from a revision, with changes.
func mixForm(base string, changes ...string) url.Values {
	return form(base, changes...)
}

// One bottle and water of which nobody knows anything: pour this, expect that,
// and no acid.
func TestOneBottleAndUnknownWater(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		t.Run(units, func(t *testing.T) {
			o := open(t)
			id := o.beginGarden(units)
			body, _ := o.get("/g/"+id+"/mix", http.StatusOK)
			wants(t, body, "Nothing is on the shelf yet", "Put it on the shelf")
			body, at := o.post("/g/"+id+"/mix", mixForm("1", "do", "shelf", "bottle.name", "grow", "bottle.label.N", "5", "bottle.label.P2O5", "3", "bottle.label.K2O", "7", "bottle.density", "1.15 kg/L", "bottle.dose", "4 mL/L"), http.StatusOK)
			if !strings.Contains(at, "said=saved") {
				t.Fatalf("not saved: %s", at)
			}
			wants(t, o.text(id), "{name: grow, label: {N: 5 %, P2O5: 3 %, K2O: 7 %}, density: 1.15 kg/L, dose: 4 mL/L}")
			wants(t, body, "<strong>Pour ", "of grow</strong>", "Expect EC ", "In this order", "No acid is given", "mixing-card.pdf", "grow, 4 mL/L")
			file, _ := o.get("/g/"+id+"/papers/mixing-card.pdf", http.StatusOK)
			if !strings.HasPrefix(file, "%PDF-") {
				t.Error("no mixing card")
			}
		})
	}
}

func TestTheTapAndASecondBagAreTyped(t *testing.T) {
	o := open(t)
	id := o.copied("example-saltbrook")
	body, _ := o.get("/g/"+id+"/mix", http.StatusOK)
	posted := filled(t, body)
	posted.Set("tap.alkalinity", "80 to 120")
	posted.Set("tools.ec_scale", "ppm 500")
	posted.Set("fertilisers[0].dose", "")
	posted.Set("fertilisers[1].dose", "")
	posted.Set("acids[0].name", "pH down")
	posted.Set("acids[0].acid", "phosphoric")
	posted.Set("acids[0].by_mass", "8.5")
	posted.Set("acids[0].density", "1.05 kg/L")
	body, _ = o.post("/g/"+id+"/mix", posted, http.StatusOK)
	for path, want := range map[string]string{"tap.alkalinity": "80 to 120 mg/L", "acids[0].by_mass": "8.5 %", "tools.ec_scale": "ppm 500", "fertilisers[0].dose": ""} {
		if got := o.value(id, path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
	wants(t, body, "ppm", "of pH down", "An adult with goggles and gloves", "acid-card.pdf", "Each nutrient, in mg/L", `id="mix-titration"`)
	posted = filled(t, body)
	posted.Set("do", "noacid")
	body, _ = o.post("/g/"+id+"/mix", posted, http.StatusOK)
	wants(t, body, "No acid is given")
	posted = filled(t, body)
	posted.Set("do", "off-0")
	o.post("/g/"+id+"/mix", posted, http.StatusOK)
	if text := o.text(id); plan.Items([]byte(text), "acids") != 0 || plan.Items([]byte(text), "fertilisers") != 1 || !strings.Contains(text, "club mix") {
		t.Errorf("acid and first bag are still there:\n%s", text)
	}
}

func TestWhatIsWrongInAMixIsSaidAtItsField(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	for _, c := range []struct{ name, field, typed, says string }{
		{"no name", "bottle.name", "", "no name"},
		{"nothing in it", "bottle.label.N", "", "Nothing is told of what is in it"},
		{"a mass in place of a share", "bottle.label.N", "5 kg", "kg"},
		{"more than all", "bottle.label.N", "120", "120"},
		{"a dose that is none", "bottle.dose", "two spoons", "two spoons"},
	} {
		t.Run(c.name, func(t *testing.T) {
			posted := mixForm("1", "do", "shelf", "bottle.name", "grow")
			if c.field != "bottle.label.N" {
				posted.Set("bottle.label.N", "5")
			}
			posted.Set(c.field, c.typed)
			body, _ := o.post("/g/"+id+"/mix", posted, http.StatusUnprocessableEntity)
			wants(t, body, "Not saved yet", c.says, `id="f-`+strings.ReplaceAll(c.field, ".", "-")+`-err"`)
		})
	}
	if strings.Contains(o.text(id), "grow") {
		t.Error("half a bottle was saved")
	}
	body, _ := o.post("/g/"+id+"/mix", mixForm("1", "tap.alkalinity", "2000"), http.StatusUnprocessableEntity)
	wants(t, body, `id="f-tap-alkalinity-err"`, `value="2000"`)
}

func TestAMixIsWorkedOutWhileOneTypes(t *testing.T) {
	o := open(t)
	id := o.copied("example-saltbrook")
	before := o.text(id)
	body, _ := o.get("/g/"+id+"/mix", http.StatusOK)
	posted := filled(t, body)
	posted.Set("fertilisers[0].dose", "4 g/gal")
	answer, _ := o.post("/g/"+id+"/mix/try?effort=full", posted, http.StatusOK)
	wants(t, answer, `"mix-answer"`, `"mix-deep"`, `"full":true`, "Not in the plan yet")
	posted.Set("tap.ph", "20")
	answer, _ = o.post("/g/"+id+"/mix/try?effort=full", posted, http.StatusOK)
	wants(t, answer, `"Address":"#f-tap-ph"`)
	if o.text(id) != before {
		t.Error("trying saved something")
	}
	o.post("/g/example-saltbrook/mix", posted, http.StatusForbidden)
}
