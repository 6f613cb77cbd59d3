package reading

import (
	"slices"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
)

// Entry is a reading as it stands after its corrections, and the rows that it
// took the place of, the oldest first.
type Entry struct {
	Row
	Earlier []Row
}

// Standing gives the readings that stand, by moment, from rows in the order in
// which they were written down. A row that corrects another takes its place;
// of two corrections of one reading the one written last stands. A correction
// that names a row which is not before it stands by itself. What was withdrawn
// is left out.
func Standing(rows []Row) []Entry {
	type group struct {
		last    int   // in rows
		earlier []int // what it took the place of
	}
	groups := make([]group, 0, len(rows))
	at := make(map[string]int, len(rows))
	for i := range rows {
		r := &rows[i]
		if _, twice := at[r.ID]; twice {
			continue
		}
		g, known := at[r.Corrects]
		if r.Corrects == "" || !known {
			at[r.ID] = len(groups)
			groups = append(groups, group{last: i})
			continue
		}
		groups[g].earlier = append(groups[g].earlier, groups[g].last)
		groups[g].last, at[r.ID] = i, g
	}
	groups = slices.DeleteFunc(groups, func(g group) bool { return rows[g.last].Withdrawn })
	slices.SortStableFunc(groups, func(a, b group) int { return rows[a.last].At.Compare(rows[b.last].At) })
	out := make([]Entry, len(groups))
	for i, g := range groups {
		out[i].Row = rows[g.last]
		for _, e := range g.earlier {
			out[i].Earlier = append(out[i].Earlier, rows[e])
		}
	}
	return out
}

// Of gives the entries of one tub; a tub's name is the same in any case.
func Of(entries []Entry, tub string) []Entry {
	var out []Entry
	for _, e := range entries {
		if SameTub(e.Tub, tub) {
			out = append(out, e)
		}
	}
	return out
}

// SameTub tells whether two names are one tub's.
func SameTub(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), strings.TrimSpace(b)) }

// Last gives the latest entry up to a moment in which a field was read and is
// not doubtful.
func Last(entries []Entry, f Field, upTo time.Time) (Entry, bool) {
	for _, e := range slices.Backward(entries) {
		if !e.At.After(upTo) && e.Has(f) && !e.Doubts(f) && !e.Doubts(FieldTub) && !e.Doubts(FieldMoment) {
			return e, true
		}
	}
	return Entry{}, false
}

// Has tells whether a field was read.
func (r Row) Has(f Field) bool {
	switch f {
	case FieldTub:
		return r.Tub != ""
	case FieldMoment:
		return !r.At.IsZero()
	case FieldPH:
		return r.PH.Read.Set()
	case FieldEC:
		return r.EC.Read.Set()
	case FieldWater:
		return r.Water.Set()
	case FieldLevel:
		return r.Level.Set()
	case FieldAdded:
		return r.Added.Litres.Set()
	case FieldHeight:
		return r.Height.Set()
	case FieldLeaves:
		return r.Counted.Set()
	case FieldPicked:
		return r.Picked.Plants.Set()
	case FieldWeigh:
		return r.Picked.Mass.Set()
	}
	return false
}

// Vessel is what the readings need to know of a tub.
type Vessel struct {
	Name          string
	FillL         quantity.L // up to the fill line
	Lowered       time.Time  // from which on LoweredL is up to the fill line, as roots hang; zero: never
	LoweredL      quantity.L
	RimL          quantity.L // up to the rim
	InsideHeight  quantity.MM
	LitresAtDepth func(quantity.MM) quantity.L
}

// Litres is what stood in the tub before and after what was done. False where
// no level was read. A tub that was changed out stands at its line; what stood
// in it before is known only where the dipstick or the depth was read.
func (r Row) Litres(v Vessel) (before, after quantity.L, ok bool) {
	l, changed, fill := r.Level, r.Did(ChangedOut), v.FillOn(r.At)
	switch {
	case changed && !l.Litres.Set() && !l.Depth.Set():
		return fill, fill, fill > 0
	case l.Filled.Set():
		return fill - l.Filled.Value, fill, true
	case l.Litres.Set():
		before = l.Litres.Value
	case l.Depth.Set() && v.LitresAtDepth != nil:
		before = v.LitresAtDepth(l.Depth.Value)
	default:
		return 0, 0, false
	}
	if changed {
		return before, fill, true
	}
	return before, before + r.Added.Litres.Value, true
}

// ToTheLine tells whether a row's level rests on where the fill line is.
func (r Row) ToTheLine() bool { return r.Level.Filled.Set() || r.Did(ChangedOut) }

// FillOn is what is up to the fill line that holds at a moment.
func (v Vessel) FillOn(at time.Time) quantity.L {
	if !v.Lowered.IsZero() && !at.Before(v.Lowered) {
		return v.LoweredL
	}
	return v.FillL
}

// newWater tells whether what stood in the tub before is not known, as it was
// changed out.
func (r Row) newWater() bool {
	return r.Did(ChangedOut) && !r.Level.Litres.Set() && !r.Level.Depth.Set()
}

// Poured is what was poured in by this row, by either way of telling it.
func (r Row) Poured() quantity.L {
	if r.Level.Filled.Set() {
		return r.Level.Filled.Value
	}
	return r.Added.Litres.Value
}

// PouredBetween sums what was poured in after one moment and before another,
// neither included. What is doubtful does not count.
func PouredBetween(entries []Entry, after, before time.Time) quantity.L {
	sum := quantity.L(0)
	for _, e := range entries {
		doubtful := e.Doubts(FieldAdded) || e.Level.Filled.Set() && e.Doubts(FieldLevel)
		if e.At.After(after) && e.At.Before(before) && !doubtful {
			sum += e.Poured()
		}
	}
	return sum
}
