package scene

import (
	"strings"
	"sync"
	"unicode"

	sans "github.com/go-fonts/dejavu/dejavusanscondensed"
	sansbold "github.com/go-fonts/dejavu/dejavusanscondensedbold"
	serif "github.com/go-fonts/dejavu/dejavuserifcondensed"
	serifbold "github.com/go-fonts/dejavu/dejavuserifcondensedbold"
	serifitalic "github.com/go-fonts/dejavu/dejavuserifcondenseditalic"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is a typeface of the papers. The zero value is Sans.
type Face int

// The faces: plain for data and drawings, serif for reading.
const (
	Sans Face = iota
	SansBold
	Serif
	SerifBold
	SerifItalic
)

// PointMM is one point of type, 1/72 in, in mm.
const PointMM = 25.4 / 72

type typeface struct {
	name string
	data []byte
	load func() *sfnt.Font
}

// The parsed faces are immutable; sfnt reads them without locking.
var typefaces = map[Face]typeface{
	Sans:        newTypeface("sans", sans.TTF),
	SansBold:    newTypeface("sansbold", sansbold.TTF),
	Serif:       newTypeface("serif", serif.TTF),
	SerifBold:   newTypeface("serifbold", serifbold.TTF),
	SerifItalic: newTypeface("serifitalic", serifitalic.TTF),
}

func newTypeface(name string, data []byte) typeface {
	return typeface{name, data, sync.OnceValue(func() *sfnt.Font {
		// The data is compiled in, so a failure shows in the first test; the
		// nil face that is left draws nothing and measures nothing.
		parsed, err := sfnt.Parse(data)
		if err != nil {
			return nil
		}
		return parsed
	})}
}

// unitsPerEM is what DejaVu's outlines are counted in.
const unitsPerEM = 2048

func (f Face) advance(r rune, buffer *sfnt.Buffer) (units int, ok bool) {
	parsed := typefaces[f].load()
	// The PDF writer keeps two bytes a character.
	if parsed == nil || r > 0xFFFF {
		return 0, false
	}
	glyph, err := parsed.GlyphIndex(buffer, r)
	if err != nil || glyph == 0 {
		return 0, false
	}
	width, err := parsed.GlyphAdvance(buffer, glyph, fixed.I(unitsPerEM), font.HintingNone)
	return width.Round(), err == nil
}

// Width is how wide a text runs at a type size, both in mm.
func (f Face) Width(text string, sizeMM float64) float64 {
	var buffer sfnt.Buffer
	sum := 0
	for _, r := range f.Clean(text) {
		units, _ := f.advance(r, &buffer)
		sum += units
	}
	return float64(sum) * sizeMM / unitsPerEM
}

// Has says whether the face can show the rune. A glyph that is missing would
// leave a silent gap on paper.
func (f Face) Has(r rune) bool {
	var buffer sfnt.Buffer
	_, ok := f.advance(r, &buffer)
	return ok
}

// unknown stands for a rune the face cannot show: an open square.
const unknown = '□'

// Clean is the text as it can be shown: line breaks and tabs are spaces, what
// steers text or has no glyph is an open square.
func (f Face) Clean(text string) string {
	var buffer sfnt.Buffer
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) && r != noBreakSpace {
			return ' '
		}
		if unicode.IsControl(r) {
			return -1
		}
		for _, shown := range []rune{r, standIns[r]} {
			if _, ok := f.advance(shown, &buffer); ok {
				return shown
			}
		}
		return unknown
	}, text)
}

// standIns are shown where a face lacks a sign that has a near likeness.
var standIns = map[rune]rune{'⌀': 'Ø', '−': '–'}

const noBreakSpace = '\u00a0'

// Wrap breaks a text into lines no wider than width mm. It breaks at spaces
// (never at a no-break space), and inside a word only where the word alone is
// too wide.
func (f Face) Wrap(text string, sizeMM, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(f.Clean(text), func(r rune) bool { return r == ' ' }) {
		if line != "" && f.Width(line+" "+word, sizeMM) <= width {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		parts := f.broken(word, sizeMM, width)
		lines = append(lines, parts[:len(parts)-1]...)
		line = parts[len(parts)-1]
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// broken cuts a word into parts that fit; always at least one part, and at
// least one rune in each.
func (f Face) broken(word string, sizeMM, width float64) []string {
	var parts []string
	part := ""
	for _, r := range word {
		if part != "" && f.Width(part+string(r), sizeMM) > width {
			parts = append(parts, part)
			part = ""
		}
		part += string(r)
	}
	return append(parts, part)
}

// Fitted is the text, cut with an ellipsis if it is wider than width mm.
func (f Face) Fitted(text string, sizeMM, width float64) string {
	text = f.Clean(text)
	if f.Width(text, sizeMM) <= width {
		return text
	}
	runes := []rune(text)
	for len(runes) > 0 && f.Width(string(runes)+"…", sizeMM) > width {
		runes = runes[:len(runes)-1]
	}
	return strings.TrimRight(string(runes), " ") + "…"
}
