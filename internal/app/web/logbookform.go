package web

import (
	"net/url"
	"slices"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/reading"
)

// logForm is the form of a reading: what was typed, and what is said of it.
type logForm struct {
	*logbook
	values    url.Values
	last      []reading.Entry // that stand, of the tub
	problems  []reading.Problem
	questions []reading.Question
	says      string // above the form
	gone      bool   // the reading that is corrected has been taken out
}

// The ways in which a level is told.
const (
	byLitres = "litres"
	byDepth  = "depth"
	byFilled = "filled"
)

var levelHeads = map[string]string{byLitres: "level", byDepth: "depth", byFilled: "filled to the line with"}

// logHeads are the fields of the form that are a column of the logbook, with
// the kind of those that have a unit.
var logHeads = []struct {
	name, head string
	kind       quantity.Kind
}{
	{"tub", "tub", quantity.Count},
	{"by", "by", quantity.Count},
	{"ph", "pH", quantity.Count},
	{"ph-with", "pH read with", quantity.Count},
	{"ph-step", "pH step", quantity.Count},
	{"ph-calibrated", "pH calibrated", quantity.Count},
	{"ec", "EC", quantity.Count},
	{"ec-with", "EC read with", quantity.Count},
	{"ec-scale", "EC scale", quantity.Count},
	{"ec-step", "EC step", quantity.Count},
	{"ec-checked", "EC checked", quantity.Count},
	{"ec-raw", "EC not at 25 °C", quantity.Count},
	{"water", "water", quantity.Temperature},
	{"added", "added", quantity.Volume},
	{"height", "height", quantity.Length},
	{"leaves", "leaves", quantity.Count},
	{"counted", string(reading.FieldLeaves), quantity.Count},
	{"picked", string(reading.FieldPicked), quantity.Count},
	{"weigh", string(reading.FieldWeigh), quantity.SmallMass},
	{"roots", "roots", quantity.Count},
	{"roots-smell", "roots smell", quantity.Count},
	{"seen", "seen", quantity.Count},
	{"note", "note", quantity.Count},
	{"id", "id", quantity.Count},
	{"corrects", "corrects", quantity.Count},
}

// row reads the row that was typed; there is the one that is kept under its id
// already, if any.
func (f *logForm) row(there store.Written) reading.Row {
	var entered []reading.Entered
	add := func(head string, kind quantity.Kind, text string) {
		if unit := kind.Unit(f.Plan.Units).Symbol; unit != "" {
			head += " (" + unit + ")"
		}
		entered = append(entered, reading.Entered{Head: head, Text: text})
	}
	for _, h := range logHeads {
		if f.counts(h.name) {
			add(h.head, h.kind, f.values.Get(h.name))
		}
	}
	if way := f.values.Get("level-way"); levelHeads[way] != "" {
		kind := quantity.Volume
		if way == byDepth {
			kind = quantity.Length
		}
		add(levelHeads[way], kind, f.values.Get("level"))
	}
	add("done", quantity.Count, strings.Join(f.values["done"], ";"))
	add("EC of what was added", quantity.Count, f.addedEC())
	add("moment", quantity.Count, f.moment(there))
	row, problems := reading.FromForm(entered, reading.Import{Zone: f.Now.Location(), By: f.teams()})
	f.problems = problems
	for _, p := range row.Check(f.teams()) { // what else is wrong is told at once
		told := slices.ContainsFunc(f.problems, func(q reading.Problem) bool { return q.Field == p.Field })
		if !told {
			f.problems = append(f.problems, p)
		}
	}
	if row.Tub != "" && !slices.ContainsFunc(f.Plan.Tubs, func(t plan.Tub) bool { return reading.SameTub(t.Name, row.Tub) }) {
		f.problems = append(f.problems, reading.Problem{Field: reading.FieldTub, What: "the plan has no tub of that name", Hint: "choose the tub"})
	}
	return row
}

// counts tells whether a field is part of the reading: what is said of an
// instrument is not, where nothing was read with it.
func (f *logForm) counts(name string) bool {
	of, detail, ok := strings.Cut(name, "-")
	if !ok || of != "ph" && of != "ec" {
		return true
	}
	meter := f.values.Get(of+"-with") == string(reading.Meter)
	switch {
	case strings.TrimSpace(f.values.Get(of)) == "":
		return false
	case detail == "step":
		return !meter
	case detail == "calibrated" || detail == "checked":
		return meter
	}
	return true
}

// addedEC is the EC of what was poured in, which is read on the same meter.
func (f *logForm) addedEC() string {
	text := strings.TrimSpace(f.values.Get("added-ec"))
	scale, ok := reading.ParseScale(f.values.Get("ec-scale"))
	if !ok || text == "" || hasUnit(text) {
		return text
	}
	read, err := reading.ParseEC(text, scale)
	if err != nil {
		return text
	}
	return strconv.FormatFloat(float64(read.Low), 'f', -1, 64)
}

// moment is when it was read: as typed, else as the device knew it, else now.
// An entry that is sent again without any has the moment of the first time.
func (f *logForm) moment(there store.Written) string {
	if typed := strings.TrimSpace(f.values.Get("moment")); typed != "" {
		return typed + f.values.Get("moment-offset")
	}
	if at := f.values.Get("at"); at != "" {
		return at
	}
	at := f.Now
	if there.ID != "" {
		at = there.At
	}
	return at.Truncate(time.Millisecond).Format("2006-01-02T15:04:05.999Z07:00")
}

// correct fills the form with a reading that is to be corrected.
func (f *logForm) correct(was store.Written) {
	row := was.Row
	f.fill(row)
	f.values.Set("corrects", row.ID)
	f.gone = row.Withdrawn
	for i, t := range f.Plan.Tubs {
		if reading.SameTub(t.Name, row.Tub) {
			f.tub = i
		}
	}
}

// correctTaken turns an entry, under whose id another one is kept already, into
// a correction of that one.
func (f *logForm) correctTaken(there store.Written) {
	f.values.Set("corrects", there.ID)
	f.values.Set("id", newEntryID())
	f.says = "This entry is in the book already, with other figures, written down at " + there.Recorded.In(f.Now.Location()).Format("15:04") + ". Press the button again to write these as its correction."
}

// fill puts a row's values into the form.
func (f *logForm) fill(r reading.Row) {
	set := func(name, text string) {
		if text != "" {
			f.values.Set(name, text)
		}
	}
	set("tub", r.Tub)
	set("by", r.By)
	set("moment", r.At.In(f.Now.Location()).Format("2006-01-02T15:04"))
	set("ph", phText(r.PH.Read))
	set("ph-with", string(r.PH.With))
	set("ph-step", stepText(float64(r.PH.Step)))
	set("ph-calibrated", dayText(r.PH.Calibrated))
	set("ec", ecText(r.EC))
	set("ec-with", string(r.EC.With))
	set("ec-scale", string(r.EC.Scale))
	set("ec-step", stepText(float64(r.EC.Step)))
	set("ec-checked", dayText(r.EC.Calibrated))
	if r.EC.Raw {
		set("ec-raw", "yes")
	}
	system := f.Plan.Units
	set("water", figureText(r.Water, quantity.Temperature, system))
	f.fillLevel(r.Level)
	set("added", figureText(r.Added.Litres, quantity.Volume, system))
	if r.Added.EC.Set() {
		set("added-ec", number(float64(r.Added.EC.Value)*r.EC.Scale.PerMS()))
	}
	set("height", figureText(r.Height, quantity.Length, system))
	set("leaves", r.Leaves)
	set("counted", figureText(r.Counted, quantity.Count, system))
	set("picked", figureText(r.Picked.Plants, quantity.Count, system))
	set("weigh", figureText(r.Picked.Mass, quantity.SmallMass, system))
	set("roots", string(r.Roots.Colour))
	if r.Roots.Smell {
		set("roots-smell", "yes")
	}
	set("seen", r.Seen)
	set("note", r.Note)
	for _, d := range r.Done {
		f.values.Add("done", string(d))
	}
}

func (f *logForm) fillLevel(l reading.Level) {
	system := f.Plan.Units
	switch {
	case l.Depth.Set():
		f.values.Set("level-way", byDepth)
		f.values.Set("level", figureText(l.Depth, quantity.Length, system))
	case l.Filled.Set():
		f.values.Set("level-way", byFilled)
		f.values.Set("level", figureText(l.Filled, quantity.Volume, system))
	case l.Litres.Set():
		f.values.Set("level-way", byLitres)
		f.values.Set("level", figureText(l.Litres, quantity.Volume, system))
	}
}

// figureText is a figure as its field shows it: as it was typed where that
// still says the same, else its number in the field's unit.
func figureText[Q quantity.Quantity](t quantity.Typed[Q], kind quantity.Kind, system quantity.System) string {
	if !t.Set() {
		return ""
	}
	unit := kind.Unit(system)
	if again, err := reading.ParseTyped[Q](t.Text, unit.Symbol); err == nil && again.Value == t.Value {
		return t.Text
	}
	return number((t.Value.Base() - unit.Offset) / unit.Scale)
}

// phText and ecText are the same of a pH and an EC; an EC is the figure on its
// meter.
func phText(i quantity.Interval[quantity.PH]) string {
	again, err := reading.ParseInterval[quantity.PH](i.Text, "")
	return intervalText(i, again, err == nil, 1)
}

func ecText(e reading.EC) string {
	again, err := reading.ParseEC(e.Read.Text, e.Scale)
	return intervalText(e.Read, again, err == nil, e.Scale.PerMS())
}

func intervalText[Q quantity.Quantity](i, again quantity.Interval[Q], readable bool, per float64) string {
	switch {
	case !i.Set():
		return ""
	case readable && again.Low == i.Low && again.High == i.High:
		return i.Text
	case i.Low == i.High:
		return number(float64(i.Low) * per)
	}
	return number(float64(i.Low)*per) + " to " + number(float64(i.High)*per)
}

// number is a figure with as many decimals as it has, and no more than six.
func number(v float64) string {
	return strconv.FormatFloat(quantity.Round(v, 6), 'f', -1, 64)
}

func stepText(v float64) string {
	if v == 0 {
		return ""
	}
	return number(v)
}

func dayText(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}
