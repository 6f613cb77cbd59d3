package web_test

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"
)

// slipped is a table of readings of Heron with one height of 97 in place of 9.7.
func slipped() string {
	var b strings.Builder
	b.WriteString("id,tub,moment,level (L),pH,pH read with,height (cm)\n")
	for i := range 12 {
		height := 4 + 1.1*float64(i) + 0.1*float64(i%3)
		if i == 5 {
			height = 97
		}
		day := time.Date(2027, 1, 14, 9, 0, 0, 0, time.UTC).AddDate(0, 0, 2*i)
		fmt.Fprintf(&b, "row-%04d-aaaa,Heron,%s,%.1f,%.1f,meter,%.1f\n", i, day.Format("2006-01-02 15:04"), 25-0.5*float64(i%4), 5.8+0.1*float64(i%4), height)
	}
	return b.String()
}

func TestLessonSheetsAreListed(t *testing.T) {
	o := open(t)
	body, _ := o.get("/g/example-fernhollow/lessons", http.StatusOK)
	wants(t, body, "Lesson sheets", "K-2, ages 5 to 8", "9-12, ages 14 to 18", "How many holes are empty?", "What does the line say?", "Touches", "7.G.4", "never a name")
	for n := 1; n <= 25; n++ {
		if !strings.Contains(body, fmt.Sprintf("<b>%d. ", n)) {
			t.Errorf("sheet %d is not on the list", n)
		}
	}
	body, _ = o.get("/g/example-saltbrook/lessons?band=K-2&number=7", http.StatusOK)
	if strings.Contains(body, `<h2 class="sect">9-12, ages`) {
		t.Error("a band that was not asked for is listed")
	}
	wants(t, body, "number=7", "K-2, ages 5 to 8")
	body, _ = o.get("/g/example-saltbrook/lessons?number=a%20few&band=none&tub=nobody&graph=", http.StatusOK)
	wants(t, body, "‘a few’ is no number from 1 to 9999", `aria-invalid="true"`)
}

func TestALessonSheetHasACopyAndAKey(t *testing.T) {
	o := open(t)
	body, _ := o.get("/g/example-fernhollow/lessons/hole-area?tub=Heron&number=2", http.StatusOK)
	wants(t, body, "The pupil’s copy", "The key", "Question 1", "to fill in", "area of a hole: A = pi × (D ÷ 2)²", "CCSS 7.G.4", "number=3")
	o.get("/g/example-fernhollow/lessons/nothing", http.StatusNotFound)
	for _, name := range []string{"hole-area.pdf", "hole-area-key.pdf"} {
		for _, paper := range []string{"A4", "Letter"} {
			file, header := o.get("/g/example-fernhollow/lessons/"+name+"?tub=Heron&number=2&paper="+paper, http.StatusOK)
			if !strings.HasPrefix(file, "%PDF-") || !strings.Contains(header.Get("Content-Disposition"), "lesson-19-hole-area-Heron-2") {
				t.Errorf("%s on %s: %q", name, paper, header.Get("Content-Disposition"))
			}
		}
	}
	o.get("/g/example-fernhollow/lessons/hole-area.pdf?paper=A5", http.StatusBadRequest)
	o.get("/g/example-fernhollow/lessons/nothing.pdf", http.StatusNotFound)
}

// A slip in the logbook is named with its date; the teacher keeps it, leaves it
// out or corrects it, the sheet says which, and the logbook stays as it is.
func TestAnOddReadingIsDecidedOnTheSheet(t *testing.T) {
	o := open(t)
	id := o.mine()
	o.upload(id, slipped(), http.StatusOK)
	address := "/g/" + id + "/lessons/fit-line?band=9-12"
	body, _ := o.get("/g/"+id+"/lessons", http.StatusOK)
	wants(t, body, "One reading stands out")
	if strings.Contains(body, "all sheets come from the plan alone") {
		t.Error("the logbook is not seen")
	}
	body, _ = o.get(address, http.StatusOK)
	wants(t, body, "On 24 January the logbook says 97.0", "Nobody has decided yet", `name="odd-row-0005-aaaa"`)
	body, _ = o.get(address+"&odd-row-0005-aaaa=out", http.StatusOK)
	wants(t, body, "The teacher leaves it out.")
	body, _ = o.get(address+"&odd-row-0005-aaaa=correct&value-row-0005-aaaa=9,7", http.StatusOK)
	wants(t, body, "The teacher puts 9.7\u00a0cm in its place.", "value-row-0005-aaaa=9%2C7")
	body, _ = o.get(address+"&odd-row-0005-aaaa=correct&value-row-0005-aaaa=tall", http.StatusOK)
	wants(t, body, "Type the right value as a number.", "Nobody has decided yet")
	body, _ = o.get("/g/"+id+"/logbook/all", http.StatusOK)
	wants(t, body, "97")
	file, _ := o.get("/g/"+id+"/lessons/fit-line-key.pdf?band=9-12&odd-row-0005-aaaa=keep", http.StatusOK)
	if !strings.HasPrefix(file, "%PDF-") {
		t.Error("no key")
	}
}
