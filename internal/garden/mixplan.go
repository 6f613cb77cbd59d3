package garden

import (
	"errors"
	"fmt"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/solution"
)

// mixer works out the nutrient solution of every tub of a plan.
type mixer struct {
	*assessor
	tap     solution.Tap
	share   float64        // of rain or deionised water
	water   solution.Water // of the tap, blended; with the least alkalinity that a strip allows
	shelf   []shelved
	dosed   bool // the maker's doses are taken
	acid    *solution.Reagent
	acidAt  int // in the plan
	missing string
	base    *solution.Reagent
	baseAt  int
	tools   solution.Tools
	air     solution.Air
	tempC   float64
	broken  bool // what must be put right first leaves no mix
	said    []tubFinding
	mixed   int // tubs

	cures     map[string]remedy // by the field of the feed
	salts     []solution.Fertiliser
	saltGrams []float64 // of each, for one filling of all tubs
}

// shelved is a fertiliser of the plan as the chemistry takes it.
type shelved struct {
	solution.Fertiliser
	at        int // in the plan
	dose      float64
	liquid    bool
	noDensity bool // a liquid of which nobody knows what it weighs
}

// tubFinding is a finding about one tub's mix.
type tubFinding struct {
	finding.Finding
	tub int
}

// figured is a figure of the plan as the chemistry takes it: of an interval both
// ends are kept.
func figured[Q quantity.Quantity](r quantity.Interval[Q]) solution.Figure {
	switch {
	case !r.Set():
		return solution.Figure{}
	case r.Low == r.High:
		return solution.Exactly(float64(r.Low))
	}
	return solution.Between(float64(r.Low), float64(r.High))
}

func tapOf(p plan.Tap) solution.Tap {
	if p.Unknown {
		return solution.Tap{}
	}
	return solution.Tap{
		PH: figured(p.PH), Alkalinity: figured(p.Alkalinity), EC: figured(p.EC),
		Calcium: figured(p.Calcium), Magnesium: figured(p.Magnesium), Sodium: figured(p.Sodium), Potassium: figured(p.Potassium),
		Chloride: figured(p.Chloride), Sulfate: figured(p.Sulfate), NitrateN: figured(p.NitrateN), PhosphateP: figured(p.PhosphateP),
		Iron: figured(p.Iron), Boron: figured(p.Boron), Chlorine: figured(p.Chlorine), Chloramine: figured(p.Chloramine),
		Softened: p.Softened.Value,
	}
}

// fault says what the chemistry refuses, at its field. Level is how much rests
// on it.
func (m *mixer) fault(level finding.Level, path string, err error) {
	var f *solution.Fault
	if !errors.As(err, &f) {
		f = &solution.Fault{Code: "mix", Text: err.Error(), Hint: "Look at the figures of the feed again."}
	}
	out := f.Finding(path)
	out.Level, out.Field = level, strings.TrimPrefix(out.Field, ".")
	out.Text, out.Hint = sentence(out.Text), sentence(out.Hint)
	m.findings = append(m.findings, out)
}

// sentence is a text with a capital letter and a full stop.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	first := []rune(text)[:1]
	text = strings.ToUpper(string(first)) + strings.TrimPrefix(text, string(first))
	if last := text[len(text)-1]; last != '.' && last != '?' {
		text += "."
	}
	return text
}

// readShelf takes the fertilisers of the plan over. What cannot be read stops
// the mix: amounts of the others would be wrong without it.
func (m *mixer) readShelf() {
	for _, f := range m.plan.Fertilisers {
		m.dosed = m.dosed || f.Dose.Set()
	}
	names := map[string]int{}
	for i := range m.plan.Fertilisers {
		s, ok := m.readFertiliser(i)
		if !ok {
			m.broken = true
			continue
		}
		key := solution.KeyOf(s.Name)
		if names[key]++; names[key] > 1 {
			s.Name = fmt.Sprintf("%s (%d)", s.Name, names[key])
		}
		m.shelf = append(m.shelf, s)
	}
}

func (m *mixer) readFertiliser(i int) (shelved, bool) {
	typed := m.plan.Fertilisers[i]
	field := fmt.Sprintf("fertilisers[%d]", i)
	s := shelved{at: i}
	s.liquid = typed.Form == "liquid" || typed.Form == "" && (typed.Density.Set() || typed.Dose.MLPerL > 0)
	if typed.Salt != "" {
		f, err := solution.SaltWritten(typed.Salt)
		if err != nil {
			m.fault(finding.Stop, field, err)
			return s, false
		}
		f.Name, f.Part = typed.Name, typed.Part
		s.Fertiliser, s.liquid = f, false
		return s, m.doseOf(&s, typed, field)
	}
	l := labelOf(typed)
	l.Liquid, l.DensityKgL = s.liquid, float64(typed.Density.Value)
	if s.liquid && m.dosed && !typed.Density.Set() {
		s.noDensity, l.Liquid = true, false
	}
	f, err := l.Read()
	if err != nil {
		m.fault(finding.Stop, field, renamed(err))
		return s, false
	}
	s.Fertiliser = f
	return s, m.doseOf(&s, typed, field)
}

// labelOf is the label as printed, in the order in which labels name things.
func labelOf(typed plan.Fertiliser) solution.Label {
	l := solution.Label{Name: typed.Name, Part: typed.Part}
	known := map[string]bool{}
	for _, name := range solution.LabelNames() {
		known[name] = true
	}
	for _, name := range plan.Nutrients() {
		if share, told := typed.Label[name]; told && known[name] {
			l.Declares = append(l.Declares, solution.Declared{Name: name, Percent: 100 * float64(share.Value)})
		}
	}
	for _, form := range []struct {
		name  string
		share plan.Share
	}{{"NO3-N", typed.NitrateN}, {"NH4-N", typed.AmmoniumN}, {"urea-N", typed.UreaN}} {
		if form.share.Set() {
			l.Declares = append(l.Declares, solution.Declared{Name: form.name, Percent: 100 * float64(form.share.Value)})
		}
	}
	return l
}

// renamed gives a fault of a label the plan's own names of the nitrogen's forms.
func renamed(err error) error {
	var f *solution.Fault
	if !errors.As(err, &f) {
		return err
	}
	out := *f
	for label, key := range map[string]string{"label.NO3-N": "nitrate_n", "label.NH4-N": "ammonium_n", "label.urea-N": "urea_n"} {
		if out.Field == label {
			out.Field = key
		}
	}
	return &out
}

// doseOf takes the maker's dose over: mL of a liquid, g of a dry one.
func (m *mixer) doseOf(s *shelved, typed plan.Fertiliser, field string) bool {
	d := typed.Dose
	switch {
	case !d.Set():
		return true
	case !s.liquid && d.MLPerL > 0:
		m.stop("dose-by-spoon", field+".dose", fmt.Sprintf("%s is dry, and its dose is a volume: %s. A spoonful weighs what grain and packing make of it.", typed.Name, d.Text),
			"Weigh ten level spoons of it, work out the grams for a litre, and write those: dose: 1 g/L.")
		return false
	case s.liquid && d.GPerL > 0:
		if !typed.Density.Set() {
			m.stop("liquid-density", field+".density", fmt.Sprintf("%s is a liquid dosed by mass, without a density.", typed.Name), "Weigh 100 mL of it: 118 g is 1.18 kg/L.")
			return false
		}
		s.dose = d.GPerL / float64(typed.Density.Value)
	default:
		s.dose = d.MLPerL + d.GPerL
	}
	if s.noDensity {
		m.warn("liquid-density", field+".density", fmt.Sprintf("%s is a liquid without a density: what to pour is known, and not what it brings or the EC.", typed.Name),
			"Weigh 100 mL of it: 118 g is 1.18 kg/L. If it is a powder, write form: dry and its dose in grams.")
	}
	return true
}

// readReagents takes the first acid and the first base that can be counted with;
// a mineral acid goes before citric acid, which does not last.
func (m *mixer) readReagents() {
	for i, a := range m.plan.Acids {
		r, err := solution.NewReagent(a.Acid, 100*float64(a.ByMass.Value), float64(a.Density.Value), a.Solid.Value)
		if err != nil {
			m.fault(finding.Warn, fmt.Sprintf("acids[%d]", i), err)
			m.missing = fmt.Sprintf("what the label of %s says: strength in percent by mass, and density", a.Name)
			continue
		}
		r.Name = a.Name
		if m.acid == nil || m.acid.Citric() && !r.Citric() {
			m.acid, m.acidAt = &r, i
		}
	}
	for i, a := range m.plan.Bases {
		r, err := solution.NewReagent(a.Base, 100*float64(a.ByMass.Value), float64(a.Density.Value), a.Solid.Value)
		if err != nil {
			m.fault(finding.Warn, fmt.Sprintf("bases[%d]", i), err)
			continue
		}
		if r.Name = a.Name; m.base == nil {
			m.base, m.baseAt = &r, i
		}
	}
}

// usualScaleG is the step of a kitchen scale, for a class that names none.
const usualScaleG = 1

// readTools takes scale and spoons over. Who names spoons and no scale weighs
// with spoons.
func (m *mixer) readTools() {
	m.tools.ScaleStepG = usualScaleG
	switch step := m.plan.Tools.ScaleStep; {
	case step.Set():
		m.tools.ScaleStepG = 1000 * float64(step.Value)
	case len(m.plan.Spoons) > 0:
		m.tools.ScaleStepG = 0
	}
	for i, s := range m.plan.Spoons {
		m.tools.Spoons = append(m.tools.Spoons, solution.Spoon{Name: s.Name, Of: s.Of, Grams: 1000 * float64(s.Mass.Value)})
		if !m.onShelf(s.Of) {
			m.warn("spoon-of", fmt.Sprintf("spoons[%d].of", i), fmt.Sprintf("No fertiliser of the plan is called %s.", s.Of), "Write its name as it stands under fertilisers.")
		}
	}
	m.tempC = float64(m.plan.Place.AirTemperature.Or(roomC))
	if w := m.plan.Place.WaterTemperature; w.Set() {
		m.tempC = float64(w.Value)
	}
	m.air = solution.OutdoorAir()
	if co2 := m.plan.Place.CO2Closed; co2.Set() {
		m.air.CO2PPM = 1e6 * co2.Value.Base()
	}
}

// roomC is the air of a classroom of which the plan says nothing.
const roomC = 21

func (m *mixer) onShelf(name string) bool {
	for _, f := range m.plan.Fertilisers {
		if f.Name == name {
			return true
		}
	}
	return false
}

// feed is what a tub is to be filled with: its own feed, else the garden's.
func (m *mixer) feed(tub int) (f plan.Feed, field string) {
	if own := m.plan.Tubs[tub].Feed; own != nil {
		return *own, fmt.Sprintf("tubs[%d].feed", tub)
	}
	return m.plan.Feed, "feed"
}
