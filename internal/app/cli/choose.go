package cli

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
)

const chooseLong = `Sets every offer of the plan beside building: how many of its holes its water
feeds and which to use, what it lacks, what a harvested plant costs over the
crops planned, and the reasons for and against each. There is no winner by price.

Prices are the plan's own, under 'prices' and 'offers'; what has none is named
and not guessed.
`

func chooseCommand(s Streams) *cobra.Command {
	return stage{name: "choose", short: "Buy or build: what each feeds, lacks and costs", long: chooseLong, asks: garden.StageChoose, report: reportChoose}.command(s)
}

// reportChoose writes the decision for the terminal: the answer, the stops, the
// options side by side, then the reasons of each.
func reportChoose(w io.Writer, a *garden.Assessment) error {
	var b bytes.Buffer
	wrap(&b, "", plain(a.Garden))
	bold, rest := a.Choose.Answer(a)
	wrap(&b, "", plain(bold+" "+rest))
	for _, f := range a.Findings {
		if f.Level == finding.Stop || strings.HasPrefix(f.Field, "offers") {
			reportFinding(&b, f)
		}
	}
	b.WriteByte('\n')
	rows := [][]string{{"", "plants", "first crop", fmt.Sprintf("%d crops", a.Choose.Crops), "a plant moved in", "a plant harvested"}}
	for i := range a.Choose.Offers {
		o := &a.Choose.Offers[i]
		rows = append(rows, []string{plain(o.Name), plantsWords(o), amount(o, o.FirstCrop), amount(o, o.Total), amount(o, o.PerPlanted), amount(o, o.PerHarvested)})
	}
	table(&b, rows, "lrrrrr")
	if a.Plan.Currency != "" {
		wrap(&b, "", "In "+a.Plan.Currency+". "+amountNote)
	} else {
		wrap(&b, "", amountNote)
	}
	for i := range a.Choose.Offers {
		reportOption(&b, a, &a.Choose.Offers[i])
	}
	reportSizes(&b, a)
	reportSenses(&b, a)
	_, err := w.Write(b.Bytes())
	return err
}

const amountNote = "A + behind an amount: not all of it has a price, so it is more. A ?: too few prices are told."

func plantsWords(o *garden.ChooseOffer) string {
	if !o.Counted() {
		return "?"
	}
	return strconv.Itoa(o.PlantSites)
}

// amount is one of an option's costs for the table.
func amount(o *garden.ChooseOffer, v *float64) string {
	if v == nil || !o.Tells() {
		return "?"
	}
	text := strconv.FormatFloat(*v, 'f', 2, 64)
	if !o.Priced {
		text += "+"
	}
	return text
}

func reportOption(b *bytes.Buffer, a *garden.Assessment, o *garden.ChooseOffer) {
	name := plain(o.Name)
	fmt.Fprintf(b, "\n%s\n%s\n", name, strings.Repeat("-", min(utf8.RuneCountInString(name), columns)))
	if !o.Possible {
		wrap(b, "", "Not possible yet.")
	}
	if !o.ForFood {
		wrap(b, "", "Not for food.")
	}
	wrap(b, "", o.Feeds(a))
	if which := o.Which(a); which != "" {
		wrap(b, "", which)
	}
	for _, line := range o.For {
		wrap(b, "for      ", plain(line))
	}
	for _, line := range o.Against {
		wrap(b, "against  ", plain(line))
	}
	for _, line := range o.Needs {
		wrap(b, "needs    ", plain(line)+".")
	}
	if len(o.Unknown) > 0 {
		wrap(b, "no price ", plain(strings.Join(o.Unknown, "; "))+".")
	}
}

func reportSizes(b *bytes.Buffer, a *garden.Assessment) {
	if len(a.Choose.Sizes) < 2 {
		return
	}
	b.WriteString("\nOne big tub or several small ones\n---------------------------------\n")
	rows := [][]string{{"the plan's water", "tubs", "in one", "its mass", "pumps", "one failure costs"}}
	for _, s := range a.Choose.Sizes {
		rows = append(rows, []string{s.Words, strconv.Itoa(s.Tubs), s.Litres, s.Mass, strconv.Itoa(s.Pumps), fmt.Sprintf("%d plants", s.Lost)})
	}
	table(b, rows, "lrrrrr")
}

func reportSenses(b *bytes.Buffer, a *garden.Assessment) {
	if len(a.Choose.Senses) == 0 {
		return
	}
	b.WriteString("\nWhat would change the order\n---------------------------\n")
	for _, s := range a.Choose.Senses {
		wrap(b, "  ", plain(s.Says))
	}
}
