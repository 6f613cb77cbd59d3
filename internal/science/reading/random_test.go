package reading

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
)

var teams = []string{"Slate", "Jade", "level job"}

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// figureOf draws a figure that a person can have typed, and the text of it,
// which may be another than the figure: 61 taken as 6.1.
func figureOf[Q quantity.Quantity](t *rapid.T, low, high float64, unit string) quantity.Typed[Q] {
	if rapid.Bool().Draw(t, "not read") {
		return quantity.Typed[Q]{}
	}
	v := Q(rapid.Float64Range(low, high).Filter(sane).Draw(t, "figure"))
	text := exact(float64(v))
	switch rapid.IntRange(0, 2).Draw(t, "typed as") {
	case 0:
		text = rapid.SampledFrom([]string{"61", "=6,1", "a; b: c", `\;\`, "-3", "'x"}).Draw(t, "text")
	case 1:
		text = strings.TrimSpace(exact(float64(v)) + " " + unit)
	}
	return quantity.Typed[Q]{Value: v, Text: text}
}

// countOf draws a number of things that were counted, and the text of it.
func countOf(t *rapid.T, label string) quantity.Typed[quantity.Number] {
	n := rapid.IntRange(0, 300).Draw(t, label)
	if n == 0 {
		return quantity.Typed[quantity.Number]{}
	}
	return quantity.Typed[quantity.Number]{Value: quantity.Number(n), Text: rapid.SampledFrom([]string{exact(float64(n)), "12,", "'7"}).Draw(t, "text")}
}

func intervalOf[Q quantity.Quantity](t *rapid.T, low, high float64) quantity.Interval[Q] {
	one := figureOf[Q](t, low, high, "")
	i := quantity.Interval[Q]{Low: one.Value, High: one.Value, Text: one.Text}
	if one.Set() && rapid.Bool().Draw(t, "interval") {
		i.High += Q(rapid.Float64Range(0, 1).Filter(sane).Draw(t, "wide"))
	}
	return i
}

var notes = rapid.Custom(func(t *rapid.T) string {
	text := rapid.OneOf(rapid.String(), rapid.StringMatching(`'{0,2}[=+@-]?[a-z ";,\n]{0,12}`)).Draw(t, "note")
	text = strings.TrimSpace(text)
	if _, found := personal(text); found || !cell(text, longestNote) {
		return ""
	}
	return text
})

func dayOf(t *rapid.T, label string) time.Time {
	n := rapid.IntRange(-1, 9000).Draw(t, label)
	if n < 0 {
		return time.Time{}
	}
	return time.Date(2020, 1, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, n)
}

func someOf[T comparable](t *rapid.T, all []T, label string) []T {
	var out []T
	for _, w := range all {
		if rapid.IntRange(0, 3).Draw(t, label) == 0 {
			out = append(out, w)
		}
	}
	return out
}

func oneOf[T ~string](t *rapid.T, all []T, label string) T {
	return rapid.SampledFrom(append([]T{""}, all...)).Draw(t, label)
}

// rows draws a logbook in the order it was written.
var rows = rapid.Custom(func(t *rapid.T) []Row {
	out := make([]Row, rapid.IntRange(0, 6).Draw(t, "rows"))
	for i := range out {
		r := rowOf(t, "id-"+string(rune('a'+i)))
		if i > 0 && rapid.IntRange(0, 2).Draw(t, "corrects") == 0 {
			r.Corrects = out[rapid.IntRange(0, i-1).Draw(t, "which")].ID
			r.Withdrawn = rapid.Bool().Draw(t, "withdrawn")
		}
		out[i] = r
	}
	return out
})

func rowOf(t *rapid.T, id string) Row {
	r := Row{
		ID:  id,
		Tub: rapid.SampledFrom([]string{"Heron", "Otter", "-tub 3"}).Draw(t, "tub"),
		At:  time.UnixMilli(rapid.Int64Range(946684800000, 253000000000000).Draw(t, "at")).UTC(),
		By:  oneOf(t, teams, "by"),
		PH: PH{
			Read: intervalOf[quantity.PH](t, 0, 80), With: oneOf(t, instruments[:], "pH with"),
			Step: quantity.PH(rapid.SampledFrom([]float64{0, 0.5, 0.2}).Draw(t, "step")), Calibrated: dayOf(t, "pH day"),
		},
		EC: EC{
			Read: intervalOf[quantity.MSPerCM](t, 0, 3000), With: oneOf(t, instruments[:], "EC with"), Scale: oneOf(t, scales[:], "scale"),
			Calibrated: dayOf(t, "EC day"), Raw: rapid.Bool().Draw(t, "raw"),
		},
		Water:  figureOf[quantity.DegC](t, -5, 90, "°C"),
		Height: figureOf[quantity.MM](t, 0, 900, "mm"),
		Leaves: notes.Draw(t, "leaves"), Seen: notes.Draw(t, "seen"), Note: notes.Draw(t, "note"),
		Roots:    Roots{oneOf(t, colours[:], "roots"), rapid.Bool().Draw(t, "smell")},
		Done:     someOf(t, deeds[:], "done"),
		Doubtful: someOf(t, fields[:], "doubtful"),
	}
	r.Counted, r.Picked.Plants = countOf(t, "leaves counted"), countOf(t, "plants picked")
	r.Picked.Mass = figureOf[quantity.G](t, 1e-3, 5000, "g")
	switch rapid.IntRange(0, 3).Draw(t, "level by") {
	case 0:
		r.Level.Litres = figureOf[quantity.L](t, 0, 60, "L")
	case 1:
		r.Level.Depth = figureOf[quantity.MM](t, 0, 400, "mm")
	case 2:
		r.Level.Filled = figureOf[quantity.L](t, 0, 60, "L")
	}
	if !r.Level.Filled.Set() {
		r.Added = Added{figureOf[quantity.L](t, 0, 60, "L"), figureOf[quantity.MSPerCM](t, 0, 3, "mS/cm")}
	}
	return r
}
