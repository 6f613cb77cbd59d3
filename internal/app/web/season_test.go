package web_test

import (
	"net/http"
	"strings"
	"testing"
)

func TestASeasonIsShownForEachExample(t *testing.T) {
	o := open(t)
	for _, c := range []struct{ id, tub, other string }{{"example-fernhollow", "Heron", "Otter"}, {"example-saltbrook", "Tern", "Plover"}} {
		body, _ := o.get("/g/"+c.id+"/season", http.StatusOK)
		wants(t, body, "<b>"+c.tub+"</b>", c.other, "Days when nobody comes", "Level", "Mass of its plants", "EC at 25 °C", "Oxygen in the water", "All days", `id="term-desk"`)
		_, answer, _ := strings.Cut(body, `<p class="answer">`)
		answer, _, _ = strings.Cut(answer, "</p>")
		wants(t, answer, c.tub, "ready by the meal on", " cases")
		if strings.Contains(body, "Put it in the plan") {
			t.Errorf("%s can be saved", c.id)
		}
		body, _ = o.get("/g/"+c.id+"/season?tub="+c.other, http.StatusOK)
		wants(t, body, "<b>"+c.other+"</b>")
	}
}

// Once a season was worked out, the strip of every page shows it; none is
// worked out for another page.
func TestTheStripOfOtherPagesLendsTheSeason(t *testing.T) {
	o := open(t)
	id := o.copied("example-fernhollow")
	before, _ := o.get("/g/"+id+"/build", http.StatusOK)
	o.get("/g/"+id+"/season", http.StatusOK)
	after, _ := o.get("/g/"+id+"/build", http.StatusOK)
	if strings.Contains(before, "into the tub") || !strings.Contains(after, "into the tub") {
		t.Errorf("the strip has the season before %v, after %v", strings.Contains(before, "into the tub"), strings.Contains(after, "into the tub"))
	}
}

func TestWhatMovesASeasonIsTyped(t *testing.T) {
	o := open(t)
	id := o.copied("example-fernhollow")
	body, _ := o.get("/g/"+id+"/season", http.StatusOK)
	posted := filled(t, body)
	for path, typed := range map[string]string{
		"school.meal.eaters": "20", "school.meal.chance": "90", "lamps[0].lit[1]": "20:00", "tubs[0].plants": "6", "tubs[0].sow": "2027-01-13",
		"tubs[0].seed.germination": "85", "school.visits": "yes", "tubs[0].fill_depth": "16",
	} {
		if !posted.Has(path) {
			t.Fatalf("no field for %s", path)
		}
		posted.Set(path, typed)
	}
	body, at := o.post("/g/"+id+"/season", posted, http.StatusOK)
	if !strings.Contains(at, "/season") || !strings.Contains(at, "said=saved") {
		t.Fatalf("saved to %s", at)
	}
	for path, want := range map[string]string{
		"school.meal.eaters": "20", "school.meal.chance": "90 %", "lamps[0].lit[1]": "20:00", "tubs[0].plants": "6", "tubs[0].sow": "2027-01-13",
		"tubs[0].seed.germination": "85 %", "school.visits": "yes", "tubs[0].fill_depth": "16 cm",
	} {
		if got := o.value(id, path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
	wants(t, body, `value="20:00"`)
}

func TestWhatIsWrongInASeasonIsSaidAtItsField(t *testing.T) {
	o := open(t)
	id := o.copied("example-fernhollow")
	page, _ := o.get("/g/"+id+"/season", http.StatusOK)
	for _, c := range []struct{ field, typed, says string }{
		{"school.meal.eaters", "all of them", "all of them"},
		{"school.meal.chance", "120", "120"},
		{"lamps[0].lit[0]", "6 o'clock", "6 o"},
		{"tubs[0].plants", "many", "many"},
		{"tubs[0].sow", "soon", "soon"},
	} {
		posted := filled(t, page)
		posted.Set(c.field, c.typed)
		body, _ := o.post("/g/"+id+"/season", posted, http.StatusUnprocessableEntity)
		wants(t, body, "Not saved yet", "-err", c.says)
	}
}

func TestASeasonIsWorkedOutWhileOneTypes(t *testing.T) {
	o := open(t)
	id := o.copied("example-fernhollow")
	before := o.text(id)
	body, _ := o.get("/g/"+id+"/season", http.StatusOK)
	posted := filled(t, body)
	posted.Set("lamps[0].lit[1]", "16:00")
	quick, _ := o.post("/g/"+id+"/season/try?effort=quick", posted, http.StatusOK)
	wants(t, quick, `"season-answer"`, `"season-charts"`, `"term-desk"`, `"full":false`, "From few runs")
	full, _ := o.post("/g/"+id+"/season/try?effort=full", posted, http.StatusOK)
	wants(t, full, `"full":true`, "Not in the plan yet")
	posted.Set("school.meal.portion", "two spoons")
	wrong, _ := o.post("/g/"+id+"/season/try?effort=quick", posted, http.StatusOK)
	wants(t, wrong, `"Address":"#f-school-meal-portion"`)
	if o.text(id) != before {
		t.Error("trying saved something")
	}
	o.post("/g/example-fernhollow/season", posted, http.StatusForbidden)
}

// A garden without a term has no season, and says what is in the way.
func TestASeasonNeedsATerm(t *testing.T) {
	o := open(t)
	id := o.beginGarden("us")
	body, _ := o.get("/g/"+id+"/season", http.StatusOK)
	wants(t, body, "No school calendar yet")
	if strings.Contains(body, "<svg class=\"fig chart") || strings.Contains(body, "Days when nobody comes") {
		t.Error("charts without a season")
	}
}
