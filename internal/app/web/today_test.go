package web_test

import (
	"net/http"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// mostWords is how many words a stranger has before the eyes until the last step
// of the morning is read. It is counted; how long that takes is not claimed.
const mostWords = 120

// todays are the mornings that the page is looked at on.
func todays(t *testing.T, o *opened) map[string]string {
	t.Helper()
	strong, low := o.mine(), o.mine()
	for i, e := range []string{"s1", "s2"} {
		o.post("/g/"+strong+"/logbook", entry(e, "level", "21", "ec", "2.4", "ph", "6.0", "answer", "", "moment", "2027-02-10T09:1"+string(rune('0'+i)), "ec-checked", "2027-02-01"), http.StatusOK)
	}
	o.post("/g/"+low+"/logbook", entry("l1", "level", "20"), http.StatusOK)
	return map[string]string{
		"an example":            "/g/example-fernhollow/today",
		"in inches":             "/g/example-saltbrook/today",
		"before a break":        "/g/example-fernhollow/today?on=2027-02-12",
		"after a break":         "/g/example-fernhollow/today?on=2027-02-22",
		"a closed day":          "/g/example-fernhollow/today?on=2027-02-17",
		"nothing was read yet":  "/g/" + o.mine() + "/today",
		"too strong":            "/g/" + strong + "/today",
		"the level is low":      "/g/" + low + "/today",
		"the week after that":   "/g/" + low + "/today?on=2027-02-17",
		"a garden of one's own": "/g/" + o.beginGarden("us") + "/today",
	}
}

func TestAStrangerSeesWhatToDo(t *testing.T) {
	o := open(t)
	for name, address := range todays(t, o) {
		body, _ := o.get(address, http.StatusOK)
		words := strings.Fields(seen(t, body, "morning"))
		t.Logf("%s: %d words", name, len(words))
		if len(words) > mostWords || len(words) < 10 {
			t.Errorf("%s: %d words: %s", name, len(words), strings.Join(words, " "))
		}
		if !strings.Contains(body, `class="answer"`) || !strings.Contains(body, "Something is wrong") || !strings.Contains(body, "cuts the circuit at the board, then calls the caretaker.") {
			t.Errorf("%s: the page lacks a part", name)
		}
		if strings.Count(body, "<h1") != 1 || strings.Count(seen(t, body, "main"), " kg")+strings.Count(seen(t, body, "main"), "\u00a0kg")+strings.Count(seen(t, body, "main"), "\u00a0lb") == 0 {
			t.Errorf("%s: no head, or no mass of a tub", name)
		}
	}
}

// seen is the text of the element of an id, without what is folded away, hidden
// or a drawing.
func seen(t *testing.T, body, id string) string {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(body))
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	var walk func(n *html.Node, in bool)
	walk = func(n *html.Node, in bool) {
		folded := false
		for _, a := range n.Attr {
			in = in || a.Key == "id" && a.Val == id
			folded = folded || a.Key == "class" && slices.Contains(strings.Fields(a.Val), "vh")
		}
		if folded || n.Data == "svg" || n.Data == "details" {
			return
		}
		if n.Type == html.TextNode && in {
			out.WriteString(n.Data + " ")
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c, in)
		}
	}
	walk(doc, false)
	return out.String()
}

// What is read is what the page goes by, and the first page says what is next.
func TestTodayGoesByTheLogbook(t *testing.T) {
	o := open(t)
	id := o.mine()
	body, _ := o.get("/g/"+id+"/today", http.StatusOK)
	wants(t, body, "Read the level of both tubs.", "not measured yet", "line at 16.7\u00a0cm")
	o.post("/g/"+id+"/logbook", entry("e1", "level", "20"), http.StatusOK)
	body, _ = o.get("/g/"+id+"/today", http.StatusOK)
	wants(t, body, "Top up Heron.", "Read the level of Otter.", "Heron as read on Wed 10 Feb", "/g/"+id+"/logbook#write", "/g/"+id+"/papers/today.pdf/page", "The water stood at")
	start, _ := o.get("/", http.StatusOK)
	wants(t, start, "Top up Heron.")
}

// Every number that Today speaks of can be unfolded where the page leads.
func TestTodayLeadsToItsNumbers(t *testing.T) {
	o := open(t)
	id := o.mine()
	o.post("/g/"+id+"/logbook", entry("e1", "level", "20"), http.StatusOK)
	list, _ := o.get("/g/"+id+"/today", http.StatusOK)
	wants(t, list, "/g/"+id+"/working?of=Heron")
	body, _ := o.get("/g/"+id+"/working?of=Heron", http.StatusOK)
	wants(t, body, "poured in", "at today&#39;s fill line")
	one, _ := o.get("/g/"+id+"/working/tubs.Heron.today.pour_in", http.StatusOK)
	wants(t, one, "poured in", "in the tub now")
}

func TestTheListOfAnotherDay(t *testing.T) {
	o := open(t)
	body, _ := o.get("/g/example-fernhollow/today?on=2027-02-12", http.StatusOK)
	wants(t, body, "Top up both tubs.", "Fri 12 Feb, week 5", "today.pdf/page?on=2027-02-12")
	body, _ = o.get("/g/example-fernhollow/today?on=2027-02-17", http.StatusOK)
	wants(t, body, "Nobody comes today.", "The next list is for Mon 22 Feb.")
	body, _ = o.get("/g/example-fernhollow/today?on=2027-02-22", http.StatusOK)
	wants(t, body, "First day after nine closed days (break).", "return-card.pdf/page?on=2027-02-22")
	o.get("/g/example-fernhollow/today?on=soon", http.StatusBadRequest)
	o.get("/g/example-fernhollow/today?on=2027-02-30", http.StatusBadRequest)
}

// The papers at the tub are files and pages, of the day that is asked for.
func TestThePapersAtTheTub(t *testing.T) {
	o := open(t)
	id := o.mine()
	list, _ := o.get("/g/"+id+"/papers", http.StatusOK)
	for _, name := range []string{"today.pdf", "return-card.pdf", "puddle-card.pdf", "change-out-card.pdf", "meter-passport.pdf"} {
		base := "/g/" + id + "/papers/" + name
		wants(t, list, base+"/page")
		for _, size := range []string{"", "?paper=A4", "?paper=Letter&on=2027-02-12"} {
			file, header := o.get(base+size, http.StatusOK)
			if !strings.HasPrefix(file, "%PDF-") || header.Get("Content-Type") != "application/pdf" {
				t.Errorf("%s%s is no PDF", name, size)
			}
		}
	}
	o.post("/g/"+id+"/logbook", entry("e1", "level", "20"), http.StatusOK)
	page, _ := o.get("/g/"+id+"/papers/today.pdf/page", http.StatusOK)
	wants(t, page, "Today, Wed 10 Feb", "Top up Heron.", "Office, phone")
	page, _ = o.get("/g/"+id+"/papers/today.pdf/page?on=2027-02-12", http.StatusOK)
	wants(t, page, "Today, Fri 12 Feb", "today.pdf?on=2027-02-12")
	o.get("/g/"+id+"/papers/nothing.pdf", http.StatusNotFound)
}
