package web_test

import (
	"context"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"rootbell/internal/garden/plan"
)

// text is the latest text of a garden.
func (o *opened) text(id string) string {
	o.Helper()
	rev, err := o.store.Revision(context.Background(), id, 0)
	if err != nil {
		o.Fatal(err)
	}
	return string(rev.Text)
}

// copied is a garden of one's own made of an example.
func (o *opened) copied(example string) string {
	o.Helper()
	_, at := o.post("/g/"+example+"/copy", nil, http.StatusOK)
	id, _, _ := strings.Cut(strings.TrimPrefix(at, "/g/"), "/build")
	return id
}

func (o *opened) value(id, path string) string {
	o.Helper()
	typed, _, _, _ := plan.Value([]byte(o.text(id)), path)
	return typed
}

// form is a form of the page Build that began from a revision, with changes.
func form(base string, changes ...string) url.Values {
	v := url.Values{"base": {base}, "tub": {"Tub-1"}, "do": {"save"}}
	for i := 0; i < len(changes); i += 2 {
		v.Set(changes[i], changes[i+1])
	}
	return v
}

func wants(t *testing.T, body string, parts ...string) {
	t.Helper()
	for _, part := range parts {
		if !strings.Contains(body, part) {
			t.Errorf("%q is not on the page", part)
		}
	}
}

func TestFromNothingToALidSheet(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		t.Run(units, func(t *testing.T) {
			o := open(t)
			id := o.beginGarden(units)
			body, _ := o.get("/g/"+id+"/build", http.StatusOK)
			wants(t, body, "plants</strong>", "lid-Tub-1.pdf", "The lid from above")
			sheet, header := o.get("/g/"+id+"/papers/lid-Tub-1.pdf", http.StatusOK)
			if !strings.HasPrefix(sheet, "%PDF-") || !strings.Contains(header.Get("Content-Disposition"), "lid-Tub-1.pdf") {
				t.Errorf("no lid sheet: %q, %q", head(sheet), header)
			}
		})
	}
}

func TestWhatIsMissingIsSaidAtItsField(t *testing.T) {
	o := open(t)
	posted := url.Values{}
	for key, v := range begun["metric"] {
		posted[key] = v
	}
	posted.Set("tubs[0].inside.top[1]", "")
	posted.Set("tubs[0].cup.rim", "8.6 kg")
	body, _ := o.post("/begin", posted, http.StatusUnprocessableEntity)
	wants(t, body, "B is empty", "H: kg is not a unit of length", `value="8.6 kg"`, `value="55"`, `aria-invalid="true"`)
	gardens, err := o.store.Gardens(context.Background())
	if err != nil || len(gardens) != 0 {
		t.Errorf("stored although something is missing: %v %v", gardens, err)
	}
}

func TestFieldsAndTextAreOneDocument(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	body, at := o.post("/g/"+id+"/build", form("1",
		"tubs[0].inside.height", "27.5", "shelf.width", "120", "shelf.depth", "45", "shelf.clear_height", "85", "shelf.rated_load", "80",
		"tubs[0].spacing.between", "7 in"), http.StatusOK)
	if !strings.Contains(at, "said=saved") {
		t.Fatalf("not saved: %s %s", at, head(body))
	}
	for path, want := range map[string]string{
		"tubs[0].inside.height": "27.5 cm", "shelf.rated_load": "80 kg", "tubs[0].spacing.between": "7 in", "tubs[0].inside.top[0]": "55 cm",
	} {
		if got := o.value(id, path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
	if !strings.Contains(o.text(id), "# Made from the measures typed on the first page") {
		t.Error("a comment was lost")
	}
	body, _ = o.get("/g/"+id+"/build", http.StatusOK)
	wants(t, body, `value="27.5"`, `value="7 in"`)

	text := strings.Replace(o.text(id), "27.5 cm", "28 cm", 1) + "# measured again\n"
	_, at = o.post("/g/"+id+"/text", url.Values{"base": {"2"}, "text": {strings.ReplaceAll(text, "\n", "\r\n")}}, http.StatusOK)
	if !strings.Contains(at, "said=saved") || o.text(id) != text {
		t.Errorf("the text was not saved as typed: %s", at)
	}
	body, _ = o.get("/g/"+id+"/build", http.StatusOK)
	wants(t, body, `value="28"`)
}

func TestAnEmptiedFieldTakesItsValueBack(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	o.post("/g/"+id+"/build", form("1", "tubs[0].spacing.edge", "8"), http.StatusOK)
	if got := o.value(id, "tubs[0].spacing.edge"); got != "8 cm" {
		t.Fatalf("edge is %q", got)
	}
	o.post("/g/"+id+"/build", form("2", "tubs[0].spacing.edge", ""), http.StatusOK)
	if plan.Has([]byte(o.text(id)), "tubs[0].spacing.edge") {
		t.Errorf("the edge is still there:\n%s", o.text(id))
	}
}

func TestAProblemKeepsWhatWasTyped(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	body, _ := o.post("/g/"+id+"/build", form("1", "tubs[0].inside.height", "5 kg", "tubs[0].lid.size[0]", "58.5"), http.StatusUnprocessableEntity)
	wants(t, body, "kg is not a unit of length", `value="5 kg"`, `value="58.5"`)
	if o.value(id, "tubs[0].lid.size[0]") != "58 cm" {
		t.Error("half of the form was saved")
	}
	body, _ = o.post("/g/"+id+"/text", url.Values{"base": {"1"}, "text": {"rootbell: 1\ngarden: x\ntubs:\n  - grden: y\n"}}, http.StatusUnprocessableEntity)
	wants(t, body, "Line 4", "grden", `id="line-4"`)
	if strings.Contains(o.text(id), "grden") {
		t.Error("a broken text was saved")
	}
}

func TestHolesAreFixedMovedAndFreed(t *testing.T) {
	for _, c := range []struct{ units, x, y, want string }{
		{"metric", "140 mm", "9.5", "[{at: [140 mm, 9.5 cm]}]"},
		{"us", "7 1/4", "5", "[{at: [7 1/4 in, 5 in]}]"},
	} {
		t.Run(c.units, func(t *testing.T) {
			o := open(t)
			id := o.beginGarden(c.units)
			posted := form("1", "holes", "0", "hole.1.x", c.x, "hole.1.y", c.y, "hole.1.fixed", "yes", "hole.2.x", "3", "hole.2.y", "3")
			o.post("/g/"+id+"/build", posted, http.StatusOK)
			if !strings.Contains(o.text(id), "holes: "+c.want) {
				t.Fatalf("the hole is not fixed:\n%s", o.text(id))
			}
			body, _ := o.get("/g/"+id+"/build", http.StatusOK)
			wants(t, body, `.fixed" value="yes" aria-label="hole 1 stays here" checked`)
			o.post("/g/"+id+"/build", form("2", "do", "free"), http.StatusOK)
			if plan.Items([]byte(o.text(id)), "tubs[0].lid.holes") != 0 {
				t.Errorf("the hole is not freed:\n%s", o.text(id))
			}
		})
	}
}

func TestAnUntouchedFormChangesNothing(t *testing.T) {
	for _, page := range []string{"build", "mix", "season", "choose", "class"} {
		for _, example := range []string{"example-fernhollow", "example-saltbrook"} {
			t.Run(page+" of "+example, func(t *testing.T) {
				o := open(t)
				id := o.copied(example)
				before := o.text(id)
				body, _ := o.get("/g/"+id+"/"+page, http.StatusOK)
				o.post("/g/"+id+"/"+page, filled(t, body), http.StatusOK)
				if after := o.text(id); after != before {
					t.Errorf("the plan changed:\n%s", after)
					for _, d := range plan.Differences([]byte(before), []byte(after)) {
						t.Errorf("%s: %q became %q", d.Words, d.Old, d.New)
					}
				}
			})
		}
	}
}

func TestAShapeIsKeptClearAndTakenOut(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	posted := form("1", "do", "keep", "keep.shape", "rectangle", "keep.right", "0", "keep.up", "15", "keep.long", "3", "keep.wide", "80 mm", "keep.why", "handle")
	o.post("/g/"+id+"/build", posted, http.StatusOK)
	wants(t, o.text(id), `{rectangle: [0 cm, 15 cm, 3 cm, 23 cm], why: "handle"}`)
	o.post("/g/"+id+"/build", form("2", "do", "keep", "keep.shape", "circle", "keep.right", "29", "keep.up", "36", "keep.long", "3", "keep.why", "vent"), http.StatusOK)
	wants(t, o.text(id), `{circle: [29 cm, 36 cm, 1.5 cm], why: "vent"}`)
	o.post("/g/"+id+"/build", form("3", "do", "drop-0"), http.StatusOK)
	if text := o.text(id); strings.Contains(text, "handle") || !strings.Contains(text, "vent") {
		t.Errorf("the wrong shape went:\n%s", text)
	}
}

func TestTwoTabs(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	o.post("/g/"+id+"/build", form("1", "tubs[0].inside.height", "27"), http.StatusOK)

	body, _ := o.post("/g/"+id+"/build", form("1", "tubs[0].lid.size[0]", "59"), http.StatusConflict)
	wants(t, body, "Another tab changed this plan", "27 cm", "59 cm", "Keep both")
	o.post("/g/"+id+"/merge", filled(t, body), http.StatusOK)
	if o.value(id, "tubs[0].inside.height") != "27 cm" || o.value(id, "tubs[0].lid.size[0]") != "59 cm" {
		t.Errorf("not both are kept:\n%s", o.text(id))
	}

	body, _ = o.post("/g/"+id+"/build", form("1", "tubs[0].inside.height", "25"), http.StatusConflict)
	wants(t, body, "which the other tab changed too", "Take mine", "Take the other")
	if o.value(id, "tubs[0].inside.height") != "27 cm" {
		t.Error("the other tab's change was overwritten")
	}
	o.post("/g/"+id+"/merge", filled(t, body), http.StatusOK)
	if o.value(id, "tubs[0].inside.height") != "25 cm" {
		t.Error("mine was not taken when asked")
	}

	body, _ = o.post("/g/"+id+"/text", url.Values{"base": {"1"}, "text": {o.text(id) + "# a note\n"}}, http.StatusConflict)
	wants(t, body, "# a note", "Take mine")
}

func TestEarlierPlansComeBack(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	first := o.text(id)
	o.post("/g/"+id+"/build", form("1", "tubs[0].inside.height", "27"), http.StatusOK)
	body, _ := o.get("/g/"+id+"/history", http.StatusOK)
	wants(t, body, "Back to 1", "height changed", "this is the plan")
	body, _ = o.get("/g/"+id+"/history/2", http.StatusOK)
	wants(t, body, "<s>26 cm</s>", "<u>27 cm</u>")
	o.post("/g/"+id+"/history/1/back", nil, http.StatusOK)
	if o.text(id) != first {
		t.Error("the first plan did not come back")
	}
	if revisions, err := o.store.Revisions(context.Background(), id); err != nil || len(revisions) != 3 {
		t.Errorf("%d revisions, want 3: %v", len(revisions), err)
	}
}

func TestUnitsAndPaperSwitchAnywhere(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	for _, c := range []struct{ garden, back, metric, us string }{
		{"", "/", ">cm</span>", ">in</span>"},
		{"example-fernhollow", "/g/example-fernhollow/build", "Filled to 16.7\u00a0cm", "Filled to 6.57\u00a0in"},
		{id, "/g/" + id + "/build", "\u00a0cm, Tub 1 holds", "\u00a0in, Tub 1 holds"},
	} {
		body, _ := o.get(c.back, http.StatusOK)
		wants(t, body, c.metric)
		body, at := o.post("/view", url.Values{"back": {c.back}, "garden": {c.garden}, "units": {"us"}}, http.StatusOK)
		if at != c.back {
			t.Errorf("led to %s, not back to %s", at, c.back)
		}
		wants(t, body, c.us)
		o.post("/view", url.Values{"back": {c.back}, "garden": {c.garden}, "units": {"metric"}}, http.StatusOK)
	}
	_, at := o.post("/view", url.Values{"back": {"//evil.example/"}, "units": {"us"}}, http.StatusOK)
	if at != "/" {
		t.Errorf("led away to %s", at)
	}
}

func TestPutAwayAndBroughtBack(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	body, _ := o.post("/g/"+id+"/away", nil, http.StatusOK)
	wants(t, body, "put away", "Bring it back")
	o.get("/g/"+id+"/build", http.StatusNotFound)
	o.post("/g/"+id+"/back", nil, http.StatusOK)
	o.get("/g/"+id+"/build", http.StatusOK)
}

func TestAnExampleStaysAsItIs(t *testing.T) {
	o := open(t)
	o.post("/g/example-fernhollow/build", form("1", "tubs[0].inside.height", "27"), http.StatusForbidden)
	o.post("/g/example-fernhollow/text", url.Values{"base": {"1"}, "text": {"x"}}, http.StatusForbidden)
	body, _ := o.get("/g/example-fernhollow/build", http.StatusOK)
	wants(t, body, "every number in it is invented", "Make it mine")
}

func TestASecondTubIsAddedAndTakenOut(t *testing.T) {
	for _, example := range []string{"example-fernhollow", "example-saltbrook"} {
		o := open(t)
		id := o.copied(example)
		before := plan.Items([]byte(o.text(id)), "tubs")
		body, _ := o.get("/g/"+id+"/build", http.StatusOK)
		posted := filled(t, body)
		posted.Set("do", "another")
		_, at := o.post("/g/"+id+"/build", posted, http.StatusOK)
		if !strings.Contains(at, "tub=Tub-3") || plan.Items([]byte(o.text(id)), "tubs") != before+1 {
			t.Fatalf("no third tub: %s\n%s", at, o.text(id))
		}
		for _, path := range []string{"inside.top[1]", "lid.size[0]", "cup.depth"} {
			if got, want := o.value(id, "tubs[2]."+path), o.value(id, "tubs[0]."+path); got != want {
				t.Errorf("%s of the new tub is %q, not %q", path, got, want)
			}
		}
		body, _ = o.get(at, http.StatusOK)
		posted = filled(t, body)
		posted.Set("do", "without")
		o.post("/g/"+id+"/build", posted, http.StatusOK)
		if plan.Items([]byte(o.text(id)), "tubs") != before || strings.Contains(o.text(id), "Tub 3") {
			t.Errorf("the third tub is still there:\n%s", o.text(id))
		}
	}
}

func TestTheSchoolsTermMakesTheStrip(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	o.post("/g/"+id+"/build", form("1", "school.terms[0].from", "2027-01-11", "school.terms[0].to", "2027-04-02", "school.adult_drills", "yes", "school.meal.day", "2027-03-24"), http.StatusOK)
	body, _ := o.get("/g/"+id+"/build", http.StatusOK)
	wants(t, body, "today, Wed 10 Feb", "eat, Wed 24 Mar", `type="date"`, `value="2027-03-24"`)
	if strings.Contains(body, "No adult who drills") {
		t.Error("the adult is not in the plan")
	}
}

// TestAPageComesForwardWhenItsWeekComes looks at the row of pages on a Wednesday
// of February.
func TestAPageComesForwardWhenItsWeekComes(t *testing.T) {
	for _, c := range []struct {
		name, more string
		later      string // the pages that wait
	}{
		{"no term, no fertiliser", "", "mix season class"},
		{"the first week of the term", "school: {terms: [{from: 2027-02-08, to: 2027-04-02}]}\n", "mix class"},
		{"the second week", "school: {terms: [{from: 2027-02-01, to: 2027-04-02}]}\n", ""},
		{"a fertiliser is there", "fertilisers: [{name: calcium nitrate, salt: calcium-nitrate-double-salt}]\n", "season class"},
		{"jobs are there", "school: {jobs: [{name: look}]}\n", "mix season"},
		{"twelve weeks before the meal", "school: {terms: [{from: 2027-02-01, to: 2027-07-02}], meal: {day: 2027-05-05}}\n", ""},
		{"thirteen weeks before it", "school: {terms: [{from: 2027-02-01, to: 2027-07-02}], meal: {day: 2027-05-12}}\n", "season"},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := open(t)
			id := o.beginGarden("metric")
			o.post("/g/"+id+"/text", url.Values{"base": {"1"}, "text": {o.text(id) + c.more}}, http.StatusOK)
			body, _ := o.get("/g/"+id+"/build", http.StatusOK)
			_, later, _ := strings.Cut(body, `class="later"`)
			later, _, _ = strings.Cut(later, "</span>")
			var waits []string
			for _, name := range []string{"mix", "season", "class"} {
				if strings.Contains(later, "/"+name+`"`) {
					waits = append(waits, name)
				}
			}
			if got := strings.Join(waits, " "); got != c.later {
				t.Errorf("%q waits, want %q", got, c.later)
			}
			wants(t, body, "/g/"+id+"/mix", "/g/"+id+"/season", "/g/"+id+"/class")
		})
	}
}
