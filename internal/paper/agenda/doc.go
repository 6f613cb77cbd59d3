// Package agenda writes what is to be done on which day as an iCalendar file
// (RFC 5545), for a calendar program to take in.
//
// Each entry is a whole day or several. There are no alarms, no people and no
// hours in it, and no moment of writing: the same agenda gives the same bytes.
package agenda

import "rootbell/internal/school/term"

// Agenda is one calendar.
type Agenda struct {
	Name     string    // shown over the calendar (NAME, RFC 7986 section 5.1)
	On       term.Date // the day it was worked out for; written as DTSTAMP
	Sequence int       // of the revision: a later one replaces an earlier; below 0 counts as 0
	Entries  []Entry
}

// Entry is something that fills one day or several in a row.
type Entry struct {
	UID     string // the same for the same thing in every edition of the calendar, see ID
	First   term.Date
	Last    term.Date // counted too; a day before First, or no day, is First
	Summary string
	Text    string // more about it; may be empty
}
