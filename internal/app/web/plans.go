package web

import (
	"crypto/sha256"
	"sync"

	"rootbell/internal/garden/plan"
)

// plans keeps the last plans that were read, by their text: reading one costs
// more than all else that most pages do. A plan is never changed.
type plans struct {
	mu    sync.Mutex
	kept  map[[sha256.Size]byte]parsed
	order [][sha256.Size]byte // oldest first
}

type parsed struct {
	plan     *plan.Plan
	problems []plan.Problem
}

func newPlans() *plans { return &plans{kept: map[[sha256.Size]byte]parsed{}} }

// of reads a plan's text.
func (k *plans) of(text []byte) (*plan.Plan, []plan.Problem) {
	key := sha256.Sum256(text)
	k.mu.Lock()
	p, known := k.kept[key]
	k.mu.Unlock()
	if known {
		return p.plan, p.problems
	}
	p.plan, p.problems = plan.Parse("plan", text)
	k.mu.Lock()
	defer k.mu.Unlock()
	if _, known := k.kept[key]; !known {
		k.order = append(k.order, key)
	}
	k.kept[key] = p
	if len(k.order) > mostKept {
		delete(k.kept, k.order[0])
		k.order = k.order[1:]
	}
	return p.plan, p.problems
}
