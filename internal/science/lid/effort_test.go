//go:build unix

package lid

import (
	"syscall"
	"testing"
)

// BenchmarkFullEffort runs the whole table, and the published square, at the
// effort of `check`, which knows no answer, with ROOTBELL_SEEDS seeds (one if
// not set). It reports seconds of processor time for each set and how many
// answers stayed more than 1e-6 below.
func BenchmarkFullEffort(b *testing.B) {
	var square []spacing
	for _, p := range published {
		square = append(square, spacing{"rect_1_1", p.n, p.d})
	}
	for name, cases := range map[string][]spacing{"table": spacings(b), "square": square} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				failed := 0
				began := processorSeconds(b)
				for seed := range seedsForPeer() {
					for _, c := range cases {
						d := domains()[c.domain]
						l := spread(b, d.region(b), c.n, Search{Seed: uint64(seed + 1)})
						if gap := 1 - l.ExactSpacing/(c.d*d.scale); gap > spacingTolerance {
							failed++
							b.Logf("seed %d, %s, n=%d: %.2g below", seed+1, c.domain, c.n, gap)
						}
					}
				}
				b.ReportMetric((processorSeconds(b)-began)/float64(seedsForPeer()), "cpu-s/set")
				b.ReportMetric(float64(failed), "failed")
				b.ReportMetric(float64(len(cases)*seedsForPeer()), "asked")
			}
		})
	}
}

func processorSeconds(b *testing.B) float64 {
	b.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e9
}
