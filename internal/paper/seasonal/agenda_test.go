package seasonal_test

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/paper/agenda"
	"rootbell/internal/paper/seasonal"
	"rootbell/internal/school/term"
)

func agendaOf(t *testing.T, a *garden.Assessment, revision string) agenda.Agenda {
	t.Helper()
	out, ok := seasonal.Agenda(a, revision)
	if !ok {
		t.Fatal("there is no calendar file")
	}
	return out
}

// Each task of each tub is an entry of its day, the meal one for all; the closed
// stretches longer than a weekend are entries of their days.
func TestWhatIsInTheCalendarFile(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	got := map[string]bool{}
	for _, e := range agendaOf(t, a, "3").Entries {
		last := e.Last
		if !last.Set() {
			last = e.First
		}
		line := e.First.String() + " " + last.String() + " " + e.Summary
		if got[line] {
			t.Errorf("%s stands there twice", line)
		}
		got[line] = true
	}
	for _, want := range []string{
		"2027-01-11 2027-01-11 Heron: sow (invented)", "2027-01-12 2027-01-12 Otter: sow (invented)", "2027-01-25 2027-01-25 Heron: move into the tub (invented)",
		"2027-02-12 2027-02-12 Heron: leave-it sheet (invented)", "2027-02-13 2027-02-21 Nobody comes: break (invented)", "2027-03-06 2027-03-08 Nobody comes: staff day (invented)",
		"2027-03-24 2027-03-24 meal (invented)", "2027-02-16 2027-02-18 One visit to the tubs (invented)",
	} {
		if !got[want] {
			t.Errorf("%q is not in it: %v", want, got)
		}
	}
	for line := range got {
		if strings.Contains(line, "weekend") {
			t.Errorf("a usual weekend stands in it: %s", line)
		}
	}
}

// Moving a task keeps its id and raises nothing but the sequence; another garden
// or tub has other ids, and no id stands twice.
func TestIdsStayWhenDaysMove(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	first := agendaOf(t, a, "3")
	days := map[string]term.Date{}
	for _, e := range first.Entries {
		if _, twice := days[e.UID]; twice {
			t.Errorf("the id of %s stands twice", e.Summary)
		}
		days[e.UID] = e.First
	}
	for k := range a.Tubs[0].Season.Tasks {
		if task := &a.Tubs[0].Season.Tasks[k]; task.Kind != "meal" && task.Kind != "order" {
			d, err := term.ParseDate(task.On)
			if err != nil {
				t.Fatal(err)
			}
			task.On = d.Add(1).String()
		}
	}
	second := agendaOf(t, a, "4")
	if first.Sequence != 3 || second.Sequence != 4 || len(first.Entries) != len(second.Entries) {
		t.Errorf("sequences %d and %d, %d and %d entries", first.Sequence, second.Sequence, len(first.Entries), len(second.Entries))
	}
	moved := 0
	for _, e := range second.Entries {
		was, known := days[e.UID]
		if !known {
			t.Errorf("%s has a new id", e.Summary)
		}
		if was != e.First {
			moved++
		}
	}
	if moved != 7 {
		t.Errorf("%d entries moved, want the 7 tasks of one tub", moved)
	}
	a.Garden = "Another"
	for _, e := range agendaOf(t, a, "4").Entries {
		if _, known := days[e.UID]; known {
			t.Errorf("%s of another garden has the same id", e.Summary)
		}
	}
}

// No alarm and no person stands in the file, whatever the tasks say; every line
// ends as the standard asks, and the stamp is the assessment's day, not a clock's.
func TestNoAlarmAndNoPerson(t *testing.T) {
	a := example(t, "saltbrook", garden.US)
	a.Tubs[0].Season.Tasks[0].Do = "Order: BEGIN:VALARM\r\nATTENDEE:mailto:x\nand more"
	text := string(agendaOf(t, a, "2").ICS())
	for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		for _, head := range []string{"BEGIN:VALARM", "ATTENDEE", "ORGANIZER", "METHOD", "CONTACT"} {
			if strings.HasPrefix(line, head) {
				t.Errorf("there is a line %q", line)
			}
		}
		if strings.HasPrefix(line, "DTSTAMP") && line != "DTSTAMP:"+strings.ReplaceAll(a.On, "-", "")+"T000000Z" {
			t.Errorf("the stamp is %q", line)
		}
		if strings.HasPrefix(line, "DTSTART") && !strings.HasPrefix(line, "DTSTART;VALUE=DATE:") {
			t.Errorf("not a whole day: %q", line)
		}
		if strings.ContainsAny(line, "\r\n") {
			t.Errorf("a bare end of a line in %q", line)
		}
	}
	if again := string(agendaOf(t, a, "2").ICS()); again != text {
		t.Error("other bytes the second time")
	}
}

// reader counts what python3-icalendar, a general library, reads.
const reader = `
import sys, datetime, icalendar
c = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
events = c.walk("VEVENT")
print(len(events), len({str(e["UID"]) for e in events}), all(type(e["DTSTART"].dt) is datetime.date and e["DTEND"].dt > e["DTSTART"].dt for e in events),
  len(c.errors) + sum(len(e.errors) for e in events), sorted({k.name for k in c.walk()}), c["NAME"])
`

func TestAGeneralLibraryReadsTheSeason(t *testing.T) {
	const python = "/usr/bin/python3"
	if err := exec.Command(python, "-c", "import icalendar").Run(); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("python3-icalendar is not there; run make tools")
		}
		t.Skip("python3-icalendar is not there; run make tools")
	}
	for _, a := range ways(t) {
		dates := agendaOf(t, a, "3")
		run := exec.Command(python, "-c", reader)
		run.Stdin = strings.NewReader(string(dates.ICS()))
		out, err := run.CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		n := len(dates.Entries)
		want := fmt.Sprintf("%d %d True 0 ['VCALENDAR', 'VEVENT'] %s (invented)\n", n, n, a.Garden)
		if n < 15 || string(out) != want {
			t.Errorf("read is %q, want %q", out, want)
		}
	}
}
