package lid

import (
	"context"
	"fmt"
	"testing"
)

func BenchmarkSpread(b *testing.B) {
	for _, effort := range []Effort{Quick, Full} {
		for _, n := range []int{8, 12, 20, 30, 60} {
			b.Run(fmt.Sprintf("effort=%d/n=%d", effort, n), func(b *testing.B) {
				r := heron(b)
				for k := 0; b.Loop(); k++ {
					spread(b, r, n, Search{Effort: effort, Seed: uint64(k)})
				}
			})
		}
	}
}

// BenchmarkCheckOfALid is what `check` asks of one lid with twelve holes.
func BenchmarkCheckOfALid(b *testing.B) {
	for k := 0; b.Loop(); k++ {
		r := heron(b)
		o := Search{Seed: uint64(k)}
		f, err := r.Optima(context.Background(), 12, o)
		if err != nil {
			b.Fatal(err)
		}
		f.Widest()
		if _, err := f.Snap(context.Background(), Ruler{Step: 5}); err != nil {
			b.Fatal(err)
		}
		if _, err := r.Rows(context.Background(), 12, Ruler{Step: 5}, nil); err != nil {
			b.Fatal(err)
		}
		if _, err := r.MostAt(context.Background(), 145, o); err != nil {
			b.Fatal(err)
		}
		r.Bound(12)
	}
}

func BenchmarkNewRegion(b *testing.B) {
	for b.Loop() {
		heron(b)
	}
}

func BenchmarkBound(b *testing.B) {
	for b.Loop() {
		heron(b).Bound(12)
	}
}
