package lesson

import (
	"fmt"
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

var (
	useKind   = quantity.DailyVolume.WithDecimals(2, 3)
	twoLitres = tenthLitre.WithDecimals(2, 2)
)

// Laws of the sheets on use, doses and shares.
var (
	ratioLaw  = law("u", useKind, "W/t", "a unit rate", working.Letter("W", "water used", tenthLitre), working.Letter("t", "time", days))
	eachLaw   = law("e", useKind, "u/n", "a unit rate", working.Letter("u", "used in a day", useKind), working.Letter("n", "plants", whole))
	usedLaw   = law("W", tenthLitre, "a-b", arithmetic, working.Letter("a", "at the start", tenthLitre), working.Letter("b", "at the end", tenthLitre))
	usedMore  = law("W", tenthLitre, "a+p-b", arithmetic, working.Letter("a", "at the start", tenthLitre), working.Letter("p", "poured in", tenthLitre), working.Letter("b", "at the end", tenthLitre))
	sproutLaw = law("p", percent, "g/s", "a share of the whole", working.Letter("g", "seeds that came up", whole), working.Letter("s", "seeds sown", whole))
	sowLaw    = law("N", whole, "ceil(n/p)", "division, rounded up", working.Letter("n", "plants wanted", whole), working.Letter("p", "share that comes up", percent))
	cropShare = law("q", percent, "h/s", "a share of the whole", working.Letter("h", "harvested", whole), working.Letter("s", "seeds sown", whole))
	thinLaw   = law("x", tenthLitre, "V*(c-k)/(k-w)", "the sum of the salts stays the same", working.Letter("V", "solution in the tub", tenthLitre), working.Letter("c", "its EC", quantity.Conductivity),
		working.Letter("k", "the EC that is wanted", quantity.Conductivity), working.Letter("w", "EC of the tap water", quantity.Conductivity))
	roomLaw    = law("R", tenthLitre, "F-V", arithmetic, working.Letter("F", "what the tub holds", tenthLitre), working.Letter("V", "solution in it", tenthLitre))
	lastsLaw   = law("t", days, "R/u", "an inequality solved", working.Letter("R", "water to spare", tenthLitre), working.Letter("u", "used in a day", useKind))
	thirstyLaw = law("t", days, "R/(1.3*u)", "an inequality solved", working.Letter("R", "water to spare", tenthLitre), working.Letter("u", "used in a day", useKind))
	tenfoldLaw = law("f", plain("", 1), "10^(a-b)", "the pH scale: a step of one is a factor of ten", working.Letter("a", "the higher pH", number), working.Letter("b", "the lower pH", number))
	energyLaw  = law("E", energy, "P*t", "energy is power times time", working.Letter("P", "power", quantity.Power), working.Letter("t", "time", hours))
	weekLaw    = law("W", energy, "7*E", arithmetic, working.Letter("E", "energy of a day", energy))
	costLaw    = law("C", plain("", 2), "p*k", "price times amount", working.Letter("p", "price of a kilowatt hour", number), working.Letter("k", "kilowatt hours", number))
)

// drunk is how much water a tub used, over how many days: from two levels of the
// logbook with what was poured in between, else made up.
func (w *bench) drunk() (water, over working.Number, ok bool) {
	if s, have := w.fieldSeries("level", 2, 12); have {
		for i := len(s.data) - 1; i > 0; i-- {
			poured, known := w.between(s.data[i-1], s.data[i])
			if p := w.in(tenthLitre, quantity.Litre.Base(poured)); known && s.data[i-1].value+p > s.data[i].value {
				w.only(s.data[i-1], s.data[i])
				water, over = w.drunkBetween(s.data[i-1], s.data[i], quantity.Litre.Base(poured))
				return water, over, true
			}
		}
	}
	w.out.Odd = nil
	w.fromPlanAlone()
	if w.t.SolutionL <= 0 {
		return water, over, false
	}
	n := w.pick(3, 7)
	water = w.invent("used", "water used", "W", tenthLitre, w.t.SolutionL.Base()*float64(w.pick(2, 4)*n)/100)
	over = w.invent("time", "days", "t", days, float64(n)*86400)
	w.tell("The plants of %s use %s in %s.", w.t.Name, w.says(water), dayCount(float64(n)))
	return water, over, true
}

// drunkBetween asks for the water used from one level to a later one.
func (w *bench) drunkBetween(a, b datum, poured float64) (water, over working.Number) {
	w.out.From = fmt.Sprintf("%s, %s to %s.", fromLog, a.on, b.on)
	unit := tenthLitre.Unit(w.t.System)
	from, to := w.logged("start", "water at the start", "a", tenthLitre, unit.Base(a.value), a.on), w.logged("end", "water at the end", "b", tenthLitre, unit.Base(b.value), b.on)
	over = w.logged("time", "days between", "t", days, (b.day-a.day)*86400, b.on)
	w.tell("On %s there were %s in %s. On %s there were %s. That is %s later.", a.on, w.says(from), w.t.Name, b.on, w.says(to), dayCount(b.day-a.day))
	if poured > 0 {
		in := w.logged("poured", "poured in between", "p", tenthLitre, poured, b.on)
		w.tell("In between, %s were poured in.", w.says(in))
		water = w.work(usedMore, tenthLitre, "used", "water used", from, in, to)
	} else {
		water = w.work(usedLaw, tenthLitre, "used", "water used", from, to)
	}
	w.ask("How much water was used?", water)
	return w.again(water), over
}

func dayCount(n float64) string { return have(n, "day", "days") }

func rate(w *bench) {
	water, over, ok := w.drunk()
	if !ok || w.t.Plants < 1 {
		w.without("How much the tub holds, or how many plants it has, is not known.")
		return
	}
	n := w.count("plants", "plants", "n", w.t.Plants, "the plan")
	w.tell("%s in the tub.", capitalHave(n.Base))
	day := w.work(ratioLaw, useKind, "rate", "used in a day", water, over)
	w.ask("How much is that in one day?", day)
	w.ask("How much is that for one plant in one day?", w.work(eachLaw, useKind.WithDecimals(3, 4), "each", "used by a plant in a day", w.again(day), n))
	w.out.Talk = "Would you expect the same rate next month? Why?"
	w.out.TalkKey = "No. Bigger leaves use more. So do warm, dry and bright days."
}

func capitalHave(n float64) string {
	if n == 1 {
		return "There is 1 plant"
	}
	return fmt.Sprintf("There are %.0f plants", n)
}

// doseOf is the maker's dose in the plan, else one made up.
func (w *bench) doseOf() working.Number {
	if w.t.Dose != nil {
		n := w.plan("dose", "dose", "d", plain("mL/L", 1), w.t.Dose.MLPerL)
		w.tell("The label of %s says %s.", w.t.Dose.Name, w.says(n))
		return n
	}
	n := w.invent("dose", "dose", "d", plain("mL/L", 1), oneOf(w, 2, 2.5, 3, 4, 5))
	w.tell("A made up label says %s: so many millilitres of plant food for one litre of water.", w.says(n))
	return n
}

// adultsOnly is the caution of each sheet about doses.
const adultsOnly = "A sum on paper. Plant food from the bottle, acid and bleach are for adults."

func dose(w *bench) {
	if w.t.SolutionL <= 0 {
		w.without("How much the tub holds is not known.")
		return
	}
	w.out.Care = []string{adultsOnly}
	d := w.doseOf()
	v := w.plan("water", "water in the tub", "V", plain("L", 1), float64(w.t.SolutionL))
	bottle := w.invent("bottle", "one bottle", "B", plain("mL", 0), oneOf(w, 250.0, 500, 750, 1000))
	w.tell("%s holds %s. The bottle holds %s.", w.t.Name, w.says(v), w.says(bottle))
	one := w.work(doseLaw, plain("mL", 0), "filling", "for one filling", d, v)
	w.ask("How many millilitres does the whole tub need?", one)
	w.ask("How many times can the tub be filled from one bottle?", w.work(dosesLaw, whole, "fillings", "fillings", bottle, w.again(one))).Noun = "times"
	w.out.Talk = "What could go wrong if we double the dose?"
	w.out.TalkKey = "Too much salt draws water out of the roots. Leaf edges burn."
}

func doseTable(w *bench) {
	if w.t.SolutionL <= 0 {
		w.without("How much the tub holds is not known.")
		return
	}
	w.out.Care = []string{adultsOnly}
	d := w.doseOf()
	t := &Table{Caption: "The dose table", Heads: []string{"line", "water, L (x)", "dose, mL (y)"}}
	g := &Graph{Title: "Dose against water"}
	amounts := []float64{5, 10, 20, quantity.Round(float64(w.t.SolutionL), 1)}
	if w.Seed%2 == 0 {
		amounts = []float64{4, 8, 12, quantity.Round(float64(w.t.SolutionL), 1)}
	}
	var steps []working.Number
	for i, a := range amounts {
		v := w.number("water", fmt.Sprintf("water of line %d", i+1), "V", plain("L", 1), a, "the table")
		m := w.work(doseLaw, plain("mL", 1), fmt.Sprintf("dose_%d", i+1), fmt.Sprintf("line %d", i+1), d, v)
		shown := m.Show(w.t.System)
		t.Rows = append(t.Rows, []Cell{{Text: fmt.Sprint(i + 1)}, {Text: quantity.FormatNumber(a, 1)}, {Text: quantity.FormatNumber(shown.Value, 1), Asked: true}})
		g.Points = append(g.Points, Point{X: a, Y: shown.Value})
		steps = append(steps, m)
	}
	g.X, g.Y = axis("water", "L", top([]float64{20, amounts[3]}), 12), axis("dose", "mL", top([]float64{steps[2].Show(w.t.System).Value, steps[3].Show(w.t.System).Value}), 12)
	g.Line = &[2]float64{0, d.Base}
	w.out.Table, w.out.Graph = t, g
	w.ask("Work out each line and fill in the table.", steps...)
	w.ask(w.drawing("Draw the points. Lay a ruler on them.", "Look at the points. Lay a ruler on them.")).Says = "They lie on a straight line through 0."
	q := w.ask("Is the dose proportional to the water? Say how you know.")
	q.Lines, q.Says = 2, "Yes: the dose divided by the water is the same in each line, "+w.says(d)+"."
	w.out.Talk = "What does the slope of the line stand for?"
	w.out.TalkKey = "It is the dose for one litre."
}

func seeds(w *bench) {
	p := w.t.Germinate
	if !(p > 0 && p <= 1) {
		w.without("How much of the seed comes up is not known.")
		return
	}
	sown := oneOf(w, 20, 25, 40, 50)
	up := int(math.Round(p*float64(sown))) - w.pick(0, 2)
	up = max(up, 1)
	got := max(up-w.pick(1, 3), 0)
	s, g := w.invent("sown", "seeds sown", "s", whole, float64(sown)), w.invent("up", "seeds that came up", "g", whole, float64(up))
	h := w.invent("harvested", "plants harvested", "h", whole, float64(got))
	wanted := max(w.t.Plants, 4)
	n := w.count("wanted", "plants wanted", "n", wanted, "the plan")
	w.tell("A class sowed %s. %s came up. %s were harvested. We want %s for %s.", have(s.Base, "seed", "seeds"), w.says(g), w.says(h), have(n.Base, "plant", "plants"), w.t.Name)
	share := w.work(sproutLaw, percent, "share", "came up", g, s)
	w.ask("What percent of the seeds came up?", share)
	w.ask("What percent of the seeds became a harvest?", w.work(cropShare, percent, "crop", "harvested of those sown", h, s))
	w.ask("At the share that came up, how many seeds must we sow? Round up.", w.work(sowLaw, whole, "to_sow", "seeds to sow", n, w.again(share))).Noun = "seeds"
	w.out.Talk = "Why do we round up and not down?"
	w.out.TalkKey = fmt.Sprintf("Rounding down leaves us short. Even so it is a guess: the packet or the trade says that about %s of such seed comes up.", w.show(percent, p))
}

func phStep(w *bench) {
	s, ok := w.fieldSeries("pH", 2, mostPoints)
	var high, low working.Number
	if ok {
		a, b := s.data[0], s.data[0]
		for _, d := range s.data {
			if d.value > a.value {
				a = d
			}
			if d.value < b.value {
				b = d
			}
		}
		ok = a.value > b.value
		if ok {
			w.fromLogbook(s)
			w.only(a, b)
			high, low = w.logged("higher", "the higher pH", "a", s.kind, a.value, a.on), w.logged("lower", "the lower pH", "b", s.kind, b.value, b.on)
			w.tell("The highest pH in the logbook is %s, on %s. The lowest is %s, on %s.", w.says(high), a.on, w.says(low), b.on)
		}
	}
	if !ok {
		w.out.Odd = nil
		w.fromPlanAlone()
		low = w.invent("lower", "the lower pH", "b", plain("", 1), 5.5+float64(w.pick(0, 5))/10)
		high = w.invent("higher", "the higher pH", "a", plain("", 1), low.Base+float64(w.pick(4, 20))/10)
		w.tell("One tub reads pH %s. Another reads pH %s.", w.says(high), w.says(low))
	}
	w.tell("One step on the pH scale is a factor of ten in acidity. A lower pH is more acid.")
	w.ask("How many times as acid is the lower one?", w.work(tenfoldLaw, plain("", 1), "factor", "times as acid", high, low)).Noun = "times"
	w.ask("And if they were two whole steps apart?", w.work(tenfoldLaw, plain("", 0), "two_steps", "times as acid", w.number("two", "a higher pH", "a", plain("", 0), 7, "an example"), w.number("two_below", "a lower pH", "b", plain("", 0), 5, "an example"))).Noun = "times"
	w.out.Talk = "Why is the mean of two pH readings a poor measure of how acid the mix of both is?"
	w.out.TalkKey = "Acidity goes by factors, and in real water the buffering decides. Mix and measure."
}

func lampEnergy(w *bench) {
	l := w.t.Lamp
	if l == nil || l.Watts <= 0 || l.On == l.Off {
		l = &Lamp{On: 6 * 60, Off: 60 * w.pick(20, 22), Watts: float64(5 * w.pick(6, 14))}
		w.made = true
	}
	lit := (l.Off - l.On + 1440) % 1440
	if w.Seed%2 == 0 {
		lit = max(lit-60*w.pick(1, 4), 60)
		w.made = true
	}
	p, t := w.plan("power", "power of the lamp", "P", quantity.Power, quantity.Watt.Base(l.Watts)), w.plan("lit", "hours lit", "t", hours, float64(lit)*60)
	w.tell("The lamp takes %s and is lit for %s a day.", w.says(p), w.says(t))
	day := w.work(energyLaw, energy, "day", "energy of a day", p, t)
	w.ask("How many kilowatt hours does it use in a day? 1 kWh is 1000 W for an hour.", day)
	week := w.work(weekLaw, energy, "week", "energy of a week", w.again(day))
	w.ask("How many in seven days?", week)
	price := plain(w.t.Currency, 2)
	var k working.Number
	if w.t.Price > 0 {
		k = w.plan("price", "price of a kilowatt hour", "p", price, w.t.Price)
	} else {
		k = w.invent("price", "price of a kilowatt hour", "p", price, float64(w.pick(15, 40))/100)
	}
	w.tell("A kilowatt hour costs %s.", w.says(k))
	w.ask("What does a week of light cost?", w.work(costLaw, price, "cost", "cost of a week", k, w.number("week_number", "kilowatt hours", "k", plain("kWh", 2), w.in(energy, week.Base), "the answer before")))
	w.out.Talk = "What would you switch off first to save, and what would the plants say?"
	w.out.TalkKey = "Fewer hours of light save power and slow growth. Look at the cost of a plant, not of an hour."
}
