package web_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"mime/multipart"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/science/reading"
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
	return o.copied("example-fernhollow")
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
	wants(t, body, "It is in the book.", "Wed 10 Feb 09:30", "25.1", "6.0", "1.46", "20.4", "one yellow leaf, hole 4", "Last: 6.0, today\u00a009:30")
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

func TestAMistakeStandsAtItsFieldAndNothingIsStored(t *testing.T) {
	o := open(t)
	id := o.mine()
	body, _ := o.post("/g/"+id+"/logbook", entry("e1", "ph", "six", "by", "Nora", "level", "3 kg"), http.StatusUnprocessableEntity)
	wants(t, body, "Not written down yet.", "3 to mend", `value="six"`, `value="3 kg"`, "is no team or job of this garden", "and no person", `id="f-ph-err"`, `name="id" value="e1"`)
	body, _ = o.post("/g/"+id+"/logbook", entry("e1", "seen", "ask nora@example.org"), http.StatusUnprocessableEntity)
	wants(t, body, "e-mail address", "the logbook keeps nothing about a person")
	o.post("/g/"+id+"/logbook", entry("e1", "tub", "Bittern"), http.StatusUnprocessableEntity)
	if all := o.readings(id); len(all) != 0 {
		t.Errorf("stored: %v", all)
	}
}

// answers are the ways out that a page offers for its questions, by their words.
func answers(body string) map[string]string {
	out := map[string]string{}
	for _, m := range answerPattern.FindAllStringSubmatch(body, -1) {
		out[m[2]] = m[1]
	}
	return out
}

var answerPattern = regexp.MustCompile(`name="answer" value="([0-9a-f]+)">([^<]+)</button>`)

func TestADoubtfulFigureIsAQuestionWithThreeWays(t *testing.T) {
	o := open(t)
	id := o.mine()
	address := "/g/" + id + "/logbook"
	o.post(address, entry("e0", "ph", "6.0"), http.StatusOK)
	body, _ := o.post(address, entry("e1", "ph", "61", "water", "68"), http.StatusUnprocessableEntity)
	wants(t, body, "pH 61: did you mean 6.1", `value="61"`, "Measure again", `href="#f-ph"`, "Water at 68")
	yes := answers(body)["Yes, 6.1"]
	if yes == "" || len(o.readings(id)) != 1 {
		t.Fatalf("the ways are %v, stored %d", answers(body), len(o.readings(id)))
	}
	// The first question answered, the second is still open, and the answer stays.
	body, _ = o.post(address, entry("e1", "ph", "61", "water", "68", "answer", yes), http.StatusUnprocessableEntity)
	if strings.Contains(body, "did you mean 6.1") {
		t.Error("the answered question is asked again")
	}
	wants(t, body, "Water at 68", `name="answered" value="`+yes+`"`, `value="61"`)
	posted := entry("e1", "ph", "61", "water", "68", "answer", answers(body)["Keep it as doubtful"])
	posted.Add("answered", yes)
	o.post(address, posted, http.StatusOK)
	all := o.readings(id)
	last := all[len(all)-1]
	if last.PH.Read.Low != 6.1 || last.PH.Read.Text != "61" || !last.Doubts(reading.FieldWater) || last.Water.Value != 68 {
		t.Errorf("kept: %+v", last)
	}
	// An answer holds for the figure that was asked about, not for another one.
	o.post(address, entry("e2", "ph", "62", "answer", yes), http.StatusUnprocessableEntity)
	if len(o.readings(id)) != 2 {
		t.Error("another figure was stored with an answer that was not about it")
	}
}

func TestACorrectionKeepsBoth(t *testing.T) {
	o := open(t)
	id := o.mine()
	address := "/g/" + id + "/logbook"
	o.post(address, entry("e1", "ph", "6.9"), http.StatusOK)
	body, _ := o.get(address+"?correct=e1", http.StatusOK)
	wants(t, body, "Correct a reading", `value="6.9"`, `name="corrects" value="e1"`, "Take it out of the book", `value="Jade" checked`)
	form := entry("e2", "ph", "6.1", "corrects", "e1", "moment", "2027-02-10T09:30")
	body, _ = o.post(address, form, http.StatusOK)
	wants(t, body, "<s>6.9</s> 6.1", "corrected Wed 10 Feb 09:30 by Jade")
	body, _ = o.post(address, url.Values{"id": {"e3"}, "tub": {"Heron"}, "corrects": {"e2"}, "withdraw": {"yes"}}, http.StatusOK)
	wants(t, body, "It is out of the book", `class="taken"`, "<s>6.1</s>", "taken out Wed 10 Feb")
	if all := o.readings(id); len(all) != 3 || all[0].PH.Read.Text != "6.9" || all[2].Corrects != "e2" || !all[2].Withdrawn {
		t.Errorf("kept: %+v", all)
	}
}

// An id under which another reading stands is never overwritten: what was typed
// comes back as a correction of it.
func TestAnEntryEditedAfterItWasStoredBecomesACorrection(t *testing.T) {
	o := open(t)
	id := o.mine()
	address := "/g/" + id + "/logbook"
	o.post(address, entry("e1"), http.StatusOK)
	body, _ := o.post(address, entry("e1", "ph", "6.4"), http.StatusUnprocessableEntity)
	wants(t, body, "in the book already, with other figures", `name="corrects" value="e1"`, `value="6.4"`)
	if strings.Contains(body, `name="id" value="e1"`) {
		t.Error("the correction has the id of what it corrects")
	}
	if len(o.readings(id)) != 1 {
		t.Error("it was stored")
	}
}

func TestTwoTeamsAtOnce(t *testing.T) {
	o := open(t)
	id := o.mine()
	address := "/g/" + id + "/logbook"
	o.post(address, entry("e1", "by", "Slate", "at", "2027-02-10T09:20:00Z"), http.StatusOK)
	body, _ := o.post(address, entry("e2", "ph", "6.2", "at", "2027-02-10T09:22:00Z"), http.StatusOK)
	wants(t, body, "Two teams wrote at once", "Jade wrote a reading of Heron 2 minutes after Slate", "<u>6.0</u>", "<u>6.2</u>", "<td>1.46", "correct=e1", "correct=e2")
	mark := markPattern.FindStringSubmatch(body)
	if mark == nil {
		t.Fatal("nothing to press")
	}
	body, _ = o.post(address+"/both", url.Values{"mark": {mark[1]}, "tub": {"Heron"}}, http.StatusOK)
	if strings.Contains(body, "Two teams wrote at once") {
		t.Error("it is still asked")
	}
	body, _ = o.post(address, entry("e3", "by", "Jade", "at", "2027-02-10T09:23:00Z"), http.StatusOK)
	if strings.Contains(body, "Two teams wrote at once") {
		t.Error("a team that measures twice is taken for two")
	}
	if len(o.readings(id)) != 3 {
		t.Error("something was lost")
	}
}

var markPattern = regexp.MustCompile(`name="mark" value="([0-9a-f]+)"`)

// The hour that the clocks show twice is asked about, and one they skip is said
// to be none (Europe/Dublin goes back on 31 October 2027 at 02:00 and forward
// on 28 March 2027 at 01:00, IANA time zone database).
func TestTheHourOfAReadingWhenClocksChange(t *testing.T) {
	o := open(t)
	id := o.mine()
	address := "/g/" + id + "/logbook"
	body, _ := o.post(address, entry("e1", "moment", "2026-10-25T01:30"), http.StatusUnprocessableEntity)
	wants(t, body, "The clocks show", "twice", "the first, before they went back", `value="&#43;01:00"`, `value="&#43;00:00"`)
	body, _ = o.post(address, entry("e2", "moment", "2026-03-29T01:30"), http.StatusUnprocessableEntity)
	wants(t, body, "The clocks skip")
	for entryID, offset := range map[string]string{"summer": "+01:00", "winter": "+00:00"} {
		body, _ := o.post(address, entry(entryID, "moment", "2026-10-25T01:30", "moment-offset", offset), http.StatusUnprocessableEntity)
		wants(t, body, "long past")
		o.post(address, entry(entryID, "moment", "2026-10-25T01:30", "moment-offset", offset, "answer", answers(body)["Keep it as doubtful"]), http.StatusOK)
	}
	all := o.readings(id)
	if len(all) != 2 || all[0].At.Equal(all[1].At) {
		t.Errorf("kept: %v", all)
	}
}

func TestReadingsOfAllTubsPageByPage(t *testing.T) {
	o := open(t)
	id := o.mine()
	var rows []reading.Row
	for i := range 120 {
		rows = append(rows, reading.Row{ID: fmt.Sprint("r", i), Tub: []string{"Heron", "Otter"}[i%2], At: moment.Add(-time.Duration(i) * time.Hour), Seen: fmt.Sprintf("leaf %d.", i)})
	}
	if _, err := o.store.AddReadings(context.Background(), id, rows, moment); err != nil {
		t.Fatal(err)
	}
	seen := 0
	for address := "/g/" + id + "/logbook/all"; address != ""; {
		body, _ := o.get(address, http.StatusOK)
		for i := range 120 {
			if strings.Contains(body, fmt.Sprintf("leaf %d.", i)) {
				seen++
			}
		}
		next := olderPattern.FindStringSubmatch(body)
		if address = ""; next != nil {
			address = strings.ReplaceAll(next[1], "&amp;", "&")
		}
	}
	if seen != 120 {
		t.Errorf("%d of 120 seen", seen)
	}
	body, _ := o.get("/g/"+id+"/logbook/all?tub=Otter", http.StatusOK)
	if strings.Contains(body, "leaf 0.") || !strings.Contains(body, "leaf 1.") {
		t.Error("the readings of one tub are those of another")
	}
	body, _ = o.get("/g/"+id+"/logbook", http.StatusOK)
	if n := strings.Count(body, "correct</a>"); n != 8 {
		t.Errorf("%d rows on the logbook, want 8", n)
	}
}

var olderPattern = regexp.MustCompile(`<a href="([^"]+)">Older ones`)

// upload sends a table of readings.
func (o *opened) upload(id, table string, status int) string {
	o.Helper()
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	part, err := m.CreateFormFile("file", "table.csv")
	if err != nil {
		o.Fatal(err)
	}
	_, _ = part.Write([]byte(table))
	_ = m.Close()
	response, err := o.client.Post(o.base+"/g/"+id+"/logbook/table", m.FormDataContentType(), &b)
	if err != nil {
		o.Fatal(err)
	}
	return o.read(response, "the table", status)
}

func TestTheTableGoesOutAndComesBack(t *testing.T) {
	o := open(t)
	id := o.mine()
	o.post("/g/"+id+"/logbook", entry("e1", "seen", "=2+2"), http.StatusOK)
	o.post("/g/"+id+"/logbook", entry("e2", "corrects", "e1", "ph", "6.2", "at", "2027-02-10T09:00:00Z"), http.StatusOK)
	table, header := o.get("/g/"+id+"/logbook.csv", http.StatusOK)
	if !strings.HasPrefix(table, "\ufeff") || !strings.Contains(table, "\r\n") || !strings.Contains(table, "'=2+2") || !strings.Contains(header.Get("Content-Disposition"), "logbook.csv") {
		t.Errorf("the table is %q", head(table))
	}
	other := o.mine()
	body := o.upload(other, table, http.StatusOK)
	wants(t, body, "Read in: 2 new rows.", "<s>6.0</s> 6.2")
	body = o.upload(other, table, http.StatusOK)
	wants(t, body, "Read in: 0 new rows. 2 were in the book already.")
	again, _ := o.get("/g/"+other+"/logbook.csv", http.StatusOK)
	if again != table {
		t.Errorf("it came back as %q, want %q", again, table)
	}
}

func TestATableAboutPeopleIsRefusedBeforeAnythingIsStored(t *testing.T) {
	o := open(t)
	id := o.mine()
	body := o.upload(id, "tub,moment,pH,Pupil name,date of birth\nHeron,2027-02-10T09:00:00Z,6.1,x,y\n", http.StatusUnprocessableEntity)
	wants(t, body, "Not read in.", "<b>1:15</b>", "names of people", "<b>1:26</b>", "birth")
	body = o.upload(id, "tub,moment,pH\nHeron,2027-02-10T09:00:00Z,six\nHeron,yesterday,6.1\n", http.StatusUnprocessableEntity)
	wants(t, body, "<b>2:", "<b>3:7</b>", "2 to mend")
	body = o.upload(id, "tub,moment,pH,weather\nHeron,2027-02-10T09:00:00Z,6.1,rain\n", http.StatusOK)
	wants(t, body, "Left out, as the logbook has no such column: weather.")
	if all := o.readings(id); len(all) != 1 || all[0].PH.Read.Text != "6.1" {
		t.Errorf("stored: %v", all)
	}
}

func TestTheLogbookOfAnExampleIsEmptyAndStaysSo(t *testing.T) {
	o := open(t)
	body, _ := o.get("/g/example-saltbrook/logbook", http.StatusOK)
	wants(t, body, "The logbook of this example is <strong>empty</strong>")
	if strings.Contains(body, `id="entry"`) {
		t.Error("there is a form")
	}
	o.get("/g/example-saltbrook/logbook/all", http.StatusOK)
	o.get("/g/example-saltbrook/logbook.csv", http.StatusOK)
	o.post("/g/example-saltbrook/logbook", entry("e1"), http.StatusForbidden)
	o.upload("example-saltbrook", "tub,moment\n", http.StatusForbidden)
}

// In US units a figure is read and shown in them.
func TestReadingsInUSUnits(t *testing.T) {
	o := open(t)
	id := o.copied("example-saltbrook")
	address := "/g/" + id + "/logbook"
	page, _ := o.get(address, http.StatusOK)
	wants(t, page, "gal on the stick", "°F", ">in</span>")
	form := entry("e1", "tub", "Tern", "by", "", "level", "2", "water", "70", "height", "3.5", "ec", "740", "ec-scale", "ppm 500", "added", "1/2", "added-ec", "500")
	body, _ := o.post(address, form, http.StatusOK)
	wants(t, body, ">2</td>", ">1.48</td>", ">70</td>", "3.5\u00a0in", "Last: 740, today", "poured in")
	row := o.readings(id)[0]
	// 1 US gallon is 231 cubic inches, an inch 25.4 mm; 70 °F are 21.1 °C.
	for name, v := range map[string][2]float64{
		"litres": {float64(row.Level.Litres.Value), 7.570823568}, "water": {float64(row.Water.Value), 21.1111111}, "height": {float64(row.Height.Value), 88.9},
		"EC": {float64(row.EC.Read.Low), 1.48}, "added": {float64(row.Added.Litres.Value), 1.892705892}, "its EC": {float64(row.Added.EC.Value), 1},
	} {
		if math.Abs(v[0]-v[1]) > 1e-6 {
			t.Errorf("%s is %g, want %g", name, v[0], v[1])
		}
	}
}

// A harvest is written under 'more', comes back into the form when it is
// corrected, and is told in the table; in US units it is weighed in ounces, of
// which one is 28.349523125 g (NIST Handbook 44, Appendix C).
func TestAHarvestIsWrittenAndListed(t *testing.T) {
	for _, c := range []struct {
		from, tub, by, weigh string
		grams                float64
		says                 []string
	}{
		{"example-fernhollow", "Heron", "Jade", "315", 315, []string{">g</span>", "plants picked: 3, together 315\u00a0g"}},
		{"example-saltbrook", "Tern", "", "11.1", 11.1 * 28.349523125, []string{">oz</span>", "plants picked: 3, together 11.1\u00a0oz"}},
	} {
		o := open(t)
		id := o.copied(c.from)
		address := "/g/" + id + "/logbook"
		form := entry("e1", "tub", c.tub, "by", c.by, "level", "2", "height", "", "water", "", "picked", "3", "weigh", c.weigh, "counted", "19", "done", "harvested")
		body, _ := o.post(address, form, http.StatusOK)
		wants(t, body, append(c.says, "Plants picked", "They weigh", "Leaves on one plant", "19 leaves on one plant")...)
		row := o.readings(id)[0]
		if each, ok := row.EachG(); !ok || math.Abs(each-c.grams/3) > 1e-6 || row.Counted.Value != 19 {
			t.Errorf("%s: kept %+v, each %v", c.from, row.Picked, each)
		}
		body, _ = o.get(address+"?correct=e1", http.StatusOK)
		wants(t, body, `name="picked" type="text" inputmode="decimal" value="3"`, `value="`+c.weigh+`"`, `value="19"`, `class="more" open`)
		body, _ = o.post(address, entry("e2", "tub", c.tub, "by", c.by, "level", "2", "height", "", "picked", "2.5"), http.StatusUnprocessableEntity)
		wants(t, body, "That is no number of plants", `id="f-picked-err"`)
		body, _ = o.post(address, entry("e3", "tub", c.tub, "by", c.by, "level", "2", "height", "", "picked", "8", "weigh", "0.8 g"), http.StatusUnprocessableEntity)
		wants(t, body, "One look, please", "Plants picked that weigh 0.8 g together")
		if n := len(o.readings(id)); n != 1 {
			t.Errorf("%d rows are kept, want 1", n)
		}
	}
}

func TestAReadingIsWrittenDownByJob(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	text := o.text(id) + "school:\n  teams: [Slate, Jade]\n  jobs: [{name: water watch}, {name: leaf watch}]\n"
	o.post("/g/"+id+"/text", url.Values{"base": {"1"}, "text": {text}}, http.StatusOK)
	body, _ := o.get("/g/"+id+"/logbook", http.StatusOK)
	wants(t, body, "Team or job", `value="Slate"`, `value="water watch"`)
}

// TestALossTooFastSaysToLookForALeak writes down two levels a day apart: what
// 0.8 L a day explains, and what it does not.
func TestALossTooFastSaysToLookForALeak(t *testing.T) {
	for _, c := range []struct {
		level string
		leak  bool
	}{{"24.5", false}, {"18.0", true}} {
		o := open(t)
		id := o.mine()
		text := strings.Replace(o.text(id), "litres_per_plant: 3 L\n", "litres_per_plant: 3 L\n    daily_topup: 0.8 L/d\n", 1)
		o.post("/g/"+id+"/text", url.Values{"base": {"1"}, "text": {text}}, http.StatusOK)
		o.post("/g/"+id+"/logbook", entry("e1", "moment", "2027-02-09T09:30"), http.StatusOK)
		body, at := o.post("/g/"+id+"/logbook", entry("e2", "level", c.level, "moment", "2027-02-10T09:20"), http.StatusOK)
		if !strings.Contains(at, "said=written") {
			t.Fatalf("led to %s", at)
		}
		if strings.Contains(body, "..") {
			t.Error("a sentence ends twice")
		}
		if got := strings.Contains(body, "Look for a leak before topping up"); got != c.leak {
			t.Errorf("at %s L a leak is said: %v, want %v", c.level, got, c.leak)
		}
	}
}
