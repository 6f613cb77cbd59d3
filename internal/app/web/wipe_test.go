package web_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// The wipe asks once more, offers the copy first, and takes out the class and
// nothing else.
func TestTheClassIsWipedByTheSecondPress(t *testing.T) {
	o := open(t)
	id := o.copied("example-fernhollow")
	body, _ := o.get("/g/"+id+"/class", http.StatusOK)
	posted := filled(t, body)
	posted.Set("class.never", "1 and 2")
	o.post("/g/"+id+"/class", posted, http.StatusOK)
	before := o.text(id)
	body, _ = o.get("/stored", http.StatusOK)
	wants(t, body, "Wipe the class of Fernhollow science room", `action="/g/`+id+`/wipe"`)
	asked, _ := o.post("/g/"+id+"/wipe", nil, http.StatusOK)
	wants(t, asked, "cannot be taken back", `href="/backup"`, "What goes", "teams", "pairs", "What stays", `name="sure" value="2"`)
	if o.text(id) != before {
		t.Fatal("the first press has wiped something")
	}
	if strings.Index(asked, "/backup") > strings.Index(asked, "Wipe it now") {
		t.Error("the copy is not offered first")
	}
	o.post("/g/"+id+"/wipe", url.Values{"sure": {"1"}}, http.StatusConflict)
	o.post("/g/"+id+"/wipe", url.Values{"sure": {"apple"}}, http.StatusBadRequest)
	if o.text(id) != before {
		t.Fatal("a press for another plan has wiped something")
	}
	_, at := o.post("/g/"+id+"/wipe", url.Values{"sure": {"2"}}, http.StatusOK)
	if !strings.Contains(at, "/stored?said=wiped") {
		t.Fatalf("answered at %s", at)
	}
	text := o.text(id)
	for _, gone := range []string{"pupils:", "teams:", "pairs:", "Slate"} {
		if strings.Contains(text, gone) {
			t.Errorf("%s is still there", gone)
		}
	}
	wants(t, text, "terms:", "closed:", "name: Heron", "fertilisers:")
	first, _ := o.get("/g/"+id+"/history/1", http.StatusOK)
	if strings.Contains(first, "Slate") {
		t.Error("the first plan still names the teams")
	}
	body, _ = o.get("/g/"+id+"/class", http.StatusOK)
	wants(t, body, "Nobody shares the jobs yet")
	o.post("/g/example-fernhollow/wipe", nil, http.StatusForbidden)
}
