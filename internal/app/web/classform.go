package web

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
)

// classField begins the names of the fields that stand for a whole list of the
// plan.
const classField = "class."

// classForm are the fields of the class: people by number, jobs, wishes, and who
// is away.
type classForm struct {
	People []group
	Jobs   []group
	Pairs  []group
	Away   []awayRow
	New    group // another absence
	Open   bool  // something in the folded part is to be mended
}

// awayRow is one absence, with the button that takes it out.
type awayRow struct {
	Index int
	Words string
}

// jobParts are the fields of a job.
var jobParts = []struct{ Key, Label string }{
	{"name", "Job"}, {"people", "at a time"}, {"weight", "weight"}, {"from", "from"}, {"to", "to"},
}

// classFormOf makes the form. The assessment names the usual jobs; it may be
// nil.
func classFormOf(f *form, a *garden.Assessment) classForm {
	var out classForm
	own := func(head, name, label, hint, value string) field {
		one := f.own(classField+name, label, hint, value)
		f.call(head, []field{one})
		return one
	}
	out.People = []group{{Legend: "People, by number", Fields: []field{
		f.field("school.pupils", "Pupils", " "),
		own("", "ages", "Youngest and oldest, in years", "Such as 8, 10. The youngest decides how much is carried.", f.listed("school.ages")),
		own("", "teams", "Teams", "Colours or birds, with commas. Left empty: each pupil takes turns.", f.listed("school.teams")),
	}, Note: "No names. Pupils are numbers on your own list."}}
	n := f.doc().Items("school.jobs")
	usual := "Left empty: a morning at the tubs."
	if a != nil && a.Class != nil && n == 0 {
		usual = "Left empty: " + usualWords(a.Class.Jobs) + "."
	}
	for i := range n + 1 {
		g := group{Legend: fmt.Sprintf("Job %d", i+1), Pair: true}
		if i == n && n > 0 {
			g.Legend = "Another job"
		}
		for _, part := range jobParts {
			value, _, _, _ := f.doc().Value(fmt.Sprintf("school.jobs[%d].%s", i, part.Key))
			hint := ""
			if part.Key == "name" && n == 0 {
				hint = usual
			}
			one := own(g.Legend+", ", fmt.Sprintf("job.%d.%s", i, part.Key), part.Label, hint, value)
			if part.Key == "from" || part.Key == "to" {
				one.Kind = "date"
			}
			g.Fields = append(g.Fields, one)
		}
		out.Jobs = append(out.Jobs, g)
	}
	out.Jobs[len(out.Jobs)-1].Note = "A name taken out takes the job out. Weight: 2 is twice the work. From and to are for a job that is not done all term."
	out.Pairs = []group{{Legend: "Who works with whom", Fields: []field{
		own("", "wanted", "Together at least once", "Two numbers each: 3 and 7, 4 and 9.", f.pairs("school.pairs.wanted")),
		own("", "never", "Never together", "Two numbers each: 2 and 5.", f.pairs("school.pairs.never")),
	}}}
	out.Away = f.awayRows()
	out.New = group{Legend: "Somebody is away", Pair: true, Fields: []field{
		own("Away, ", "away.week", "in the week of", "", ""), own("Away, ", "away.number", "number", "", ""),
	}, Note: "Only that week changes. The turn is made good later. No reason is asked."}
	out.New.Fields[0].Kind = "date"
	out.Open = toMend(out.Jobs) || toMend(out.Pairs) || toMend([]group{out.New})
	return out
}

func usualWords(all []garden.ClassJob) string {
	var out []string
	for _, j := range all {
		out = append(out, strings.ToLower(j.Name[:1])+j.Name[1:])
	}
	return strings.Join(out, ", ")
}

// pairs is a list of pairs as one writes them: 3 and 7, 4 and 9.
func (f *form) pairs(path string) string {
	var out []string
	for i := range f.doc().Items(path) {
		a, _, _, _ := f.doc().Value(fmt.Sprintf("%s[%d][0]", path, i))
		b, _, _, _ := f.doc().Value(fmt.Sprintf("%s[%d][1]", path, i))
		out = append(out, a+" and "+b)
	}
	return strings.Join(out, ", ")
}

func (f *form) awayRows() []awayRow {
	var out []awayRow
	for i := range f.doc().Items("school.absent") {
		week, _, _, _ := f.doc().Value(fmt.Sprintf("school.absent[%d].week", i))
		number, _, _, _ := f.doc().Value(fmt.Sprintf("school.absent[%d].number", i))
		if d, err := term.ParseDate(week); err == nil {
			week = d.Monday().Short()
		}
		out = append(out, awayRow{i, fmt.Sprintf("Number %s, week of %s", number, week)})
	}
	return out
}

// pairParts parts two people of a pair: 3 and 7, 3-7, 3 + 7, 3 with 7.
var pairParts = regexp.MustCompile(`\s+(?:and|with)\s+|\s*[-–+&/]\s*|\s+`)

// listEnds part the entries of a list that is typed in one field.
const listEnds = ",;\n"

// pairsFlow is a list of pairs as the plan has it.
func pairsFlow(typed string) string {
	var out []string
	for _, one := range wordList(typed, listEnds) {
		out = append(out, flowList(pairParts.Split(one, -1)))
	}
	return "[" + strings.Join(out, ", ") + "]"
}

// textsFlow is a list of texts as the plan has it.
func textsFlow(typed string) string { return flowList(wordList(typed, listEnds)) }

// agesFlow is 8, 10 or 8 to 10 as a list; a name in it stays, to be refused.
func agesFlow(typed string) string { return textsFlow(strings.ReplaceAll(typed, " to ", ", ")) }

// pressClass puts the lists of the form in the plan where they were changed, adds
// an absence that was typed, and takes one out whose button was pressed.
func (p *posting) pressClass(do string) {
	f := p.f
	put := func(name, path, was string, flow func(string) string) {
		typed := strings.TrimSpace(f.posted.Get(classField + name))
		if !f.posted.Has(classField+name) || typed == was {
			return
		}
		p.whole(path, flow(typed))
	}
	put("ages", "school.ages", f.listed("school.ages"), agesFlow)
	put("teams", "school.teams", f.listed("school.teams"), textsFlow)
	if flow, changed := f.jobsFlow(); changed {
		p.whole("school.jobs", flow)
	}
	put("wanted", "school.pairs.wanted", f.pairs("school.pairs.wanted"), pairsFlow)
	put("never", "school.pairs.never", f.pairs("school.pairs.never"), pairsFlow)
	week, number := strings.TrimSpace(f.posted.Get(classField+"away.week")), strings.TrimSpace(f.posted.Get(classField+"away.number"))
	if week != "" || number != "" {
		text, err := plan.Append(p.text, "school.absent", fmt.Sprintf("{week: %s, number: %s}", plan.Flow(week), plan.Flow(number)))
		p.done(text, err, classField+"away.week", "Change it on the page 'plan as text'.")
	}
	if index, ok := strings.CutPrefix(do, "there-"); ok {
		text, err := plan.Remove(p.text, "school.absent["+index+"]")
		p.done(text, err, classField+"away.week", "Change it on the page 'plan as text'.")
	}
}

// whole puts a list in the plan; an empty one is taken out.
func (p *posting) whole(path, flow string) {
	if flow == "[]" {
		if plan.Has(p.text, path) {
			text, err := plan.Remove(p.text, path)
			p.done(text, err, path, "Change it on the page 'plan as text'.")
		}
		return
	}
	text, err := plan.Replace(p.text, path, flow)
	if err != nil {
		p.problems = append(p.problems, plan.Problem{Field: path, What: err.Error(), Hint: "Change it on the page 'plan as text'."})
		return
	}
	p.text = text
	p.edits = append(p.edits, edit{plan.Change{Path: path, Typed: flow}, true})
}

// jobsFlow is the list of jobs as it was posted; false where nothing changed.
func (f *form) jobsFlow() (flow string, changed bool) {
	var items []string
	for i := 0; f.posted.Has(fmt.Sprintf("%sjob.%d.name", classField, i)); i++ {
		var parts []string
		for _, part := range jobParts {
			typed := strings.TrimSpace(f.posted.Get(fmt.Sprintf("%sjob.%d.%s", classField, i, part.Key)))
			was, _, _, _ := f.doc().Value(fmt.Sprintf("school.jobs[%d].%s", i, part.Key))
			changed = changed || typed != was
			if typed != "" {
				parts = append(parts, part.Key+": "+plan.Flow(typed))
			}
		}
		if len(parts) > 0 && strings.HasPrefix(parts[0], "name: ") {
			items = append(items, "{"+strings.Join(parts, ", ")+"}")
		}
	}
	return "[" + strings.Join(items, ", ") + "]", changed
}

// intoClass moves problems of a list to the field in which it was typed.
func (f *form) intoClass(problems []plan.Problem) {
	for i, p := range problems {
		for _, list := range []struct{ path, name string }{
			{"school.ages", "ages"}, {"school.teams", "teams"}, {"school.pairs.wanted", "wanted"}, {"school.pairs.never", "never"},
		} {
			if p.Field == list.path || strings.HasPrefix(p.Field, list.path+"[") {
				problems[i].Field = classField + list.name
			}
		}
		var at int
		if n, _ := fmt.Sscanf(p.Field, "school.jobs[%d]", &at); n == 1 {
			problems[i].Field = fmt.Sprintf("%sjob.%d.%s", classField, f.jobRow(at), lastPart(p.Field, "name"))
		}
		if n, _ := fmt.Sscanf(p.Field, "school.absent[%d]", &at); n == 1 && at >= f.doc().Items("school.absent") {
			problems[i].Field = classField + "away." + lastPart(p.Field, "week")
		}
	}
}

// jobRow is the row of the form in which the plan's job was typed.
func (f *form) jobRow(at int) int {
	for i := 0; f.posted.Has(fmt.Sprintf("%sjob.%d.name", classField, i)); i++ {
		if strings.TrimSpace(f.posted.Get(fmt.Sprintf("%sjob.%d.name", classField, i))) != "" {
			if at == 0 {
				return i
			}
			at--
		}
	}
	return 0
}

// lastPart is the key behind a list's place, or what stands for the group.
func lastPart(path, otherwise string) string {
	if _, key, ok := strings.Cut(path, "]."); ok && slices.ContainsFunc([]string{"name", "people", "weight", "from", "to", "week", "number"}, func(k string) bool { return k == key }) {
		return key
	}
	return otherwise
}
