package garden_test

import (
	"context"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/science/lid"
)

// What asking for Mix costs beside Build, whose searches are remembered here.
func BenchmarkMix(b *testing.B) {
	for _, c := range []struct {
		name   string
		stages garden.Stages
	}{{"without", 0}, {"with", garden.StageMix}} {
		b.Run(c.name, func(b *testing.B) {
			p := parsed(b, "fernhollow", text(b, "../../examples/fernhollow.yaml"))
			in := garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Memory: &counting{kept: map[string]any{}}, Stages: c.stages}
			if _, err := garden.Assess(context.Background(), in); err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				if _, err := garden.Assess(context.Background(), in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
