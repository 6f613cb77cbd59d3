package cli

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/science/solution"
)

const mixLong = `Works out what each tub is filled with: what to weigh and pour for its real
volume, in order, the EC the meter should then show, the acid that lasts in
this tap's water, and what the shelf cannot reach and why.

Where a fertiliser has a dose in the plan, makers' doses are multiplied with the
litres; otherwise the shelf is fitted to the recipe. Acids, alkalis and
concentrates are for adults only.
`

func mixCommand(s Streams) *cobra.Command {
	return stage{name: "mix", short: "What to weigh and pour for each tub, and the EC to expect", long: mixLong, asks: garden.StageMix, report: reportMix}.command(s)
}

// reportMix writes the mixes for the terminal: what to mind first, at most 80
// columns wide.
func reportMix(w io.Writer, a *garden.Assessment) error {
	var b bytes.Buffer
	wrap(&b, "", plain(a.Garden))
	for _, f := range a.Findings {
		if f.Level == finding.Stop || garden.OfMix(f.Field) {
			reportFinding(&b, f)
		}
	}
	for i, t := range a.Tubs {
		fmt.Fprintf(&b, "\n%s\n%s\n", t.Name, strings.Repeat("-", utf8.RuneCountInString(t.Name)))
		if stop := a.StopMixOf(i); stop != "" {
			wrap(&b, "", "Do not mix: "+plain(stop))
		}
		if t.Mix == nil {
			why := "what stands above must be put right first."
			if len(a.Plan.Fertilisers) == 0 {
				why = "no fertiliser is in the plan. Copy one from its label: name, label and dose."
			}
			wrap(&b, "", "What to mix is not known: "+why)
			continue
		}
		reportTubMix(&b, a, t.Mix)
	}
	reportAdults(&b, a)
	_, err := w.Write(b.Bytes())
	return err
}

func reportFinding(b *bytes.Buffer, f finding.Finding) {
	place := f.Field
	if f.Line > 0 {
		place = fmt.Sprintf("line %d, %s", f.Line, f.Field)
	}
	b.WriteByte('\n')
	wrap(b, strings.ToUpper(f.Level.String())+"  ", plain(f.Text+" "+f.Hint+" ("+place+")"))
}

func reportTubMix(b *bytes.Buffer, a *garden.Assessment, m *garden.Mix) {
	wrap(b, "", mixTitle(a, m))
	for _, one := range m.Water.Assumed {
		wrap(b, "", plain(strings.ToUpper(one[:1])+one[1:]+"."))
	}
	b.WriteByte('\n')
	if m.Stocks == nil {
		weighTable(b, a, m.Weigh)
		b.WriteByte('\n')
	}
	if m.Band != nil {
		wrap(b, "EC    ", fmt.Sprintf("%s to expect, anything from %s (at 25 °C).", m.ECWords(*m.EC), m.ECRange()))
	}
	if m.PHAfterSalts != nil {
		wrap(b, "pH    ", fmt.Sprintf("%.1f after the salts and a night of air.%s", *m.PHAfterSalts, drift(m)))
	}
	reportAcid(b, a, m)
	if m.Stocks != nil {
		reportStocks(b, a, m.Stocks)
	}
	if len(m.Elements) > 0 {
		b.WriteByte('\n')
		elementTable(b, m)
	}
	if says := m.TooMuchWords(a.Plan.Units); len(says) > 0 {
		b.WriteByte('\n')
		wrap(b, "Too much?  ", plain(strings.Join(says, " ")))
	}
	when := ""
	for i, s := range m.Steps {
		if s.When != when {
			when = s.When
			fmt.Fprintf(b, "\n%s\n", strings.ToUpper(when[:1])+when[1:])
		}
		wrap(b, fmt.Sprintf("%2d  ", i+1), plain(strings.TrimSpace(s.Do+" "+s.Why)))
	}
	if c := m.Clean; c != nil {
		b.WriteByte('\n')
		wrap(b, "Cleaning down  ", fmt.Sprintf("An adult: %s of the bleach in %s of water, %.0f minutes, rinse three times, then a chlorine strip under %g mg/L. Never with acid, never with fertiliser, never on the same day.",
			garden.PourWords(c.BleachML, a.Plan.Units), litres(a, c.WaterL), c.ContactMinutes, c.RinseBelowMgL))
	}
}

func litres(a *garden.Assessment, l float64) string {
	return quantity.Format(quantity.Volume, quantity.Litre.Base(l), a.Plan.Units)
}

func mixTitle(a *garden.Assessment, m *garden.Mix) string {
	text := litres(a, m.SolutionL) + " of solution"
	switch {
	case m.Way == garden.ByDose:
		text += ", by the makers' doses."
	case m.Recipe != "":
		text += ", after the recipe " + m.Recipe + "."
	default:
		text += ", after the plan's own target."
	}
	w := m.Water
	if w.BlendL > 0 {
		text += fmt.Sprintf(" Water: %s of tap, %s of %s.", litres(a, w.TapL), litres(a, w.BlendL), map[string]string{"rain": "rain", "deionised": "deionised water"}[w.Blend])
	}
	told := ""
	if !w.AlkalinityTold {
		told = ", assumed"
	}
	return text + fmt.Sprintf(" Alkalinity %.0f mg/L%s.", w.AlkalinityMgL, told)
}

// weighTable lists what is weighed and poured.
func weighTable(b *bytes.Buffer, a *garden.Assessment, all []garden.Weigh) {
	rows := [][]string{{"weigh or pour", "wanted", "measured"}}
	for _, w := range all {
		step := 0.1
		if w.ScaleStepG != nil {
			step = *w.ScaleStepG
		}
		name := plain(w.Name)
		if w.Part != "" {
			name += ", bottle " + w.Part
		}
		wanted, measured := garden.MassWords(w.Grams, step/10, a.Plan.Units), garden.MassWords(w.RoundedGrams, step, a.Plan.Units)
		switch {
		case w.Stock != nil:
			measured = garden.PourWords(w.Stock.PourML, a.Plan.Units) + " of a stock"
		case w.Spoons != nil:
			measured = fmt.Sprintf("%.0f × %s", *w.Spoons, plain(w.Spoon))
		case w.Millilitres != nil:
			wanted, measured = "-", garden.PourWords(*w.Millilitres, a.Plan.Units)
			if w.RoundedGrams > 0 {
				wanted = garden.PourWords(*w.Millilitres*w.Grams/w.RoundedGrams, a.Plan.Units)
			}
		}
		rows = append(rows, []string{name, wanted, measured})
	}
	table(b, rows, "lrr")
}

func drift(m *garden.Mix) string {
	if m.Drift == nil {
		return ""
	}
	return fmt.Sprintf(" As plants feed it moves: %g mmol/L of ammonium taken up brings it to %.1f, of nitrate to %.1f. That is a direction and no forecast.", m.Drift.MmolL, m.Drift.AfterAmmonium, m.Drift.AfterNitrate)
}

func reportAcid(b *bytes.Buffer, a *garden.Assessment, m *garden.Mix) {
	c := m.Acid
	switch {
	case c == nil:
	case c.Why != "":
		wrap(b, "acid  ", "None. "+c.Why)
	case c.Missing != "":
		wrap(b, "acid  ", fmt.Sprintf("%.2f mmol/L that last, %.2f that would not. No dose: missing is %s.", *c.MmolLOpen, *c.MmolLClosed, plain(c.Missing)))
	case c.Citric:
		wrap(b, "acid  ", fmt.Sprintf("%s of %s at most, once a week, as a small trim: it does not last.", amountWords(a, c.DoseTodayML, c.DoseTodayG), plain(c.Name)))
	default:
		lasting, closed := amountWords(a, c.MLOpen, c.GOpen), amountWords(a, c.MLClosed, c.GClosed)
		wrap(b, "acid  ", fmt.Sprintf("%s of %s lasts. %s would read the target at once and go back to pH %.1f in air.", lasting, plain(c.Name), closed, *c.PHRebound))
		if c.PlantedPH != nil {
			wrap(b, "      ", fmt.Sprintf("With plants in the tub at most %s at one time, and %.0f hours until the next; then read the pH against %.1f, not against the target.", amountWords(a, c.PlantedML, c.PlantedG), *c.PlantedWait, *c.PlantedPH))
		}
	}
	if m.Base != nil {
		wrap(b, "base  ", fmt.Sprintf("%s of %s, by an adult, and only if the pH reads under the target tomorrow.", amountWords(a, m.Base.ML, m.Base.G), plain(m.Base.Name)))
	}
}

func amountWords(a *garden.Assessment, ml, g *float64) string {
	switch {
	case ml != nil:
		return garden.PourWords(*ml, a.Plan.Units)
	case g != nil:
		return garden.MassWords(*g, 0.1, a.Plan.Units)
	}
	return "-"
}

func reportStocks(b *bytes.Buffer, a *garden.Assessment, s *garden.MixStocks) {
	b.WriteByte('\n')
	wrap(b, "", fmt.Sprintf("Stocks, %g times the feed, %s of each: %s of each for the tub, %.0f fills, good for %.0f days in the dark.", s.Strength, litres(a, s.LitresEach), garden.PourWords(s.PourML, a.Plan.Units), s.Fills, s.LifeDays))
	for _, t := range []struct {
		name string
		garden.MixTank
	}{{"stock A", s.A}, {"stock B", s.B}} {
		lead := t.name + "  "
		for _, w := range t.Weigh {
			wrap(b, lead, plain(garden.MeasureWords(w, a.Plan.Units))+".")
			lead = strings.Repeat(" ", len(lead))
		}
		if len(t.Weigh) == 0 {
			wrap(b, lead, "Nothing.")
		}
	}
}

// elementTable sets what is in the tub beside what is aimed at.
func elementTable(b *bytes.Buffer, m *garden.Mix) {
	beside := "aimed at"
	if m.Way == garden.ByDose {
		beside = "a recipe"
	}
	rows := [][]string{{"nutrient", "in the tub", beside, "off"}}
	for _, e := range m.Elements {
		decimals := 0
		if e.Micro {
			decimals = 3
		}
		want, off := "-", "-"
		if e.WantMgL > 0 && solutionAims(e.Symbol) {
			want, off = quantity.FormatNumber(quantity.Round(e.WantMgL, decimals), decimals), fmt.Sprintf("%+.0f %%", 100*(e.HaveMgL/e.WantMgL-1))
		}
		rows = append(rows, []string{e.Word + ", " + e.Symbol, quantity.FormatNumber(quantity.Round(e.HaveMgL, decimals), decimals) + " mg/L", want, off})
	}
	table(b, rows, "lrrr")
}

// solutionAims tells whether anybody aims at a nutrient: not at sodium, which a
// recipe brings with its salts.
func solutionAims(symbol string) bool {
	n, ok := solution.NutrientNamed(symbol)
	return ok && n != solution.Sodium && n != solution.Chlorine
}

// reportAdults says who may touch what.
func reportAdults(b *bytes.Buffer, a *garden.Assessment) {
	for _, t := range a.Tubs {
		if t.Mix == nil {
			continue
		}
		b.WriteByte('\n')
		wrap(b, "", "Concentrates, salts, acids and alkalis are an adult's, with goggles and gloves; acid goes into water, never the other way; the label and the safety data sheet rule. "+solution.PupilRule())
		return
	}
}
