package reading

import (
	"math"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
)

var monday = time.Date(2027, 1, 11, 8, 40, 0, 0, time.UTC)

func ph(v float64) PH {
	return PH{Read: quantity.Interval[quantity.PH]{Low: quantity.PH(v), High: quantity.PH(v), Text: exact(v)}, With: Meter, Calibrated: day(monday)}
}

func ec(v float64) EC {
	return EC{Read: quantity.Interval[quantity.MSPerCM]{Low: quantity.MSPerCM(v), High: quantity.MSPerCM(v), Text: exact(v)}, With: Meter, Scale: MilliSiemens}
}

func typed[Q quantity.Quantity](v Q) quantity.Typed[Q] {
	return quantity.Typed[Q]{Value: v, Text: exact(float64(v))}
}

func ids(entries []Entry) (standing, earlier []string) {
	for _, e := range entries {
		standing = append(standing, e.ID)
		for _, r := range e.Earlier {
			earlier = append(earlier, r.ID)
		}
	}
	return standing, earlier
}

func TestWhatStandsAfterCorrections(t *testing.T) {
	at := func(h int) time.Time { return monday.Add(time.Duration(h) * time.Hour) }
	for _, c := range []struct {
		name              string
		rows              []Row
		standing, earlier []string
	}{
		{"nothing written", nil, nil, nil},
		{"two readings, late one first", []Row{{ID: "b", At: at(1)}, {ID: "a", At: at(0)}}, []string{"a", "b"}, nil},
		{"a correction takes the place", []Row{{ID: "a", At: at(0)}, {ID: "b", At: at(0), Corrects: "a"}}, []string{"b"}, []string{"a"}},
		{"a correction is corrected", []Row{{ID: "a"}, {ID: "b", Corrects: "a"}, {ID: "c", Corrects: "b"}}, []string{"c"}, []string{"a", "b"}},
		{"two correct one: the later stands", []Row{{ID: "a"}, {ID: "b", Corrects: "a"}, {ID: "c", Corrects: "a"}}, []string{"c"}, []string{"a", "b"}},
		{"withdrawn", []Row{{ID: "a"}, {ID: "b", Corrects: "a", Withdrawn: true}}, nil, nil},
		{"withdrawn and written again", []Row{{ID: "a"}, {ID: "b", Corrects: "a", Withdrawn: true}, {ID: "c", Corrects: "b"}}, []string{"c"}, []string{"a", "b"}},
		{"names what is not there", []Row{{ID: "a", Corrects: "z"}}, []string{"a"}, nil},
		{"names what comes later", []Row{{ID: "a", Corrects: "b"}, {ID: "b", Corrects: "a"}}, []string{"b"}, []string{"a"}},
		{"sent twice", []Row{{ID: "a"}, {ID: "a"}}, []string{"a"}, nil},
		{"moved to the other tub", []Row{{ID: "a", Tub: "Heron"}, {ID: "b", Tub: "Otter", Corrects: "a"}}, []string{"b"}, []string{"a"}},
	} {
		standing, earlier := ids(Standing(c.rows))
		if !slices.Equal(standing, c.standing) || !slices.Equal(earlier, c.earlier) {
			t.Errorf("%s: %v stands for %v, want %v for %v", c.name, standing, earlier, c.standing, c.earlier)
		}
	}
}

// No row is lost: each stands, stands behind one that does, or was withdrawn.
func TestNoRowIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := rows.Draw(t, "rows")
		standing, earlier := ids(Standing(rows))
		for _, r := range rows {
			n := 0
			for _, id := range append(slices.Clone(standing), earlier...) {
				if id == r.ID {
					n++
				}
			}
			gone := n == 0 && slices.ContainsFunc(rows, func(r Row) bool { return r.Withdrawn })
			if n != 1 && !gone {
				t.Fatalf("%s stands %d times", r.ID, n)
			}
		}
	})
}

func TestThinKeepsExtremes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.SliceOfN(rapid.Int64Range(0, 1e9), 0, 300).Draw(t, "steps")
		n := rapid.IntRange(-1, 80).Draw(t, "n")
		var points []Point
		at := monday
		for _, s := range steps {
			at = at.Add(time.Duration(s) * time.Millisecond)
			low := float64(rapid.IntRange(-50, 50).Draw(t, "low"))
			points = append(points, Point{At: at, Low: low, High: low + float64(rapid.IntRange(0, 5).Draw(t, "wide")), ID: exact(float64(len(points)))})
		}
		thin := Thin(points, n)
		if len(points) <= max(n, 4) && len(thin) != len(points) || len(thin) > max(n, 4) {
			t.Fatalf("%d of %d points where %d have room", len(thin), len(points), n)
		}
		if len(points) == 0 {
			return
		}
		if thin[0] != points[0] || thin[len(thin)-1] != points[len(points)-1] {
			t.Error("the first or the last is gone")
		}
		low, high := extremes(points)
		if l, h := extremes(thin); l != low || h != high {
			t.Errorf("%v to %v became %v to %v", low, high, l, h)
		}
		rest := points
		for _, p := range thin {
			i := slices.Index(rest, p)
			if i < 0 {
				t.Fatalf("%v is no point of the series, or out of order", p)
			}
			rest = rest[i+1:]
		}
	})
}

func extremes(points []Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		low, high = min(low, p.Low), max(high, p.High)
	}
	return low, high
}

func TestLevelsOfATub(t *testing.T) {
	heron := Vessel{Name: "Heron", FillL: 24, RimL: 34, InsideHeight: 220, LitresAtDepth: func(d quantity.MM) quantity.L { return quantity.L(d) / 7 }}
	for _, c := range []struct {
		name          string
		row           Row
		before, after quantity.L
		ok            bool
	}{
		{"not read", Row{}, 0, 0, false},
		{"dipstick", Row{Level: Level{Litres: typed[quantity.L](20)}}, 20, 20, true},
		{"dipstick and poured in", Row{Level: Level{Litres: typed[quantity.L](20)}, Added: Added{Litres: typed[quantity.L](3)}}, 20, 23, true},
		{"depth", Row{Level: Level{Depth: typed[quantity.MM](140)}}, 20, 20, true},
		{"changed out", Row{Done: []Deed{ChangedOut}}, 24, 24, true},
		{"changed out, filled with", Row{Done: []Deed{ChangedOut}, Level: Level{Filled: typed[quantity.L](24)}}, 24, 24, true},
		{"read, then changed out", Row{Done: []Deed{ChangedOut}, Level: Level{Litres: typed[quantity.L](20)}}, 20, 24, true},
		{"filled to the line", Row{Level: Level{Filled: typed[quantity.L](4)}}, 20, 24, true},
	} {
		before, after, ok := c.row.Litres(heron)
		if before != c.before || after != c.after || ok != c.ok {
			t.Errorf("%s: %v, %v, %v", c.name, before, after, ok)
		}
	}
	entries := Standing([]Row{
		{ID: "a", At: monday, Level: Level{Filled: typed[quantity.L](4)}},
		{ID: "b", At: monday.Add(24 * time.Hour), Added: Added{Litres: typed[quantity.L](1.5)}},
		{ID: "c", At: monday.Add(48 * time.Hour), Level: Level{Litres: typed[quantity.L](21)}, Doubtful: []Field{FieldLevel}},
	})
	if got := PouredBetween(entries, monday, monday.Add(72*time.Hour)); got != 1.5 {
		t.Errorf("poured after the first: %v", got)
	}
	points := Points(entries, FieldLevel, heron)
	if len(points) != 3 || points[0].Low != 20 || points[1].Low != 24 || !points[2].Doubtful {
		t.Errorf("points of the level: %+v", points)
	}
	if _, ok := Last(entries, FieldLevel, monday.Add(72*time.Hour)); !ok {
		t.Error("no last level")
	} else if e, _ := Last(entries, FieldLevel, monday.Add(72*time.Hour)); e.ID != "a" {
		t.Errorf("the doubtful level of %s counts", e.ID)
	}
}
