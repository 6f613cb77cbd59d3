package lesson

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// wrote is a logbook of an invented tub: every second day, with one height of
// 61 in place of 6.1 where slip is set.
func wrote(t testing.TB, days int, slip bool) []reading.Entry {
	t.Helper()
	var b strings.Builder
	b.WriteString("id,tub,moment,level (L),EC (mS/cm),EC read with,EC checked,pH,pH read with,water (°C),height (cm),added (L)\n")
	first := time.Date(2027, 1, 25, 9, 0, 0, 0, time.UTC)
	wobble := []float64{0, 0.3, -0.2, 0.1, -0.3, 0.2, 0}
	for i := range days {
		height := 4 + 1.1*float64(i) + wobble[i%7]
		if slip && i == 5 {
			height *= 10
		}
		fmt.Fprintf(&b, "row-%04d-aaaa,Heron,%s,%.1f,%.2f,meter,2027-02-01,%.1f,meter,%.1f,%.1f,%.1f\n", i, first.AddDate(0, 0, 2*i).Format("2006-01-02 15:04"),
			25-0.7*float64(i%4), 1.5+0.02*float64(i%6), 5.8+0.1*float64(i%5), 20+0.3*float64(i%6), height, 0.5+0.1*float64(i%3))
	}
	table, problems := reading.ReadCSV([]byte(b.String()), reading.Import{Zone: time.UTC})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return reading.Standing(table.Rows)
}

func day(y, m, d int) time.Time { return time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC) }

// box is a tub with straight sides and a lid with six holes; invented.
func box(s quantity.System, entries []reading.Entry) *Tub {
	litres := func(mm float64) quantity.L {
		k := mm / 220
		l, w := 460+60*k, 300+60*k
		return quantity.L(mm / 6e6 * (460*300 + l*w + (460+l)*(300+w)))
	}
	return &Tub{
		Name: "Heron", System: s, Zone: time.UTC, On: day(2027, 2, 20), Crop: "leaf lettuce", Plants: 6, Hole: 76,
		Holes: []Hole{{1, 100, 95}, {2, 270, 95}, {3, 440, 95}, {4, 100, 285}, {5, 270, 280}, {6, 440, 285}},
		Lid:   Plate{Long: 540, Wide: 380}, Straight: true, Top: [2]float64{520, 360}, Base: [2]float64{460, 300}, Height: 220, Fill: 167, Tape: 2,
		SolutionL: 25.4, ReserveL: 14.2, LitresAt: litres, Lamp: &Lamp{On: 360, Off: 1320, Watts: 44}, Dose: &Dose{"grow", 2.5}, School: [2]int{510, 930},
		Germinate: 0.9, TapEC: 0.36, WantEC: 1.5, Price: 0.31, Currency: "EUR", Sown: day(2027, 1, 12), Meal: day(2027, 3, 24),
		TermFrom: day(2027, 1, 11), TermTill: day(2027, 4, 2), Away: []Stretch{{"break", 233}}, Entries: entries,
		Vessel: reading.Vessel{Name: "Heron", FillL: 26, RimL: 37, InsideHeight: 220, LitresAtDepth: func(mm quantity.MM) quantity.L { return litres(float64(mm)) }},
	}
}

// bare is a round tub of which nothing is known beyond its measures.
func bare(s quantity.System) *Tub {
	t := box(s, nil)
	t.Name, t.Straight, t.Lid = "Otter", false, Plate{Long: 400, Wide: 400, Round: true}
	t.Holes = []Hole{{1, 120, 200}, {2, 280, 200}, {3, 200, 300}}
	t.Lamp, t.Dose, t.Price, t.TapEC, t.WantEC, t.Away = nil, nil, 0, 0, 0, nil
	t.Sown, t.Meal, t.TermFrom, t.TermTill = time.Time{}, time.Time{}, time.Time{}, time.Time{}
	return t
}

// each calls with every template, band and several variants, of tubs with and
// without a logbook, in both unit systems. Sheets that a tub has not are left
// out.
func each(t *testing.T, check func(t *testing.T, s Sheet)) {
	t.Helper()
	for _, system := range []quantity.System{quantity.Metric, quantity.US} {
		for name, tub := range map[string]*Tub{"logbook": box(system, wrote(t, 24, true)), "few": box(system, wrote(t, 3, false)), "plan": box(system, nil), "bare": bare(system)} {
			for _, p := range Templates() {
				for _, b := range p.Bands {
					for seed := uint64(1); seed <= 6; seed++ {
						s, ok := Make(Choice{Template: p.ID, Band: b, Seed: seed}, tub, working.NewBook())
						if !ok {
							t.Fatalf("%s, %s: no sheet", p.ID, b)
						}
						if s.Why != "" {
							continue
						}
						t.Run(fmt.Sprintf("%s/%v/%s/%s/%d", name, system, p.ID, b, seed), func(t *testing.T) { check(t, s) })
					}
				}
			}
		}
	}
}

// made is one sheet that there must be.
func made(t testing.TB, c Choice, tub *Tub) Sheet {
	t.Helper()
	s, ok := Make(c, tub, working.NewBook())
	if !ok || s.Why != "" {
		t.Fatalf("%s: %v %s", c.Template, ok, s.Why)
	}
	return s
}
