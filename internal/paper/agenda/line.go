package agenda

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// lineOctets is how long a line may be, its end not counted (RFC 5545 section
// 3.1).
const lineOctets = 75

// lineEnd ends each line.
const lineEnd = "\r\n"

// escaped is a text as a property's value (RFC 5545 section 3.3.11): backslash,
// semicolon and comma have a backslash before them, a line's end is \n. What no
// text may hold, such as control characters, is left out.
func escaped(text string) string {
	text = strings.ReplaceAll(strings.ToValidUTF8(text, "\uFFFD"), "\r\n", "\n")
	var out strings.Builder
	for _, r := range text {
		switch {
		case r == '\\' || r == ';' || r == ',':
			out.WriteByte('\\')
			out.WriteRune(r)
		case r == '\n' || r == '\r':
			out.WriteString(`\n`)
		case r == '\t' || !unicode.IsControl(r):
			out.WriteRune(r)
		}
	}
	return out.String()
}

// folded is one line as it is written: over as many lines as it takes, of at
// most lineOctets, each but the first begun with a space. No character is
// parted, as the standard asks of whoever writes.
func folded(line string) string {
	var out strings.Builder
	room := lineOctets
	for len(line) > 0 {
		_, size := utf8.DecodeRuneInString(line)
		if size > room {
			out.WriteString(lineEnd + " ")
			room = lineOctets - 1
		}
		out.WriteString(line[:size])
		line, room = line[size:], room-size
	}
	out.WriteString(lineEnd)
	return out.String()
}
