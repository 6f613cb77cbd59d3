package cli

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/school/term"
)

const seasonLong = `Works back from the meal: when to sow and to move the plants, how likely they are
ready, what each day brings, and how likely the water outlasts each closed
stretch, with what to do before it. Without a meal it goes by the term's end.

A thousand runs with other luck are followed; what was read so far, named with
--readings, makes them the class's own. --json has every day.
`

func seasonCommand(s Streams) *cobra.Command {
	return stage{
		name: "season", short: "When to sow, what each day brings, and closed stretches", long: seasonLong,
		asks: garden.StageMix | garden.StageSeason, report: reportSeason,
	}.command(s)
}

// reportSeason writes the seasons for the terminal: the answer first.
func reportSeason(w io.Writer, a *garden.Assessment) error {
	var b bytes.Buffer
	wrap(&b, "", plain(a.Garden))
	for _, t := range a.Tubs {
		fmt.Fprintf(&b, "\n%s\n%s\n", t.Name, strings.Repeat("-", utf8.RuneCountInString(t.Name)))
		if t.Season == nil {
			wrap(&b, "", noSeason(a))
			continue
		}
		reportTubSeason(&b, a, t.Season)
	}
	for _, f := range a.Findings {
		if f.Level == finding.Stop || garden.OfSeason(f) {
			reportFinding(&b, f)
		}
	}
	_, err := w.Write(b.Bytes())
	return err
}

// noSeason says why a tub has none.
func noSeason(a *garden.Assessment) string {
	if !a.Term.Known() {
		return "No season is worked out: the plan has no term. Write school.terms."
	}
	return "No season is worked out. What is in the way stands below."
}

func reportTubSeason(b *bytes.Buffer, a *garden.Assessment, s *garden.Season) {
	wrap(b, "", plain(s.Answer(a)))
	for _, m := range s.Moves {
		wrap(b, "  - ", plain(m))
	}
	if s.Guess != "" {
		wrap(b, "", plain(s.Guess))
	}
	for _, l := range s.Learnt {
		wrap(b, "", plain(l.Says))
	}
	for _, x := range s.Score {
		wrap(b, "", plain(x.Of+": "+x.Says))
	}
	seasonCrops(b, a, s)
	for _, m := range s.More {
		wrap(b, "", fmt.Sprintf("Room for one more crop: sow %s, move %s, ready %s (%s).", dayWords(m.SowOn), dayWords(m.TransplantOn), dayWords(m.ReadyOn), quantity.Chance(m.Chance)))
	}
	seasonTasks(b, s)
	seasonDays(b, a, s)
	seasonClosed(b, s)
}

// dayWords is a day of the JSON as people write it.
func dayWords(text string) string {
	d, err := term.ParseDate(text)
	if err != nil {
		return "-"
	}
	return d.Words()
}

func seasonCrops(b *bytes.Buffer, a *garden.Assessment, s *garden.Season) {
	if len(s.Ready) == 0 {
		return
	}
	rows := [][]string{{"crop", "plants", "seeds", "sow", "move", "a plant", "full size"}}
	grams := func(g float64) string {
		return quantity.Format(quantity.SmallMass, quantity.Gram.Base(g), a.Plan.Units)
	}
	for _, c := range s.Ready {
		rows = append(rows, []string{
			plain(c.Crop), fmt.Sprint(c.Plants), fmt.Sprint(c.Seeds), dayWords(c.SowOn), dayWords(c.Transplant),
			pair(grams(c.MassG.P5), grams(c.MassG.P95)), quantity.InHundred(c.ReadyChance) + " in 100",
		})
	}
	b.WriteByte('\n')
	table(b, rows, "lrrllrr")
}

func seasonTasks(b *bytes.Buffer, s *garden.Season) {
	if len(s.Tasks) == 0 {
		return
	}
	b.WriteString("\nDays with something to do\n")
	for _, t := range s.Tasks {
		wrap(b, fmt.Sprintf("%-12s", dayWords(t.On)), plain(strings.TrimSpace(t.Do+" "+t.Why)))
	}
}

// seasonDays is one day of each week; the JSON has all.
func seasonDays(b *bytes.Buffer, a *garden.Assessment, s *garden.Season) {
	if len(s.Days) == 0 {
		return
	}
	system := a.Plan.Units
	level := func(mm float64) string { return quantity.Format(quantity.Length, mm, system) }
	rows := [][]string{{"day", "water stands", "nine in ten", "a day", "EC", "crop", "nine in ten"}}
	for i, d := range s.Days {
		if i%7 != 0 && i != len(s.Days)-1 {
			continue
		}
		grams := func(g float64) string { return quantity.Format(quantity.SmallMass, quantity.Gram.Base(g), system) }
		rows = append(rows, []string{
			dayWords(d.Date), level(d.LevelMM.P50), pair(level(d.LevelMM.P5), level(d.LevelMM.P95)), litres(a, d.Litres),
			quantity.FormatNumber(quantity.Round(d.EC, 1), 1), grams(d.MassG.P50), pair(grams(d.MassG.P5), grams(d.MassG.P95)),
		})
	}
	b.WriteByte('\n')
	table(b, rows, "lrrrrrr")
}

// pair is two figures of one unit, which is said once.
func pair(low, high string) string {
	if at := strings.LastIndexAny(low, "\u00a0 "); at > 0 && strings.HasSuffix(high, low[at:]) {
		low = low[:at]
	}
	return low + "-" + high
}

// shortHours is a stretch that is told by itself only where something is to do
// in it: a weekend with the day before and after.
const shortHours = 72

// seasonClosed tells long stretches and those with something to do, and of the
// others how many there are.
func seasonClosed(b *bytes.Buffer, s *garden.Season) {
	if len(s.Closed) == 0 {
		return
	}
	b.WriteString("\nClosed stretches\n")
	others, worst := 0, 0.0
	for _, c := range s.Closed {
		if c.Hours < shortHours && len(c.Options) == 0 {
			others, worst = others+1, max(worst, c.Risk)
			continue
		}
		wrap(b, "", fmt.Sprintf("%s to %s, %.0f h, %s: %s", moment(c.From), moment(c.To), c.Hours, plain(c.Why), plain(c.Answer(s.Runs))))
		for i, o := range c.Options {
			lead := "  - "
			if i == c.Take {
				lead = "  * "
			}
			wrap(b, lead, plain(o.Do)+" Then it runs low in "+quantity.Chance(o.Risk)+".")
		}
		seasonFailures(b, c)
	}
	if others > 0 {
		wrap(b, "", fmt.Sprintf("Weekends and shorter: %d, in each at most %s fell below the lowest line.", others, garden.Runs(worst, s.Runs)))
	}
	if slices.ContainsFunc(s.Closed, func(c garden.LeaveIt) bool { return len(c.Options) > 0 }) {
		b.WriteString("* marks what to do.\n")
	}
}

// seasonFailures are what a pump that stops and a power cut do to a stretch.
func seasonFailures(b *bytes.Buffer, c garden.LeaveIt) {
	if c.PumpFailure != nil {
		wrap(b, "  ", "If the pump stops: "+plain(c.PumpFailure.Breath()))
	}
	if cut := c.PowerCut; cut != nil && cut.Risk > 0 {
		wrap(b, "  ", fmt.Sprintf("If the power fails for %.0f h, it runs low in %s.", cut.Hours, quantity.Chance(cut.Risk)))
	}
}

func moment(t time.Time) string { return term.DateOf(t).Words() + t.Format(" 15:04") }
