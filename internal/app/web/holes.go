package web

import (
	"fmt"
	"math"
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

// postedHoles are the holes that a form fixes, as typed; ok is false where the
// form has no table of holes.
func (f *form) postedHoles(tub int) (holes [][2]string, ok bool) {
	if f.posted.Get("holes") != fmt.Sprint(tub) {
		return nil, false
	}
	at := func(n int, end string) string { return fmt.Sprintf("hole.%d.%s", n, end) }
	for n := 1; n <= mostHoles && f.posted.Has(at(n, "x")); n++ {
		if f.posted.Get(at(n, "fixed")) != "" {
			path := fmt.Sprintf("tubs[%d].lid.holes[0].at[0]", tub)
			holes = append(holes, [2]string{f.typedIn(path, f.posted.Get(at(n, "x"))), f.typedIn(path, f.posted.Get(at(n, "y")))})
		}
	}
	return holes, true
}

// holesChange replaces the list of fixed holes where the form means other ones
// than the plan has.
func (f *form) holesChange(tub int) (c edit, changed bool) {
	holes, ok := f.postedHoles(tub)
	if !ok {
		return c, false
	}
	list := fmt.Sprintf("tubs[%d].lid.holes", tub)
	if n := f.doc().Items(list); n == len(holes) {
		same := true
		for i, h := range holes {
			for axis := range 2 {
				typed, _, _, _ := f.doc().Value(fmt.Sprintf("%s[%d].at[%d]", list, i, axis))
				same = same && samePlace(typed, h[axis], f.units)
			}
		}
		if same {
			return c, false
		}
	}
	items := make([]string, len(holes))
	for i, h := range holes {
		items[i] = fmt.Sprintf("{at: [%s, %s]}", flowText(h[0]), flowText(h[1]))
	}
	return edit{plan.Change{Path: list, Typed: "[" + strings.Join(items, ", ") + "]"}, true}, true
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
