package garden

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/solution"
)

// gramWords is a mass as a class weighs it: grams to the step of its scale, with
// ounces beside them in US units.
func (m *mixer) gramWords(grams, step float64) string { return MassWords(grams, step, m.plan.Units) }

// MassWords writes grams to the step of a scale, with ounces in US units.
func MassWords(grams, step float64, s quantity.System) string {
	decimals := 0
	for v := step; decimals < 4 && v > 0 && math.Abs(v-math.Round(v)) > 1e-6; decimals++ {
		v *= 10
	}
	const worst = 0.02 // of the mass, by rounding for the eye
	for decimals < 4 && math.Abs(quantity.Round(grams, decimals)-grams) > worst*grams {
		decimals++
	}
	text := quantity.FormatNumber(quantity.Round(grams, decimals), decimals) + "\u00a0g"
	if s == quantity.US {
		text += " (" + quantity.Format(quantity.SmallMass.WithDecimals(2, 2), quantity.Gram.Base(grams), s) + ")"
	}
	return text
}

// PourWords writes millilitres to the half, with fluid ounces in US units from a
// quarter of one on.
func PourWords(ml float64, s quantity.System) string {
	decimals := 1
	if ml >= 100 || math.Abs(ml-math.Round(ml)) < 1e-9 {
		decimals = 0
	}
	text := quantity.FormatNumber(quantity.Round(ml, decimals), decimals) + "\u00a0mL"
	if s == quantity.US && ml >= 7.5 {
		text += " (" + quantity.Format(quantity.SmallVolume, quantity.Millilitre.Base(ml), s) + ")"
	}
	return text
}

// BottleWords is a bottle of whole litres that a small stock is made up in. A
// measuring jug has no hundredths of a gallon, so beside it stand fluid ounces.
func BottleWords(litres float64, s quantity.System) string {
	text := quantity.FormatNumber(litres, 0) + "\u00a0L"
	if s == quantity.US {
		text += " (" + quantity.Format(quantity.SmallVolume, quantity.Litre.Base(litres), s) + ")"
	}
	return text
}

// steps writes what is done, in order: water and what takes a night first, then
// the feed, then the meter.
func (k *tubMix) steps() {
	k.waterSteps()
	k.acidStep()
	k.chlorineCheck()
	if k.out.Stocks != nil {
		k.stockSteps()
	} else {
		k.weighSteps()
	}
	k.meterSteps()
}

func (k *tubMix) step(when, who, do, why, key string) {
	if who == ByAdult && !strings.HasPrefix(do, "An adult ") {
		do = "An adult: " + strings.ToLower(do[:1]) + do[1:]
	}
	k.out.Steps = append(k.out.Steps, MixStep{When: when, Who: who, Do: do, Why: why, Key: key})
}

func (k *tubMix) volumeWords(litres float64) string {
	return quantity.Format(quantity.Volume, quantity.Litre.Base(litres), k.plan.Units)
}

// overnight tells whether anything has to stand for a night.
func (k *tubMix) overnight() bool {
	return k.out.Chlorine != nil || k.out.Acid != nil && k.out.Acid.Key != ""
}

func (k *tubMix) waterSteps() {
	when := OnTheDay
	if k.overnight() {
		when = DayBefore
	}
	w := k.out.Water
	do := fmt.Sprintf("Fill %s with %s of cold tap water, in buckets that two hands can carry.", k.name, k.volumeWords(w.TapL))
	if w.TapL == 0 {
		do = fmt.Sprintf("Fill %s with %s of %s.", k.name, k.volumeWords(w.BlendL), k.blendWords())
	} else if w.BlendL > 0 {
		do = fmt.Sprintf("Fill %s with %s of cold tap water and %s of %s.", k.name, k.volumeWords(w.TapL), k.volumeWords(w.BlendL), k.blendWords())
	}
	k.step(when, ByClass, do, "Without cups in it the water stands lower than the fill line: count what goes in.", "tubs."+Slug(k.name)+".volume_solution")
	c := k.out.Chlorine
	if c == nil {
		return
	}
	switch {
	case c.StandHours > 0:
		do = fmt.Sprintf("Let it stand open for %.0f hours, with the air stone on where there is one; deep or cold water for %.0f.", c.StandHours, c.DeepHours)
	default:
		do = "Chloramine does not go by standing."
	}
	why := "Chlorine hurts roots, and with ammonium from the feed it turns into chloramine."
	if c.AscorbicMg != nil {
		or := "Or stir in"
		if c.StandHours == 0 {
			or = "Stir in"
		}
		do += fmt.Sprintf(" %s %.0f mg of ascorbic acid (plain vitamin C powder); a pinch more does no harm.", or, *c.AscorbicMg)
	} else {
		why += " Nobody measured how much there is: ask the water company whether it is chloramine, which does not go by standing."
	}
	key := ""
	if c.AscorbicMg != nil {
		key = k.b.Key("ascorbic")
	}
	k.step(when, ByClass, do, why, key)
}

// acidStep is an adult's alone.
func (k *tubMix) acidStep() {
	a := k.out.Acid
	if a == nil || a.Key == "" {
		return
	}
	amount, at := "", 0.0
	if a.DoseTodayML != nil {
		amount, at = PourWords(math.Floor(2**a.DoseTodayML)/2, k.plan.Units), *a.DoseTodayML
	} else if a.DoseTodayG != nil {
		amount, at = k.gramWords(math.Floor(*a.DoseTodayG*10)/10, 0.1), *a.DoseTodayG
	}
	if at <= 0 {
		return
	}
	wait := "Air on until tomorrow."
	if k.plan.Tubs[k.index].Method == "still" {
		wait = "Lid off until tomorrow."
	}
	do := fmt.Sprintf("An adult with goggles and gloves stirs %s of %s into a jug of this water, then the jug into the tub. %s No plants in it.", amount, a.Name, wait)
	why := fmt.Sprintf("Acid into water, never water into acid. The pH reads about %.1f at once and comes to %.1f as the air takes the carbon dioxide out.", *a.PHAtOnce, *a.PHAfterAir)
	if a.Citric {
		why = "A small trim at most once a week: microbes eat citric acid within days, take oxygen for it, and the pH comes back."
	}
	k.step(DayBefore, ByAdult, do, why, a.Key)
}

func (k *tubMix) chlorineCheck() {
	if k.out.Chlorine == nil {
		return
	}
	strip, why := "a chlorine strip", fmt.Sprintf("Under %g mg/L is safe for roots.", k.out.Chlorine.UseBelowMgL)
	if k.out.Chlorine.StandHours == 0 || !k.out.Chlorine.Told {
		strip, why = "a strip for total chlorine", why+" A strip for free chlorine does not see chloramine."
	}
	k.step(OnTheDay, ByClass, "Dip "+strip+": it must show no colour before the feed goes in.", why, "")
}

func (k *tubMix) measureWords(w Weigh) string { return MeasureWords(w, k.plan.Units) }

// MeasureWords is one fertiliser as it is measured out: 12.3 g of school mix.
func MeasureWords(w Weigh, s quantity.System) string {
	step := 0.1
	if w.ScaleStepG != nil {
		step = *w.ScaleStepG
	}
	switch {
	case w.Stock != nil:
		bottle := BottleWords(w.Stock.Litres, s)
		made := fmt.Sprintf("dissolve %s of %s and make it up to %s", MassWords(w.Stock.Grams, step, s), w.Name, bottle)
		if w.Stock.Thin > 1 {
			made += fmt.Sprintf("; make %s of that up to %s again", PourWords(1000*w.Stock.Litres/w.Stock.Thin, s), bottle)
		}
		return made + "; pour " + PourWords(w.Stock.PourML, s) + " of it"
	case w.Spoons != nil:
		return fmt.Sprintf("%.0f level %s (%s) of %s", *w.Spoons, map[bool]string{true: "spoon", false: "spoons"}[*w.Spoons == 1], w.Spoon, w.Name)
	case w.Millilitres != nil:
		return PourWords(*w.Millilitres, s) + " of " + w.Name
	}
	return MassWords(w.RoundedGrams, step, s) + " of " + w.Name
}

// weighSteps puts what holds calcium into the tub by itself, as in strength it
// falls out with sulfate and phosphate.
func (k *tubMix) weighSteps() {
	taken := false
	for _, calcium := range []bool{false, true} {
		var solids []string
		verb := "Weigh"
		for _, w := range k.out.Weigh {
			if k.holdsCalcium(w) != calcium {
				continue
			}
			if w.Millilitres != nil && w.Stock == nil {
				k.step(OnTheDay, ByAdult, fmt.Sprintf("Pour %s into the tub and stir.", k.measureWords(w)), "Never two bottles together before they are in the tub.", w.Key)
				taken = true
				continue
			}
			if w.Stock != nil {
				k.step(OnTheDay, ByAdult, sentence(k.measureWords(w))+" Stir.", "Too little for the scale by itself, so a small stock is weighed and its share poured. Label what is left.", w.Key)
				taken = true
				continue
			}
			if w.Spoons != nil {
				verb = "Measure out"
			}
			solids = append(solids, k.measureWords(w))
		}
		if len(solids) == 0 {
			continue
		}
		why := "Dry salts that fall onto each other in strength may not dissolve again."
		if calcium {
			why = "Calcium in a bucket of its own: in strength it turns to chalk or gypsum with sulfate and phosphate."
		}
		k.step(OnTheDay, ByAdult, fmt.Sprintf("%s %s. Dissolve in a bucket of water from the tub, pour back, and stir.", verb, strings.Join(solids, ", ")), why, "")
		taken = true
	}
	if !taken {
		k.step(OnTheDay, ByAdult, "Nothing on the shelf is taken.", "See what stands in the way.", "")
	}
}

func (k *tubMix) holdsCalcium(w Weigh) bool {
	for _, s := range k.shelf {
		if s.at == w.Index {
			return s.Share[solution.Calcium] > 0
		}
	}
	return false
}

func (k *tubMix) stockSteps() {
	s := k.out.Stocks
	pour := PourWords(s.PourML, k.plan.Units)
	k.step(OnTheDay, ByAdult, fmt.Sprintf("Pour %s of stock A into the tub and stir for a minute.", pour), "A and B never meet undiluted.", k.b.Key("stock_pour"))
	k.step(OnTheDay, ByAdult, fmt.Sprintf("Rinse the measure. Pour %s of stock B into the tub and stir.", pour), "", k.b.Key("stock_pour"))
	for _, name := range s.Apart {
		for _, w := range k.out.Weigh {
			if w.Name == name {
				k.step(OnTheDay, ByAdult, fmt.Sprintf("Measure out %s, dissolve in a bucket of water from the tub, and pour back.", k.measureWords(w)), "It keeps in no stock.", w.Key)
			}
		}
	}
}

// ECRange writes the band of the EC as the class's meter shows it.
func (m *Mix) ECRange() string {
	low, unit, _ := strings.Cut(m.ECWords(m.Band[0]), "\u00a0")
	high, _, _ := strings.Cut(m.ECWords(m.Band[1]), "\u00a0")
	return low + " to " + high + "\u00a0" + unit
}

// ECWords writes an EC as the class's meter shows it.
func (m *Mix) ECWords(ec float64) string {
	if m.Scale > 0 {
		return fmt.Sprintf("%.0f\u00a0ppm", m.Scale.PPM(ec))
	}
	return quantity.FormatNumber(quantity.Round(ec, 2), 2) + "\u00a0mS/cm"
}

func (k *tubMix) meterSteps() {
	if k.plan.Tools.EC == "none" || k.out.Band == nil {
		k.step(OnTheDay, ByClass, "Write the date and the amounts on the tub's card.", "", "")
		return
	}
	k.step(OnTheDay, ByClass, fmt.Sprintf("Stir, wait ten minutes, and measure the EC: about %s, and anything from %s is as it should be (at 25 °C).", k.out.ECWords(*k.out.EC), k.out.ECRange()),
		"Far off: was one bag weighed twice, or forgotten? Pour nothing more in before you know.", k.b.Key("ec"))
	if ph := k.out.PHAfterSalts; ph != nil && k.plan.Tools.PH != "none" {
		text := fmt.Sprintf("Measure the pH tomorrow: about %.1f.", *ph)
		if !k.water.Known {
			text = "Measure the pH tomorrow, and write it down. Nothing is corrected on a guess."
		}
		k.step(OnTheDay, ByClass, text, "Air and salts need a night to come to rest.", k.b.Key("ph_after_salts"))
	}
}
