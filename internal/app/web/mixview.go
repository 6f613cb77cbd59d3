package web

import (
	"fmt"
	"html/template"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/figure"
	"rootbell/internal/paper/mixing"
	"rootbell/internal/paper/pack"
	"rootbell/internal/science/solution"
)

// mixWork is what the assessment says of one tub's mix, ready to be shown. Each
// of its parts is replaced by itself while a teacher types.
type mixWork struct {
	ID, Tub    string
	Example    bool
	Mixed      bool
	Stop       string
	Bold, Rest string
	Findings   []findingView
	Further    []findingView // beyond the first three
	Cautions   []string
	Pupils     string
	Steps      []mixStep
	Meter      []string // what the meter and the strip should show
	Acid       []string
	Workings   []workingView
	Elements   []elementRow
	Misses     []missRow
	Bars       template.HTML
	Curve      template.HTML
	Parts      []partRow
	TooMuch    []string // what is done after a mistaken dose
	Scales     []string
	Titration  template.HTML
	Water      []string
	Stocks     []stockView
	Apart      string
	Papers     []pack.Paper
}

// mixStep is one thing to do; When is said where it changes.
type mixStep struct {
	When, Do, Why string
	Adult         bool
	Working       *workingView
}

type elementRow struct {
	Symbol, Word, Have, Want, Range, Water, Key string
}

type missRow struct{ Word, Have, Want, InTheWay, Buy string }

type partRow struct {
	Words string
	Cells []string
}

type stockView struct {
	Letter, Made string
	Weigh        []string
}

// mixWorkOf shows a tub of an assessment that was asked for its mix.
func mixWorkOf(o *opened, a *garden.Assessment, f *form, tub int) *mixWork {
	t := &a.Tubs[tub]
	w := &mixWork{ID: o.ID, Example: o.Example, Tub: t.Name, Mixed: t.Mix != nil, Pupils: solution.PupilRule()}
	w.findings(o, a, f, tub)
	w.Papers = pack.MixOf(a, revisionOf(o))
	if t.Mix == nil {
		w.Bold, w.Rest = "Not worked out yet:", "something below has to be settled first."
		if len(a.Plan.Fertilisers) == 0 {
			w.Bold, w.Rest = "Nothing is on the shelf yet.", "Copy a bottle or a bag from its label, with its dose: the amounts for this tub follow."
		}
		return w
	}
	w.Stop = capital(mixing.Stop(a, tub))
	w.Bold, w.Rest = mixing.Answer(a, tub)
	w.Cautions = mixing.Cautions()
	w.steps(o, a, t.Mix)
	w.meter(a, t.Mix)
	w.workings(o, a, t.Mix)
	w.elements(a, t.Mix)
	w.stocks(a, t.Mix)
	w.Water = waterWords(a, t.Mix)
	w.Bars = svg(figure.Bars(t.Mix))
	w.Curve = svg(figure.ECCurve(t.Mix))
	w.TooMuch = t.Mix.TooMuchWords(a.Plan.Units)
	w.Titration = svg(figure.Titration(t.Mix))
	for _, s := range mixing.Scales {
		w.Scales = append(w.Scales, fmt.Sprintf("ppm %d", s))
	}
	for _, p := range mixing.Parts(t.Mix) {
		row := partRow{Words: p.Words, Cells: []string{quantity.FormatNumber(p.EC, 2)}}
		for _, s := range mixing.Scales {
			row.Cells = append(row.Cells, quantity.FormatNumber(s.PPM(p.EC), 0))
		}
		w.Parts = append(w.Parts, row)
	}
	return w
}

// findings takes what concerns the mix, and the stops without which there would
// be one.
func (w *mixWork) findings(o *opened, a *garden.Assessment, f *form, tub int) {
	concerns := func(one finding.Finding) bool {
		return !ofAnotherTub(one.Field, tub) && (mixing.Concerns(one.Field, tub) || !w.Mixed && one.Level == finding.Stop)
	}
	w.Findings, w.Further = foremostOf(findingsOf(o, a, f, concerns, func(field string) string {
		var index int
		switch {
		case field == "fertilisers":
			return "#on-the-shelf"
		case scans(field, "fertilisers[%d]", &index):
			return fmt.Sprintf("#f-fertilisers-%d-name", index)
		case strings.HasPrefix(field, "acids"):
			return "#f-acids-0-name"
		}
		return ""
	}))
}

func (w *mixWork) steps(o *opened, a *garden.Assessment, m *garden.Mix) {
	when := ""
	for _, s := range m.Steps {
		step := mixStep{Do: s.Do, Why: s.Why, Adult: s.Who == garden.ByAdult}
		if s.When != when {
			step.When, when = capital(s.When), s.When
		}
		step.Working = numberOf(o, a, s.Key)
		w.Steps = append(w.Steps, step)
	}
}

// meter says what the meter and the strip should show, and the acid.
func (w *mixWork) meter(a *garden.Assessment, m *garden.Mix) {
	if m.EC != nil && m.Band != nil {
		w.Meter = append(w.Meter, "EC about "+m.ECWords(*m.EC)+" at 25 °C; anything from "+m.ECRange()+" is as it should be.")
		if !m.Water.AlkalinityTold {
			w.Meter = append(w.Meter, "The low end is for soft water: nobody knows yet what this tap brings.")
		}
	}
	switch {
	case m.PHAfterSalts != nil:
		w.Meter = append(w.Meter, fmt.Sprintf("pH about %.1f after a night of air.", *m.PHAfterSalts))
	default:
		w.Meter = append(w.Meter, "The pH is not said: without the water's alkalinity it would be a guess.")
	}
	if d := m.Drift; d != nil {
		w.Meter = append(w.Meter, fmt.Sprintf("Plants move it: %.1f mmol/L of ammonium taken up brings it to %.1f, as much nitrate to %.1f.", d.MmolL, d.AfterAmmonium, d.AfterNitrate))
	}
	w.Acid = mixing.Acid(m, a.Plan.Units)
	if b := m.Base; b != nil {
		w.Acid = append(w.Acid, fmt.Sprintf("The salts turn this water sour: an adult brings in %s of %s.", mixing.Dose(b.ML, b.G, a.Plan.Units), b.Name))
	}
}

// workings are the amounts, the EC and the pH, each to unfold.
func (w *mixWork) workings(o *opened, a *garden.Assessment, m *garden.Mix) {
	keys := []string{}
	for _, one := range m.Weigh {
		keys = append(keys, one.Key)
	}
	for _, end := range []string{"ec", "ppm", "ph_after_salts", "acid_today", "base"} {
		keys = append(keys, m.Key+"."+end)
	}
	if m.Clean != nil {
		keys = append(keys, m.Clean.Key)
	}
	w.Workings = numbersOf(o, a, "", keys...)
}

func (w *mixWork) elements(a *garden.Assessment, m *garden.Mix) {
	digits := func(v float64) string {
		switch {
		case v == 0:
			return "0"
		case v < 1:
			return quantity.FormatNumber(v, 3)
		case v < 10:
			return quantity.FormatNumber(v, 1)
		}
		return quantity.FormatNumber(v, 0)
	}
	for _, e := range m.Elements {
		row := elementRow{Symbol: e.Symbol, Word: e.Word, Have: digits(e.HaveMgL), Water: digits(e.WaterMgL), Key: e.Key, Want: "–", Range: "–"}
		if e.WantMgL > 0 {
			row.Want, row.Range = digits(e.WantMgL), digits(e.LowMgL)+" to "+digits(e.HighMgL)
		}
		w.Elements = append(w.Elements, row)
	}
	for _, miss := range m.Misses {
		w.Misses = append(w.Misses, missRow{
			Word: wordOf(m, miss.Element), Have: digits(miss.HaveMgL), Want: digits(miss.WantMgL),
			InTheWay: sentence(miss.InTheWay), Buy: adviceOn(a, miss),
		})
	}
}

// wordOf is an element's word beside its symbol.
func wordOf(m *garden.Mix, symbol string) string {
	for _, e := range m.Elements {
		if e.Symbol == symbol {
			return e.Word + ", " + symbol
		}
	}
	return symbol
}

// adviceOn is what to buy or accept, as the finding about it says.
func adviceOn(a *garden.Assessment, miss garden.MixMiss) string {
	for _, one := range a.Findings {
		if one.Code == "feed-"+miss.Element {
			return sentence(one.Hint)
		}
	}
	if len(miss.Buy) > 0 {
		return "Buy " + strings.Join(miss.Buy, " or ") + ", or accept it."
	}
	return "Accept it."
}

func (w *mixWork) stocks(a *garden.Assessment, m *garden.Mix) {
	k := m.Stocks
	if k == nil {
		return
	}
	for _, t := range []struct {
		letter string
		tank   garden.MixTank
	}{{"A", k.A}, {"B", k.B}} {
		v := stockView{Letter: t.letter, Made: fmt.Sprintf("Made up to %s, %.0f times the feed. It fills the tub %.1f times and keeps %.0f days. Of what dissolves in the cold it holds %.0f %%.",
			mixing.Litres(k.LitresEach, a.Plan.Units), k.Strength, k.Fills, k.LifeDays, 100*t.tank.Load)}
		for _, one := range t.tank.Weigh {
			v.Weigh = append(v.Weigh, mixing.Amount(one, a.Plan.Units))
		}
		w.Stocks = append(w.Stocks, v)
	}
	if len(k.Apart) > 0 {
		w.Apart = capital(mixing.List(k.Apart)) + " can go into neither, and is weighed for each filling."
	}
}

// waterWords say what the tub is filled with before anything goes in.
func waterWords(a *garden.Assessment, m *garden.Mix) []string {
	w := m.Water
	out := []string{fmt.Sprintf("%s from the tap, alkalinity %.0f mg/L%s, EC %s, pH %.1f.", mixing.Litres(w.TapL, a.Plan.Units), w.AlkalinityMgL,
		map[bool]string{false: " (assumed)"}[w.AlkalinityTold], m.ECWords(w.EC), w.PH)}
	if w.BlendL > 0 {
		out = append(out, fmt.Sprintf("With it %s of %s water.", mixing.Litres(w.BlendL, a.Plan.Units), w.Blend))
	}
	for _, one := range w.Assumed {
		out = append(out, sentence(one))
	}
	return append(out, fmt.Sprintf("What is mixed and not used keeps %.0f days, closed and dark.", m.LifeDays))
}
