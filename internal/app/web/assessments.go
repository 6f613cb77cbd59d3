package web

import (
	"context"
	"crypto/sha256"
	"fmt"
	"runtime"
	"sync"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// mostKept is how many assessments are kept: a class has a garden or two, and
// each of them the few plans of the last minutes.
const mostKept = 32

// assessments works plans out and keeps the last answers by what they depend
// on. Not more are worked out at once than there are processors.
type assessments struct {
	turn   chan struct{}
	memory *memory

	mu    sync.Mutex
	kept  map[[sha256.Size]byte]*garden.Assessment
	order [][sha256.Size]byte // oldest first
}

func newAssessments() *assessments {
	return &assessments{turn: make(chan struct{}, runtime.GOMAXPROCS(0)), memory: newMemory(), kept: map[[sha256.Size]byte]*garden.Assessment{}}
}

// of is the assessment of a plan on a day, with the stages asked for. The full answer is given for a quick
// question too when it is there. The error is that ctx ended.
func (k *assessments) of(ctx context.Context, text []byte, p *plan.Plan, on plan.Date, effort lid.Effort, stages garden.Stages) (*garden.Assessment, error) {
	full, asked := keyOf(text, on, lid.Full, stages), keyOf(text, on, effort, stages)
	if a := k.find(full, asked); a != nil {
		return a, nil
	}
	select {
	case k.turn <- struct{}{}:
		defer func() { <-k.turn }()
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	if a := k.find(full, asked); a != nil {
		return a, nil
	}
	a, err := garden.Assess(ctx, garden.Inputs{Plan: p, On: on, Effort: effort, Seed: 1, Memory: k.memory, Stages: stages})
	if err != nil {
		return nil, err
	}
	k.keep(asked, a)
	return a, nil
}

func keyOf(text []byte, on plan.Date, effort lid.Effort, stages garden.Stages) [sha256.Size]byte {
	return sha256.Sum256(fmt.Appendf(nil, "%d %d %s %s", effort, stages, on, text))
}

func (k *assessments) find(keys ...[sha256.Size]byte) *garden.Assessment {
	k.mu.Lock()
	defer k.mu.Unlock()
	for _, key := range keys {
		if a := k.kept[key]; a != nil {
			return a
		}
	}
	return nil
}

func (k *assessments) keep(key [sha256.Size]byte, a *garden.Assessment) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.kept[key] == nil {
		k.order = append(k.order, key)
	}
	k.kept[key] = a
	if len(k.order) > mostKept {
		delete(k.kept, k.order[0])
		k.order = k.order[1:]
	}
}
