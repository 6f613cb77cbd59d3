package web

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// formPage is a page of a garden whose form puts values in the plan. All of
// them are shown, saved and tried alike; this is what each has of its own.
type formPage struct {
	name, title string // the name is its address, its template and its script
	drawing     string // in the title block; behind the tub's name where ofTub
	ofTub       bool   // it shows one tub at a time
	scripts     []string
	styles      []string
	last        string     // said where what was typed cannot be worked out
	tries       *formTries // nil where nothing is worked out while one types

	assess func(*Server, context.Context, *opened, lid.Effort) (*garden.Assessment, error)
	work   func(o *opened, a *garden.Assessment, f *form, tub int) any
	// fields makes the form. Where asksFirst is not set, the assessment may be nil.
	// The order in which it asks for fields is the order of the changes.
	fields    func(f *form, a *garden.Assessment, tub int) any
	asksFirst bool // which fields there are rests on the assessment

	// Nil where a page has none:
	lists func(f *form, tub int) []edit          // changes of whole lists
	press func(p *posting, do string)            // what a button does besides saving
	home  func(f *form, problems []plan.Problem) // moves problems to the fields they were typed in
}

// formTries is what a page shows of what is being typed.
type formTries struct {
	parts []string // by their ids, which are their templates' names too
	strip bool     // the term's strip follows too
	wrong string   // what the status says of what cannot be worked out
	full  string   // what it says of an answer
	quick string   // the same of a quick answer; empty where none is given
}

// What most pages say of what is typed.
const (
	lastBelow = "What stands below are the last numbers that could be worked out."
	lastHere  = "What stands here are the last numbers that could be worked out."
	notYet    = "Not in the plan yet."
)

// formBody is such a page as its template sees it.
type formBody struct {
	ID, Page   string
	Example    bool
	Base       int // the revision that the form began from
	Tub        string
	Index      int
	Others     []string
	Form, Work any
	Problems   []problemView
	Last       string
}

// pageAddress is where a page of a garden lies; of one tub, where one is named.
func pageAddress(page, id, tub, said string) string {
	q := url.Values{}
	if tub != "" {
		q.Set("tub", garden.Slug(tub))
	}
	if said != "" {
		q.Set("said", said)
	}
	return strings.TrimSuffix("/g/"+id+"/"+page+"?"+q.Encode(), "?")
}

func (page *formPage) address(id, tub, said string) string {
	if !page.ofTub {
		tub = ""
	}
	return pageAddress(page.name, id, tub, said)
}

// formRoutes are the addresses of a page with a form.
func (s *Server) formRoutes(m *http.ServeMux, page *formPage) {
	at := "/g/{garden}/" + page.name
	m.HandleFunc("GET "+at, func(w http.ResponseWriter, r *http.Request) { s.showForm(w, r, page) })
	m.HandleFunc("POST "+at, func(w http.ResponseWriter, r *http.Request) { s.saveForm(w, r, page) })
	if page.tries != nil {
		m.HandleFunc("POST "+at+"/try", func(w http.ResponseWriter, r *http.Request) { s.tryForm(w, r, page) })
	}
}

// showForm is the page as the plan has it.
func (s *Server) showForm(w http.ResponseWriter, r *http.Request, page *formPage) {
	o, a, ok := s.readyFor(w, r, func(ctx context.Context, o *opened) (*garden.Assessment, error) {
		return page.assess(s, ctx, o, lid.Full)
	})
	if !ok {
		return
	}
	s.writeForm(w, r, http.StatusOK, page, &posting{o: o, f: &form{text: o.Text, units: o.Plan.Units}, tub: tubAsked(o.Plan, r.URL.Query().Get("tub"))}, a)
}

// writeForm writes the page. Where what was typed cannot be worked out, the form
// has it and a is the last that could be.
func (s *Server) writeForm(w http.ResponseWriter, r *http.Request, status int, page *formPage, p *posting, a *garden.Assessment) {
	o, f, tub := p.o, p.f, p.tub
	body := formBody{
		ID: o.ID, Page: page.name, Example: o.Example, Base: o.Revision.Number, Last: page.last,
		Tub: o.Plan.Tubs[tub].Name, Index: tub, Others: o.otherTubs(tub), Form: page.fields(f, a, tub),
	}
	body.Problems = f.mends(tub)
	body.Work = page.work(o, a, f, tub)
	frame := s.frameOf(r, o, a, page.name, page.title)
	frame.Here = page.address(o.ID, body.Tub, "")
	frame.Drawing = page.drawing
	if page.ofTub {
		frame.Drawing = body.Tub + ": " + page.drawing
	}
	frame.Message = messages[r.URL.Query().Get("said")]
	if page.tries != nil && !o.Example {
		frame.Script = []string{page.name + ".js"}
	}
	frame.Script = append(frame.Script, page.scripts...)
	frame.Style = page.styles
	s.show(w, status, page.name, frame, body)
}

// saveForm puts the form in the plan: all of it, or nothing where anything in it
// cannot be read.
func (s *Server) saveForm(w http.ResponseWriter, r *http.Request, page *formPage) {
	p, ok := s.posted(w, r, page)
	if !ok {
		return
	}
	if len(p.problems) > 0 {
		last, err := page.assess(s, r.Context(), p.o, lid.Full)
		if err != nil {
			s.failed(w, r, err)
			return
		}
		s.writeForm(w, r, http.StatusUnprocessableEntity, page, p, last)
		return
	}
	if s.save(w, r, p.o.ID, p.base, p.text, p.mine(), p.why()) {
		http.Redirect(w, r, page.address(p.o.ID, p.plan.Tubs[p.next()].Name, "saved"), http.StatusSeeOther)
	}
}

// tried is the answer to a form as it is being typed: nothing is saved.
type tried struct {
	Parts    map[string]string `json:"parts,omitempty"`
	Problems []problemView     `json:"problems"`
	Status   string            `json:"status"`
	Full     bool              `json:"full"`
}

// tryForm works out what is being typed, with quick effort first where the page
// has a quick answer; nothing is saved.
func (s *Server) tryForm(w http.ResponseWriter, r *http.Request, page *formPage) {
	p, ok := s.posted(w, r, page)
	if !ok {
		return
	}
	if len(p.problems) > 0 {
		answerJSON(w, tried{Problems: p.f.mends(p.tub), Status: page.tries.wrong, Full: true})
		return
	}
	out := tried{Parts: map[string]string{}, Problems: []problemView{}, Status: page.tries.full, Full: true}
	effort := lid.Full
	if page.tries.quick != "" && r.URL.Query().Get("effort") == "quick" {
		effort, out.Status, out.Full = lid.Quick, page.tries.quick, false
	}
	o := p.typedPlan()
	a, err := page.assess(s, r.Context(), o, effort)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	work := page.work(o, a, p.f, p.tub)
	for _, id := range page.tries.parts {
		out.Parts[id] = s.part(page.name, id, work)
	}
	if page.tries.strip {
		strip := stripOf(a, o.Today)
		out.Parts["term-desk"], out.Parts["term-hand"] = string(strip.Desk), string(strip.Hand)
	}
	answerJSON(w, out)
}

// foremost is how many findings stand open; the rest unfold.
const foremost = 3

// foremostOf parts findings in those that stand open and the rest.
func foremostOf(all []findingView) (first, further []findingView) {
	n := min(len(all), foremost)
	return all[:n], all[n:]
}

// nowhere is where a page mends what has no field: nowhere but in the text.
func nowhere(string) string { return "" }

// findingsOf are the findings that concern a page. Each leads to its field, or
// to where else the page mends it, or to its line of the text.
func findingsOf(o *opened, a *garden.Assessment, f *form, concerns func(finding.Finding) bool, elsewhere func(field string) string) []findingView {
	var out []findingView
	for _, one := range a.Findings {
		if !concerns(one) {
			continue
		}
		v := findingView{Finding: one, Level: one.Level.String(), Where: plan.PathWords(o.Text, one.Field)}
		words, field, settled := f.remedy(one)
		switch address := elsewhere(one.Field); {
		case settled:
			v.Where, v.Address = words, field
		case f.has(one.Field):
			v.Address = "#" + idOf(one.Field)
		case f.has(one.Field + ".flux"): // a lamp
			v.Address = "#" + idOf(one.Field+".flux")
		case address != "":
			v.Address = address
		default:
			v.Address = fmt.Sprintf("/g/%s/text#line-%d", o.ID, one.Line)
		}
		out = append(out, v)
	}
	return out
}
