package garden

import (
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/netcup"
	"rootbell/internal/science/shelf"
)

// bay is the shelf the tubs share.
type bay struct {
	known   bool // a rated load, a width and every tub's length are known
	allowed working.Number
	lengths []working.Number // of each tub along the shelf
	all     working.Number
	grown   float64 // kg of all tubs at harvest, as far as worked out
}

// shelf enters what the bay bears with the tubs side by side.
func (a *assessor) shelf() {
	s := a.plan.Shelf
	if s == nil {
		a.note("no-shelf", "garden", "No shelf is given, so nothing is said of load, headroom and fit.", "Measure the bay: shelf, with width, depth, clear_height and rated_load.")
		return
	}
	book := a.book.In("shelf")
	for i := range a.plan.Tubs {
		o := a.plan.Tubs[i].Outside
		if o == nil || !o.Size.Set() {
			a.note("no-outside", fmt.Sprintf("tubs[%d]", i), fmt.Sprintf("%s has no outside size, so its fit on the shelf is not known.", a.plan.Tubs[i].Name), "Measure it with the lid on: outside.")
			return
		}
		length, across := float64(o.Size[0].Value), float64(o.Size[1].Value)
		n := a.book.In("tubs."+Slug(a.plan.Tubs[i].Name)).Typed("outside_length", a.plan.Tubs[i].Name+", length along the shelf", "c", quantity.Length, length, 0)
		a.bay.lengths = append(a.bay.lengths, n)
		if i == 0 {
			a.bay.all = n
		} else {
			a.bay.all = shelf.Side(book, fmt.Sprintf("length_of_%d", i+1), a.bay.all, n)
		}
		if s.Depth.Set() && across > float64(s.Depth.Value) {
			a.stop("deeper-than-shelf", fmt.Sprintf("tubs[%d].outside", i), fmt.Sprintf("%s is %s deep, the shelf %s: it would stand over the edge.", a.plan.Tubs[i].Name, a.mm(across), a.mm(float64(s.Depth.Value))), "Turn the tub, or find a deeper shelf.")
		}
	}
	if s.Width.Set() && a.bay.all.Base > float64(s.Width.Value) {
		a.stop("wider-than-shelf", "shelf.width", fmt.Sprintf("The tubs side by side need %s, the bay is %s wide.", a.says(a.bay.all), a.mm(float64(s.Width.Value))), "Use fewer or smaller tubs, or a second bay.")
		return
	}
	if s.Width.Set() {
		a.sideBySide(float64(s.Width.Value))
	}
	if !s.RatedLoad.Set() || !s.Width.Set() {
		a.warn("shelf-unrated", "shelf", "The shelf's rated load or width is not known, so its load cannot be judged.", "Stand the tubs on the "+shelf.Unrated()+", or on a bench the caretaker names, until the maker's figure is found.")
		return
	}
	a.bay.known = true
	a.bay.allowed = shelf.Allowed(book, s.RatedLoad.Value, float64(s.Width.Value), a.bay.all)
}

// sideBySide says how many of the first tub the bay takes.
func (a *assessor) sideBySide(widthMM float64) {
	each := a.bay.lengths[0]
	shelf.Abreast(a.book.In("shelf"), widthMM, each)
}

// grown enters the tub's mass at harvest and adds it to the shelf's.
func (t *tubState) grown(filled working.Number) {
	if !t.bay.known {
		return
	}
	plants := t.book.Typed("cups", "net cups", "n", quantity.Count, float64(t.out.Plants.Count), 0)
	load := shelf.Load(t.book, filled, plants, netcup.WetMass(t.assessor.book), t.growth.mass)
	t.bay.grown += load.Base
}

// overloaded stops tubs that together weigh more than the shelf bears, also
// where one of them could not be worked out.
func (a *assessor) overloaded() {
	if a.bay.known && a.bay.grown > a.bay.allowed.Base {
		a.stop("shelf-overloaded", "shelf.rated_load", fmt.Sprintf("The tubs weigh %s at harvest; in the middle of this shelf %s may stand.", quantity.Format(quantity.Mass, a.bay.grown, a.plan.Units), a.says(a.bay.allowed)),
			"Fill less, use one tub fewer, or stand them on the floor. A filled tub is never moved: fill and drain it in place.")
	}
}

// headroom is whether the tallest crop stands clear of the lamp or the board
// above; room is what is left for it. known is false where nothing says so.
func (t *tubState) headroom() (fits, known bool, room working.Number) {
	s := t.plan.Shelf
	if s == nil || !s.ClearHeight.Set() {
		return true, false, room
	}
	tall := t.shape.HeightMM() + t.setup.ThicknessMM + max(t.setup.AboveRimMM, 0)
	if o := t.typed.Outside; o != nil && o.Height.Set() {
		tall = float64(o.Height.Value)
	}
	n := t.book.Typed("outside_height", "tub with its lid on", "t", quantity.Length, tall, 0)
	room = shelf.Room(t.book, float64(s.ClearHeight.Value), n, len(t.plan.Lamps) > 0)
	return t.growth.height.Base <= room.Base, true, room
}
