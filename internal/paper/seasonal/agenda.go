package seasonal

import (
	"strconv"

	"rootbell/internal/garden"
	"rootbell/internal/paper/agenda"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// Agenda is the season for a calendar program; ok is false where no day of it is
// known. The revision's number tells a later edition from an earlier one.
func Agenda(a *garden.Assessment, revision string) (out agenda.Agenda, ok bool) {
	p := papersOf(a, revision)
	on, _ := date(a.On)
	out = agenda.Agenda{Name: p.name(), On: on}
	if n, err := strconv.Atoi(revision); err == nil {
		out.Sequence = n
	}
	for _, j := range p.jobs() {
		out.Entries = append(out.Entries, p.entry(j))
	}
	out.Entries = append(out.Entries, p.stretches()...)
	out.Entries = append(out.Entries, p.visitEntries()...)
	return out, len(out.Entries) > 0
}

// name is what the calendar is called.
func (p papers) name() string {
	if p.a.Invented() {
		return p.a.Garden + " (invented)"
	}
	return p.a.Garden
}

// titles are what a kind of job is called in a calendar program.
var titles = map[string]string{
	"meal": "meal", "harvest": "harvest", "sow": "sow", "thin": "thin out", "transplant": "move into the tub", "change-out": "change the water",
	"lower": "lower the line", "lamp": "raise the lamp", "order": "order", leaving: "leave-it sheet",
}

func (p papers) entry(j job) agenda.Entry {
	head := titles[j.kind]
	if head == "" {
		head = j.kind
	}
	if j.tub != "" {
		head = j.tub + ": " + head
	}
	text := j.do
	if j.why != "" {
		text += "\n" + j.why
	}
	return agenda.Entry{UID: agenda.ID(p.a.Garden, j.tub, j.kind, itoa(j.nth)), First: j.on, Summary: p.said(head), Text: text}
}

// said marks an entry of a garden that is made up.
func (p papers) said(head string) string {
	if p.a.Invented() {
		return head + " (invented)"
	}
	return head
}

// stretches are the days on which nobody comes, those longer than a weekend.
func (p papers) stretches() []agenda.Entry {
	var out []agenda.Entry
	seen := map[term.Date]bool{}
	for _, i := range p.tubs {
		for _, l := range p.a.Tubs[i].Season.Closed {
			from, to := term.DateOf(l.From).Add(1), term.DateOf(l.To).Add(-1)
			if l.Hours <= weekendHours || seen[from] || to.Before(from) {
				continue
			}
			seen[from] = true
			head := "Nobody comes"
			if l.Why != "" {
				head += ": " + l.Why
			}
			out = append(out, agenda.Entry{
				UID: agenda.ID(p.a.Garden, "", "closed", itoa(len(out)+1)), First: from, Last: to, Summary: p.said(head),
				Text: "From " + moment(l.From) + " to " + moment(l.To) + ", " + hours(l.Hours) + ".",
			})
		}
	}
	return out
}

// visitEntries are the windows of visits that are counted on.
func (p papers) visitEntries() []agenda.Entry {
	var out []agenda.Entry
	for _, v := range p.visits() {
		if v.taken && !v.to.Before(v.from) {
			out = append(out, agenda.Entry{
				UID: agenda.ID(p.a.Garden, "", "visit", itoa(len(out)+1)), First: term.DateOf(v.from), Last: term.DateOf(v.to),
				Summary: p.said("One visit to the tubs"), Text: p.window(v) + ". The visitor card says what is done.",
			})
		}
	}
	return out
}

// AgendaContent is what the calendar file says, for a page.
func AgendaContent(a *garden.Assessment, revision string) content.Sheet {
	p := papersOf(a, revision)
	out, _ := Agenda(a, revision)
	t := content.Table{Caption: "Each is a whole day, or several", Columns: []content.Column{{Head: "from"}, {Head: "until"}, {Head: "what"}}, Wordy: true}
	for _, e := range out.Entries {
		last := e.Last
		if !last.Set() {
			last = e.First
		}
		t.Rows = append(t.Rows, []string{e.First.Words(), last.Words(), e.Summary})
	}
	block := p.cover.Block("Season for a calendar program", scene.Size{})
	return content.Sheet{Title: "The season for a calendar program", Block: block, Sections: []content.Section{
		{Heading: "What is in it", Paragraphs: []string{
			"Take the file into your calendar program. A later one of the same garden moves the entries instead of doubling them.",
			"There is no alarm in it, no hour and no person.",
		}, Tables: []content.Table{t}},
	}}
}
