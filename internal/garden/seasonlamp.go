package garden

import (
	"cmp"
	"fmt"
	"slices"
)

// raise is a day on which a tub's plants have the lamp raised.
type raise struct {
	tub, task int
	on        string
	highMM    float64 // over the shelf
}

// oneLamp takes out of the tubs' days what would hang the bay's lamp lower than
// another tub has had it raised: it is one lamp over all of them, and the tallest
// plants decide.
func (p *planner) oneLamp() {
	if len(p.plan.Lamps) == 0 {
		return
	}
	all := p.raises()
	var done []raise
	high := 0.0
	for _, r := range all {
		if r.highMM >= high+raisedMM {
			high, done = r.highMM, append(done, r)
			continue
		}
		p.out.Tubs[r.tub].Season.Tasks[r.task].On = "" // taken out below
	}
	for i := range p.out.Tubs {
		s := p.out.Tubs[i].Season
		if s == nil {
			continue
		}
		if by, far := p.tooHigh(i, all, done); far {
			p.farLamp(i, by)
		}
		s.Tasks = slices.DeleteFunc(s.Tasks, func(t SeasonTask) bool { return t.On == "" })
	}
}

// raises are what all tubs ask for, by day, the highest first.
func (p *planner) raises() (all []raise) {
	for i := range p.out.Tubs {
		s := p.out.Tubs[i].Season
		if s == nil {
			continue
		}
		for k, task := range s.Tasks {
			if task.Kind == "lamp" {
				all = append(all, raise{i, k, task.On, p.out.states[i].lidMM() + task.overLidMM})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b raise) int {
		return cmp.Or(cmp.Compare(a.on, b.on), cmp.Compare(b.highMM, a.highMM))
	})
	return all
}

// lidMM is how high the lid's upper face lies over the shelf.
func (t *tubState) lidMM() float64 {
	return t.shape.HeightMM() + t.setup.ThicknessMM + max(t.setup.AboveRimMM, 0)
}

// tooHigh tells whether another tub has the lamp raised far over what a tub asks
// for while its plants stand there, and which.
func (p *planner) tooHigh(tub int, all, done []raise) (by int, far bool) {
	s := p.out.Tubs[tub].Season
	if len(s.Days) == 0 {
		return 0, false
	}
	begins, ends := s.TransplantOn, s.Days[len(s.Days)-1].Date
	for _, r := range done {
		other := p.out.Tubs[r.tub].Season
		if r.tub == tub || r.on > ends || other.Days[len(other.Days)-1].Date < begins {
			continue
		}
		wants := p.out.states[tub].lidMM() + p.overLidMM()
		for _, own := range all {
			if own.tub == tub && own.on <= max(r.on, begins) {
				wants = max(wants, own.highMM)
			}
		}
		if r.highMM-wants > farMM {
			return r.tub, true
		}
	}
	return 0, false
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
