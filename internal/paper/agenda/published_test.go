package agenda

import (
	"strings"
	"testing"
	"time"

	"rootbell/internal/school/term"
)

// What RFC 5545 itself shows; from memory of its text, not opened here.
func TestTextIsEscapedAsTheStandardShows(t *testing.T) {
	for _, c := range []struct{ text, want, source string }{
		{"Project XYZ Final Review\nConference Room - 3B\nCome Prepared.", `Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`, "RFC 5545 section 3.3.11, example"},
		{`a\b`, `a\\b`, `RFC 5545 section 3.3.11, ESCAPED-CHAR = ("\\" / "\;" / "\," / "\N" / "\n")`},
		{"a;b,c", `a\;b\,c`, "RFC 5545 section 3.3.11, as above"},
		{"a:b", "a:b", "RFC 5545 section 3.3.11: a colon is not escaped"},
		{"a\"b", "a\"b", "RFC 5545 section 3.3.11, TEXT takes DQUOTE as it is"},
		{"a\r\nb\rc", `a\nb\nc`, "RFC 5545 section 3.3.11, an intentional line break"},
		{"a\x07b\tc", "ab\tc", "RFC 5545 section 3.1, CONTROL is all but HTAB, and no TSAFE-CHAR"},
	} {
		if got := escaped(c.text); got != c.want {
			t.Errorf("%q: %q, want %q (%s)", c.text, got, c.want, c.source)
		}
	}
}

// RFC 5545 section 3.6.1 writes a festival from 28 June to 8 July, both counted,
// with the end 9 July, and each of its lines can be read here.
func TestAnEventOfSeveralDaysAsTheStandardShows(t *testing.T) {
	text := string(Agenda{
		On: term.Date{Year: 2007, Month: time.April, Day: 23},
		Entries: []Entry{{
			UID: "x", Summary: "Festival International de Jazz de Montreal",
			First: term.Date{Year: 2007, Month: time.June, Day: 28}, Last: term.Date{Year: 2007, Month: time.July, Day: 8},
		}},
	}.ICS())
	for _, line := range []string{"DTSTART;VALUE=DATE:20070628", "DTEND;VALUE=DATE:20070709", "SUMMARY:Festival International de Jazz de Montreal", "TRANSP:TRANSPARENT"} {
		if !strings.Contains(text, "\r\n"+line+"\r\n") {
			t.Errorf("no line %s in\n%s", line, text)
		}
	}
}

// Section 3.1 gives a line that is folded and one that is not, which are the
// same to who reads them.
func TestUnfoldingAsTheStandardShows(t *testing.T) {
	const whole = "DESCRIPTION:This is a long description that exists on a long line."
	if got := unfolded("DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n"); got != whole+"\r\n" {
		t.Fatalf("the test's own unfolding gives %q", got)
	}
	if got := folded(whole); got != whole+"\r\n" {
		t.Errorf("a line of %d octets is folded: %q", len(whole), got)
	}
}
