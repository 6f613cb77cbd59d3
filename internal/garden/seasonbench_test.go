package garden_test

import (
	"context"
	"strconv"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/science/lid"
)

// The seasons of both demo tubs, the search for the days to sow on and each
// closed stretch in it, with the layouts remembered as a page has them.
func BenchmarkSeasonsOfTheDemo(b *testing.B) {
	p := parsed(b, fernhollowPlan, text(b, fernhollowPlan))
	for _, members := range []int{100, 1000} {
		b.Run(strconv.Itoa(members), func(b *testing.B) {
			in := garden.Inputs{Plan: p, Zone: zoneOf(b, p), Effort: lid.Quick, Seed: 1, Stages: garden.StageSeason, Members: members, Workers: 2, Memory: &counting{kept: map[string]any{}}}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := garden.Assess(context.Background(), in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
