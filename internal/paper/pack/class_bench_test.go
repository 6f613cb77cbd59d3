package pack_test

import (
	"context"
	"os"
	"runtime"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/pack"
	"rootbell/internal/paper/scene"
	"rootbell/internal/science/lid"
)

// goalClassPack is how many seconds a teacher may wait for the class's papers.
const goalClassPack = 2.0

// BenchmarkClassPack works a garden out with its class, and draws every paper of
// it: what 'pack --stage class' does.
func BenchmarkClassPack(b *testing.B) {
	text, err := os.ReadFile("../../../examples/fernhollow.yaml")
	if err != nil {
		b.Fatal(err)
	}
	p, problems := plan.Parse("fernhollow", text)
	if len(problems) > 0 {
		b.Fatal(problems)
	}
	papers := 0
	for b.Loop() {
		a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Full, Seed: 1, Workers: runtime.GOMAXPROCS(0), Stages: garden.StageMix | garden.StageSeason | garden.StageClass})
		if err != nil {
			b.Fatal(err)
		}
		papers = 0
		for _, one := range pack.Class(a) {
			if _, err := one.Draw(scene.A4); err != nil {
				b.Fatal(err)
			}
			papers++
		}
	}
	b.ReportMetric(float64(papers), "papers")
	b.ReportMetric(goalClassPack, "goal-s")
}
