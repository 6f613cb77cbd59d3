package web_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

// BenchmarkCharts is the page of charts of a garden with 100,000 readings: two
// tubs read through twelve years, and one tub read so often that all of them
// lie in a term. p95-ms is what nineteen of twenty wait at most.
func BenchmarkCharts(b *testing.B) {
	const all = 100_000
	for _, log := range []struct {
		name string
		tubs []string
		over time.Duration
	}{
		{"years", []string{"Heron", "Otter"}, 12 * 365 * 24 * time.Hour},
		{"dense", []string{"Heron"}, 30 * 24 * time.Hour},
	} {
		base, st := served(b)
		g, err := st.Create(context.Background(), log.name, fernhollow(b), "made", moment)
		if err != nil {
			b.Fatal(err)
		}
		writeLog(b, st, g.ID, log.tubs, all, log.over)
		for _, span := range []string{"weeks", "term", "all"} {
			b.Run(log.name+"/"+span, func(b *testing.B) {
				var took []time.Duration
				size := 0
				for b.Loop() {
					began := time.Now()
					size = weigh(b, base+"/g/"+g.ID+"/logbook/charts?tub=Heron&span="+span, false)
					took = append(took, time.Since(began))
				}
				slices.Sort(took)
				b.ReportMetric(float64(took[len(took)*19/20].Microseconds())/1000, "p95-ms")
				b.ReportMetric(float64(size)/1000, "kB")
			})
		}
	}
}

// writeLog writes so many readings down, the last one at the moment of the tests.
func writeLog(b *testing.B, st *store.Store, id string, tubs []string, n int, over time.Duration) {
	b.Helper()
	random := rand.New(rand.NewPCG(1, 1))
	step := over / time.Duration(n)
	rows := make([]reading.Row, 0, 5000)
	for i := range n {
		ph, ec := quantity.Round(5.8+0.3*random.NormFloat64(), 2), quantity.Round(1.5+0.1*random.NormFloat64(), 2)
		water, level := quantity.Round(20+random.NormFloat64(), 1), quantity.Round(16+3*random.Float64(), 1)
		text := func(v float64) string { return fmt.Sprintf("%.2f", v) }
		rows = append(rows, reading.Row{
			ID: fmt.Sprintf("r-%d", i), Tub: tubs[i%len(tubs)], At: moment.Add(-over + time.Duration(i+1)*step).Truncate(time.Millisecond),
			PH:    reading.PH{Read: quantity.Interval[quantity.PH]{Low: quantity.PH(ph), High: quantity.PH(ph), Text: text(ph)}, With: reading.Meter},
			EC:    reading.EC{Read: quantity.Interval[quantity.MSPerCM]{Low: quantity.MSPerCM(ec), High: quantity.MSPerCM(ec), Text: text(ec)}, With: reading.Meter, Scale: reading.MilliSiemens},
			Water: quantity.Typed[quantity.DegC]{Value: quantity.DegC(water), Text: text(water)},
			Level: reading.Level{Litres: quantity.Typed[quantity.L]{Value: quantity.L(level), Text: text(level)}},
		})
		if len(rows) == cap(rows) || i == n-1 {
			if _, err := st.AddReadings(context.Background(), id, rows, moment); err != nil {
				b.Fatal(err)
			}
			rows = rows[:0]
		}
	}
}
