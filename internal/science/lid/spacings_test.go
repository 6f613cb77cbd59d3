package lid

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"testing"
	"time"
)

func TestSpacings(t *testing.T) {
	ds := domains()
	lo, hi := uint64(1), uint64(2)
	if v, err := strconv.Atoi(os.Getenv("SEEDS")); err == nil {
		hi = uint64(v)
	}
	total, tt := 0, time.Duration(0)
	for seed := lo; seed <= hi; seed++ {
		start := time.Now()
		fails := 0
		cases := spacings(t)
		for _, c := range published {
			if c.n > 20 {
				cases = append(cases, spacing{"rect_1_1", c.n, c.d})
			}
		}
		var t114 time.Duration
		for k, c := range cases {
			if k == 114 {
				t114 = time.Since(start)
			}
			r := ds[c.domain].region(t)
			l, err := r.Spread(context.Background(), c.n, Search{Seed: seed})
			if err != nil {
				t.Fatal(err)
			}
			want := c.d * ds[c.domain].scale
			gap := 1 - l.ExactSpacing/want
			if gap > 1e-6 || l.Measured.Slack < -feasibleMM || gap < -1e-8 {
				fails++
				fmt.Printf("seed %d %s %d: %.9f want %.9f gap %.2g slack %g\n", seed, c.domain, c.n, l.ExactSpacing, want, gap, l.Measured.Slack)
			}
		}
		fmt.Printf("seed %d: %d fails, %v of which 114: %v\n", seed, fails, time.Since(start), t114)
		total += fails
		tt += time.Since(start)
	}
	fmt.Println("total", total, tt)
}
