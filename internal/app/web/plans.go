package web

import (
	"crypto/sha256"

	"rootbell/internal/garden/plan"
)

// plans keeps the last plans that were read, by their text: reading one costs
// more than all else that most pages do. A plan is never changed.
type plans struct{ last *recent[parsed] }

type parsed struct {
	plan     *plan.Plan
	problems []plan.Problem
}

func newPlans() *plans { return &plans{newRecent[parsed]()} }

// of reads a plan's text.
func (k *plans) of(text []byte) (*plan.Plan, []plan.Problem) {
	key := sha256.Sum256(text)
	p, known := k.last.find(key)
	if !known {
		p.plan, p.problems = plan.Parse("plan", text)
		k.last.keep(key, p)
	}
	return p.plan, p.problems
}
