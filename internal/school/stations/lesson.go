package stations

import "fmt"

// Kind is what is done at a station.
type Kind string

// The kinds of stations. One tub is one station: there is no room for two.
const (
	AtTub Kind = "tub"   // look into the tub and read its level
	Jar   Kind = "jar"   // a still jar with one plant, to look at from all sides
	Draw  Kind = "draw"  // draw the plant in the hole that the pair adopted
	Board Kind = "board" // put today's readings into the graph on the board
	Strip Kind = "strip" // read a strip in a cup of water that an adult drew
)

// away are the stations beside the tubs, in the order in which they are opened.
var away = []Kind{Draw, Jar, Board, Strip}

// MostPupils is the largest class that is worked out.
const MostPupils = 500

// Tub is a tub that pupils stand at.
type Tub struct {
	Name  string
	Holes []int // the numbers of the holes with a plant
}

// Given is what a lesson is worked out from.
type Given struct {
	Pupils int
	Teams  []string // named teams are the groups where they are small enough
	Tubs   []Tub
}

// Station is one place of the lesson.
type Station struct {
	Kind Kind
	Tub  int // of AtTub: its place among the tubs; else -1
}

// Group is pupils who go round together.
type Group struct {
	Name    string // the team's, or group 1
	From    int    // its first pupil's number; numbers follow the teacher's own list
	Pupils  int
	Station int // where it begins; then it goes on to the next, and after the last to the first
}

// Adopted is what a pair looks after: a hole of a tub, or a still jar.
type Adopted struct {
	From, To int // the pupils' numbers: two in a row, three in the last pair of an odd class
	Tub      int // -1 for a jar
	Hole     int // its number on the lid
	Jar      int // from 1; 0 for a hole
}

// Lesson is who stands where.
type Lesson struct {
	Parts    int // the class comes in so many parts, on as many days; 1 is all at once
	Pupils   int // in one part
	Minutes  int // in all
	Each     int // minutes at one station
	Rest     int // minutes left to begin and to end
	Stations []Station
	Groups   []Group
	Adopted  []Adopted // of the whole class
}

// Plan works a lesson out; ok is false without pupils or without a tub.
func Plan(g Given) (Lesson, bool) {
	if g.Pupils < 1 || g.Pupils > MostPupils || len(g.Tubs) == 0 {
		return Lesson{}, false
	}
	l := Lesson{Minutes: int(Facts.Get(factLessonMinutes).Value), Adopted: adopt(g)}
	aim, most, least := int(Facts.Get(factGroupAim).Value), int(Facts.Get(factGroupMost).Value), int(Facts.Get(factStationLeast).Value)
	rounds := min(l.Minutes/least, min(len(g.Tubs), 2)+len(away))
	l.Parts = (g.Pupils + rounds*most - 1) / (rounds * most)
	l.Pupils = (g.Pupils + l.Parts - 1) / l.Parts
	groups := min(rounds, (l.Pupils+aim-1)/aim)
	names := groupNames(groups)
	if n := len(g.Teams); l.Parts == 1 && n > 1 && n <= rounds && n <= g.Pupils && (g.Pupils+n-1)/n <= most {
		groups, names = n, g.Teams
	}
	l.Each = l.Minutes / groups
	l.Rest = l.Minutes - l.Each*groups
	l.Stations = places(groups, len(g.Tubs))
	from := 1
	for i := range groups {
		n := l.Pupils / groups
		if i < l.Pupils%groups {
			n++
		}
		l.Groups = append(l.Groups, Group{Name: names[i], From: from, Pupils: n, Station: i})
		from += n
	}
	return l, true
}

func groupNames(n int) []string {
	var out []string
	for i := range n {
		out = append(out, fmt.Sprintf("Group %d", i+1))
	}
	return out
}

// places are as many stations as groups: the first tub, a place away from it, a
// second tub if there is one, then the rest.
func places(n, tubs int) []Station {
	out := []Station{{AtTub, 0}}
	if tubs > 1 {
		out = append(out, Station{AtTub, 1})
	}
	for _, k := range away {
		out = append(out, Station{k, -1})
	}
	return out[:min(n, len(out))]
}

// At is the station of a group in a round, both from 0.
func (l Lesson) At(group, round int) int {
	return (l.Groups[group].Station + round) % len(l.Stations)
}

// adopt gives each pair a hole as long as there are holes, then a jar.
func adopt(g Given) []Adopted {
	var out []Adopted
	pairs := max(1, g.Pupils/2)
	tub, at, jar := 0, 0, 0
	for i := range pairs {
		a := Adopted{From: 2*i + 1, To: min(2*i+2, g.Pupils), Tub: -1}
		if i == pairs-1 {
			a.To = g.Pupils
		}
		for tub < len(g.Tubs) && at >= len(g.Tubs[tub].Holes) {
			tub, at = tub+1, 0
		}
		if tub < len(g.Tubs) {
			a.Tub, a.Hole = tub, g.Tubs[tub].Holes[at]
			at++
		} else {
			jar++
			a.Jar = jar
		}
		out = append(out, a)
	}
	return out
}
