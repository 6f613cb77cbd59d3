package jobs

// What a class may ask for; more is refused in words, so that effort is bounded.
const (
	MostPupils = 200
	MostJobs   = 24
	MostWeeks  = 60
	MostPeople = 6
	MostWeight = 9
)

// Job is one duty of a week.
type Job struct {
	Name   string
	People int // how many do it together, 1 to 6; 0 is 1
	Weight int // how heavy a turn is beside the others', 1 to 9; 0 is 1
	From   int // the first week it is done, counted from 1; 0 is the term's first
	To     int // the last week it is done; 0 is the term's last
}

// Absence is one who is away in one week, by number; no reason is ever asked.
type Absence struct{ Week, Who int }

// Ask is what a rota is made from. Pupils are numbers from 1; where teams are
// named, the teams are numbered from 1 in their order and take the pupils' part.
type Ask struct {
	Pupils int
	Teams  []string
	Jobs   []Job
	Weeks  int      // weeks of the term, 1 to 60
	Closed []int    // weeks without a rota, counted from 1
	Wanted [][2]int // pairs that are to work together at least once
	Never  [][2]int // pairs that never do
	Away   []Absence
	Seed   uint64
	Effort int // moves tried by the search; 0 is DefaultEffort
}

// DefaultEffort is how many moves the search tries before it says what it has.
const DefaultEffort = 2_000_000

// Count is how many there are to share the jobs.
func (a Ask) Count() int {
	if len(a.Teams) > 0 {
		return len(a.Teams)
	}
	return a.Pupils
}

// ByTeams tells whether teams, not pupils, take turns.
func (a Ask) ByTeams() bool { return len(a.Teams) > 0 }

// normal fills in what a zero stands for. A team is already several pupils, so
// one team does a job that names no number.
func (j Job) normal(weeks int) Job {
	if j.People == 0 {
		j.People = 1
	}
	if j.Weight == 0 {
		j.Weight = 1
	}
	if j.From == 0 {
		j.From = 1
	}
	if j.To == 0 {
		j.To = weeks
	}
	return j
}

// open are the weeks that are not closed, rising.
func (a Ask) open() []int {
	closed := map[int]bool{}
	for _, w := range a.Closed {
		closed[w] = true
	}
	var out []int
	for w := 1; w <= a.Weeks; w++ {
		if !closed[w] {
			out = append(out, w)
		}
	}
	return out
}

// need is how many people the jobs of a week take.
func (a Ask) need(week int) int {
	sum := 0
	for _, j := range a.Jobs {
		j = j.normal(a.Weeks)
		if j.From <= week && week <= j.To {
			sum += j.People
		}
	}
	return sum
}
