package agenda

import (
	"encoding/json"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"rootbell/internal/school/term"
)

// unfolded reads lines as a calendar program does (RFC 5545 section 3.1).
func unfolded(text string) string { return strings.ReplaceAll(text, "\r\n ", "") }

// unescaped undoes escaped, in one pass from the left.
func unescaped(value string) string {
	return regexp.MustCompile(`\\(.)`).ReplaceAllStringFunc(value, func(pair string) string {
		if pair == `\n` {
			return "\n"
		}
		return pair[1:]
	})
}

func checkFolded(t *testing.T, line, text string) {
	t.Helper()
	if got := unfolded(text); got != line+"\r\n" {
		t.Errorf("%q reads back as %q", line, got)
	}
	for _, one := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		if len(one) > 75 {
			t.Errorf("a line of %d octets: %q", len(one), one)
		}
		if !utf8.ValidString(one) {
			t.Errorf("a character is parted: %q", one)
		}
	}
}

func TestFoldingCountsOctets(t *testing.T) {
	for _, c := range []struct {
		line  string
		lines int
	}{
		{"", 1},
		{strings.Repeat("a", 75), 1},
		{strings.Repeat("a", 76), 2},
		{strings.Repeat("a", 75+74), 2},
		{strings.Repeat("a", 75+74+1), 3},
		{strings.Repeat("é", 37) + "a", 1},   // 75 octets
		{strings.Repeat("é", 38), 2},         // 76 octets: the last one goes over whole
		{"a" + strings.Repeat("水", 25), 2},   // 76 octets
		{"abc" + strings.Repeat("🌱", 18), 1}, // 75 octets of 21 characters
		{strings.Repeat("🌱", 19), 2},
		{strings.Repeat(" ", 200), 3},
	} {
		text := folded(c.line)
		checkFolded(t, c.line, text)
		if got := strings.Count(text, "\r\n"); got != c.lines {
			t.Errorf("%q: %d lines, want %d", c.line, got, c.lines)
		}
	}
}

func FuzzFolding(f *testing.F) {
	for _, s := range []string{"", "a", strings.Repeat("水🌱é a", 40), `\;,`, "\r\n x", "\x00\x7f\u0085\u2028", "\xff\xfe"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		value := escaped(text)
		if strings.ContainsAny(value, "\r\n") || !utf8.ValidString(value) {
			t.Fatalf("%q is escaped as %q", text, value)
		}
		checkFolded(t, "SUMMARY:"+value, folded("SUMMARY:"+value))
		if again := escaped(unescaped(value)); again != value {
			t.Errorf("%q, read and escaped again, is %q", value, again)
		}
	})
}

// A later edition replaces an earlier one: an id says what, not when, and no two
// things have the same.
func TestAnIDIsOfTheThing(t *testing.T) {
	seen := map[string][]string{}
	for _, parts := range [][]string{{"a", "b", "sow", "1"}, {"a", "b", "sow", "2"}, {"a", "bs", "ow", "1"}, {"ab", "", "sow", "1"}, {"a", "b", "sow"}, {}} {
		id := ID(parts...)
		if !regexp.MustCompile(`^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`).MatchString(id) {
			t.Errorf("%q is no UUID of version 8", id)
		}
		if was, twice := seen[id]; twice {
			t.Errorf("%q and %q have the id %s", was, parts, id)
		}
		seen[id] = parts
		if ID(parts...) != id {
			t.Errorf("%q has two ids", parts)
		}
	}
}

// reader prints what python3-icalendar, a general library, reads.
const reader = `
import sys, json, datetime, icalendar
data = sys.stdin.buffer.read()
c = icalendar.Calendar.from_ical(data)
out = {"version": str(c["VERSION"]), "prodid": str(c["PRODID"]), "name": str(c.get("NAME", "")), "events": [],
  "errors": [str(e) for e in c.errors], "others": sorted(k.name for k in c.walk() if k.name not in ("VCALENDAR", "VEVENT"))}
for e in c.walk("VEVENT"):
    start, end = e["DTSTART"].dt, e["DTEND"].dt
    out["errors"] += [str(x) for x in e.errors]
    out["events"].append({
        "uid": str(e["UID"]), "start": start.isoformat(), "end": end.isoformat(), "dates": type(start) is datetime.date and type(end) is datetime.date,
        "stamp": e["DTSTAMP"].dt.isoformat(), "sequence": int(e["SEQUENCE"]), "summary": str(e["SUMMARY"]), "text": str(e.get("DESCRIPTION", "")),
        "keys": sorted(e.keys())})
json.dump(out, sys.stdout)
`

type read struct {
	Version, ProdID, Name string
	Events                []readEvent
	Errors, Others        []string
}

type readEvent struct {
	UID, Start, End, Stamp, Summary, Text string
	Dates                                 bool
	Sequence                              int
	Keys                                  []string
}

// readBack reads a file with python3-icalendar, and skips the test without it.
func readBack(t *testing.T, ics []byte) read {
	t.Helper()
	const python = "/usr/bin/python3"
	if err := exec.Command(python, "-c", "import icalendar").Run(); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("python3-icalendar is not there; run make tools")
		}
		t.Skip("python3-icalendar is not there; run make tools")
	}
	run := exec.Command(python, "-c", reader)
	run.Stdin = strings.NewReader(string(ics))
	run.Stderr = os.Stderr
	out, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	var r read
	if err := json.Unmarshal(out, &r); err != nil {
		t.Fatal(err)
	}
	return r
}

func TestAGeneralLibraryReadsIt(t *testing.T) {
	long := strings.Repeat("Wasser, das einen Tag stand; 水 🌱 \\ and a colon: ", 9)
	a := Agenda{
		Name: "Garden; of, \\ Ünder", On: term.Date{Year: 2027, Month: time.January, Day: 11}, Sequence: 7,
		Entries: []Entry{
			{UID: ID("g", "Heron", "sow", "1"), First: term.Date{Year: 2027, Month: time.January, Day: 18}, Summary: "Heron: sow", Text: "First line\nsecond line, with; signs\\"},
			{UID: ID("g", "Heron", "leave", "1"), First: term.Date{Year: 2027, Month: time.February, Day: 27}, Last: term.Date{Year: 2027, Month: time.March, Day: 1}, Summary: long},
			{UID: ID("g", "Heron", "odd", "1"), First: term.Date{Year: 2028, Month: time.February, Day: 29}, Last: term.Date{Year: 2028, Month: time.February, Day: 1}, Summary: "ends before it begins", Text: long},
		},
	}
	got := readBack(t, a.ICS())
	if got.Version != "2.0" || got.ProdID == "" || got.Name != a.Name || len(got.Errors) > 0 || len(got.Others) > 0 {
		t.Errorf("the calendar is %+v", got)
	}
	keys := []string{"DTEND", "DTSTAMP", "DTSTART", "SEQUENCE", "SUMMARY", "TRANSP", "UID"}
	with := append([]string{"DESCRIPTION"}, keys...)
	want := []readEvent{
		{a.Entries[0].UID, "2027-01-18", "2027-01-19", "2027-01-11T00:00:00+00:00", "Heron: sow", a.Entries[0].Text, true, 7, with},
		{a.Entries[1].UID, "2027-02-27", "2027-03-02", "2027-01-11T00:00:00+00:00", long, "", true, 7, keys},
		{a.Entries[2].UID, "2028-02-29", "2028-03-01", "2027-01-11T00:00:00+00:00", "ends before it begins", long, true, 7, with},
	}
	if diff := cmp.Diff(want, got.Events); diff != "" {
		t.Error(diff)
	}
}

// A date has four digits for its year (section 3.3.4), so the last of all days
// has no end after it.
func TestTheLastDayOfAll(t *testing.T) {
	text := string(Agenda{Entries: []Entry{{UID: "x", First: term.Date{Year: 9999, Month: time.December, Day: 31}}}}.ICS())
	if !strings.Contains(text, "DTSTART;VALUE=DATE:99991231\r\n") || strings.Contains(text, "DTEND") {
		t.Errorf("%q", text)
	}
}

// Without entries there is the frame alone, which the standard does not allow
// (section 3.6): whoever has none gives no file.
func TestAnEmptyAgenda(t *testing.T) {
	const want = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//Rootbell//Rootbell//EN\r\nEND:VCALENDAR\r\n"
	if got := string(Agenda{Sequence: -1}.ICS()); got != want {
		t.Errorf("%q", got)
	}
}
