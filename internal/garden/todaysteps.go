package garden

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/steering"
	"rootbell/internal/science/reading"
)

// mostDue is how many things due a morning's list has room for.
const mostDue = 3

// work puts the morning together.
func (d *desk) work() {
	o := d.today
	o.Open = !o.On.Set() || d.Term.Open(o.On)
	if o.On.Set() {
		o.Next, _ = d.Term.Next(o.On)
	}
	o.Back, o.Ahead = d.back(), d.ahead()
	var tubs []*deskTub
	for i := range d.Tubs {
		d.Tubs[i].Today = nil
		if k := d.tub(i); k != nil {
			k.advise()
			k.out.known = k.troubleKnown()
			if o.Ahead != nil {
				k.last(o.Ahead)
			}
			d.Tubs[i].Today = k.out
			tubs = append(tubs, k)
		}
	}
	o.Wrong, o.Donts = d.wrong(tubs), d.donts()
	d.steps(tubs)
}

// steps are the morning's in its order. On a closed day there is only looking.
func (d *desk) steps(tubs []*deskTub) {
	o := d.today
	o.Steps = append(o.Steps, d.look(tubs))
	if !o.Open || len(tubs) == 0 {
		return
	}
	if s, ok := d.level(tubs); ok {
		o.Steps = append(o.Steps, s)
	}
	due := d.grouped(tubs)
	measure, measured := d.measure(tubs, due)
	o.Jobs = len(due)
	if measured {
		o.Jobs++
	}
	o.Steps = append(o.Steps, due[:min(len(due), mostDue)]...)
	o.More = due[min(len(due), mostDue):]
	if measured {
		o.Steps = append(o.Steps, measure)
	}
	o.Steps = append(o.Steps, Step{Kind: StepWrite, Do: steering.Nothing, Head: "Write it down. Do nothing more."})
}

func (d *desk) look(tubs []*deskTub) Step {
	head := "Look"
	var asks []string
	if slices.ContainsFunc(tubs, func(k *deskTub) bool { return !k.t.setup.Still }) {
		head = "Look and listen"
		asks = append(asks, "Bubbles in "+those(aerated(tubs), len(tubs))+"?")
	}
	if len(d.Plan.Lamps) > 0 {
		asks = append(asks, "Lamp on?")
	}
	return Step{Kind: StepLook, Head: head + ". Floor dry? " + strings.Join(asks, " "), Lines: []Line{{Why: "If not: see 'Something is wrong'."}}}
}

func aerated(tubs []*deskTub) []string {
	var out []string
	for _, k := range tubs {
		if !k.t.setup.Still {
			out = append(out, k.t.name)
		}
	}
	return out
}

// those names some of so many tubs.
func those(names []string, all int) string {
	switch {
	case len(names) == all && all == 2:
		return "both tubs"
	case len(names) == all && all > 2:
		return "all tubs"
	}
	return listed(names)
}

func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// level is reading the line of each tub that nobody has read today. A tub of
// which nothing newer is known gets the rule of its line.
func (d *desk) level(tubs []*deskTub) (Step, bool) {
	s := Step{Kind: StepLevel}
	var names []string
	for _, k := range tubs {
		if k.st.NowL > 0 && k.readOn == d.today.On {
			continue
		}
		names = append(names, k.t.name)
		line := Line{Tub: k.t.name, Act: "line at " + k.out.Line}
		if k.st.NowL > 0 {
			line.Why = k.out.Level + " as read on " + k.out.ReadOn + "."
		} else {
			line.Why = "Not measured yet."
		}
		if k.out.TopUp != "" && (k.st.NowL <= 0 || d.today.On.Since(k.readOn) > 1) && !k.st.Closing {
			line.How = "at " + k.out.TopUp + " or lower fill it up to the line, at most a quarter of the tub straight from the tap in a day"
		}
		s.Lines = append(s.Lines, line)
	}
	s.Head = "Read the level of " + those(names, len(tubs)) + "."
	return s, len(names) > 0
}

// grouped is what is due at the tubs: the same thing at several tubs is one
// step. Nothing that is due is left out.
func (d *desk) grouped(tubs []*deskTub) []Step {
	var all []steering.Advice
	for _, k := range tubs {
		all = append(all, k.due...)
	}
	var order []string
	kind := func(a steering.Advice) string {
		if a.Do == steering.Measure || a.Do == steering.ReadAgain || a.Do == steering.Wait || a.Do == steering.CannotReach {
			return string(a.Do) + a.Code
		}
		return string(a.Do)
	}
	for _, a := range steering.InOrder(all...) {
		if key := kind(a); !slices.Contains(order, key) {
			order = append(order, key)
		}
	}
	var out []Step
	for _, key := range order {
		s := Step{Kind: StepDo}
		var names []string
		for _, k := range tubs {
			for _, a := range k.due {
				if a.Do == steering.Nothing || kind(a) != key {
					continue
				}
				s.Do, s.Code = a.Do, a.Code
				names = append(names, k.t.name)
				s.Lines = append(s.Lines, k.told(a))
				d.today.Mixed = d.today.Mixed || a.Of == steering.Feed || a.Of == steering.HalfFeed || a.Of == steering.Refill || steering.Has(a.Rest)
			}
		}
		s.Head = headOf(s.Do, s.Code, those(names, len(tubs)))
		out = append(out, s)
	}
	return out
}

// headOf says in a few words what a step is.
func headOf(do steering.Do, code, tubs string) string {
	switch do {
	case steering.SeekLeak:
		return "Look for a leak at " + tubs + " before anything else."
	case steering.TakeOut:
		return "Take water out of " + tubs + "."
	case steering.Wait:
		if code == "poured-enough" {
			return "Pour nothing more into " + tubs + " today."
		}
		return "Wait before measuring " + tubs + "."
	case steering.ReadAgain:
		what := "EC"
		if strings.HasPrefix(code, "ph") {
			what = "pH"
		}
		return "Stir, then read the " + what + " of " + tubs + " again."
	case steering.TopUp:
		return "Top up " + tubs + "."
	case steering.Thin:
		return "Thin " + tubs + " with water."
	case steering.Strengthen:
		return "Strengthen " + tubs + " with solution."
	case steering.AskAdult:
		return "Fetch an adult for the pH of " + tubs + "."
	case steering.ChangeOut:
		return "Change the water of " + tubs + "."
	case steering.CannotReach:
		return "Leave the EC of " + tubs + " as it is today."
	case steering.Watch:
		return "Look at the newest leaves of " + tubs + "."
	}
	return measureHead(code, tubs)
}

// measureHead says what has to be known first.
func measureHead(code, tubs string) string {
	switch code {
	case "tap-ec-unknown":
		return "Measure the EC of the tap water."
	case "feed-ec-unknown":
		return "Make up a bucket of solution and measure its EC."
	case "alkalinity-unknown":
		return "Test the alkalinity of the tap water."
	case "ec-meter-due":
		return "Check the EC meter first."
	case "ph-meter-due":
		return "Calibrate the pH meter first."
	}
	return "Find out more about " + tubs + "."
}

// told is what advice comes to at one tub.
func (k *deskTub) told(a steering.Advice) Line {
	l := Line{Tub: k.t.name, Why: a.Why, How: a.Hint}
	if l.Why == "" {
		l.Why = a.Text
	}
	pour := func() string {
		of := string(a.Of)
		return k.say(a.PourIn) + " of " + of
	}
	switch {
	case a.Code == "fill-to-line":
		l.Act = "up to the line, " + k.out.Line
	case a.Do == steering.TopUp:
		l.Act, l.Key = "pour in "+pour(), a.PourIn.Key
	case a.Do == steering.TakeOut:
		l.Act, l.Key = "take out "+k.say(a.TakeOut)+", which weighs "+k.say(a.Mass), a.TakeOut.Key
	case a.Do == steering.Thin || a.Do == steering.Strengthen:
		l.Key = a.PourIn.Key
		if steering.Has(a.TakeOut) {
			l.Act = "take out " + k.say(a.TakeOut) + " (" + k.say(a.Mass) + "), then "
		}
		l.Act += "pour in " + pour()
		if steering.Has(a.Rest) {
			l.Act += ", then " + k.say(a.Rest) + " of solution at EC " + quantity.Format(quantity.Conductivity, a.RestEC.Base(), quantity.Metric)
		}
		if steering.Has(a.After) {
			l.Why += " Expect EC " + k.say(a.After) + "."
		}
	}
	if l.Act != "" && a.Code != "fill-to-line" && k.readOn != k.today.On {
		l.Why += " As read on " + k.out.ReadOn + "."
	}
	return l
}

// measure is reading pH and EC where that is due, after all else, and not with a
// meter that nobody may believe.
func (d *desk) measure(tubs []*deskTub, due []Step) (Step, bool) {
	var names, what []string
	s := Step{Kind: StepMeasure, Do: steering.Measure}
	for _, f := range []reading.Field{reading.FieldPH, reading.FieldEC} {
		word := map[reading.Field]string{reading.FieldPH: "pH", reading.FieldEC: "EC"}[f]
		asked := false
		for _, k := range tubs {
			if !k.toMeasure(f) {
				continue
			}
			if !asked {
				asked = true
				what = append(what, word)
				if first := k.meterDue(f); first != "" {
					s.Lines = append(s.Lines, Line{Why: first})
				}
			}
			if !slices.Contains(names, k.t.name) {
				names = append(names, k.t.name)
			}
		}
	}
	if len(names) == 0 {
		return s, false
	}
	s.Head = "Then read " + listed(what) + " of " + those(names, len(tubs)) + "."
	if slices.ContainsFunc(due, func(s Step) bool {
		return s.Do == steering.Thin || s.Do == steering.Strengthen || s.Do == steering.TopUp
	}) {
		s.Head = fmt.Sprintf("Wait half an hour. Only then read %s of %s.", listed(what), those(names, len(tubs)))
	}
	return s, true
}

// toMeasure tells whether a field is due to be read at the tub: it was never
// read, or so many days ago. What the plan has nothing to read with is not due.
func (k *deskTub) toMeasure(f reading.Field) bool {
	e, read := reading.Last(k.entries, f, k.today.At)
	if with := k.measured(f); with == "none" || with == "" && !read {
		return false
	}
	for _, a := range k.due {
		if f == reading.FieldEC && (a.Do == steering.Thin || a.Do == steering.Strengthen) {
			return true // what was expected is held against what is read then
		}
		if a.Do == steering.ReadAgain && strings.HasPrefix(a.Code, string(f)) || a.Do == steering.ChangeOut || a.Do == steering.SeekLeak {
			return false
		}
	}
	return !read || k.today.On.Since(k.dayOf(e.At)) >= steering.CheckDays(f)
}
