package lid

import (
	"context"
	"testing"
	"time"
)

func TestSpacings(t *testing.T) {
	ds := domains()
	for seed := uint64(1); seed <= 2; seed++ {
		start := time.Now()
		fails, lps := 0, 0
		for _, c := range spacings(t) {
			r := ds[c.domain].region(t)
			l, err := r.Spread(context.Background(), c.n, Search{Seed: seed})
			if err != nil {
				t.Fatal(err)
			}
			want := c.d * ds[c.domain].scale
			gap := 1 - l.ExactSpacing/want
			if gap > 1e-6 || l.Measured.Slack < -feasibleMM || gap < -1e-8 {
				fails++
				t.Logf("%s %d: %.9f want %.9f gap %.2g slack %g", c.domain, c.n, l.ExactSpacing, want, gap, l.Measured.Slack)
			}
		}
		t.Logf("seed %d: %d fails, %v, %d", seed, fails, time.Since(start), lps)
	}
}
