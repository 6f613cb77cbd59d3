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
	answer := plants(p.Count) + "."
	if p.Count != p.Limits[p.Binds] {
		answer = plants(p.Count) + ", as the plan says."
	}
	wrap(b, "", fmt.Sprintf("%s What binds: %s, %d.", answer, p.Binds, p.Limits[p.Binds]))
	b.WriteByte('\n')
	const lead = "%-23s  %9s  "
	fmt.Fprintf(b, lead+"what would move it\n", "limit", "plants")
	for _, name := range garden.LimitNames() {
		if _, counted := p.Limits[name]; !counted && p.Moves[name] == "" && (name == garden.ByLamp || name == garden.ByOxygen) {
			continue // no lamp, no pump
		}
		label := name
		if name == p.Binds {
			label += " (binds)"
		}
		wrap(b, fmt.Sprintf(lead, label, limit(a, t, name)), p.Moves[name])
	}
	b.WriteByte('\n')
	reportAir(b, a, t)
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
