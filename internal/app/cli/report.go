package cli

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
)

// columns is the width every report fits.
const columns = 80

// report writes an assessment for the terminal: findings first, at most 80
// columns wide.
func report(w io.Writer, a *garden.Assessment) error {
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s\n", a.Garden)
	if a.On != "" {
		fmt.Fprintf(&b, "on %s\n", a.On)
	}
	for _, f := range a.Findings {
		place := f.Field
		if f.Line > 0 {
			place = fmt.Sprintf("line %d, %s", f.Line, f.Field)
		}
		b.WriteByte('\n')
		wrap(&b, strings.ToUpper(f.Level.String())+"  ", f.Text+" "+f.Hint+" ("+place+")")
	}
	for _, t := range a.Tubs {
		reportTub(&b, a, t)
	}
	_, err := w.Write(b.Bytes())
	return err
}

func reportTub(b *bytes.Buffer, a *garden.Assessment, t garden.Tub) {
	fmt.Fprintf(b, "\n%s\n%s\n", t.Name, strings.Repeat("-", utf8.RuneCountInString(t.Name)))
	if p := t.Plants; p != nil {
		answer := fmt.Sprintf("%d plants. What binds: %s, %d.", p.Count, p.Binds, p.Limits[p.Binds])
		for _, name := range garden.LimitNames() {
			if n, ok := p.Limits[name]; ok && name != p.Binds {
				answer += fmt.Sprintf(" The %s would take %d.", name, n)
			}
		}
		if move := p.Moves[p.Binds]; move != "" {
			answer += " What would move it: " + move + "."
		}
		wrap(b, "", answer)
		b.WriteByte('\n')
	}
	rows := [][]string{}
	for _, key := range []string{
		"fill_depth", "lowered_depth", "lowest_depth", "volume_fill", "volume_solution", "volume_reserve",
		"volume_reserve_lowered", "days_to_lowest", "mass_filled", "mass_grown", "bucket_trips", "room_for_plants",
	} {
		if n, ok := a.Book.Find("tubs." + garden.Slug(t.Name) + "." + key); ok {
			shown := n.Show(a.Plan.Units)
			span := ""
			if shown.Low != shown.High {
				span = fmt.Sprintf("(%s to %s)", quantity.FormatNumber(shown.Low, shown.Decimals), quantity.FormatNumber(shown.High, shown.Decimals))
			}
			rows = append(rows, []string{n.Name, quantity.FormatNumber(shown.Value, shown.Decimals), shown.Unit, span})
		}
	}
	table(b, rows, "lrll")
	if t.Lid != nil {
		reportLid(b, a, t.Lid)
	}
}

func reportLid(b *bytes.Buffer, a *garden.Assessment, l *garden.Lid) {
	mark := func(mm float64) string { return quantity.FormatMark(mm, a.Plan.Units) }
	rows := [][]string{{"", "least distance", "of the bound", "worst web", "measures to mark"}}
	for _, x := range l.Layouts {
		name := x.Name
		if name == l.Chosen {
			name += " (chosen)"
		}
		share := "-"
		if x.BoundMM > 0 && len(x.Holes) > 1 {
			share = fmt.Sprintf("%.0f %%", 100*x.SpacingMM/x.BoundMM)
		}
		rows = append(rows, []string{name, quantity.Format(quantity.Length.WithDecimals(1, 2), x.SpacingMM, a.Plan.Units), share, quantity.Format(quantity.SmallLength, x.WorstWebMM, a.Plan.Units), fmt.Sprint(x.Marks)})
	}
	b.WriteByte('\n')
	table(b, rows, "lrrrr")
	chosen, ok := l.Layout(l.Chosen)
	if !ok {
		return
	}
	rows = [][]string{{"hole", "right", "up"}}
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

// table writes rows in aligned columns, two spaces apart.
func table(b *bytes.Buffer, rows [][]string, align string) {
	widths := make([]int, len(align))
	for _, r := range rows {
		for i, cell := range r {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	for _, r := range rows {
		var line strings.Builder
		for i, cell := range r {
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			if align[i] == 'r' {
				line.WriteString(pad + cell)
			} else {
				line.WriteString(cell + pad)
			}
			line.WriteString("  ")
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

// wrap writes text in lines of at most 80 columns, the first with a lead and
// the others indented by as much.
func wrap(b *bytes.Buffer, lead, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line := lead
	empty := true
	for _, word := range strings.Fields(strings.ReplaceAll(text, "\u00a0", "\u2007")) {
		word = strings.ReplaceAll(word, "\u2007", "\u00a0")
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			b.WriteString(line + "\n")
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	b.WriteString(line + "\n")
}
