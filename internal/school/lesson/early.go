package lesson

import (
	"fmt"
	"time"

	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// Laws of the sheets for the youngest.
var (
	emptyLaw  = law("E", whole, "H-P", arithmetic, working.Letter("H", "holes in the lid", whole), working.Letter("P", "holes with a plant", whole))
	oneLess   = law("F", whole, "E-1", arithmetic, working.Letter("E", "empty holes", whole))
	tallerLaw = law("D", number, "T-S", arithmetic, working.Letter("T", "the taller", number), working.Letter("S", "the shorter", number))
	longerLaw = law("D", wholeLong, "T-S", arithmetic, working.Letter("T", "the longer", wholeLong), working.Letter("S", "the shorter", wholeLong))
	inMonth   = law("N", whole, "b-a", arithmetic, working.Letter("b", "the day it ends", whole), working.Letter("a", "the day it begins", whole))
	restMonth = law("R", whole, "e-a", arithmetic, working.Letter("e", "the last day of the month", whole), working.Letter("a", "the day it begins", whole))
	overMonth = law("N", whole, "R+M+b", arithmetic, working.Letter("R", "sleeps left in the first month", whole), working.Letter("M", "days in the months between", whole), working.Letter("b", "the day it ends", whole))
	weeksLaw  = law("w", whole, "floor(N/7)", arithmetic, working.Letter("N", "sleeps", whole))
	jugsLaw   = law("n", whole, "floor(V/J)", "division with a remainder", working.Letter("V", "water for the tub", wholeLitre), working.Letter("J", "one jug", wholeLitre))
	restLaw   = law("r", wholeLitre, "V-n*J", "division with a remainder", working.Letter("V", "water for the tub", wholeLitre), working.Letter("n", "full jugs", whole), working.Letter("J", "one jug", wholeLitre))
)

func emptyHoles(w *bench) {
	holes := len(w.t.Holes)
	if holes < 3 {
		w.without("The lid has fewer than three holes.")
		return
	}
	all := w.count("holes", "holes in the lid", "H", holes, "the plan")
	var planted working.Number
	if n := w.t.Plants; n > 0 && n < holes-1 {
		planted = w.count("planted", "holes with a plant", "P", n, "the plan")
	} else {
		planted = w.invent("planted", "holes with a plant", "P", whole, float64(w.pick(1, holes-2)))
	}
	w.tell("The lid of %s has %s holes.", w.t.Name, w.says(all))
	w.tell("%s", have(planted.Base, "hole has a plant.", "holes have a plant."))
	empty := w.work(emptyLaw, whole, "empty", "empty holes", all, planted)
	w.ask("How many holes are empty?", empty).Noun = "holes"
	w.ask("One more plant goes in. How many holes are empty now?", w.work(oneLess, whole, "then", "empty holes then", w.again(empty))).Noun = "holes"
	w.out.Talk = "Why do we put a cap on a hole with no plant?"
	w.out.TalkKey = "A hole lets light in. Light on the water makes green slime grow."
}

// have is a number with its word: '1 hole', '3 holes'.
func have(n float64, one, many string) string {
	if n == 1 {
		return fmt.Sprintf("%.0f %s", n, one)
	}
	return fmt.Sprintf("%.0f %s", n, many)
}

func taller(w *bench) {
	if s, ok := w.fieldSeries(reading.FieldHeight, 2, mostPoints); ok {
		from := w.pick(0, (len(s.data)-2)/2)
		a, b := s.data[from], s.data[len(s.data)-1]
		if b.value < a.value {
			a, b = b, a
		}
		kind := plain(s.kind.Metric.Symbol, 0)
		low := w.logged("shorter", "the shorter height", "S", kind, a.value, a.on)
		high := w.logged("taller", "the taller height", "T", kind, b.value, b.on)
		w.fromLogbook(s)
		w.tell("We saw how tall our plants are.")
		w.tell("On %s the tallest was %s tall.", a.on, w.says(low))
		w.tell("On %s the tallest was %s tall.", b.on, w.says(high))
		w.only(a, b)
		w.ask("How much taller is that?", w.work(tallerLaw, kind, "difference", "how much taller", high, low))
		w.out.Talk = "What does a plant need to grow tall?"
		w.out.TalkKey = "Light, water, air, warmth and food in the water."
		return
	}
	w.fromPlanAlone()
	long, short := max(w.t.Lid.Long, w.t.Lid.Wide), min(w.t.Lid.Long, w.t.Lid.Wide)
	what, other := "The lid is %s long.", "It is %s wide."
	if w.t.Lid.Round || w.Seed%2 == 0 || long-short < 10 {
		what, other = "The lid is %s long.", "The tub is %s high."
		if w.t.Lid.Round {
			what = "The lid is %s from side to side."
		}
		short = w.t.Height
		if short > long {
			long, short, what, other = short, long, "The tub is %s high.", "The lid is %s long."
		}
	}
	a, b := w.plan("longer", "the longer side", "T", wholeLong, long), w.plan("shorter", "the shorter side", "S", wholeLong, short)
	w.tell("We put a ruler on our tub.")
	w.tell(what, w.says(a))
	w.tell(other, w.says(b))
	w.ask("How much more is the big one?", w.work(longerLaw, wholeLong, "difference", "how much more", a, b))
	w.out.Talk = "How can you see which side is long with no ruler?"
	w.out.TalkKey = "With a string, a hand or a strip of card laid on both sides."
}

// span is two days to count between.
type span struct {
	from, to     time.Time
	begin, ended string
}

// spans are the stretches of days that the garden knows of.
func (t *Tub) spans() []span {
	var out []span
	add := func(from, to time.Time, begin, ended string) {
		if !from.IsZero() && !to.IsZero() && daysBetween(from, to) >= 2 && daysBetween(from, to) < 200 {
			out = append(out, span{from, to, begin, ended})
		}
	}
	add(t.Sown, t.On, "We put the seed in on %s.", "Now it is %s.")
	add(t.Sown, t.Meal, "We put the seed in on %s.", "We eat it on %s.")
	if n := len(t.Entries); n > 0 {
		add(t.dayOf(t.Entries[0].At), t.dayOf(t.Entries[n-1].At), "We first wrote in the logbook on %s.", "We wrote in it again on %s.")
	}
	add(t.TermFrom, t.Meal, "School began on %s.", "We eat our plants on %s.")
	add(t.TermFrom, t.TermTill, "School began on %s.", "The last day is %s.")
	return out
}

func sleeps(w *bench) {
	all := w.t.spans()
	source := "the plan"
	if len(all) == 0 {
		from := time.Date(2027, time.Month(w.pick(1, 6)), w.pick(5, 25), 0, 0, 0, 0, time.UTC)
		all = []span{{from, from.AddDate(0, 0, w.pick(10, 50)), "We put a seed in on %s.", "We can eat on %s."}}
		w.made, source = true, madeUp
	}
	s := oneOf(w, all...)
	a := w.count("begins", "the day it begins", "a", s.from.Day(), source)
	b := w.count("ends", "the day it ends", "b", s.to.Day(), source)
	w.tell(s.begin, dayWords(s.from))
	w.tell(s.ended, dayWords(s.to))
	var nights working.Number
	if s.from.Month() == s.to.Month() && s.from.Year() == s.to.Year() {
		nights = w.work(inMonth, whole, "sleeps", "sleeps", b, a)
		w.ask("How many sleeps is that?", nights).Noun = "sleeps"
	} else {
		end := time.Date(s.from.Year(), s.from.Month()+1, 0, 0, 0, 0, 0, time.UTC)
		between := daysBetween(end, time.Date(s.to.Year(), s.to.Month(), 1, 0, 0, 0, 0, time.UTC)) - 1
		w.tell("%s has %d days.", s.from.Month(), end.Day())
		for m := end.AddDate(0, 0, 1); m.Before(time.Date(s.to.Year(), s.to.Month(), 1, 0, 0, 0, 0, time.UTC)); m = m.AddDate(0, 1, 0) {
			w.tell("%s has %d days.", m.Month(), m.AddDate(0, 1, -1).Day())
		}
		rest := w.work(restMonth, whole, "rest", "sleeps left in the first month", w.count("last", "the last day of the month", "e", end.Day(), "the calendar"), a)
		w.ask(fmt.Sprintf("How many sleeps are left in %s?", s.from.Month()), rest).Noun = "sleeps"
		nights = w.work(overMonth, whole, "sleeps", "sleeps", w.again(rest), w.count("between", "days in the months between", "M", between, "the calendar"), b)
		w.ask("How many sleeps is it in all?", nights).Noun = "sleeps"
	}
	w.ask("How many full weeks is that?", w.work(weeksLaw, whole, "weeks", "full weeks", w.again(nights))).Noun = "weeks"
	w.out.Talk = "What can a seed do in so many sleeps?"
	w.out.TalkKey = "It wakes, makes a root, then two small leaves, then more leaves."
}

func jugs(w *bench) {
	if w.t.SolutionL <= 0 {
		w.without("How much the tub holds is not known.")
		return
	}
	size := oneOf(w, 2.0, 3, 4)
	if !w.early() {
		size = oneOf(w, 3.0, 4, 5, 6)
	}
	v := w.plan("water", "water for the tub", "V", wholeLitre, w.t.SolutionL.Base())
	jug := w.invent("jug", "one jug", "J", wholeLitre, wholeLitre.Unit(w.t.System).Base(size))
	w.tell("We fill %s. It needs %s of water.", w.t.Name, w.says(v))
	w.tell("One jug holds %s.", w.says(jug))
	full := w.work(jugsLaw, whole, "full", "full jugs", v, jug)
	w.ask("How many full jugs go in? Draw them.", full).Noun = "jugs"
	w.out.Questions[0].Lines = 3
	w.ask("How much water is still missing then?", w.work(restLaw, wholeLitre, "rest", "water still missing", v, w.again(full), jug))
	w.out.Talk = "What would a plant do with no water?"
	w.out.TalkKey = "It goes limp, then it dies. Water carries its food and holds it up."
}
