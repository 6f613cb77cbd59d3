package web

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
)

type planHole = plan.Hole

// sameMM is how near two places are the same place on a lid: a hundredth of a
// millimetre is what a layout is rounded to, and no ruler shows a tenth.
const sameMM = 0.06

func near(h planHole, xMM, yMM float64) bool {
	return math.Abs(float64(h.At[0].Value)-xMM) < sameMM && math.Abs(float64(h.At[1].Value)-yMM) < sameMM
}

// markOf is a length as a hole's field shows it, without its unit.
func markOf(mm float64, system quantity.System) string {
	return strings.TrimSuffix(quantity.FormatMark(mm, system), "\u00a0"+quantity.Length.Unit(system).Symbol)
}

// mostHoles bounds what a form may list.
const mostHoles = 400

// fixedHole is a hole that a form fixes, as typed.
type fixedHole struct {
	n    int // its number in the form
	x, y string
}

func holeField(n int, end string) string { return fmt.Sprintf("hole.%d.%s", n, end) }

// fixedHoles are the holes that a form fixes.
func (f *form) fixedHoles(tub int) []fixedHole {
	var holes []fixedHole
	for n := 1; n <= mostHoles && f.posted.Has(holeField(n, "x")); n++ {
		if f.posted.Get(holeField(n, "fixed")) != "" {
			path := fmt.Sprintf("tubs[%d].lid.holes[0].at[0]", tub)
			holes = append(holes, fixedHole{n, f.typedIn(path, f.posted.Get(holeField(n, "x"))), f.typedIn(path, f.posted.Get(holeField(n, "y")))})
		}
	}
	return holes
}

// holesChange replaces the list of fixed holes where the form means other ones
// than the plan has.
func (f *form) holesChange(tub int) []edit {
	if f.posted.Get("holes") != fmt.Sprint(tub) {
		return nil // this form has no table of holes
	}
	holes := f.fixedHoles(tub)
	list := fmt.Sprintf("tubs[%d].lid.holes", tub)
	if f.fixes(list, holes) {
		return nil
	}
	items := make([]string, len(holes))
	for i, h := range holes {
		items[i] = fmt.Sprintf("{at: [%s, %s]}", flowText(h.x), flowText(h.y))
	}
	return []edit{{plan.Change{Path: list, Typed: "[" + strings.Join(items, ", ") + "]"}, true}}
}

// fixes tells whether a list of the plan fixes these holes and no other, in
// whatever order.
func (f *form) fixes(list string, holes []fixedHole) bool {
	n := f.doc().Items(list)
	if n != len(holes) {
		return false
	}
	left := slices.Clone(holes)
	for i := range n {
		x, _, _, _ := f.doc().Value(fmt.Sprintf("%s[%d].at[0]", list, i))
		y, _, _, _ := f.doc().Value(fmt.Sprintf("%s[%d].at[1]", list, i))
		at := slices.IndexFunc(left, func(h fixedHole) bool { return samePlace(x, h.x, f.units) && samePlace(y, h.y, f.units) })
		if at < 0 {
			return false
		}
		left = slices.Delete(left, at, at+1)
	}
	return true
}

// samePlace tells whether two typed lengths are shown alike in a hole's field.
func samePlace(a, b string, system quantity.System) bool {
	x, errX := quantity.Parse(quantity.Length, a)
	y, errY := quantity.Parse(quantity.Length, b)
	return errX == nil && errY == nil && (math.Abs(x-y) < sameMM || markOf(x, system) == markOf(y, system))
}

// flowText makes sure that a typed length stays one value inside a list.
func flowText(typed string) string {
	if strings.ContainsAny(typed, `,[]{}"':#&*!|>%@`+"`\\\n\r") || typed == "" {
		return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", " ", "\r", " ").Replace(typed) + `"`
	}
	return typed
}
