package garden

import (
	"cmp"
	"fmt"
	"slices"
)

// oneLamp takes out of the tubs' days what would hang the bay's lamp lower than
// another tub has had it raised: it is one lamp over all of them, and the tallest
// plants decide.
func (p *planner) oneLamp() {
	if len(p.plan.Lamps) == 0 {
		return
	}
	type raise struct {
		tub, task int
		on        string
		highMM    float64 // over the shelf
	}
	var all []raise
	for i := range p.out.Tubs {
		s, t := p.out.Tubs[i].Season, p.out.states[i]
		if s == nil {
			continue
		}
		lid := t.shape.HeightMM() + t.setup.ThicknessMM + max(t.setup.AboveRimMM, 0)
		for k, task := range s.Tasks {
			if task.Kind == "lamp" {
				all = append(all, raise{i, k, task.On, lid + task.overLidMM})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b raise) int {
		return cmp.Or(cmp.Compare(a.on, b.on), cmp.Compare(b.highMM, a.highMM))
	})
	high, by := 0.0, -1
	told := map[int]bool{}
	for _, r := range all {
		if r.highMM >= high+raisedMM {
			high, by = r.highMM, r.tub
			continue
		}
		p.out.Tubs[r.tub].Season.Tasks[r.task].On = "" // taken out below
		if high-r.highMM > farMM && by != r.tub && !told[r.tub] {
			told[r.tub] = true
			p.farLamp(r.tub, by)
		}
	}
	for i := range p.out.Tubs {
		if s := p.out.Tubs[i].Season; s != nil {
			s.Tasks = slices.DeleteFunc(s.Tasks, func(t SeasonTask) bool { return t.On == "" })
		}
	}
}

// farLamp says that a tub's young plants get less light than is counted, because
// another's tall ones have the lamp raised.
func (p *planner) farLamp(tub, by int) {
	name, other := p.out.Tubs[tub].Name, p.out.Tubs[by].Name
	p.note("season-one-lamp", "lamps", fmt.Sprintf("One lamp hangs over all tubs, and the plants of %s decide how high. Those of %s are smaller then, and get less light than is counted here.", other, name),
		fmt.Sprintf("Set %s up on something that bears it while it is empty, sow both for one day, or give it a lamp of its own.", name))
}

// farMM is how much higher than wanted a lamp hangs before it is worth a word.
const farMM = 100

// raisedMM is by how much a lamp has to be raised at least to be worth a task.
const raisedMM = 20
