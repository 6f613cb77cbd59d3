package web_test

import (
	"net/http"
	"strings"
	"testing"

	"rootbell/examples"
	"rootbell/internal/science/reading"
)

// The example with an invented logbook shows it on every page that goes by
// readings, says that it is invented, and is written into by nobody.
func TestAnExampleWithAnInventedLogbook(t *testing.T) {
	const at = "/g/example-fernhollow"
	o := open(t)
	for page, says := range map[string][]string{
		"/today":                    {"Fri 19 Mar, week 10", "Otter as read on Fri 19 Mar", "Change the water of Heron."},
		"/logbook?tub=Otter":        {"These readings are <strong>invented</strong>", "The last readings of Otter", "full, with", "Jade", `href="` + at + `/logbook?tub=Heron"`, "an empty logbook"},
		"/logbook/all":              {"<s>153</s> 1.53", "The point was forgotten.", "pH is doubtful", "corrected Mon 1 Mar 09:17"},
		"/logbook/charts?tub=Otter": {"1.47\u00a0mS/cm on Fri 19 Mar", "changed out", "<s>153.00</s>"},
		"/season?tub=Otter":         {"Harvest Otter from", "How good were earlier forecasts", "This class&#39;s plants drink", "Into the tub"},
		"/logbook/charts?span=term": {"Heron"},
		"/class":                    {"week 10"},
		"/lessons?tub=Otter":        {"Otter"},
		"/papers/today.pdf/page":    {"Fri 19 Mar", "Change the water of Heron."},
	} {
		body, _ := o.get(at+page, http.StatusOK)
		wants(t, body, append(says, "Its readings are one course of the program")...)
		if strings.Contains(body, "logbook?correct=") || strings.Contains(body, `id="entry"`) {
			t.Errorf("%s: it can be written into", page)
		}
	}
	o.post(at+"/logbook", entry("e1"), http.StatusForbidden)
	o.upload("example-fernhollow", "tub,moment\n", http.StatusForbidden)
}

// The table that the page gives is the one that lies beside the plan, so that a
// terminal can be asked with it.
func TestTheInventedTableIsTheOneBesideThePlan(t *testing.T) {
	o := open(t)
	got, _ := o.get("/g/example-fernhollow/logbook.csv", http.StatusOK)
	want, err := examples.Logbooks.ReadFile("fernhollow.csv")
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Error("the page gives another table than examples/fernhollow.csv")
	}
}

// A copy has the plan and none of the readings, and begins today.
func TestACopyHasAnEmptyLogbook(t *testing.T) {
	o := open(t)
	id := o.copied("example-fernhollow")
	body, _ := o.get("/g/"+id+"/logbook", http.StatusOK)
	wants(t, body, "No reading yet.")
	table, _ := o.get("/g/"+id+"/logbook.csv", http.StatusOK)
	if read, problems := reading.ReadCSV([]byte(table), reading.Import{}); len(problems) > 0 || len(read.Rows) > 0 {
		t.Errorf("%d rows, %v", len(read.Rows), problems)
	}
}
