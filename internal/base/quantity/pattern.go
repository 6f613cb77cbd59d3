package quantity

import (
	"regexp"
	"strings"
)

// Pieces of the expressions of Pattern, in what RE2 and ECMA 262 share.
const (
	blanks   = "[ \u00a0\u202f]*"
	halves   = "½¼¾⅓⅔⅛⅜⅝⅞"
	numeral  = "[0-9.," + halves + "][0-9.,/⁄" + halves + "\u00a0 -]*"
	signs    = "[-−+]?" + blanks
	between  = "(?: to |" + blanks + "[–-]" + blanks + ")"
	oneThing = "^" + blanks + signs + "%s" + blanks + "$"
)

// Pattern is a regular expression that what is usually typed for the kind
// matches, for editors that check a plan while it is written. It is looser than
// Parse about numbers, and stricter about capital letters in units. With
// interval, '80 to 120 mg/L' matches too.
func Pattern(k Kind, interval bool) string {
	unit := "(?:" + strings.Join(spellings(k), "|") + ")"
	if bare(k) {
		unit = ""
	}
	measure := "(?:" + numeral + blanks + unit + blanks + ")+"
	if !interval {
		return strings.Replace(oneThing, "%s", measure, 1)
	}
	low := numeral + blanks
	if unit != "" {
		low += unit + "?"
	}
	return strings.Replace(oneThing, "%s", "(?:"+low+between+")?"+signs+measure, 1)
}

// spellings are the expressions of the units that would do for the kind.
func spellings(k Kind) []string {
	var out []string
	for _, row := range simpleUnits {
		if row.unit.Dim == k.Dim {
			out = append(out, spell(row.names))
		}
	}
	for _, dim := range []Dim{VolumeDim, TimeDim, LengthDim} {
		top := spelledAs(func(u Unit) bool { return u.Dim == k.Dim.Times(dim) && k.Dim != None })
		bottom := spelledAs(func(u Unit) bool { return u.Dim == dim })
		if top != "" && k.Dim != AreaDim && k.Dim != LengthDim {
			out = append(out, top+blanks+"(?:/|per |a )"+blanks+bottom)
		}
	}
	if k.Dim == DensityDim || k.Dim == None {
		out = append(out, "ppm")
	}
	return out
}

// spelledAs is one expression for all simple units that pass, or "".
func spelledAs(pass func(Unit) bool) string {
	var out []string
	for _, row := range simpleUnits {
		if pass(row.unit) {
			out = append(out, spell(row.names))
		}
	}
	if out == nil {
		return ""
	}
	return "(?:" + strings.Join(out, "|") + ")"
}

func spell(names string) string {
	var out []string
	for name := range strings.SplitSeq(names, "|") {
		wild := regexp.QuoteMeta(name)
		wild = strings.NewReplacer("µ", "[µμ]", "°", "[°º]", `"`, `["″”]`, "'", "['′’]", "2", "[2²]", "3", "[3³]", " ", "[ \u00a0]?").Replace(wild)
		if first := wild[0]; len(name) > 2 && first >= 'a' && first <= 'z' {
			wild = "[" + string(first-'a'+'A') + string(first) + "]" + wild[1:]
		}
		out = append(out, wild)
	}
	return "(?:" + strings.Join(out, "|") + ")"
}
