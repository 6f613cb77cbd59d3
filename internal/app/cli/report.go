package cli

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden"
)

// report writes an assessment for the terminal: findings first, at most 80
// columns wide.
func report(w io.Writer, a *garden.Assessment) error {
	var b bytes.Buffer
	wrap(&b, "", plain(a.Garden))
	if a.On != "" {
		fmt.Fprintf(&b, "on %s\n", a.On)
	}
	for _, f := range a.Findings {
		reportFinding(&b, f)
	}
	for _, t := range a.Tubs {
		reportTub(&b, a, t)
	}
	if _, known := a.Book.Find("shelf.width"); known {
		b.WriteString("\nThe shelf\n---------\n")
		reportNumbers(&b, a, "shelf.", ofShelf)
	}
	_, err := w.Write(b.Bytes())
	return err
}

func reportTub(b *bytes.Buffer, a *garden.Assessment, t garden.Tub) {
	fmt.Fprintf(b, "\n%s\n%s\n", t.Name, strings.Repeat("-", utf8.RuneCountInString(t.Name)))
	reportPlants(b, a, t)
	reportNumbers(b, a, "tubs."+garden.Slug(t.Name)+".", ofTub)
	if t.Season != nil {
		wrap(b, "", plain(t.Season.Answer(a)))
	}
	if t.Lid != nil {
		reportLid(b, a, t.Lid)
	}
}

// ofShelf are the keys of the shelf's numbers that the report shows.
var ofShelf = []string{"width", "rated_load", "allowed", "abreast"}

// ofTub are the keys of a tub's numbers that the report shows; the others are
// for explain.
var ofTub = []string{
	"fill_depth", "lowered_depth", "lowest_depth", "volume_fill", "volume_solution", "volume_reserve",
	"volume_reserve_lowered", "days_to_lowest", "mass_filled", "mass_grown", "bucket_trips", "room_for_plants",
}

func reportNumbers(b *bytes.Buffer, a *garden.Assessment, scope string, keys []string) {
	type row struct {
		name  string
		shown working.Shown
	}
	var found []row
	units := 0
	for _, key := range keys {
		if n, ok := a.Book.Find(scope + key); ok && n.Known() {
			found = append(found, row{n.Name, n.Show(a.Plan.Units)})
			units = max(units, utf8.RuneCountInString(found[len(found)-1].shown.Unit))
		}
	}
	var rows [][]string
	ranged := false
	for _, r := range found {
		number := func(v float64) string { return quantity.FormatNumber(v, r.shown.Decimals) }
		span := ""
		if r.shown.Low != r.shown.High {
			span = number(r.shown.Low) + " to " + number(r.shown.High)
			ranged = true
		}
		pad := strings.Repeat(" ", units-utf8.RuneCountInString(r.shown.Unit))
		rows = append(rows, []string{r.name, number(r.shown.Value) + " " + r.shown.Unit + pad, span})
	}
	table(b, rows, "lrl")
	if ranged {
		wrap(b, "", "The ranges are what the tape's error makes of each number.")
	}
}

func reportLid(b *bytes.Buffer, a *garden.Assessment, l *garden.Lid) {
	mark := func(mm float64) string { return quantity.FormatMark(mm, a.Plan.Units) }
	compareLayouts(b, a, l)
	chosen, ok := l.Layout(l.Chosen)
	if !ok {
		return
	}
	rows := [][]string{{"hole", "from left", "from bottom"}}
	for _, h := range chosen.Holes {
		rows = append(rows, []string{fmt.Sprint(h.N), mark(h.XMM), mark(h.YMM)})
	}
	if l.AirLine != nil {
		rows = append(rows, []string{"air line, " + l.AirLine.On, mark(l.AirLine.XMM), mark(l.AirLine.YMM)})
	}
	if l.Service != nil {
		rows = append(rows, []string{"service", mark(l.Service.XMM), mark(l.Service.YMM)})
	}
	b.WriteByte('\n')
	table(b, rows, "lrr")
}

// compareLayouts sets the three layouts side by side: what each keeps, what
// part of a proved bound that is, what it gives up and what it takes to mark.
func compareLayouts(b *bytes.Buffer, a *garden.Assessment, l *garden.Lid) {
	rows := [][]string{{"", "least distance", "of the bound", "given up", "worst web", "measures"}}
	for _, x := range l.Layouts {
		name := x.Name
		if name == l.Chosen {
			name += " (chosen)"
		}
		share := "-"
		if x.BoundMM > 0 && len(x.Holes) > 1 {
			share = fmt.Sprintf("%.0f %%", math.Floor(100*x.SpacingMM/x.BoundMM))
		}
		spacing, loss := "-", "-"
		if len(x.Holes) > 1 {
			spacing, loss = quantity.Format(quantity.Length.WithDecimals(1, 2), x.SpacingMM, a.Plan.Units), fmt.Sprintf("%.1f %%", 100*x.Loss)
		}
		rows = append(rows, []string{
			name, spacing, share, loss,
			quantity.Format(quantity.SmallLength, x.WorstWebMM, a.Plan.Units), fmt.Sprint(x.Marks),
		})
	}
	b.WriteByte('\n')
	table(b, rows, "lrrrrr")
	wrap(b, "", "'Of the bound': at least so much of what any arrangement of as many holes could give, proved. 'Given up': against widest. 'Measures': how many different ones to set out.")
	for _, x := range l.Layouts {
		switch {
		case x.Name != "ruler" || len(x.Holes) < 2 || x.SymmetryCost >= 1:
		case x.Symmetric:
			wrap(b, "", fmt.Sprintf("The ruler layout is symmetric, which costs %.1f %% of its least distance.", 100*x.SymmetryCost))
		case x.SymmetryCost > 0:
			wrap(b, "", fmt.Sprintf("A symmetric ruler layout would cost %.1f %% more, so it is not taken.", 100*x.SymmetryCost))
		}
	}
}
