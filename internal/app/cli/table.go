package cli

import (
	"bytes"
	"strings"
	"unicode"
	"unicode/utf8"
)

// columns is the width every report fits.
const columns = 80

// gap parts the columns of a table.
const gap = "  "

// table writes rows in aligned columns: l left, r right. Where they would be
// wider than the page, the first column is broken over lines.
func table(b *bytes.Buffer, rows [][]string, align string) {
	widths := make([]int, len(align))
	for _, r := range rows {
		for i, cell := range r {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	others := 0
	for _, w := range widths[1:] {
		if w > 0 {
			others += len(gap) + w
		}
	}
	widths[0] = min(widths[0], max(columns-others, 1))
	for _, r := range rows {
		lines := broken(r[0], widths[0])
		for _, above := range lines[:len(lines)-1] {
			b.WriteString(above + "\n")
		}
		var line strings.Builder
		for i, cell := range append([]string{lines[len(lines)-1]}, r[1:]...) {
			pad := strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(cell)))
			if align[i] == 'r' {
				line.WriteString(pad + cell)
			} else {
				line.WriteString(cell + pad)
			}
			line.WriteString(gap)
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

// wrap writes text in lines of at most 80 columns, the first with a lead and
// the others indented by as much.
func wrap(b *bytes.Buffer, lead, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	for i, line := range broken(text, columns-len(indent)) {
		if i > 0 {
			lead = indent
		}
		b.WriteString(strings.TrimRight(lead+line, " ") + "\n")
	}
}

// broken breaks text at its blanks into lines of at most width runes, and a
// word that is longer by itself where a reader of formulas would. A no-break
// space stays one.
func broken(text string, width int) []string {
	var lines []string
	line := ""
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' || r == '\t' })
	for _, word := range words {
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			lines, line = append(lines, line), word
		}
		for utf8.RuneCountInString(line) > width {
			head, rest := split(line, width)
			lines, line = append(lines, head), rest
		}
	}
	return append(lines, line)
}

// split parts a long word after the last sign of arithmetic, or of punctuation,
// that leaves a head of at most width runes; without one, at the width.
func split(word string, width int) (head, rest string) {
	at, count := 0, 0
	full := len(word)
	for i, r := range word {
		if count == width {
			full = i
			break
		}
		count++
		if strings.ContainsRune("+-*/,;=_.)", r) {
			at = i + utf8.RuneLen(r)
		}
	}
	if at <= full/2 {
		at = full
	}
	return word[:at], word[at:]
}

// plain takes the control characters out of text that somebody typed, so that
// it cannot steer the terminal.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || unicode.Is(unicode.Bidi_Control, r) {
			return ' '
		}
		return r
	}, text)
}
