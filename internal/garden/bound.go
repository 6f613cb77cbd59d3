package garden

import (
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/lid"
)

var areaBoundLaw = working.Must(working.Law{
	Symbol: "D", Kind: quantity.Length, Formula: "(P/2+sqrt(P^2/4+8/sqrt(3)*(n-1)*A))/(2*(n-1))",
	Where: []working.Symbol{
		working.Letter("P", "perimeter of the room for centres", quantity.Length),
		working.Letter("A", "its area", quantity.Area),
		working.Letter("n", "holes", quantity.Count),
	},
	Basis: working.OfNature, Source: "N. Oler, An inequality in the geometry of numbers, Acta Math. 105 (1961), from memory; solved for the distance",
})

// bound enters what no layout of n holes can exceed. The area argument shows
// its formula; of the others the result is shown with the argument's name.
func (t *tubState) bound(r *lidRegion, n int) working.Number {
	if d, strayed := r.boundOfStrays(n); strayed {
		return t.book.Found("lid.upper_bound", "what no layout can exceed", "D", quantity.Length, d, "the bound of the holes in the room for centres, and of those that are there already outside of it")
	}
	b := r.Bound(n)
	if b.Kind == lid.ByArea && n > 1 {
		return t.book.Work(areaBoundLaw, "lid.upper_bound", "what no layout can exceed",
			t.book.Found("lid.room_perimeter", "room for centres, once round its hull", "P", quantity.Length, b.Perimeter, "measured on the region's convex hull"),
			t.book.Found("lid.room_area", "room for centres, area of its hull", "A", quantity.Area, b.Area, "measured on the region's convex hull"),
			t.book.Typed("lid.holes", "holes laid", "n", quantity.Count, float64(n), 0))
	}
	return t.book.Found("lid.upper_bound", "what no layout can exceed", "D", quantity.Length, b.Distance, "the bound by "+string(b.Kind)+" of the room for centres")
}

// boundOfStrays is the bound where holes that are there already lie outside the
// room for centres, so that the room's own bound says nothing of them: the
// least of what holds for the others, for a stray and any other, and for two
// that are there.
func (r *lidRegion) boundOfStrays(n int) (distance float64, strayed bool) {
	inside, far := n, math.Inf(1)
	box := r.Box()
	for _, p := range r.fixed {
		if r.Contains(p) {
			continue
		}
		inside, strayed = inside-1, true
		if n > len(r.fixed) {
			furthest := 0.0
			for _, c := range box.Corners() {
				furthest = max(furthest, p.To(c))
			}
			far = min(far, furthest)
		}
	}
	if !strayed || n < 2 {
		return 0, false
	}
	least, most := math.Inf(1), 0.0
	for i, p := range r.fixed {
		for _, q := range r.fixed[:i] {
			least, most = min(least, p.To(q)), max(most, p.To(q))
		}
	}
	if len(r.fixed) > n {
		return most, true
	}
	if inside > 1 {
		far = min(far, r.Bound(inside).Distance)
	}
	return min(far, least), true
}
