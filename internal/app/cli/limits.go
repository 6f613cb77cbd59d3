package cli

import (
	"bytes"
	"fmt"

	"rootbell/internal/garden"
)

// reportPlants says how many plants, what binds and what would move it, with
// the limits side by side.
func reportPlants(b *bytes.Buffer, a *garden.Assessment, t garden.Tub) {
	p := t.Plants
	if p == nil {
		wrap(b, "", "How many plants is not known: what stands above must be put right first.")
		b.WriteByte('\n')
		return
	}
	answer := fmt.Sprintf("%s. What binds: %s, %d.", plants(p.Count), p.Binds, p.Limits[p.Binds])
	if p.Count != p.Limits[p.Binds] {
		answer = fmt.Sprintf("%s, as the plan says. What binds: %s, %d.", plants(p.Count), p.Binds, p.Limits[p.Binds])
	}
	wrap(b, "", answer)
	b.WriteByte('\n')
	rows := [][]string{{"limit", "plants", "what would move it"}}
	for _, name := range garden.LimitNames() {
		label := name
		if name == p.Binds {
			label += " (binds)"
		}
		rows = append(rows, []string{label, limit(a, t, name), p.Moves[name]})
	}
	folded(b, rows)
	b.WriteByte('\n')
}

// folded writes rows whose last cell may be a sentence, folded within the
// width of the report.
func folded(b *bytes.Buffer, rows [][]string) {
	const first, second = 25, 9
	for _, r := range rows {
		wrap(b, fmt.Sprintf("%-*s%*s  ", first, r[0], second, r[1]), r[2])
	}
}

func plants(n int) string {
	if n == 1 {
		return "1 plant"
	}
	return fmt.Sprintf("%d plants", n)
}

// limit is how many plants one limit allows. The headroom either bears any
// number or none, so where the room is known and no limit stands it is any.
func limit(a *garden.Assessment, t garden.Tub, name string) string {
	if n, ok := t.Plants.Limits[name]; ok {
		return fmt.Sprint(n)
	}
	if name == garden.ByHeadroom {
		if _, known := a.Book.Find("tubs." + garden.Slug(t.Name) + ".room_for_plants"); known {
			return "any"
		}
	}
	return "not known"
}
