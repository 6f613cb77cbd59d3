package garden

import (
	"slices"
	"strings"
	"unicode"

	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
)

// inPairs is from how many pupils on the usual jobs are done by two: with fewer,
// five jobs in pairs would take everybody every week. Common practice.
const inPairs = 15

// usualJobs are the jobs of a week where the plan names none: what a morning's
// list asks for, as many as there are people for. What the class has no
// instrument for is no job.
func usualJobs(p *plan.Plan, count int, teams bool) []ClassJob {
	ec, ph := p.Tools.EC != "none", p.Tools.PH != "none"
	var out []ClassJob
	add := func(name string, kind JobKind) {
		out = append(out, ClassJob{Name: name, People: 1, Weight: 1, Usual: true, Kind: kind})
	}
	if count == 1 {
		add("Look, measure and write down", JobAll)
		return out
	}
	if count > 2 {
		add("Look at the plants", JobLook)
	}
	add("Read the level and top up", JobLevel)
	apart := ec && ph && count >= 5
	switch {
	case apart:
		add("Measure EC", JobEC)
		add("Measure pH", JobPH)
	case ec && ph && count >= 4:
		add("Measure EC and pH", JobBoth)
	case ec && count >= 4:
		add("Measure EC", JobEC)
	case ph && count >= 4:
		add("Measure pH", JobPH)
	}
	add("Keep the logbook", JobLog)
	if !teams && count >= inPairs {
		for i := range out {
			out[i].People = 2
		}
	}
	return out
}

// kindWords tell what a job of the teacher's is about.
var kindWords = []struct {
	kind  JobKind
	words []string
}{
	{JobLevel, []string{"level", "top", "topping", "jug", "dipstick", "water"}},
	{JobEC, []string{"ec", "meter", "conductivity"}},
	{JobPH, []string{"ph", "strip", "strips"}},
	{JobLog, []string{"log", "logbook", "write", "scribe", "record", "recorder"}},
	{JobLook, []string{"look", "plants", "leaves", "roots", "watch"}},
}

// kindOf goes by the words of a job's name.
func kindOf(name string) JobKind {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) })
	has := func(of []string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(of, w) })
	}
	if has(kindWords[1].words) && has(kindWords[2].words) {
		return JobBoth
	}
	for _, k := range kindWords {
		if has(k.words) {
			return k.kind
		}
	}
	return JobOwn
}

// does says what somebody with a job does.
var does = map[JobKind]string{
	JobLook: "looks at the plants", JobLevel: "reads the level and tops up", JobEC: "measures EC", JobPH: "measures pH",
	JobBoth: "measures EC and pH", JobLog: "keeps the logbook", JobAll: "looks, measures and writes down",
}

// Does says what somebody with the job does: 'reads the level and tops up'.
func (j ClassJob) Does() string {
	if words, ok := does[j.Kind]; ok && j.Usual {
		return words
	}
	return "takes '" + j.Name + "'"
}

// Job is the job of that name; false without one.
func (c *Class) Job(name string) (ClassJob, bool) {
	for _, j := range c.Jobs {
		if j.Name == name {
			return j, true
		}
	}
	return ClassJob{}, false
}

// WeekOn is the week of the rota that a day falls in; false outside it.
func (c *Class) WeekOn(d term.Date) (ClassWeek, bool) {
	for i := len(c.Rota) - 1; i >= 0; i-- {
		if from := c.Rota[i].From; from <= d.String() && d.Monday().String() == from {
			return c.Rota[i], true
		}
	}
	return ClassWeek{}, false
}

// Do is what somebody does, as of several: 'looks' and 'look'. It knows the
// verbs of the jobs.
func Do(words string, people int) string {
	if people < 2 {
		return words
	}
	out := strings.Fields(words)
	for i, w := range out {
		if plain, ok := ofMany[w]; ok {
			out[i] = plain
		}
	}
	return strings.Join(out, " ")
}

var ofMany = map[string]string{"looks": "look", "looks,": "look,", "reads": "read", "tops": "top", "measures": "measure", "keeps": "keep", "writes": "write", "takes": "take"}
