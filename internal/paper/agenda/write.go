package agenda

import (
	"strconv"
	"strings"

	"rootbell/internal/school/term"
)

// ICS is the agenda as a file of the media type text/calendar. One without
// entries is no calendar by the standard: give no file then.
//
// There is no METHOD in it: a published one (RFC 5546) would have to name an
// organizer, and no person stands in these files.
func (a Agenda) ICS() []byte {
	var w writer
	w.line("BEGIN", "VCALENDAR")
	w.line("VERSION", "2.0")
	w.line("PRODID", "-//Rootbell//Rootbell//EN")
	if a.Name != "" {
		w.line("NAME", escaped(a.Name))
	}
	for _, e := range a.Entries {
		a.entry(&w, e)
	}
	w.line("END", "VCALENDAR")
	return []byte(w.out.String())
}

func (a Agenda) entry(w *writer, e Entry) {
	last := e.Last
	if !last.Set() || last.Before(e.First) {
		last = e.First
	}
	w.line("BEGIN", "VEVENT")
	w.line("UID", escaped(e.UID))
	w.line("DTSTAMP", day(a.On)+"T000000Z")
	w.line("DTSTART;VALUE=DATE", day(e.First))
	// The end is not counted: it is the day after the last one. A date has four
	// digits for its year; without an end an entry is one day long.
	if end := last.Add(1); end.Year <= lastYear {
		w.line("DTEND;VALUE=DATE", day(end))
	}
	w.line("SEQUENCE", strconv.Itoa(max(a.Sequence, 0)))
	w.line("SUMMARY", escaped(e.Summary))
	if e.Text != "" {
		w.line("DESCRIPTION", escaped(e.Text))
	}
	// A job of the day leaves the day free for appointments.
	w.line("TRANSP", "TRANSPARENT")
	w.line("END", "VEVENT")
}

// lastYear is the last that RFC 5545 section 3.3.4 can write.
const lastYear = 9999

// day is a date as RFC 5545 section 3.3.4 writes it.
func day(d term.Date) string { return strings.ReplaceAll(d.String(), "-", "") }

type writer struct{ out strings.Builder }

func (w *writer) line(name, value string) { w.out.WriteString(folded(name + ":" + value)) }
