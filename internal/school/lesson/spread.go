package lesson

import (
	"fmt"
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// readings are the numbers of a sheet of statistics.
type readings struct {
	what  string // 'pH of the water'
	kind  quantity.Kind
	n     []working.Number // as told
	names []string         // the day, or who measured
	odd   []bool
	first string // head of the column that names them
}

// gathered are readings of the logbook; else ten tries at measuring one length,
// made up by the seed around the length in the plan.
func (w *bench) gathered() readings {
	if s, ok := w.longest(leastForFences, mostPoints, true, reading.FieldPH, reading.FieldWater, reading.FieldEC, reading.FieldLevel); ok {
		w.fromLogbook(s)
		out := readings{what: s.name, kind: s.kind, first: "day"}
		for i, d := range s.data {
			out.n = append(out.n, w.logged("reading", s.short+" on "+d.on, fmt.Sprintf("x%d", i+1), s.kind, d.value, d.on))
			out.names, out.odd = append(out.names, d.on), append(out.odd, d.odd != "")
		}
		return out
	}
	w.fromPlanAlone()
	unit, scale := "cm", quantity.Centimetre
	if !w.metric() {
		unit, scale = "in", quantity.Inch
	}
	kind := plain(unit, 1)
	length := max(w.t.Lid.Long, w.t.Lid.Wide)
	out := readings{what: "the length of the lid, as nine teams measured it", kind: kind, first: "team"}
	for i := range 9 {
		v := scale.From(length) + float64(w.pick(-4, 4))/10
		name := fmt.Sprintf("team %d", i+1)
		if i == 6 {
			v += 10 // a tape read from its second mark
		}
		out.n = append(out.n, w.invent("reading", name, fmt.Sprintf("x%d", i+1), kind, v))
		out.names, out.odd = append(out.names, name), append(out.odd, i == 6)
	}
	return out
}

func (r readings) table() *Table {
	head := "reading"
	if u := r.kind.Metric.Symbol; u != "" {
		head += ", " + u
	}
	t := &Table{Caption: "The readings", Heads: []string{r.first, head}}
	for i, n := range r.n {
		t.Rows = append(t.Rows, []Cell{{Text: r.names[i]}, {Text: quantity.FormatNumber(n.Base, r.kind.Decimals[0])}})
	}
	return t
}

// inOrder are the numbers from the least up, with their letters as told.
func inOrder(n []working.Number) []working.Number {
	out := slices.Clone(n)
	slices.SortStableFunc(out, func(a, b working.Number) int {
		switch {
		case a.Base < b.Base:
			return -1
		case a.Base > b.Base:
			return 1
		}
		return 0
	})
	return out
}

// finer is a kind with one digit more.
func finer(k quantity.Kind) quantity.Kind {
	return k.WithDecimals(k.Decimals[0]+1, k.Decimals[1]+1)
}

// medianOf is the median of numbers in order.
func (w *bench) medianOf(kind quantity.Kind, key, name string, n []working.Number) working.Number {
	k := len(n) / 2
	if len(n)%2 == 1 {
		return w.work(middleLaw, finer(kind), key, name, n[k])
	}
	return w.work(betweenLaw, finer(kind), key, name, n[k-1], n[k])
}

// measures are mean, median, range and interquartile range, each a question.
func (w *bench) measures(r readings, n []working.Number, tag, add string) (mean, med working.Number) {
	o := inOrder(n)
	mean = w.work(meanLaw(len(n), r.kind), finer(r.kind), "mean"+tag, "mean"+add, n...)
	w.ask("What is the mean"+add+"? Add all, then share by how many there are.", mean)
	med = w.medianOf(r.kind, "median"+tag, "median"+add, o)
	w.ask("What is the median"+add+"? Put them in order and take the middle.", med)
	return mean, med
}

// spreadOf asks for range and quartiles.
func (w *bench) spreadOf(r readings, n []working.Number, tag, add string) (low, high working.Number) {
	o := inOrder(n)
	w.ask("What is the range"+add+", from the least to the greatest?", w.work(rangeLaw, r.kind, "range"+tag, "range"+add, o[len(o)-1], o[0]))
	l, h := o[:len(o)/2], o[(len(o)+1)/2:]
	low = w.medianOf(r.kind, "lower"+tag, "lower quartile"+add, l)
	high = w.medianOf(r.kind, "upper"+tag, "upper quartile"+add, h)
	tl, th := w.again(low), w.again(high)
	w.ask("What is the interquartile range"+add+"? The quartiles are the medians of the lower and the upper half.", low, high, w.work(quartersLaw, finer(r.kind), "iqr"+tag, "interquartile range"+add, th, tl))
	return tl, th
}

func middle(w *bench) {
	r := w.gathered()
	if len(r.n) < leastForFences-1 {
		w.without("There are too few readings, and no length to measure.")
		return
	}
	w.out.Table = r.table()
	w.tell("The table shows %s.", r.what)
	mean, med := w.measures(r, r.n, "", "")
	low, high := w.spreadOf(r, r.n, "", "")
	down := w.work(lowFence, finer(finer(r.kind)), "low_fence", "low fence", low, high)
	up := w.work(highFence, finer(finer(r.kind)), "high_fence", "high fence", low, high)
	w.ask("A reading is called odd if it lies past a fence. Where are the fences?", down, up)
	var kept []working.Number
	var past []string
	for i, n := range r.n {
		if n.Base < down.Base || n.Base > up.Base {
			past = append(past, r.names[i])
			continue
		}
		kept = append(kept, n)
	}
	q := w.ask("Which readings lie past a fence?")
	q.Lines, q.Says = 1, "None."
	if len(past) > 0 {
		q.Says = listed(past) + "."
	}
	if len(past) > 0 && len(kept) >= 3 {
		w.measures(r, kept, "_without", " without them")
	}
	if w.Band == Senior {
		m := w.again(mean)
		w.ask("What is the standard deviation of all the readings?", w.work(deviationLaw(len(r.n), r.kind), finer(r.kind), "deviation", "standard deviation", append(slices.Clone(r.n), m)...))
	}
	w.out.Talk = "Which would you report, the mean or the median? Give a reason."
	w.out.TalkKey = fmt.Sprintf("The mean is %s and the median %s. One odd reading moves the mean and hardly moves the median. If nothing is odd, both do.", w.says(mean), w.says(med))
}

// listed joins words: 'a, b and c'.
func listed(all []string) string {
	out := ""
	for i, s := range all {
		switch {
		case i == 0:
		case i == len(all)-1:
			out += " and "
		default:
			out += ", "
		}
		out += s
	}
	return out
}

// twoSets are two rows to compare: of the logbook the earlier and the later half
// of a series, else two teams' tries at one length.
func twoSets(w *bench) {
	r := w.gathered()
	half := len(r.n) / 2
	if half < 4 {
		w.without("There are too few readings, and no length to measure.")
		return
	}
	w.out.Table = r.table()
	w.tell("The table shows %s. The first %d are set A. The others are set B.", r.what, half)
	sets := []struct {
		n         []working.Number
		tag, name string
	}{{r.n[:half], "_a", " of set A"}, {r.n[half:], "_b", " of set B"}}
	var said []string
	for _, s := range sets {
		o := inOrder(s.n)
		med := w.medianOf(r.kind, "median"+s.tag, "median"+s.name, o)
		w.ask("What is the median"+s.name+"?", med)
		l, h := o[:len(o)/2], o[(len(o)+1)/2:]
		low, high := w.medianOf(r.kind, "lower"+s.tag, "lower quartile"+s.name, l), w.medianOf(r.kind, "upper"+s.tag, "upper quartile"+s.name, h)
		spread := w.work(quartersLaw, finer(r.kind), "iqr"+s.tag, "interquartile range"+s.name, w.again(high), w.again(low))
		w.ask("What are the quartiles"+s.name+", and how far are they apart?", low, high, spread)
		said = append(said, fmt.Sprintf("%s with a spread of %s", w.says(med), w.says(spread)))
	}
	q := w.ask("Draw a box plot of each set, one over the other, on one scale.")
	q.Lines, q.Says = 4, "Each box runs from the lower to the upper quartile, with a line at the median and arms to the least and the greatest."
	w.out.Talk = "Do the two sets differ? Compare how far the medians are apart with the spread."
	w.out.TalkKey = "Set A has a median of " + said[0] + ", set B of " + said[1] + ". Medians closer together than the spread say little."
}
