package web_test

import (
	"net/http"
	"strings"
	"testing"
)

func TestAClassIsTyped(t *testing.T) {
	o := open(t)
	id := o.copied("example-fernhollow")
	body, _ := o.get("/g/"+id+"/class", http.StatusOK)
	wants(t, body, "Slate", "How fair it is", "The whole rota", "nobody comes", "Ten minutes at the tub", "rota.pdf", "report.pdf", "/lessons")
	posted := filled(t, body)
	for name, typed := range map[string]string{
		"school.pupils": "20", "class.ages": "8 to 10", "class.teams": "", "class.job.0.name": "look at the plants", "class.job.0.people": "2",
		"class.wanted": "3 and 7; 4-9", "class.never": "1 & 2",
	} {
		posted.Set(name, typed)
	}
	body, at := o.post("/g/"+id+"/class", posted, http.StatusOK)
	if !strings.Contains(at, "said=saved") {
		t.Fatalf("not saved: %s\n%s", at, head(body))
	}
	text := o.text(id)
	wants(t, text, "pupils: 20", "ages: [8, 10]", "jobs: [{name: look at the plants, people: 2}]", "[3, 7]", "[4, 9]", "[1, 2]")
	if strings.Contains(text, "teams:") {
		t.Errorf("the teams are still there:\n%s", text)
	}
	wants(t, body, "take &#39;look at the plants&#39;", `value="8, 10"`, `value="3 and 7, 4 and 9"`)
	posted = filled(t, body)
	posted.Set("class.job.1.name", "top up")
	posted.Set("class.job.1.from", "2027-02-01")
	posted.Set("class.away.week", "2027-01-13")
	posted.Set("class.away.number", "5")
	body, _ = o.post("/g/"+id+"/class", posted, http.StatusOK)
	wants(t, o.text(id), "{name: top up, from: 2027-02-01}", "absent: [{week: 2027-01-13, number: 5}]")
	wants(t, body, "Number 5, week of 11 Jan")
	posted = filled(t, body)
	posted.Set("do", "there-0")
	posted.Set("class.job.0.name", "")
	posted.Set("class.wanted", "")
	o.post("/g/"+id+"/class", posted, http.StatusOK)
	if text := o.text(id); strings.Contains(text, "number: 5") || strings.Contains(text, "look at the plants") || strings.Contains(text, "[3, 7]") || !strings.Contains(text, "top up") {
		t.Errorf("what was taken out is still there:\n%s", text)
	}
}

// A name where a number belongs is refused before anything is stored; what was
// typed stays in the form.
func TestNamesWhereNumbersBelongAreNotStored(t *testing.T) {
	for name, typed := range map[string]string{
		"class.wanted": "Robin and 7", "class.never": "3 and Robin", "class.away.number": "Robin", "class.ages": "Robin", "school.pupils": "Robin", "class.job.0.people": "Robin",
	} {
		o := open(t)
		id := o.copied("example-fernhollow")
		before := o.text(id)
		body, _ := o.get("/g/"+id+"/class", http.StatusOK)
		posted := filled(t, body)
		posted.Set(name, typed)
		if name == "class.away.number" {
			posted.Set("class.away.week", "2027-01-13")
		}
		if name == "class.job.0.people" {
			posted.Set("class.job.0.name", "look")
		}
		body, _ = o.post("/g/"+id+"/class", posted, http.StatusUnprocessableEntity)
		wants(t, body, "Not saved yet", `value="`+typed+`"`, `href="#f-`, `aria-invalid="true"`)
		if !strings.Contains(body, "number belongs") && !strings.Contains(body, "not a whole number") {
			t.Errorf("%s: it is not said what is wrong:\n%s", name, head(body))
		}
		if o.text(id) != before {
			t.Errorf("%s: something was stored", name)
		}
		history, _ := o.get("/g/"+id+"/history", http.StatusOK)
		if strings.Contains(history, "Robin") || strings.Contains(o.text(id), "Robin") {
			t.Errorf("%s: the name was stored", name)
		}
	}
}

// What stands in the way of a rota is said on the page, and stops no lid.
func TestWhatStandsInTheWayOfARotaIsSaid(t *testing.T) {
	for name, c := range map[string]struct {
		fields map[string]string
		says   []string
	}{
		"one pupil":                  {map[string]string{"school.pupils": "1", "class.teams": ""}, []string{"number 1 looks, measures and writes down"}},
		"more jobs than pupils":      {map[string]string{"school.pupils": "1", "class.teams": "", "class.job.0.name": "look", "class.job.0.people": "2"}, []string{"There is no rota yet", "there are 1", "Stop"}},
		"impossible pairs":           {map[string]string{"school.pupils": "2", "class.teams": "", "class.job.0.name": "look", "class.job.0.people": "2", "class.never": "1 and 2"}, []string{"when this wish is given up: 1 and 2"}},
		"an adult's duty":            {map[string]string{"class.job.0.name": "pour the acid"}, []string{"is for an adult", "There is no rota yet"}},
		"a pair of pupils for teams": {map[string]string{"class.never": "3 and 7"}, []string{"no number 7", "Slate, Jade, Amber, Opal"}},
	} {
		o := open(t)
		id := o.copied("example-fernhollow")
		body, _ := o.get("/g/"+id+"/class", http.StatusOK)
		posted := filled(t, body)
		for field, typed := range c.fields {
			posted.Set(field, typed)
		}
		body, _ = o.post("/g/"+id+"/class", posted, http.StatusOK)
		for _, w := range c.says {
			if !strings.Contains(strings.ToLower(body), strings.ToLower(w)) {
				t.Errorf("%s: no %q in\n%s", name, w, body)
			}
		}
		if build, _ := o.get("/g/"+id+"/build", http.StatusOK); strings.Contains(build, "do not drill") {
			t.Errorf("%s: nobody may drill because of a rota", name)
		}
	}
}

// The papers of the class are on the list, as files and as pages.
func TestThePapersOfTheClass(t *testing.T) {
	o := open(t)
	body, _ := o.get("/g/example-saltbrook/papers", http.StatusOK)
	wants(t, body, "For the class", "job-cards.pdf", "hand-over.pdf")
	file, _ := o.get("/g/example-saltbrook/papers/adopt-a-hole.pdf", http.StatusOK)
	if !strings.HasPrefix(file, "%PDF-") {
		t.Error("no slips")
	}
	page, _ := o.get("/g/example-saltbrook/papers/adopt-a-hole.pdf/page", http.StatusOK)
	wants(t, page, "hole 1", "<svg")
}
