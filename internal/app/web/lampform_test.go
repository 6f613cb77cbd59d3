package web_test

import (
	"net/http"
	"strings"
	"testing"
)

// A teacher without the plan's text gets from 'no lamp' to a season by the fields
// alone: the finding leads to the lamp's first field, and what is typed there is
// in the plan.
func TestALampIsTypedInFields(t *testing.T) {
	for _, page := range []string{"build", "season"} {
		for _, units := range []string{"metric", "us"} {
			t.Run(page+" "+units, func(t *testing.T) {
				o := open(t)
				id := o.beginGarden(units)
				body, _ := o.get("/g/"+id+"/"+page, http.StatusOK)
				wants(t, body, `id="f-lamps-0-flux"`, `name="lamps[0].power"`, `name="lamps[0].above_lid"`, `name="lamps[0].lit[1]"`)
				if page == "build" {
					wants(t, body, `href="#f-lamps-0-flux"`)
				} else {
					wants(t, body, `name="school.terms[0].from"`, `name="school.terms[0].to"`)
				}
				o.post("/g/"+id+"/"+page, form("1", "lamps[0].power", "40", "lamps[0].length", "90 cm", "lamps[0].width", "8 cm",
					"lamps[0].above_lid", "30 cm", "lamps[0].lit[0]", "06:00", "lamps[0].lit[1]", "22:00"), http.StatusOK)
				wants(t, o.text(id), "power: 40 W", "above_lid: 30 cm", "06:00", "22:00")
				body, _ = o.get("/g/"+id+"/build", http.StatusOK)
				if strings.Contains(body, "There is no lamp") {
					t.Error("the lamp is in the plan and the page still says that there is none")
				}
			})
		}
	}
}

// A garden that nobody ever read begins Today with the way to its first reading;
// the reading ends it. An example stands already.
func TestTodayBeginsWithTheWayToTheFirstReading(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	const head = "Does no tub stand yet?"
	body, _ := o.get("/g/"+id+"/today", http.StatusOK)
	wants(t, body, head, "/g/"+id+"/papers", "/g/"+id+"/mix", "/g/"+id+"/season", "/g/"+id+"/logbook")
	o.post("/g/"+id+"/logbook", entry("e1", "tub", "Tub 1", "by", "", "level", "9"), http.StatusOK)
	for _, address := range []string{"/g/" + id + "/today", "/g/example-saltbrook/today"} {
		if body, _ = o.get(address, http.StatusOK); strings.Contains(body, head) {
			t.Errorf("%s still asks whether a tub stands", address)
		}
	}
}
