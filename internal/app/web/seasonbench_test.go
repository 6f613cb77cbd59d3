package web_test

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"slices"
	"testing"
	"time"

	"rootbell/examples"
)

// BenchmarkSeasonRecompute is what one waits for while changing the hours of
// light on Season: each request asks for a plan that nobody asked for before, of
// two tubs. quick is the first answer, of few runs; full is the one that
// follows. p95-ms is what nineteen of twenty wait at most; 300 is the aim for
// quick.
func BenchmarkSeasonRecompute(b *testing.B) {
	for _, name := range []string{"fernhollow", "saltbrook"} {
		text, err := examples.Plans.ReadFile(name + ".yaml")
		if err != nil {
			b.Fatal(err)
		}
		for _, effort := range []string{"quick", "full"} {
			b.Run(name+"/"+effort, func(b *testing.B) {
				base, st := served(b)
				g, err := st.Create(context.Background(), name, text, "made", moment)
				if err != nil {
					b.Fatal(err)
				}
				var took []time.Duration
				b.ResetTimer()
				for n := range max(b.N, 40) {
					began := time.Now()
					if err := trySeason(base, g.ID, effort, n); err != nil {
						b.Fatal(err)
					}
					took = append(took, time.Since(began))
				}
				slices.Sort(took)
				at := func(share float64) float64 {
					return float64(took[min(len(took)-1, int(share*float64(len(took))))]) / float64(time.Millisecond)
				}
				b.ReportMetric(at(0.5), "p50-ms")
				b.ReportMetric(at(0.95), "p95-ms")
			})
		}
	}
}

// trySeason turns the lamp off at a minute that is new each time.
func trySeason(base, id, effort string, n int) error {
	form := url.Values{"base": {"1"}, "lamps[0].lit[1]": {fmt.Sprintf("%02d:%02d", 20-n/60%8, n%60)}}
	response, err := http.PostForm(base+"/g/"+id+"/season/try?effort="+effort, form)
	if err != nil {
		return err
	}
	_, err = io.Copy(io.Discard, response.Body)
	_ = response.Body.Close()
	if response.StatusCode != http.StatusOK {
		return fmt.Errorf("status %d", response.StatusCode)
	}
	return err
}
