package forecast

import (
	"strconv"
	"testing"
)

// Two tubs of two stands each, filled up on open days, through eighty days by
// two workers, with so many members.
func BenchmarkEnsemble(b *testing.B) {
	for _, members := range []int{100, 300, 1000} {
		b.Run(strconv.Itoa(members), func(b *testing.B) {
			s := filled(b, 80)
			s.Tub.Stands = []Stand{lettuce(b, 4), lettuce(b, 4)}
			s.Tub.Stands[1].PPFD = 180
			s.Watches = []Watch{{24 * 4, 24 * 7}, {24 * 32, 24 * 42}}
			b.ReportAllocs()
			for b.Loop() {
				for tub := range 2 {
					run(b, s, Options{Members: members, Seed: uint64(tub), Workers: 2})
				}
			}
		})
	}
}
