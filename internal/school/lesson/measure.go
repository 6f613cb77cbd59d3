package lesson

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

var clock = plain("min", 0)

// Laws of the sheets on time, sums and units.
var (
	clockLaw   = law("t", clock, "(h*60+m)-(g*60+k)", "60 minutes make an hour", working.Letter("h", "hour it ends", whole), working.Letter("m", "minutes after it", whole), working.Letter("g", "hour it begins", whole), working.Letter("k", "minutes after it", whole))
	clockOver  = law("t", clock, "(h*60+m)+24*60-(g*60+k)", "60 minutes make an hour, 24 hours a day", working.Letter("h", "hour it ends", whole), working.Letter("m", "minutes after it", whole), working.Letter("g", "hour it begins", whole), working.Letter("k", "minutes after it", whole))
	hoursLaw   = law("H", plain("h", 2), "t/60", "60 minutes make an hour", working.Letter("t", "minutes", clock))
	darkLaw    = law("D", clock, "24*60-t", "24 hours make a day", working.Letter("t", "minutes", clock))
	fewerLaw   = law("D", tenthLitre, "V-S", arithmetic, working.Letter("V", "what the tub holds", tenthLitre), working.Letter("S", "what was poured in", tenthLitre))
	moreLaw    = law("D", tenthLitre, "S-V", arithmetic, working.Letter("S", "what was poured in", tenthLitre), working.Letter("V", "what the tub holds", tenthLitre))
	areaLaw    = law("A", quantity.Area, "l*w", geometry, working.Letter("l", "length", quantity.Length), working.Letter("w", "width", quantity.Length))
	roundLaw   = law("P", quantity.Length, "2*(l+w)", geometry, working.Letter("l", "length", quantity.Length), working.Letter("w", "width", quantity.Length))
	sameVolume = law("W", quantity.Volume, "V", "NIST Handbook 44, appendix C, from memory: units of volume", working.Letter("V", "what the tub holds", quantity.Volume))
	doseLaw    = law("M", number, "d*V", "the maker's dose", working.Letter("d", "dose in mL for a litre", number), working.Letter("V", "water in litres", number))
	dosesLaw   = law("n", whole, "floor(B/M)", "division", working.Letter("B", "one bottle in mL", number), working.Letter("M", "one filling in mL", number))
)

func lightHours(w *bench) {
	on, off, thing := w.t.School[0], w.t.School[1], "School"
	begin, ended := "School begins at %s.", "It ends at %s."
	if w.t.Lamp != nil && w.t.Lamp.On != w.t.Lamp.Off {
		on, off, thing = w.t.Lamp.On, w.t.Lamp.Off, "The lamp"
		begin, ended = "The lamp comes on at %s.", "It goes off at %s."
	} else {
		begin = "The plan has no lamp times. So we take a school day. " + begin
	}
	if on == off {
		w.without("The plan says no times of a lamp or of school.")
		return
	}
	if w.Seed%3 == 2 {
		shift := 5 * w.pick(1, 11)
		on, off = (on+shift)%1440, off%1440
		begin += " That is later than in the plan."
		w.made = true
	}
	at := func(key, name, symbol string, v int) working.Number { return w.count(key, name, symbol, v, "the plan") }
	in := []working.Number{at("end_hour", "hour it ends", "h", off/60), at("end_minute", "minutes after it", "m", off%60), at("from_hour", "hour it begins", "g", on/60), at("from_minute", "minutes after it", "k", on%60)}
	w.tell(begin, clockWords(on))
	w.tell(ended, clockWords(off))
	l := clockLaw
	if off <= on {
		l = clockOver
	}
	time := w.work(l, clock, "minutes", "how long", in...)
	w.ask(thing+" is on for how many minutes?", time)
	if thing == "School" {
		w.out.Questions[0].Text = "How many minutes is that?"
	}
	taken := w.again(time)
	w.ask("How many hours is that?", w.work(hoursLaw, plain("h", 2), "hours", "how long in hours", taken))
	w.ask("A day has 24 hours. How many minutes of the day are left?", w.work(darkLaw, clock, "dark", "the rest of the day", taken))
	w.out.Talk = "Why does a plant rest in the dark?"
	w.out.TalkKey = "With no light it makes no new food. It uses what it made by day."
}

func clockWords(m int) string { return fmt.Sprintf("%02d:%02d", m/60, m%60) }

// pourings are what was poured in, by day, the last ones.
func (w *bench) pourings(most int) (out []datum) {
	for _, e := range w.t.Entries {
		if v := e.Poured(); v > 0 && !e.Doubts(reading.FieldAdded) {
			out = append(out, datum{id: e.ID, on: dayWords(w.t.dayOf(e.At)), value: float64(v)})
		}
	}
	if len(out) > most {
		from := w.pick(0, len(out)-most)
		out = out[from : from+most]
	}
	return out
}

func addedUp(w *bench) {
	if w.t.SolutionL <= 0 {
		w.without("How much the tub holds is not known.")
		return
	}
	tub := w.plan("holds", "what the tub holds", "V", tenthLitre, w.t.SolutionL.Base())
	var in []working.Number
	poured := w.pourings(4)
	if len(poured) >= 2 {
		w.out.From = fmt.Sprintf("%s, %s to %s.", fromLog, poured[0].on, poured[len(poured)-1].on)
		for i, p := range poured {
			in = append(in, w.logged("poured", "poured in on "+p.on, fmt.Sprintf("x%d", i+1), tenthLitre, quantity.Litre.Base(p.value), p.on))
			w.tell("On %s we poured in %s.", p.on, w.says(in[i]))
		}
	} else {
		w.fromPlanAlone()
		w.tell("We fill up our tub on three days.")
		for i := range 3 {
			in = append(in, w.invent("poured", "poured in", fmt.Sprintf("x%d", i+1), tenthLitre, w.t.SolutionL.Base()*float64(w.pick(3, 12))/100))
			w.tell("On day %d we pour in %s.", i+1, w.says(in[i]))
		}
	}
	w.tell("%s holds %s.", w.t.Name, w.says(tub))
	total := w.work(totalLaw("S", "x", len(in), "poured in", tenthLitre), tenthLitre, "total", "poured in altogether", in...)
	w.ask("How much is that in all?", total)
	taken := w.again(total)
	if total.Base > tub.Base {
		w.ask("How much more is that than the tub holds?", w.work(moreLaw, tenthLitre, "more", "more than the tub", taken, tub))
	} else {
		w.ask("How much less is that than the tub holds?", w.work(fewerLaw, tenthLitre, "less", "less than the tub", tub, taken))
	}
	w.out.Talk = "Where did the water go that we put back?"
	w.out.TalkKey = "Most went up through the plants and out of the leaves. A little dried up through gaps in the lid."
}

// barData are the bars of a graph: of the logbook, else water at depths.
func (w *bench) barData() (in []working.Number, names []string, y Axis) {
	if s, ok := w.longest(4, 6, false, reading.FieldHeight, reading.FieldLevel); ok {
		w.fromLogbook(s)
		w.tell("The bars show %s.", s.name)
		for i, d := range s.data {
			in = append(in, w.logged("bar", s.short+" on "+d.on, fmt.Sprintf("x%d", i+1), s.kind, d.value, d.on))
			names = append(names, d.short())
		}
		return in, names, axis(s.short, s.kind.Metric.Symbol, top(s.values()), 12)
	}
	w.fromPlanAlone()
	if w.t.LitresAt == nil || w.t.Fill <= 0 {
		return nil, nil, y
	}
	step := 50.0
	if !w.metric() {
		step = 50.8
	}
	if w.Seed%2 == 0 {
		step *= 0.6
	}
	kind := plain(w.unit(tenthLitre), 1)
	w.tell("The bars show how much water %s holds when it stands so deep.", w.t.Name)
	var values []float64
	for i := 1; i <= 5 && float64(i)*step <= w.t.Height; i++ {
		deep := float64(i) * step
		v := w.in(tenthLitre, w.t.LitresAt(deep).Base())
		in = append(in, w.number("bar", "water at "+w.show(tenthLong, deep), fmt.Sprintf("x%d", i), kind, v, "the tub's shape"))
		names = append(names, w.show(tenthLong, deep))
		values = append(values, v)
	}
	return in, names, axis("water", kind.Metric.Symbol, top(values), 12)
}

func top(v []float64) float64 {
	most := 0.0
	for _, x := range v {
		most = math.Max(most, x)
	}
	return most
}

func bars(w *bench) {
	in, names, y := w.barData()
	if len(in) < 3 {
		w.without("There are fewer than three readings, and the tub's shape is not known.")
		return
	}
	g := &Graph{Title: "Bar graph", Bars: true, X: Axis{Name: "", To: float64(len(in)), Step: 1}, Y: y}
	t := &Table{Caption: "What the bars show", Heads: []string{"bar", "height, " + y.Unit}}
	if y.Unit == "" {
		t.Heads[1] = "height"
	}
	low, high := 0, 0
	for i, n := range in {
		g.Points = append(g.Points, Point{X: float64(i) + 0.5, Y: n.Base, Label: names[i]})
		t.Rows = append(t.Rows, []Cell{{Text: names[i]}, {Text: quantity.FormatNumber(n.Base, n.Kind.Decimals[0])}})
		if n.Base < in[low].Base {
			low = i
		}
		if n.Base > in[high].Base {
			high = i
		}
	}
	w.out.Graph, w.out.Table = g, t
	w.ask(w.drawing("Draw a bar for each line of the table.", "Find the bar for each line of the table.")).Says = "The bars reach the numbers of the table."
	kind := in[0].Kind
	w.ask(fmt.Sprintf("How much more is the highest bar, %s, than the lowest, %s?", names[high], names[low]), w.work(tallerLaw, kind, "difference", "highest less lowest", in[high], in[low]))
	a, b := 0, len(in)-1
	if in[b].Base < in[a].Base {
		a, b = b, a
	}
	if [2]int{a, b} != [2]int{low, high} && in[b].Base > in[a].Base {
		w.ask(fmt.Sprintf("How much more is the bar %s than the bar %s?", names[b], names[a]), w.work(tallerLaw, kind, "ends", "one end less the other", in[b], in[a]))
	}
	w.out.Talk = "What does one step up the side of the graph stand for?"
	w.out.TalkKey = strings.TrimRight("One step is "+quantity.FormatNumber(y.Step, decimalsOf(y.Step))+" "+y.Unit, " ") + "."
}

func decimalsOf(step float64) int {
	for d := range 4 {
		if v := step * math.Pow(10, float64(d)); math.Abs(v-math.Round(v)) < 1e-9 {
			return d
		}
	}
	return 4
}

func convert(w *bench) {
	if w.t.SolutionL <= 0 {
		w.without("How much the tub holds is not known.")
		return
	}
	share := 1.0
	if w.Seed%2 == 0 {
		share = 0.5
	}
	v := w.plan("holds", "what the tub holds", "V", tenthLitre, w.t.SolutionL.Base()*share)
	if share == 1 {
		w.tell("%s holds %s.", w.t.Name, w.says(v))
	} else {
		w.tell("Half of what %s holds is %s.", w.t.Name, w.says(v))
	}
	if w.metric() {
		w.tell("1 L is 1000 mL. 1 gal is 3.785411784 L. 1 cup is 0.2365882365 L.")
		w.ask("How many millilitres are in it?", w.work(sameVolume, millis, "millilitres", "in millilitres", v))
		w.ask("How many gallons are in it?", w.work(sameVolume, gallons, "gallons", "in gallons", v))
	} else {
		w.tell("1 gal is 3.785411784 L, or 16 cups. 1 L is 1000 mL.")
		w.ask("How many litres are in it?", w.work(sameVolume, litres, "litres", "in litres", v))
		w.ask("How many millilitres are in it?", w.work(sameVolume, millis, "millilitres", "in millilitres", v))
	}
	w.ask("How many cups are in it?", w.work(sameVolume, cups, "cups", "in cups", v))
	w.out.Talk = "Which unit would you use for a spoon, a tub and a pond?"
	w.out.TalkKey = "Small units for small things: millilitres for a spoon, litres or gallons for a tub, cubic metres for a pond."
}
