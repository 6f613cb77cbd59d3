package lesson

import (
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// Laws of the sheets on error and limits.
var (
	lowBox     = law("L", quantity.Volume, "(l-e)*(w-e)*(h-e)", "the least the box can be", working.Letter("l", "length", quantity.Length), working.Letter("e", "error of a length", quantity.Length), working.Letter("w", "width", quantity.Length), working.Letter("h", "height", quantity.Length))
	highBox    = law("U", quantity.Volume, "(l+e)*(w+e)*(h+e)", "the most the box can be", working.Letter("l", "length", quantity.Length), working.Letter("e", "error of a length", quantity.Length), working.Letter("w", "width", quantity.Length), working.Letter("h", "height", quantity.Length))
	halfGap    = law("E", quantity.Volume, "(U-L)/2", "half the range", working.Letter("U", "the most", quantity.Volume), working.Letter("L", "the least", quantity.Volume))
	relative   = law("p", percent, "E/V", "the relative error", working.Letter("E", "half the range", quantity.Volume), working.Letter("V", "the volume", quantity.Volume))
	heightLaw  = law("h", quantity.Length, "V/(l*w)", "the box solved for its height", working.Letter("V", "volume wanted", quantity.Volume), working.Letter("l", "length", quantity.Length), working.Letter("w", "width", quantity.Length))
	awayDays   = law("d", tenthDays, "H", "units of time", working.Letter("H", "hours", hours))
	leftLaw    = law("m", tenthLitre, "R-u*d", arithmetic, working.Letter("R", "water to spare", tenthLitre), working.Letter("u", "used in a day", useKind), working.Letter("d", "days away", days))
	leftThirst = law("m", tenthLitre, "R-1.3*u*d", arithmetic, working.Letter("R", "water to spare", tenthLitre), working.Letter("u", "used in a day", useKind), working.Letter("d", "days away", days))
)

func errorBounds(w *bench) {
	deep := w.t.Fill
	if w.Seed%2 == 0 {
		deep *= float64(w.pick(6, 9)) / 10
	}
	l, b, ok := w.sides(deep / 2)
	if !ok || w.t.Tape <= 0 {
		w.without("The tub was not measured.")
		return
	}
	kind := tenthLong
	if !w.metric() {
		kind = tenthLong.WithDecimals(1, 2)
	}
	length, width, height := w.plan("length", "length", "l", kind, l), w.plan("width", "width", "w", kind, b), w.plan("height", "height of the water", "h", kind, deep)
	e := w.plan("error", "error of a length", "e", kind, w.t.Tape)
	w.tell("%s Its length is %s, its width %s, and the water is %s deep. Each length may be off by %s either way.", w.asBox(), w.says(length), w.says(width), w.says(height), w.says(e))
	v := w.work(boxLaw, twoLitres, "volume", "volume", length, width, height)
	w.ask("What is the volume of the water?", v)
	low, high := w.work(lowBox, twoLitres, "least", "the least it can be", length, e, width, height), w.work(highBox, twoLitres, "most", "the most it can be", length, e, width, height)
	w.ask("What is the least and the most that it can be?", low, high)
	half := w.work(halfGap, twoLitres, "half", "half the range", w.again(high), w.again(low))
	w.ask("How large is half the range? Write the volume as V plus or minus that.", half)
	w.ask("How large is that as a share of the volume?", w.work(relative, percent.WithDecimals(1, 1), "relative", "relative error", w.again(half), w.again(v)))
	q := w.ask("How many figures of the volume are honest?")
	q.Lines, q.Says = 1, fmt.Sprintf("The error is %s, so figures finer than that say nothing.", w.says(half))
	want := w.invent("wanted", "volume wanted", "V", twoLitres, v.Base*float64(w.pick(6, 9))/10)
	w.ask(fmt.Sprintf("Solve V = l × w × h for h. How deep must the water be for %s?", w.says(want)), w.work(heightLaw, kind, "depth", "depth for that", want, length, width))
	w.out.Talk = "Which of the three lengths would you measure again first?"
	w.out.TalkKey = "The shortest one: the same error is a larger share of it."
}

func away(w *bench) {
	if w.t.ReserveL <= 0 {
		w.without("How much water the tub has to spare is not known.")
		return
	}
	water, over, ok := w.drunk()
	if !ok {
		w.without("How much the tub holds is not known.")
		return
	}
	use := w.work(ratioLaw, useKind, "rate", "used in a day", water, over)
	w.ask("How much is used in a day? Call it u.", use)
	u := w.again(use)
	spare := w.plan("spare", "water to spare", "R", tenthLitre, w.t.ReserveL.Base())
	w.tell("From the fill line to the lowest safe line there are %s to spare. Call that R.", w.says(spare))
	hoursAway, words := 65.0, "a weekend"
	if n := len(w.t.Away); n > 0 {
		s := w.t.Away[w.rng.IntN(n)]
		hoursAway, words = s.Hours, s.Words
	}
	t := w.plan("away", "time away", "H", hours, hoursAway*3600)
	w.tell("Nobody comes for %s (%s).", w.says(t), words)
	d := w.work(awayDays, tenthDays, "days", "days away", t)
	w.ask("How many days is that? Call it d.", d)
	taken := w.again(d)
	q := w.ask("Write an inequality that says: the water lasts.")
	q.Lines, q.Says = 1, "u × d ≤ R."
	w.ask("Solve it: for how many days does the water last?", w.work(lastsLaw, tenthDays, "lasts", "days it lasts", spare, u))
	w.ask("How much is left over at the end? A minus means that it ran short.", w.work(leftLaw, tenthLitre, "left", "left over", spare, u, taken))
	w.ask("Use rises by 30 %. How many days does the water last then?", w.work(thirstyLaw, tenthDays, "lasts_then", "days it lasts", spare, u))
	w.ask("How much is left over then?", w.work(leftThirst, tenthLitre, "left_then", "left over", spare, u, taken))
	w.out.Talk = "Would you leave it, fill it higher, or ask someone to come?"
	w.out.TalkKey = "Where a 30 % thirst still leaves water, leave it. Else somebody comes, or plants are harvested before. The page ‘Season’ says how likely it is."
}

func dilute(w *bench) {
	if w.t.SolutionL <= 0 {
		w.without("How much the tub holds is not known.")
		return
	}
	ec := quantity.Conductivity
	aim := w.t.WantEC
	if aim <= 0 {
		aim = 1.4
	}
	tap := w.t.TapEC
	var read working.Number
	if s, ok := w.fieldSeries(reading.FieldEC, 1, mostPoints); ok {
		best := s.data[0]
		for _, d := range s.data {
			if d.value > best.value {
				best = d
			}
		}
		if best.value > float64(aim)+0.05 {
			w.out.From = fmt.Sprintf("%s, %s.", fromLog, best.on)
			w.only(best)
			read = w.logged("reads", "EC of the solution", "c", ec, quantity.MSPerCM(best.value).Base(), best.on)
			w.tell("On %s the EC of %s was %s.", best.on, w.t.Name, w.says(read))
		}
	}
	if read.Symbol == "" {
		w.out.Odd = nil
		w.fromPlanAlone()
		read = w.invent("reads", "EC of the solution", "c", ec, (aim * quantity.MSPerCM(1+float64(w.pick(10, 35))/100)).Base())
		w.tell("The EC of %s reads %s.", w.t.Name, w.says(read))
	}
	if tap <= 0 || tap >= aim {
		tap = 0.4
	}
	full := w.plan("holds", "what the tub holds", "F", tenthLitre, w.t.SolutionL.Base())
	v := w.invent("solution", "solution in the tub", "V", tenthLitre, w.t.SolutionL.Base()*float64(w.pick(70, 95))/100)
	want, water := w.plan("wanted", "the EC that is wanted", "k", ec, aim.Base()), w.plan("tap", "EC of the tap water", "w", ec, tap.Base())
	w.tell("There are %s in it. We want %s. The tap water has %s. EC tells how much salt is in the water.", w.says(v), w.says(want), w.says(water))
	x := w.work(thinLaw, tenthLitre, "pour", "tap water to pour in", v, read, want, water)
	w.ask("How much tap water brings it there? Start with c × V + w × x = k × (V + x) and solve for x.", x)
	room := w.work(roomLaw, tenthLitre, "room", "room in the tub", full, v)
	w.ask(fmt.Sprintf("The tub holds %s. How much room is there?", w.says(full)), room)
	q := w.ask("Does the water fit? Say what you would do if not.")
	q.Lines = 2
	if x.Base <= room.Base {
		q.Says = "Yes, it fits."
	} else {
		q.Says = "No. First take some solution out, then pour water in."
	}
	w.out.Talk = "EC is only nearly in step with the salt. What does that do to your answer?"
	w.out.TalkKey = "It is a good first step. Pour most of it, stir, wait, measure again."
}
