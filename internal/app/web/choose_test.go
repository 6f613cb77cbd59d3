package web_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"rootbell/internal/garden/plan"
)

// offeredKit is a kit as one would copy it from its box, in each unit system.
var offeredKit = map[string]url.Values{
	"metric": {
		"units": {"metric"}, "kit.name": {"kit on offer"}, "kit.price": {"92"}, "kit.delivery": {"6.50"}, "kit.per_crop": {"9"}, "kit.volume": {"17"}, "kit.sites": {"15"},
		"kit.pattern.rows": {"3"}, "kit.pattern.columns": {"5"}, "kit.pattern.pitch": {"11"}, "kit.includes": {"pump, stone, cups"},
	},
	"us": {
		"units": {"us"}, "kit.name": {"kit on offer"}, "kit.price": {"92"}, "kit.delivery": {"6.50"}, "kit.per_crop": {"9"}, "kit.volume": {"4.5"}, "kit.sites": {"15"},
		"kit.pattern.rows": {"3"}, "kit.pattern.columns": {"5"}, "kit.pattern.pitch": {"4 1/4"}, "kit.includes": {"pump, stone, cups"},
	},
}

// offeredGarden goes the way of who was offered a kit and has no garden yet.
func (o *opened) offeredGarden(units string) (id, body string) {
	o.Helper()
	body, at := o.post("/offered", offeredKit[units], http.StatusOK)
	id, said, ok := strings.Cut(strings.TrimPrefix(at, "/g/"), "/choose")
	if !ok || said != "?said=offered" {
		o.Fatalf("the offer led to %s", at)
	}
	return id, body
}

func TestAKitOnOfferIsDecidedOnWithoutATub(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		t.Run(units, func(t *testing.T) {
			o := open(t)
			start, _ := o.get("/", http.StatusOK)
			wants(t, start, "We have been offered a kit", `href="/offered"`)
			form, _ := o.get("/offered", http.StatusOK)
			wants(t, form, "Set it beside building", `name="kit.volume"`)
			id, body := o.offeredGarden(units)
			wants(t, body, "Kit on offer: plant ", " of its 15 holes.", "Use holes ", "Cap the others", "check valve", "Not possible yet", "budget.xlsx", "permission.pdf", `<svg`, "125.50")
			if got := o.value(id, "offers[0].includes[1]"); got != "stone" {
				t.Errorf("the second thing that comes with it is %q", got)
			}
			for _, name := range []string{"decision.pdf", "budget.pdf", "budget.csv", "budget.xlsx", "permission.pdf", "caretaker-tag.pdf", "parents-letter.pdf"} {
				_, header := o.get("/g/"+id+"/papers/"+name, http.StatusOK)
				if kind := header.Get("Content-Type"); strings.Contains(kind, "html") || kind == "application/octet-stream" {
					t.Errorf("%s comes as %s", name, kind)
				}
				page, _ := o.get("/g/"+id+"/papers/"+name+"/page", http.StatusOK)
				o.wellMade(name, page)
			}
			one, _ := o.get("/g/"+id+"/working/choose.offer_1.total", http.StatusOK)
			wants(t, one, "125.50")
			all, _ := o.get("/g/"+id+"/working?of=choose", http.StatusOK)
			wants(t, all, "Buy or build", "plants the water feeds")
		})
	}
}

func TestWhatIsWrongInAnOfferIsSaidAtItsField(t *testing.T) {
	o := open(t)
	own := o.beginGarden("metric")
	for _, c := range []struct{ name, field, typed, says, at string }{
		{"no name", "kit.name", "", "has no name", "kit-name"},
		{"a mass in place of water", "kit.volume", "5 kg", "kg", "kit-volume"},
		{"words in place of a price", "kit.price", "cheap", "cheap", "kit-price"},
		{"no holes at all", "kit.sites", "0", "0", "kit-sites"},
		{"half a pattern", "kit.pattern.pitch", "", "belong together", "kit-pattern-rows"},
		{"a meter that is none", "kit.meters", "pH, radio", "radio", "kit-meters"},
	} {
		t.Run(c.name, func(t *testing.T) {
			posted := url.Values{}
			for k, v := range offeredKit["metric"] {
				posted[k] = v
			}
			posted.Set(c.field, c.typed)
			body, _ := o.post("/offered", posted, http.StatusUnprocessableEntity)
			wants(t, body, "Not done yet", c.says, `id="f-`+c.at+`-err"`, `value="pump, stone, cups"`)
			posted.Set("base", "1")
			posted.Set("do", "offer")
			body, _ = o.post("/g/"+own+"/choose", posted, http.StatusUnprocessableEntity)
			wants(t, body, "Not saved yet", c.says, `id="f-`+c.at+`-err"`)
		})
	}
	if plan.Items([]byte(o.text(own)), "offers") != 0 {
		t.Error("half an offer was saved")
	}
}

func TestAnOfferIsAddedChangedAndTakenOut(t *testing.T) {
	o := open(t)
	id := o.beginGarden("us")
	body, _ := o.get("/g/"+id+"/choose", http.StatusOK)
	wants(t, body, "No offer is in the plan yet", "We have been offered a kit")
	posted := filled(t, body)
	for k, v := range offeredKit["us"] {
		if strings.HasPrefix(k, "kit.") {
			posted[k] = v
		}
	}
	posted.Set("do", "offer")
	posted.Set("school.adult_drills", "yes")
	body, at := o.post("/g/"+id+"/choose", posted, http.StatusOK)
	if !strings.Contains(at, "said=saved") {
		t.Fatal(at)
	}
	wants(t, body, "Kit on offer: plant ", " of its 15 holes.")
	posted = filled(t, body)
	posted.Set("offers[0].includes", "pump, stone, cups, check valve")
	posted.Set("offers[0].volume", "9")
	posted.Set("offers[0].past", "unknown")
	posted.Set("prices.electricity", "0.25")
	posted.Set("prices.cap", "0.40")
	posted.Set("school.site.socket", "yes")
	posted.Set("school.crops_planned", "5")
	posted.Set("currency", "USD")
	body, _ = o.post("/g/"+id+"/choose", posted, http.StatusOK)
	for path, want := range map[string]string{
		"offers[0].includes[3]": "check valve", "offers[0].volume": "9 gal", "offers[0].past": "unknown", "prices.electricity": "0.25", "prices.cap": "0.40",
		"school.site.socket": "yes", "school.crops_planned": "5", "currency": "USD",
	} {
		if got := o.value(id, path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
	wants(t, body, "5 crops", "not for food", "In USD")
	if strings.Contains(body, "It lacks air tube, check valve") {
		t.Error("the check valve is still lacking")
	}
	posted = filled(t, body)
	posted.Set("do", "without-0")
	o.post("/g/"+id+"/choose", posted, http.StatusOK)
	if plan.Items([]byte(o.text(id)), "offers") != 0 {
		t.Errorf("the offer is still there:\n%s", o.text(id))
	}
}

func TestADecisionIsWorkedOutWhileOneTypes(t *testing.T) {
	o := open(t)
	id, body := o.offeredGarden("metric")
	before := o.text(id)
	posted := filled(t, body)
	posted.Set("offers[0].volume", "24")
	answer, _ := o.post("/g/"+id+"/choose/try?effort=full", posted, http.StatusOK)
	wants(t, answer, `"choose-answer"`, `"choose-deep"`, "plant 8 of its 15 holes", "Not in the plan yet")
	posted.Set("offers[0].sites", "14")
	answer, _ = o.post("/g/"+id+"/choose/try?effort=full", posted, http.StatusOK)
	wants(t, answer, "3 rows of 5 make 15")
	posted.Set("offers[0].price", "a lot")
	answer, _ = o.post("/g/"+id+"/choose/try?effort=full", posted, http.StatusOK)
	wants(t, answer, `"Address":"#f-offers-0-price"`)
	if o.text(id) != before {
		t.Error("trying saved something")
	}
	o.post("/g/example-saltbrook/choose", posted, http.StatusForbidden)
}
