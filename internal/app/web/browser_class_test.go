//go:build !race

package web_test

import (
	"net/http"
	"strings"
	"testing"
)

// From a class of whom nothing is known to the week's rota, without script.
func TestARotaIsMadeWithoutScript(t *testing.T) {
	for _, units := range []string{"metric", "us"} {
		o := open(t)
		id := o.beginGarden(units)
		b := browse(t, o.base)
		b.log.mayHear("status of 422")
		b.withoutScript()
		b.visit("/g/" + id + "/class")
		if got := b.text(".answer"); !strings.Contains(got, "Nobody shares the jobs yet") {
			t.Fatalf("an empty class is answered with %q", got)
		}
		b.write("school.pupils", "Robin")
		b.follow("#class .btn.first")
		if got := b.text("main"); !strings.Contains(got, "Not saved yet") || b.value("school.pupils") != "Robin" {
			t.Fatalf("a name is answered with\n%s", head(got))
		}
		b.write("school.pupils", "24")
		b.follow("#class .btn.first")
		if got := b.text(".answer"); !strings.Contains(got, "names no term") {
			t.Errorf("without a term it says %q", got)
		}
		body, _ := o.get("/g/"+id+"/build", http.StatusOK)
		posted := filled(t, body)
		posted.Set("school.terms[0].from", "2027-01-11")
		posted.Set("school.terms[0].to", "2027-03-26")
		o.post("/g/"+id+"/build", posted, http.StatusOK)
		b.visit("/g/" + id + "/class")
		if got := b.text("main"); !strings.Contains(got, "reads the level") && !strings.Contains(got, "read the level") {
			t.Errorf("with pupils and a term it says\n%s", head(got))
		}
	}
}
