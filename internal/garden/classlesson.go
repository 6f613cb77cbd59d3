package garden

import (
	"fmt"

	"rootbell/internal/school/stations"
)

// ClassLesson is a whole class at the tubs for ten minutes. The groups go round:
// after each stay every group goes on to the next station, and from the last to
// the first.
type ClassLesson struct {
	Parts    int             `json:"parts"` // the class comes in so many parts, on as many days
	Pupils   int             `json:"pupils"`
	Minutes  int             `json:"minutes"`
	Each     int             `json:"each_min"` // at one station
	Rest     int             `json:"rest_min"` // to begin and to end
	Stations []ClassStation  `json:"stations"`
	Groups   []ClassGroup    `json:"groups"` // each begins at the station of its place
	Adopted  []ClassAdoption `json:"adopted"`
}

// ClassStation is one place of the lesson.
type ClassStation struct {
	Kind stations.Kind `json:"kind"`
	Tub  string        `json:"tub,omitempty"`
}

// ClassGroup is pupils who go round together.
type ClassGroup struct {
	Name   string `json:"name"`
	From   int    `json:"from"` // the first one's number
	Pupils int    `json:"pupils"`
}

// ClassAdoption is what a pair looks after: a hole, or a still jar beside the
// tub.
type ClassAdoption struct {
	Numbers []int  `json:"numbers"`
	Tub     string `json:"tub,omitempty"`
	Hole    int    `json:"hole,omitempty"`
	Jar     int    `json:"jar,omitempty"`
}

// lesson works the ten minutes out from the pupils, the tubs and their holes.
func (d *desk) lesson() *ClassLesson {
	given := stations.Given{Pupils: d.Plan.School.Pupils.Or(0), Teams: d.Plan.School.Teams}
	for _, t := range d.Tubs {
		given.Tubs = append(given.Tubs, stations.Tub{Name: t.Name, Holes: t.holeNumbers()})
	}
	l, ok := stations.Plan(given)
	if !ok {
		return nil
	}
	out := &ClassLesson{Parts: l.Parts, Pupils: l.Pupils, Minutes: l.Minutes, Each: l.Each, Rest: l.Rest}
	for _, s := range l.Stations {
		one := ClassStation{Kind: s.Kind}
		if s.Tub >= 0 {
			one.Tub = given.Tubs[s.Tub].Name
		}
		out.Stations = append(out.Stations, one)
	}
	for _, g := range l.Groups {
		out.Groups = append(out.Groups, ClassGroup{Name: g.Name, From: g.From, Pupils: g.Pupils})
	}
	for _, a := range l.Adopted {
		one := ClassAdoption{Hole: a.Hole, Jar: a.Jar}
		if a.Tub >= 0 {
			one.Tub = given.Tubs[a.Tub].Name
		}
		for n := a.From; n <= a.To; n++ {
			one.Numbers = append(one.Numbers, n)
		}
		out.Adopted = append(out.Adopted, one)
	}
	return out
}

// holeNumbers are the numbers of the holes in the lid as it is to be drilled.
func (t Tub) holeNumbers() []int {
	var out []int
	if t.Lid == nil {
		return nil
	}
	for _, l := range t.Lid.Layouts {
		if l.Name == t.Lid.Chosen {
			for _, h := range l.Holes {
				out = append(out, h.N)
			}
		}
	}
	return out
}

// Who are the pupils of an adoption, or of a job, by number: '3 and 4'.
func (a ClassAdoption) Who() string {
	var out []string
	for _, n := range a.Numbers {
		out = append(out, fmt.Sprint(n))
	}
	return listed(out)
}
