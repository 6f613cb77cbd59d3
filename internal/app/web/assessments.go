package web

import (
	"context"
	"crypto/sha256"
	"fmt"
	"runtime"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// assessments works plans out and keeps the last answers by what they depend
// on. Not more are worked out at once than there are processors.
type assessments struct {
	turn   chan struct{}
	memory *memory
	last   *recent[*garden.Assessment]
}

func newAssessments() *assessments {
	return &assessments{turn: make(chan struct{}, runtime.GOMAXPROCS(0)), memory: newMemory(), last: newRecent[*garden.Assessment]()}
}

// of is the assessment of a plan on a day, with the stages asked for. The full
// answer is given for a quick question too when it is there. The error is that
// ctx ended.
func (k *assessments) of(ctx context.Context, text []byte, p *plan.Plan, on plan.Date, effort lid.Effort, stages garden.Stages) (*garden.Assessment, error) {
	full, asked := keyOf(text, on, lid.Full, stages), keyOf(text, on, effort, stages)
	if a, ok := k.last.find(full, asked); ok {
		return a, nil
	}
	select {
	case k.turn <- struct{}{}:
		defer func() { <-k.turn }()
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	if a, ok := k.last.find(full, asked); ok {
		return a, nil
	}
	a, err := garden.Assess(ctx, garden.Inputs{Plan: p, On: on, Effort: effort, Seed: 1, Memory: k.memory, Stages: stages})
	if err != nil {
		return nil, err
	}
	k.last.keep(asked, a)
	return a, nil
}

func keyOf(text []byte, on plan.Date, effort lid.Effort, stages garden.Stages) fingerprint {
	return sha256.Sum256(fmt.Appendf(nil, "%d %d %s %s", effort, stages, on, text))
}
