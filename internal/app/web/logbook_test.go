package web_test

import (
	"context"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"rootbell/internal/app/store"
)

// entry is the form of a reading of the first tub, with changes.
func entry(id string, changes ...string) url.Values {
	v := url.Values{
		"id": {id}, "tub": {"Heron"}, "by": {"Jade"}, "level": {"25.1"}, "level-way": {"litres"}, "ph": {"6.0"}, "ph-with": {"meter"},
		"ec": {"1.46"}, "ec-scale": {"mS/cm"}, "ec-with": {"meter"}, "water": {"20.4"}, "height": {"9.5"}, "done": {"nothing"}, "seen": {"one yellow leaf, hole 4"},
	}
	for i := 0; i < len(changes); i += 2 {
		v.Set(changes[i], changes[i+1])
	}
	return v
}

// mine makes the metric example one's own.
func (o *opened) mine() string {
	o.Helper()
	_, at := o.post("/g/example-fernhollow/copy", nil, http.StatusOK)
	id, _, _ := strings.Cut(strings.TrimPrefix(at, "/g/"), "/build")
	return id
}

func (o *opened) readings(id string) []store.Written {
	o.Helper()
	all, err := o.store.Readings(context.Background(), id, store.Span{})
	if err != nil {
		o.Fatal(err)
	}
	return all
}

func TestAReadingIsWrittenAndListed(t *testing.T) {
	o := open(t)
	id := o.mine()
	body, _ := o.get("/g/"+id+"/logbook", http.StatusOK)
	wants(t, body, "No reading yet. The first one takes a minute.", `value="Heron" checked`, "Opal")
	body, at := o.post("/g/"+id+"/logbook", entry("e1"), http.StatusOK)
	if !strings.Contains(at, "said=written") || !strings.Contains(at, "tub=Heron") {
		t.Fatalf("led to %s\n%s", at, head(body))
	}
	wants(t, body, "It is in the book.", "Wed 10 Feb 09:30", "25.1", "6.0", "1.46", "20.4", "one yellow leaf, hole 4", "Last: 6.0 on Wed 10 Feb")
	body, at = o.post("/g/"+id+"/logbook", entry("e1"), http.StatusOK)
	if !strings.Contains(at, "said=there") {
		t.Errorf("sent again, it led to %s", at)
	}
	wants(t, body, "It stands there once.")
	all := o.readings(id)
	if len(all) != 1 || all[0].Tub != "Heron" || all[0].By != "Jade" || all[0].PH.Read.Text != "6.0" || !all[0].At.Equal(moment) {
		t.Errorf("kept: %+v", all)
	}
}
