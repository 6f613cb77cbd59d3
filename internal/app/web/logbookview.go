package web

import (
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/reading"
)

// logBody is the page Logbook.
type logBody struct {
	ID, Tub string
	Example bool
	Others  []string // the other tubs, of an example
	Now     string   // by the server's clock, for a device whose own is wrong
	Form    *logFormView
	Rows    []logRow
	More    bool // there are more readings than are shown
	Heads   logHeadsView
	Clash   *clashView
	Leak    *garden.Advised // where the reading just written tells of one
	Stick   stickView
}

// logFormView is the form as its template sees it.
type logFormView struct {
	ID, Entry, Corrects string
	Correcting          string // the moment of the reading that is corrected
	Gone                bool
	Says                string
	Asks                bool
	Answered            []string
	At                  string
	Problems            []reading.Problem // that belong to no field
	Wrong               int
	Tub, Team           logChoice
	Level, LevelWay     logField
	PH, PHWith          logField
	EC, ECScale         logField
	Water, Height       logField
	Added, AddedEC      logField
	Done                logChoice
	Seen                logField
	Moment              logField
	Offset              logChoice // which of two hours, where the clocks show one twice
	Leaves, Counted     logField
	Picked, Weigh       logField
	Roots, Smell        logChoice
	Note                logField
	Meters              []logField
	Raw                 logChoice
	Open                bool // what is folded away has something to say
}

// logField is a field of the form with what is asked about it.
type logField struct {
	field
	Asks []askView
	Kind string // of the input; empty: text
	Area bool
}

// logChoice is a group of boxed words to choose from.
type logChoice struct {
	Name, Legend string
	Many         bool
	Options      []logOption
	Error        *plan.Problem
	Asks         []askView
	Hint         string
}

type logOption struct {
	ID, Value, Words string
	Chosen           bool
}

func (f *logForm) view() *logFormView {
	system := f.Plan.Units
	volume, length := quantity.Volume.Unit(system).Symbol, quantity.Length.Unit(system).Symbol
	f.remember()
	v := &logFormView{
		ID: f.ID, Entry: f.values.Get("id"), Corrects: f.values.Get("corrects"), Gone: f.gone, Says: f.says, At: f.values.Get("at"),
		Asks: len(f.questions) > 0, Answered: append(f.values["answered"], f.values["answer"]...), Wrong: len(f.problems),
		Tub:      f.choice("tub", "Tub", false, f.tubNames()),
		Team:     f.choice("by", f.byWhom(), false, f.teams()),
		Level:    f.field("level", "Level", "", f.hint(reading.FieldLevel)),
		LevelWay: f.options("level-way", "Told by", [][2]string{{byLitres, volume + " on the stick"}, {byDepth, length + " deep"}, {byFilled, volume + " poured, to the line"}}),
		PH:       f.field("ph", "pH", "", f.hint(reading.FieldPH)),
		PHWith:   f.options("ph-with", "Read with", wordPairs(reading.Instruments())),
		EC:       f.field("ec", "EC", "", f.hint(reading.FieldEC)),
		ECScale:  f.options("ec-scale", "Meter shows", wordPairs(reading.Scales())),
		Water:    f.field("water", "Water", quantity.Temperature.Unit(system).Symbol, f.hint(reading.FieldWater)),
		Height:   f.field("height", "Tallest plant", length, f.hint(reading.FieldHeight)),
		Added:    f.field("added", "Poured in", volume, ""),
		AddedEC:  f.field("added-ec", "Its EC", "", "Empty: plain tap water."),
		Done:     f.choice("done", "Done", true, words(reading.Deeds())),
		Seen:     f.field("seen", "Seen", "", "Say the hole, not a name."),
		Moment:   f.field("moment", "When", "", "Empty: now."),
		Leaves:   f.field("leaves", "How leaves look", "", ""),
		Counted:  f.field("counted", "Leaves on one plant", "", "Of a lettuce, the small ones too."),
		Picked:   f.field("picked", "Plants picked", "", ""),
		Weigh:    f.field("weigh", "They weigh", quantity.SmallMass.Unit(system).Symbol, "Together, fresh, without roots."),
		Roots:    f.choice("roots", "Roots", false, words(reading.RootColours())),
		Smell:    f.tick("roots-smell", "they smell"),
		Note:     f.field("note", "What else was done", "", ""),
		Raw:      f.tick("ec-raw", "the meter does not bring its figure to 25 °C"),
	}
	v.Seen.Area, v.Note.Area = true, true
	v.Moment.Kind = "datetime-local"
	v.Meters = []logField{
		f.field("ph-calibrated", "pH meter calibrated on", "", ""), f.options("ec-with", "EC read with", wordPairs(reading.Instruments())),
		f.field("ec-checked", "EC meter checked on", "", ""), f.field("ph-step", "pH between two colours", "", "Strips and drops only."), f.field("ec-step", "EC between two colours", "mS/cm", "Strips and drops only."),
	}
	v.Meters[0].Kind, v.Meters[2].Kind = "date", "date"
	if v.Corrects != "" {
		v.Correcting = f.momentWords(f.values.Get("moment"))
	}
	for _, p := range f.problems {
		if fieldNames[p.Field] == "" {
			v.Problems = append(v.Problems, p)
		}
	}
	v.Offset = f.offsets()
	v.Open = v.folded()
	return v
}

// folded tells whether something is wrong or filled in under 'more'.
func (v *logFormView) folded() bool {
	for _, f := range append([]logField{v.Moment, v.Leaves, v.Counted, v.Picked, v.Weigh, v.Note}, v.Meters...) {
		if f.Error != nil || len(f.Asks) > 0 {
			return true
		}
	}
	if v.Counted.Value != "" || v.Picked.Value != "" || v.Weigh.Value != "" {
		return true
	}
	return v.Roots.Error != nil || v.Leaves.Value != "" || v.Note.Value != "" || v.Roots.chosen() || v.Smell.chosen()
}

func (c logChoice) chosen() bool {
	for _, o := range c.Options {
		if o.Chosen {
			return true
		}
	}
	return false
}

// remember fills what is mostly the same as the last time: the instruments.
func (f *logForm) remember() {
	or := func(name, text string) {
		if f.values.Get(name) == "" && text != "" {
			f.values.Set(name, text)
		}
	}
	const always = 1 << 62 // later than any reading
	if e, ok := reading.Last(f.last, reading.FieldPH, time.UnixMilli(always)); ok {
		or("ph-with", string(e.PH.With))
		or("ph-step", stepText(float64(e.PH.Step)))
		or("ph-calibrated", dayText(e.PH.Calibrated))
	}
	if e, ok := reading.Last(f.last, reading.FieldEC, time.UnixMilli(always)); ok {
		or("ec-with", string(e.EC.With))
		or("ec-scale", string(e.EC.Scale))
		or("ec-step", stepText(float64(e.EC.Step)))
		or("ec-checked", dayText(e.EC.Calibrated))
	}
	if e, ok := reading.Last(f.last, reading.FieldLevel, time.UnixMilli(always)); ok {
		or("level-way", wayOf(e.Level))
	}
	or("ph-with", instrumentOf(f.Plan.Tools.PH))
	or("ec-with", string(reading.Meter))
	or("ec-scale", string(reading.MilliSiemens))
	or("level-way", byLitres)
}

// instrumentOf is the instrument that the plan's tools name.
func instrumentOf(tool string) string {
	for _, i := range reading.Instruments() {
		if strings.HasPrefix(tool, string(i)) {
			return string(i)
		}
	}
	return string(reading.Meter)
}

func wayOf(l reading.Level) string {
	if l.Depth.Set() {
		return byDepth
	}
	return byLitres // filling up is what one does now and then
}

// field is a field that is typed in.
func (f *logForm) field(name, label, unit, hint string) logField {
	out := logField{field: field{ID: "f-" + name, Name: name, Label: label, Value: f.values.Get(name), Unit: unit, Hint: hint, Error: f.wrong(name)}, Asks: f.asksAt(name)}
	if hasUnit(out.Value) {
		out.Unit = ""
	}
	return out
}

// options is a field that is chosen from a list.
func (f *logForm) options(name, label string, all [][2]string) logField {
	out := f.field(name, label, "", "")
	for _, o := range all {
		out.Options = append(out.Options, option{o[0], o[1]})
	}
	return out
}

func (f *logForm) choice(name, legend string, many bool, all []string) logChoice {
	c := logChoice{Name: name, Legend: legend, Many: many, Error: f.wrong(name), Asks: f.asksAt(name)}
	for i, word := range all {
		chosen := false
		for _, v := range f.values[name] {
			chosen = chosen || strings.EqualFold(v, word)
		}
		c.Options = append(c.Options, logOption{"f-" + name + "-" + number(float64(i+1)), word, word, chosen})
	}
	return c
}

func (f *logForm) tick(name, label string) logChoice {
	return logChoice{Name: name, Many: true, Options: []logOption{{"f-" + name, "yes", label, f.values.Get(name) == "yes"}}}
}

// wrong is the first problem of a field.
func (f *logForm) wrong(name string) *plan.Problem {
	for _, p := range f.problems {
		if fieldNames[p.Field] == name {
			return &plan.Problem{What: p.What, Hint: capital(p.Hint) + "."}
		}
	}
	return nil
}

// hint tells the last reading of a field.
func (f *logForm) hint(of reading.Field) string {
	const always = 1 << 62 // later than any reading
	e, ok := reading.Last(f.last, of, time.UnixMilli(always))
	if !ok {
		return ""
	}
	text := f.fieldWords(e.Row, of)
	if of == reading.FieldEC {
		text = rangeWords(ecText(e.EC))
	}
	at := e.At.In(f.Now.Location())
	day := at.Format("Mon\u00a02\u00a0Jan")
	if at.Format(time.DateOnly) == f.Now.Format(time.DateOnly) {
		day = "today\u00a0" + at.Format("15:04")
	}
	return "Last: " + text + ", " + day
}

func (f *logForm) tubNames() []string {
	var out []string
	for _, t := range f.Plan.Tubs {
		out = append(out, t.Name)
	}
	return out
}

// offsets are the two hours to choose between, where the clocks show what was
// typed twice because they are put back.
func (f *logForm) offsets() logChoice {
	c := logChoice{Name: "moment-offset", Legend: "The clocks show this hour twice. Which was it?"}
	wall, err := time.Parse("2006-01-02T15:04", f.values.Get("moment"))
	if err != nil {
		return c
	}
	seen := map[string]bool{}
	for _, hours := range []time.Duration{-24, 24} {
		at := wall.Add(hours * time.Hour).In(f.Now.Location())
		offset := at.Format("-07:00")
		exact, err := reading.ParseMoment(f.values.Get("moment")+offset, f.Now.Location())
		if err != nil || exact.Format("2006-01-02T15:04") != f.values.Get("moment") || seen[offset] {
			continue
		}
		seen[offset] = true
		words := []string{"the first, before they went back", "the second, after"}[len(c.Options)]
		c.Options = append(c.Options, logOption{"f-offset-" + number(float64(len(c.Options)+1)), offset, words, f.values.Get("moment-offset") == offset})
	}
	if len(c.Options) < 2 {
		c.Options = nil
	}
	return c
}

func (f *logForm) momentWords(text string) string {
	at, err := reading.ParseMoment(text, f.Now.Location())
	if err != nil {
		return text
	}
	return at.Format("Mon 2 Jan, 15:04")
}

func words[T ~string](all []T) []string {
	out := make([]string, len(all))
	for i, w := range all {
		out[i] = string(w)
	}
	return out
}

func wordPairs[T ~string](all []T) [][2]string {
	out := make([][2]string, len(all))
	for i, w := range all {
		out[i] = [2]string{string(w), string(w)}
	}
	return out
}

// byWhom is what the choice of who writes a reading down is called.
func (l *logbook) byWhom() string {
	if len(l.Plan.School.Jobs) > 0 {
		return "Team or job"
	}
	return "Team"
}
