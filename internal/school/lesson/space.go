package lesson

import (
	"fmt"
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Laws of the sheets on space.
var (
	boxLaw     = law("V", quantity.Volume, "l*w*h", geometry, working.Letter("l", "length", quantity.Length), working.Letter("w", "width", quantity.Length), working.Letter("h", "height of the water", quantity.Length))
	inTubLaw   = law("W", quantity.Volume, "V", "units of volume", working.Letter("V", "the box", quantity.Volume))
	sliceLaw   = law("S", quantity.Volume, "l*w*d", geometry, working.Letter("l", "length", quantity.Length), working.Letter("w", "width", quantity.Length), working.Letter("d", "fall of the line", quantity.Length))
	meanSide   = law("m", quantity.Length, "(a+b)/2", "the mean of two", working.Letter("a", "below", quantity.Length), working.Letter("b", "at the water", quantity.Length))
	gapLaw     = law("D", quantity.Volume, "U-L", arithmetic, working.Letter("U", "the larger box", quantity.Volume), working.Letter("L", "the smaller box", quantity.Volume))
	discLaw    = law("A", quantity.Area, "pi*(D/2)^2", geometry, working.Letter("D", "diameter", quantity.Length))
	rimLaw     = law("C", quantity.Length, "pi*D", geometry, working.Letter("D", "diameter", quantity.Length))
	cutLaw     = law("p", percent, "n*A/L", "a share of the whole", working.Letter("n", "how many holes", whole), working.Letter("A", "one hole", quantity.Area), working.Letter("L", "the lid", quantity.Area))
	scaledLaw  = law("r", quantity.Length, "d*s", "similar figures", working.Letter("d", "on the drawing", quantity.Length), working.Letter("s", "the scale", whole))
	bucketLaw  = law("B", quantity.Volume, "pi*r^2*h", geometry, working.Letter("r", "radius", quantity.Length), working.Letter("h", "height of the water in it", quantity.Length))
	bucketsLaw = law("n", whole, "ceil(V/B)", "division, rounded up", working.Letter("V", "the tub", quantity.Volume), working.Letter("B", "one bucket", quantity.Volume))
	gridLaw    = law("g", quantity.Length, "max(a-b, b-a)+max(c-d, d-c)", "steps on a grid", working.Letter("a", "x of one hole", quantity.Length), working.Letter("b", "x of the other", quantity.Length), working.Letter("c", "y of one hole", quantity.Length), working.Letter("d", "y of the other", quantity.Length))
	straight   = law("s", quantity.Length, "sqrt((a-b)^2+(c-d)^2)", "the theorem of Pythagoras", working.Letter("a", "x of one hole", quantity.Length), working.Letter("b", "x of the other", quantity.Length), working.Letter("c", "y of one hole", quantity.Length), working.Letter("d", "y of the other", quantity.Length))
)

func lidArea(w *bench) {
	l, b := w.t.Lid.Long, w.t.Lid.Wide
	if l <= 0 || b <= 0 {
		w.without("The lid was not measured.")
		return
	}
	long, area := wholeLong, wholeArea
	if w.Band != Junior {
		long, area = tenthLong, tenthArea
	}
	if w.Seed%2 == 0 {
		margin := w.flat(float64(w.pick(1, 3)))
		l, b = l-2*margin, b-2*margin
		w.tell("We leave a strip free on all sides of the lid. What is left is a smaller rectangle.")
		w.made = true
	}
	length, width := w.plan("length", "length", "l", long, l), w.plan("width", "width", "w", long, b)
	if w.t.Lid.Round {
		w.tell("A square of card just covers the round lid. It is %s long and %s wide.", w.says(length), w.says(width))
	} else {
		w.tell("It is %s long and %s wide.", w.says(length), w.says(width))
	}
	w.out.Told[0] = "We look at the lid of " + w.t.Name + ". " + w.out.Told[0]
	w.ask("What is its area?", w.work(areaLaw, area, "area", "area", length, width))
	w.ask("What is the length all the way round?", w.work(roundLaw, long, "perimeter", "perimeter", length, width))
	w.out.Talk = "Two lids have the same perimeter. Must they have the same area?"
	w.out.TalkKey = "No. A square holds more than a long thin rectangle with the same edge."
}

// flat is a length of so many cm, or half as many inches.
func (w *bench) flat(n float64) float64 {
	if w.metric() {
		return n * 10
	}
	return n * 12.7
}

// sides are length and width of the tub inside at a height over its floor, as a
// box; for a tub that has no straight sides they are those of its lid.
func (w *bench) sides(height float64) (long, wide float64, ok bool) {
	if w.t.Straight && w.t.Height > 0 {
		k := height / w.t.Height
		return w.t.Base[0] + (w.t.Top[0]-w.t.Base[0])*k, w.t.Base[1] + (w.t.Top[1]-w.t.Base[1])*k, true
	}
	return w.t.Lid.Long, w.t.Lid.Wide, w.t.Lid.Long > 0 && w.t.Lid.Wide > 0 && w.t.Fill > 0
}

// asBox says how the tub is taken as a box.
func (w *bench) asBox() string {
	if w.t.Straight {
		return "The sides of " + w.t.Name + " lean a little. We measure half way up the water and take it as a box."
	}
	return w.t.Name + " is no box. We take a box as wide and as long as its lid."
}

func boxVolume(w *bench) {
	deep := w.t.Fill
	if w.Seed%2 == 0 {
		deep *= float64(w.pick(6, 9)) / 10
	}
	l, b, ok := w.sides(deep / 2)
	if !ok {
		w.without("The tub was not measured.")
		return
	}
	kind := wholeLong
	if !w.metric() {
		kind = tenthLong
	}
	length, width, height := w.plan("length", "length", "l", kind, l), w.plan("width", "width", "w", kind, b), w.plan("height", "height of the water", "h", kind, deep)
	w.tell("%s It is %s long and %s wide there. The water is %s deep.", w.asBox(), w.says(length), w.says(width), w.says(height))
	box := w.work(boxLaw, cubes, "box", "the box of water", length, width, height)
	w.ask("What is the volume of the box, in "+w.unit(cubes)+"?", box)
	big := w.work(inTubLaw, tenthLitre, "water", "the water", w.again(box))
	if w.metric() {
		w.ask("1 L is 1000 cm³. How many litres is that?", big)
	} else {
		w.ask("1 gal is 231 in³. How many gallons is that?", big)
	}
	w.out.Talk = "Is the real tub a bit more or a bit less than the box? Why?"
	w.out.TalkKey = "Rounded corners take a little away. "
	if w.t.LitresAt != nil {
		holds := w.show(tenthLitre, w.t.LitresAt(deep).Base())
		w.out.TalkKey += "Worked out with leaning sides and corners, it holds " + holds + " up to that line."
	}
}

func levelDrop(w *bench) {
	deep, on := 0.0, ""
	if s, ok := w.fieldSeries("level", 2, 12); ok && w.t.LitresAt != nil {
		deep, on = w.fall(s)
	}
	if deep > 0 {
		w.out.From = fmt.Sprintf("%s, %s.", fromLog, on)
	} else {
		w.out.Odd = nil
		w.fromPlanAlone()
		deep = w.flat(float64(w.pick(1, 4)))
	}
	l, b, ok := w.sides(w.t.Fill - deep/2)
	if !ok {
		w.without("The tub was not measured.")
		return
	}
	length, width := w.plan("length", "length", "l", tenthLong, l), w.plan("width", "width", "w", tenthLong, b)
	var down working.Number
	if on != "" {
		down = w.logged("fall", "fall of the line", "d", tenthLong, deep, on)
		w.tell("The water line of %s fell by %s (%s).", w.t.Name, w.says(down), on)
	} else {
		down = w.invent("fall", "fall of the line", "d", tenthLong, deep)
		w.tell("The water line of %s falls by %s.", w.t.Name, w.says(down))
	}
	w.tell("At the line the tub is %s long and %s wide.", w.says(length), w.says(width))
	slice := w.work(sliceLaw, cubes, "slice", "the slice that is gone", length, width, down)
	w.ask("Think of the lost water as a thin box. What is its volume, in "+w.unit(cubes)+"?", slice)
	w.ask("How much water is that in "+w.unit(tenthLitre)+"?", w.work(inTubLaw, tenthLitre.WithDecimals(2, 2), "gone", "water gone", w.again(slice)))
	w.out.Talk = "Where did the water go?"
	w.out.TalkKey = "Most went through the plants into the air. A little dried up. If much is gone in one night, look for a leak."
}

// fall is by how much the line fell between two levels without water poured in,
// in mm, and when; 0 where it did not.
func (w *bench) fall(s series) (deep float64, on string) {
	for i := len(s.data) - 1; i > 0; i-- {
		a, b := s.data[i-1], s.data[i]
		if poured, known := w.between(a, b); !known || poured > 0 || b.value >= a.value {
			continue
		}
		unit := tenthLitre.Unit(w.t.System)
		d := w.depthOf(unit.Base(a.value)) - w.depthOf(unit.Base(b.value))
		if d >= 2 {
			w.only(a, b)
			return d, a.on + " to " + b.on
		}
	}
	return 0, ""
}

// depthOf is how deep a volume stands, by halving; base is in mm³.
func (w *bench) depthOf(base float64) float64 {
	low, high := 0.0, w.t.Height
	for range 50 {
		mid := (low + high) / 2
		if w.t.LitresAt(mid).Base() < base {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

func bounds(w *bench) {
	if !w.t.Straight {
		w.without("It needs a tub with four straight sides.")
		return
	}
	kind := tenthLong
	deep := w.t.Fill
	if w.Seed%2 == 0 {
		deep *= float64(w.pick(6, 9)) / 10
	}
	tl, tw, _ := w.sides(deep)
	h := w.plan("height", "height of the water", "h", kind, deep)
	bl, bw := w.plan("base_length", "length of the floor", "l", kind, w.t.Base[0]), w.plan("base_width", "width of the floor", "w", kind, w.t.Base[1])
	ul, uw := w.plan("top_length", "length at the water line", "l", kind, tl), w.plan("top_width", "width at the water line", "w", kind, tw)
	w.tell("The sides of %s lean outwards. The floor is %s by %s. At the water line it is %s by %s. The water is %s deep.", w.t.Name, w.says(bl), w.says(bw), w.says(ul), w.says(uw), w.says(h))
	low := w.work(boxLaw, tenthLitre, "low", "the box over the floor", bl, bw, h)
	w.ask("How much does the small box hold, as big as the floor? The tub holds more.", low)
	high := w.work(boxLaw, tenthLitre, "high", "the box under the water line", ul, uw, h)
	w.ask("How much does the big box hold, as big as the water line? The tub holds less.", high)
	w.ask("How far apart are the two bounds?", w.work(gapLaw, tenthLitre, "gap", "between the bounds", w.again(high), w.again(low)))
	ml, mw := w.work(meanSide, kind.WithDecimals(2, 2), "mean_length", "mean length", bl, ul), w.work(meanSide, kind.WithDecimals(2, 2), "mean_width", "mean width", bw, uw)
	w.ask("Now take the mean length and the mean width. How much does that box hold?", ml, mw, w.work(boxLaw, tenthLitre, "middle", "the box in the middle", w.again(ml), w.again(mw), h))
	w.out.Talk = "Which of the three boxes is nearest to the tub? How could you test it?"
	w.out.TalkKey = "The middle one. Fill the tub with a measuring jug and count."
	if w.t.LitresAt != nil {
		w.out.TalkKey += " With rounded corners it holds " + w.show(tenthLitre, w.t.LitresAt(deep).Base()) + "."
	}
}

func holeArea(w *bench) {
	n := len(w.t.Holes)
	if n == 0 || w.t.Hole <= 0 || w.t.Lid.Long <= 0 {
		w.without("The holes of the lid are not known.")
		return
	}
	long, area := tenthLong, tenthArea
	d := w.plan("diameter", "diameter of a hole", "D", long, w.t.Hole)
	some := n
	if w.Seed%2 == 0 {
		some = w.pick(1, n)
	}
	holes := w.count("holes", "how many holes", "n", some, "the plan")
	w.tell("A hole in the lid of %s is %s across. Think of %s.", w.t.Name, w.says(d), have(holes.Base, "hole", "holes"))
	one := w.work(discLaw, area, "hole", "area of a hole", d)
	w.ask("What is the area of one hole? Use 3.14159 for pi.", one)
	w.ask("How far is it round the hole?", w.work(rimLaw, long, "round", "circumference", d))
	var lid working.Number
	if w.t.Lid.Round {
		ld := w.plan("lid", "diameter of the lid", "D", long, w.t.Lid.Long)
		w.tell("The lid is a disc %s across.", w.says(ld))
		lid = w.work(discLaw, area, "lid_area", "area of the lid", ld)
	} else {
		l, b := w.plan("lid_length", "length of the lid", "l", long, w.t.Lid.Long), w.plan("lid_width", "width of the lid", "w", long, w.t.Lid.Wide)
		w.tell("The lid is %s by %s.", w.says(l), w.says(b))
		lid = w.work(areaLaw, area, "lid_area", "area of the lid", l, b)
	}
	w.ask("What is the area of the whole lid?", lid)
	w.ask("What share of the lid do the holes cut away, in percent?", w.work(cutLaw, percent.WithDecimals(1, 1), "share", "cut away", holes, w.again(one), w.again(lid)))
	w.out.Talk = "What does a lid lose when more is cut away?"
	w.out.TalkKey = "It gets weaker and bends. Cups need plastic all round to hold them."
}

func bucketfuls(w *bench) {
	if w.t.SolutionL <= 0 {
		w.without("How much the tub holds is not known.")
		return
	}
	v := w.plan("tub", "the tub", "V", tenthLitre, w.t.SolutionL.Base())
	r, h := w.flat(float64(w.pick(9, 12))), w.flat(float64(w.pick(14, 20)))
	radius, height := w.invent("radius", "radius of the bucket", "r", tenthLong, r), w.invent("height", "height of the water in it", "h", tenthLong, h)
	w.tell("%s holds %s. A bucket is a cylinder with a radius of %s. We fill it %s high.", w.t.Name, w.says(v), w.says(radius), w.says(height))
	one := w.work(bucketLaw, tenthLitre, "bucket", "one bucket", radius, height)
	w.ask("How much is in one bucket? Use 3.14159 for pi.", one)
	w.ask("How many buckets does it take? The last one need not be full.", w.work(bucketsLaw, whole, "buckets", "buckets", v, w.again(one))).Noun = "buckets"
	w.out.Talk = "Who carries a bucket, and how full?"
	w.out.TalkKey = "A full bucket is an adult’s. Pupils take small jugs: a litre of water has a mass of a kilogram."
}

// nearest are the two holes that a ruler finds the closest.
func nearest(holes []Hole) (i, j int) {
	best := math.Inf(1)
	for a := range holes {
		for b := a + 1; b < len(holes); b++ {
			if d := math.Hypot(holes[a].X-holes[b].X, holes[a].Y-holes[b].Y); d < best-1e-9 {
				best, i, j = d, a, b
			}
		}
	}
	return i, j
}
