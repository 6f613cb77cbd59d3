package garden

import (
	"math"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/solution"
)

// mix works out what each tub is filled with. Findings that several tubs share
// are said once.
func (a *assessor) mix(out *Assessment) {
	m := &mixer{assessor: a}
	if len(a.plan.Fertilisers) == 0 {
		m.emptyShelf()
		return
	}
	m.readTools()
	m.readTap()
	m.readShelf()
	m.readReagents()
	if m.broken {
		return
	}
	for i := range out.Tubs {
		out.Tubs[i].Mix = m.tub(i, out.states[i])
	}
	m.tell()
	out.Shopping = append(out.Shopping, m.buys(out.Tubs)...)
}

// emptyShelf says that nothing can be mixed, where the plan tells of water or of
// a feed; a plan for the lid alone wants no solution yet.
func (m *mixer) emptyShelf() {
	p := m.plan
	told := p.Feed.Recipe != "" || len(p.Feed.Target) > 0 || p.Feed.EC.Set() || p.Feed.PH.Set() || len(p.Acids) > 0 || p.Stocks != nil
	tap := tapOf(p.Tap)
	if !told && !tap.Alkalinity.Known && !tap.EC.Known && !tap.PH.Known {
		return
	}
	m.note("shelf-empty", "fertilisers", "No fertiliser is in the plan, so nothing can be weighed or poured.", "Copy a bottle or bag from its label: name, label and dose.")
}

// tubMix is one tub's mix under way.
type tubMix struct {
	*mixer
	out    *Mix
	index  int
	name   string
	field  string // of its feed
	b      *working.Book
	litres working.Number
	ec, ph float64
}

// tub is nil where the tub's volume is not known or may not be filled in.
func (m *mixer) tub(i int, t *tubState) *Mix {
	litres, ok := m.book.Find("tubs." + Slug(t.name) + ".volume_solution")
	if !ok || !litres.Known() {
		return nil
	}
	l := quantity.Litre.From(litres.Base)
	if most := m.plan.Tubs[i].MaxFill; l <= 0 || most.Set() && l > float64(most.Value) {
		return nil
	}
	_, life := solution.Lives()
	k := &tubMix{mixer: m, index: i, name: t.name, litres: litres, b: m.book.In("tubs." + Slug(t.name) + ".mix")}
	k.out = &Mix{SolutionL: *in(litres, quantity.Litre, 3), Key: "tubs." + Slug(t.name) + ".mix", LifeDays: life, Scale: m.scale()}
	m.fillWater(k.b, litres, k.out)
	k.aims(t.growth.each)
	done := false
	if m.dosed {
		done = k.byDose()
	} else {
		done = k.byRecipe()
	}
	if !done {
		return nil
	}
	m.mixed++
	m.chlorine(k.b, litres, k.out)
	k.clean()
	k.tooMuch()
	k.steps()
	return k.out
}

// aims settles the EC and the pH that are wanted: as typed, else the middle of
// what the tub's crops are grown in.
func (k *tubMix) aims(each []Growing) {
	feed, field := k.feed(k.index)
	k.field = field
	var lowEC, highEC, lowPH, highPH working.Number
	for i, g := range each {
		c := crop.Named(g.Name)
		l, h := c.EC(k.book)
		pl, ph := c.PH(k.book)
		if i == 0 {
			lowEC, highEC, lowPH, highPH = l, h, pl, ph
			continue
		}
		lowEC, highEC, lowPH, highPH = greater(lowEC, l), lesser(highEC, h), greater(lowPH, pl), lesser(highPH, ph)
	}
	switch {
	case feed.EC.Set():
		k.ec = float64(feed.EC.Value)
		k.b.Typed("ec_aim", "EC aimed at", "E", quantity.Conductivity, feed.EC.Value.Base(), 0)
	case len(feed.Target) == 0:
		k.ec = quantity.MillisiemensPerCM.From(k.b.Work(ecAimLaw, "ec_aim", "EC aimed at", lowEC, highEC).Base)
	}
	if feed.PH.Set() {
		k.ph = float64(feed.PH.Value)
		k.b.Typed("ph_aim", "pH aimed at", "p", quantity.PHScale, k.ph, 0)
		return
	}
	k.ph = k.b.Work(phAimLaw, "ph_aim", "pH aimed at", lowPH, highPH).Base
}

// lesser is the lesser of two numbers of one kind.
func lesser(a, b working.Number) working.Number {
	if b.Base < a.Base {
		return b
	}
	return a
}

// greater is the greater of two numbers of one kind.
func greater(a, b working.Number) working.Number {
	if b.Base < a.Base {
		return a
	}
	return b
}

// scale is how the class's EC meter shows its figure.
func (m *mixer) scale() MeterScale {
	switch m.plan.Tools.ECScale {
	case "ppm 500":
		return solution.PPM500
	case "ppm 640":
		return solution.PPM640
	case "ppm 700":
		return solution.PPM700
	}
	return 0
}

// band enters the EC to expect. Of water of which nothing is known the band
// reaches from soft water to what is assumed.
func (k *tubMix) band(feedIons, all solution.Ions) {
	ec := solution.ECBand(solution.EC25(all, k.air))
	low, high := ec.Show(k.b)
	if !k.water.Known && !k.water.ECKnown {
		soft := solution.ECBand(solution.EC25(feedIons, k.air))
		low, _ = soft.Show(k.b.In("soft_water"))
	}
	k.out.EC = rounded(ec.EC, 3)
	k.out.Band = &[2]float64{*in(low, quantity.MillisiemensPerCM, 3), *in(high, quantity.MillisiemensPerCM, 3)}
	if k.out.Scale > 0 {
		n, _ := k.book.Find(k.b.Key("ec"))
		k.out.PPM = rounded(k.out.Scale.Show(k.b, n).Base, 0)
	}
}

// ended enters where the pH rests after the salts, and which way plants take it.
func (k *tubMix) ended(all solution.Ions) {
	if !k.water.Known {
		return // a pH on a guess would be believed
	}
	c, _ := solution.At(k.tempC)
	ph := c.Equilibrium(all, k.air).PH
	k.b.Found("ph_after_salts", "pH after the salts, in air", "p", quantity.PHScale, ph, "balance of charges with the carbon dioxide of the air")
	k.out.PHAfterSalts = rounded(ph, 2)
	const takenUp = 1e-4 // mol/L: a few days of a young tub
	k.out.Drift = &MixDrift{
		MmolL:         1000 * takenUp,
		AfterAmmonium: quantity.Round(c.Drift(all, solution.Uptake{Ammonium: takenUp}, k.air), 2),
		AfterNitrate:  quantity.Round(c.Drift(all, solution.Uptake{Nitrate: takenUp}, k.air), 2),
	}
}

// elements enters what the weighed amounts bring of each nutrient, the check
// that a pencil can do, and keeps it beside what is aimed at.
func (k *tubMix) elements(shelf []solution.Fertiliser, portions []solution.Portion, base, want solution.Content) {
	k.out.ElementsMgL = map[string]float64{}
	for _, n := range solution.Nutrients() {
		switch n {
		case solution.NitrateN, solution.AmmoniumN, solution.UreaN:
			continue
		}
		total := solution.ShowNutrient(k.b, n, shelf, portions, base, k.litres)
		have := quantity.MilligramPerL.From(total.Base)
		decimals := 1
		if n.Micro() {
			decimals = 3
		}
		e := MixElement{
			Symbol: n.Symbol(), Word: n.String(), HaveMgL: quantity.Round(have, decimals), WantMgL: quantity.Round(want[n], decimals),
			WaterMgL: quantity.Round(base[n], decimals), Micro: n.Micro(), Key: total.Key,
		}
		if want[n] > 0 {
			_, bears := solution.Bears(n)
			e.LowMgL, e.HighMgL = quantity.Round(want[n]*math.Max(1-bears, 0), decimals), quantity.Round(want[n]*(1+bears), decimals)
		}
		k.out.ElementsMgL[e.Symbol] = e.HaveMgL
		k.out.Elements = append(k.out.Elements, e)
	}
}

// clean enters the bleach for cleaning the tub down, where the bottle's strength
// is told.
func (k *tubMix) clean() {
	bleach := k.plan.Bleach
	fill, ok := k.book.Find("tubs." + Slug(k.name) + ".volume_fill")
	if bleach == nil || !ok {
		return
	}
	water := quantity.Litre.From(fill.Base)
	percent := 100 * float64(bleach.Chlorine.Value)
	c, err := solution.CleanDown(water, percent, 0)
	if err != nil {
		k.fault(finding.Warn, "", err)
		return
	}
	n := solution.ShowClean(k.b, fill, percent)
	k.out.Clean = &MixClean{
		WaterL: *in(fill, quantity.Litre, 2), BleachML: *in(n, quantity.Millilitre, 0), ChlorineMgL: c.ChlorineMgL,
		ContactMinutes: c.ContactMinutes, RinseBelowMgL: c.RinseBelowMgL, LifeDays: c.LifeDays, Key: n.Key,
	}
}

// about keeps what there is to say of this tub's mix.
func (k *tubMix) about(all []finding.Finding) {
	for _, f := range all {
		k.said = append(k.said, tubFinding{f, k.index})
	}
}

// tell says what was kept: once where every mixed tub has it, else with the
// tub's name. Texts of one kind differ between tubs by a last digit only, and
// the first is taken.
func (m *mixer) tell() {
	type same struct {
		code, field, hint string
		nth               int // of its kind in one tub
	}
	keys, tubs := make([]same, len(m.said)), map[same][]int{}
	seen := map[tubFinding]int{}
	for i, f := range m.said {
		kind := tubFinding{finding.Finding{Code: f.Code, Field: f.Field, Hint: f.Hint}, f.tub}
		keys[i] = same{f.Code, f.Field, f.Hint, seen[kind]}
		seen[kind]++
		tubs[keys[i]] = append(tubs[keys[i]], f.tub)
	}
	for i, f := range m.said {
		with := tubs[keys[i]]
		if with[0] != f.tub {
			continue
		}
		if len(with) < m.mixed {
			f.Text = m.plan.Tubs[f.tub].Name + ": " + f.Text
		}
		m.findings = append(m.findings, f.Finding)
	}
}
