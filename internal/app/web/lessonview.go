package web

import (
	"net/url"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/lessons"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/lesson"
)

// lessonsBody lists lesson sheets.
type lessonsBody struct {
	ID     string
	Choice lessonChoice
	Answer string
	Short  bool // the logbook gives nothing to any sheet yet
	Groups []lessonGroup
}

// lessonChoice is the form of what a sheet is to be.
type lessonChoice struct {
	Tubs, Bands []option
	Tub, Band   string
	Number      string
	Note        string
	Filled      bool
	Graph       bool // the choice of a graph is asked for
}

type lessonGroup struct {
	Band, Ages string
	Rows       []lessonRow
}

type lessonRow struct {
	Number            int
	Title, Concept    string
	Address, Key, PDF string
	From, Why         string
	Touches           []string
	Odd               int
}

func choiceOf(a *garden.Assessment, ask lessonAsk) lessonChoice {
	c := lessonChoice{Number: ask.Seed, Note: ask.Note, Filled: ask.Filled, Graph: true, Tub: garden.Slug(a.Tubs[ask.Tub].Name), Bands: []option{{"", "all ages"}}}
	for _, t := range a.Tubs {
		c.Tubs = append(c.Tubs, option{garden.Slug(t.Name), t.Name})
	}
	for _, b := range lesson.Bands() {
		c.Bands = append(c.Bands, option{string(b), string(b) + ", " + b.Ages()})
	}
	if !ask.All {
		c.Band = string(ask.Band)
	}
	return c
}

func lessonAddress(id, name string, q url.Values) string {
	return "/g/" + id + "/lessons/" + name + "?" + q.Encode()
}

// lessonsOf are the sheets of each band that is asked for.
func lessonsOf(o *opened, a *garden.Assessment, ask lessonAsk) lessonsBody {
	body := lessonsBody{ID: o.ID, Choice: choiceOf(a, ask), Short: true}
	count, logged := 0, 0
	for _, b := range lesson.Bands() {
		if !ask.All && ask.Band != b {
			continue
		}
		g := lessonGroup{Band: string(b), Ages: b.Ages()}
		for _, t := range lesson.Templates() {
			if !t.For(b) {
				continue
			}
			one := ask
			one.Template, one.Band, one.All = t.ID, b, false
			made, ok := a.Lesson(ask.Tub, one.Choice)
			if !ok {
				continue
			}
			if made.Why == "" {
				count++
			}
			if t.Log && made.Why == "" && !made.FromPlan() {
				logged++
			}
			g.Rows = append(g.Rows, rowOf(o, a, one, made))
		}
		body.Groups = append(body.Groups, g)
	}
	body.Short = logged == 0
	body.Answer = capital(quantity.InWords(count)) + " sheets of sums about " + a.Tubs[ask.Tub].Name + ", each with its key."
	return body
}

func rowOf(o *opened, a *garden.Assessment, ask lessonAsk, s lesson.Sheet) lessonRow {
	q := ask.query(a)
	row := lessonRow{
		Number: s.Template.Number, Title: s.Template.Title, Concept: s.Template.Concept, From: s.From, Why: s.Why, Odd: len(s.Odd),
		Address: lessonAddress(o.ID, s.Template.ID, q), PDF: lessonAddress(o.ID, s.Template.ID+".pdf", q), Key: lessonAddress(o.ID, s.Template.ID+"-key.pdf", q),
	}
	for _, std := range s.Template.Standards() {
		row.Touches = append(row.Touches, std.Code)
	}
	return row
}

// lessonBody is one sheet with its key.
type lessonBody struct {
	ID     string
	Row    lessonRow
	Choice lessonChoice
	Action string
	List   string
	Next   string
	Size   string
	Other  string
	Odd    []oddView
	Pupil  sheetView
	Key    sheetView
}

// oddView is a reading that stands out, with what can be done about it.
type oddView struct {
	ID, Says, Do, Value, Wrong string
}

func lessonOf(o *opened, a *garden.Assessment, ask lessonAsk, s lesson.Sheet) lessonBody {
	q := ask.query(a)
	body := lessonBody{
		ID: o.ID, Row: rowOf(o, a, ask, s), Choice: choiceOf(a, ask), Action: "/g/" + o.ID + "/lessons/" + s.Template.ID, List: "/g/" + o.ID + "/lessons?" + listQuery(q).Encode(), Size: a.Paper(),
	}
	body.Other = map[string]string{"A4": "Letter", "Letter": "A4"}[body.Size]
	body.Choice.Graph = s.Template.Graph
	body.Choice.Bands = nil
	for _, b := range s.Template.Bands {
		body.Choice.Bands = append(body.Choice.Bands, option{string(b), string(b) + ", " + b.Ages()})
	}
	body.Choice.Band = string(s.Band)
	next := ask
	next.Choice.Seed = ask.Choice.Seed%mostSeed + 1
	next.Band, next.All = s.Band, false
	body.Next = lessonAddress(o.ID, s.Template.ID, next.query(a))
	for _, odd := range s.Odd {
		body.Odd = append(body.Odd, oddView{ID: odd.ID, Says: odd.Says(), Do: string(odd.Do), Value: ask.Typed[odd.ID], Wrong: ask.Wrong[odd.ID]})
	}
	if s.Why != "" {
		return body
	}
	cover := sheet.Lid{Garden: a.Garden, Invented: a.Invented(), System: a.Plan.Units, On: a.On, Revision: revisionOf(o)}
	both := sheetViews([]content.Sheet{lessons.Pupil(s, cover, scene.A4), lessons.Key(s, cover, scene.A4)})
	body.Pupil, body.Key = both[0], both[1]
	return body
}

// listQuery is what of a choice the list of sheets takes.
func listQuery(q url.Values) url.Values {
	out := url.Values{}
	for _, key := range []string{"tub", "band", "number", "graph"} {
		if q.Has(key) {
			out.Set(key, q.Get(key))
		}
	}
	return out
}
