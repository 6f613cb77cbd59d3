package forecast

import "testing"

// Two tubs of two stands each, filled up on open days, through eighty days a
// thousand times, by two workers.
func BenchmarkEnsemble(b *testing.B) {
	s := filled(b, 80)
	s.Tub.Stands = []Stand{lettuce(b, 4), lettuce(b, 4)}
	s.Tub.Stands[1].PPFD = 180
	s.Watches = []Watch{{24 * 4, 24 * 7}, {24 * 32, 24 * 42}}
	b.ReportAllocs()
	for b.Loop() {
		for tub := range 2 {
			run(b, s, Options{Seed: uint64(tub), Workers: 2})
		}
	}
}
