package lid

import (
	"context"
	"fmt"
	"os"
	"strconv"
	"syscall"
	"testing"
	"time"
)

func cpu() time.Duration {
	var u syscall.Rusage
	syscall.Getrusage(syscall.RUSAGE_SELF, &u)
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

func TestStudy(t *testing.T) {
	hi := uint64(2)
	if v, err := strconv.Atoi(os.Getenv("SEEDS")); err == nil {
		hi = uint64(v)
	} else {
		t.Skip()
	}
	total := 0
	for seed := uint64(11); seed < 11+hi; seed++ {
		fails := 0
		cases := spacings(t)
		for _, c := range published {
			cases = append(cases, spacing{"rect_1_1", c.n, c.d})
		}
		t0 := cpu()
		var t114 time.Duration
		for k, c := range cases {
			if k == 114 {
				t114 = cpu() - t0
			}
			d := domains()[c.domain]
			l, err := d.region(t).Spread(context.Background(), c.n, Search{Seed: seed})
			if err != nil {
				t.Fatal(err)
			}
			gap := 1 - l.ExactSpacing/(c.d*d.scale)
			if gap > 1e-6 || gap < -1e-8 {
				fails++
				fmt.Printf("   seed %d %s %d: gap %.2g\n", seed, c.domain, c.n, gap)
			}
		}
		fmt.Printf("seed %d: %d fails, 114: %.2f s, square: %.2f s\n", seed, fails, t114.Seconds(), (cpu() - t0 - t114).Seconds())
		total += fails
	}
	fmt.Println("total", total)
}
