package jobs

import (
	"fmt"
	"strings"

	"rootbell/internal/base/finding"
)

// checker gathers what stands in a rota's way.
type checker struct {
	ask   Ask
	found []finding.Finding
}

func (c *checker) stop(code, field, text, hint string) {
	c.found = append(c.found, finding.Finding{Level: finding.Stop, Code: code, Field: field, Text: text, Hint: hint})
}

// Check is what is wrong with an ask, as stops at the plan's fields; none when a
// rota can be looked for. Whether the pairs that must not work together leave
// room is found by Make.
func Check(ask Ask) []finding.Finding {
	c := &checker{ask: ask}
	c.people()
	c.weeks()
	c.jobs()
	c.pairs("wanted", ask.Wanted)
	c.pairs("never", ask.Never)
	c.both()
	c.away()
	if len(c.found) == 0 {
		c.room()
	}
	return c.found
}

func (c *checker) people() {
	n := c.ask.Count()
	field := "school.pupils"
	if c.ask.ByTeams() {
		field = "school.teams"
	}
	if n < 1 || n > MostPupils {
		c.stop("rota-nobody", field, fmt.Sprintf("A rota needs 1 to %d pupils or teams; there are %d.", MostPupils, n), "Say how many pupils there are, or name the teams.")
	}
}

func (c *checker) weeks() {
	if c.ask.Weeks < 1 || c.ask.Weeks > MostWeeks {
		c.stop("rota-weeks", "school.terms", fmt.Sprintf("A rota is for 1 to %d weeks; this term has %d.", MostWeeks, c.ask.Weeks), "Check the first and the last day of the term.")
		return
	}
	if len(c.ask.open()) == 0 {
		c.stop("rota-closed", "school.closed", "Every week of the term is closed, so there is no week for a job.", "Take a closed day out, or choose another term.")
	}
}

func (c *checker) jobs() {
	if len(c.ask.Jobs) == 0 || len(c.ask.Jobs) > MostJobs {
		c.stop("rota-jobs", "school.jobs", fmt.Sprintf("A rota has 1 to %d jobs; there are %d.", MostJobs, len(c.ask.Jobs)), "List the jobs of a week.")
		return
	}
	names := map[string]bool{}
	for i, j := range c.ask.Jobs {
		at := fmt.Sprintf("school.jobs[%d]", i)
		name := strings.TrimSpace(j.Name)
		if name == "" {
			c.stop("rota-job-name", at+".name", fmt.Sprintf("Job %d has no name.", i+1), "Name it by what is done, such as 'top up'.")
		}
		if name != "" && names[strings.ToLower(name)] {
			c.stop("rota-job-twice", at+".name", fmt.Sprintf("The job '%s' stands twice.", name), "Give each job its own name.")
		}
		names[strings.ToLower(name)] = true
		if d, adult := ForAdults(name); adult {
			c.stop("rota-adult-job", at+".name", fmt.Sprintf("'%s' is for an adult: %s.", name, d.What), "Take it out of the pupils' jobs. If the words mean something else, choose others.")
		}
		c.numbers(at, name, j)
	}
}

// numbers holds a job's own numbers to their ranges.
func (c *checker) numbers(at, name string, j Job) {
	if j.People < 0 || j.People > MostPeople {
		c.stop("rota-job-people", at+".people", fmt.Sprintf("'%s' is for %d; a job is for 1 to %d.", name, j.People, MostPeople), "Share the work out as two jobs.")
	}
	if j.Weight < 0 || j.Weight > MostWeight {
		c.stop("rota-job-weight", at+".weight", fmt.Sprintf("'%s' weighs %d; a weight is 1 to %d.", name, j.Weight, MostWeight), "Write 1 for a usual job and 2 for one twice as long.")
	}
	if c.ask.Weeks < 1 || c.ask.Weeks > MostWeeks {
		return // said already
	}
	n := j.normal(c.ask.Weeks)
	if n.From < 1 || n.To > c.ask.Weeks || n.From > n.To {
		c.stop("rota-job-weeks", at+".from", fmt.Sprintf("'%s' runs from week %d to week %d; the term has weeks 1 to %d.", name, n.From, n.To, c.ask.Weeks), "Check its first and its last day.")
		return
	}
	for _, w := range c.ask.open() {
		if n.From <= w && w <= n.To {
			return
		}
	}
	if len(c.ask.open()) > 0 {
		c.stop("rota-job-closed", at+".from", fmt.Sprintf("'%s' falls only in closed weeks.", name), "Move its first or its last day.")
	}
}

func (c *checker) pairs(which string, pairs [][2]int) {
	for i, p := range pairs {
		at := fmt.Sprintf("school.pairs.%s[%d]", which, i)
		if p[0] == p[1] {
			c.stop("rota-pair-self", at, fmt.Sprintf("The pair %d and %d is one and the same.", p[0], p[1]), "A pair is two numbers.")
		}
		for _, who := range p {
			if who < 1 || who > c.ask.Count() {
				c.stop("rota-pair-number", at, fmt.Sprintf("There is no number %d; the numbers are 1 to %d.", who, c.ask.Count()), "Pairs are numbers; names stay on your own list.")
			}
		}
	}
}

// both finds a pair that is wanted and must never be.
func (c *checker) both() {
	never := map[[2]int]bool{}
	for _, p := range c.ask.Never {
		never[inOrder(p)] = true
	}
	for i, p := range c.ask.Wanted {
		if never[inOrder(p)] {
			c.stop("rota-pair-both", fmt.Sprintf("school.pairs.wanted[%d]", i), fmt.Sprintf("%d and %d are to work together and never to work together.", p[0], p[1]), "Give up one of the two wishes.")
		}
	}
}

func inOrder(p [2]int) [2]int { return [2]int{min(p[0], p[1]), max(p[0], p[1])} }

func (c *checker) away() {
	for _, a := range c.ask.Away {
		if a.Who < 1 || a.Who > c.ask.Count() || a.Week < 1 || a.Week > c.ask.Weeks {
			c.stop("rota-away", "school.away", fmt.Sprintf("Number %d cannot be away in week %d.", a.Who, a.Week), fmt.Sprintf("Numbers are 1 to %d and weeks 1 to %d.", c.ask.Count(), c.ask.Weeks))
		}
	}
}

// room holds the people that the fullest week takes against those there are.
func (c *checker) room() {
	for _, w := range c.ask.open() {
		if need := c.ask.need(w); need > c.ask.Count() {
			c.stop("rota-too-many-jobs", "school.jobs", fmt.Sprintf("The jobs of week %d take %d; there are %d, and nobody has two jobs in a week.", w, need, c.ask.Count()), "Have fewer for a job, or do some jobs only in other weeks.")
			return
		}
	}
}
