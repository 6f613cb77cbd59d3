package web

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// tubAsked is the place of the tub that an address names, 0 without a name.
func tubAsked(p *plan.Plan, name string) int {
	return max(0, slices.IndexFunc(p.Tubs, func(t plan.Tub) bool { return garden.Slug(t.Name) == name }))
}

// buildAddress is where the page Build of a tub lies.
func buildAddress(id, tub, said string) string {
	q := url.Values{}
	if tub != "" {
		q.Set("tub", garden.Slug(tub))
	}
	if said != "" {
		q.Set("said", said)
	}
	return strings.TrimSuffix("/g/"+id+"/build?"+q.Encode(), "?")
}

// showBuild is the page Build.
func (s *Server) showBuild(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.ready(w, r)
	if !ok {
		return
	}
	tub := tubAsked(o.Plan, r.URL.Query().Get("tub"))
	f := &form{text: o.Text, units: o.Plan.Units}
	s.buildPage(w, r, http.StatusOK, o, a, f, tub)
}

// buildPage writes the page. Where what was typed cannot be worked out, the form
// has it and a is the last that could be.
func (s *Server) buildPage(w http.ResponseWriter, r *http.Request, status int, o *opened, a *garden.Assessment, f *form, tub int) {
	body := buildBody{ID: o.ID, Example: o.Example, Base: o.Revision.Number, Index: tub, Tub: o.Plan.Tubs[tub].Name, Form: tubForm(f, tub)}
	for i, t := range o.Plan.Tubs {
		if i != tub {
			body.Others = append(body.Others, t.Name)
		}
	}
	for _, p := range f.problems {
		body.Problems = append(body.Problems, f.problem(p, tub))
	}
	body.Work = workOf(o, a, f, tub)
	body.Work.typed(f, tub)
	frame := s.frameOf(r, o, a, "build", "Build")
	frame.Here = buildAddress(o.ID, body.Tub, "")
	frame.Drawing = body.Tub + ": lid and section"
	frame.Message = messages[r.URL.Query().Get("said")]
	if !o.Example {
		frame.Script = []string{"build.js"}
	}
	frame.Script = append(frame.Script, "working.js", "fold.js")
	s.show(w, status, "build", frame, body)
}

// posting is a form of the page Build as it came in.
type posting struct {
	o        *opened
	f        *form
	tub      int
	base     int
	text     []byte // with the form's changes
	edits    []edit
	plan     *plan.Plan
	problems []plan.Problem
	added    bool // a tub was added, which is shown next
}

// began reads a form that began from a revision; what cannot be read is
// answered here.
func (s *Server) began(w http.ResponseWriter, r *http.Request) (p posting, ok bool) {
	if err := r.ParseForm(); err != nil {
		s.refuse(w, r, http.StatusRequestEntityTooLarge, "The form was too long or broken, so nothing was read.", "Go back and try again with less in it.")
		return p, false
	}
	if strings.HasPrefix(r.PathValue("garden"), examplePrefix) {
		s.readOnly(w, r)
		return p, false
	}
	base, err := strconv.Atoi(r.PostForm.Get("base"))
	if err != nil || base < 1 {
		s.refuse(w, r, http.StatusBadRequest, "This form does not say which plan it began from.", "Open the page again and type it there.")
		return p, false
	}
	p.base = base
	if p.o, err = s.garden(r.Context(), r.PathValue("garden"), base, viewing{}); err != nil {
		s.failed(w, r, err)
		return p, false
	}
	if p.o.Plan == nil {
		http.Redirect(w, r, "/g/"+p.o.ID+"/text", http.StatusSeeOther)
		return p, false
	}
	p.tub = tubAsked(p.o.Plan, r.PostForm.Get("tub"))
	p.f = &form{text: p.o.Text, posted: r.PostForm, units: p.o.Plan.Units}
	return p, true
}

// posted reads the form and makes its changes on the revision it began from.
func (s *Server) posted(w http.ResponseWriter, r *http.Request) (p posting, ok bool) {
	if p, ok = s.began(w, r); !ok {
		return p, false
	}
	tubForm(p.f, p.tub)
	p.typed()
	if c, changed := p.f.holesChange(p.tub); changed {
		p.edits = append(p.edits, c)
	}
	p.text, p.problems = applied(p.o.Text, p.edits)
	p.act(r.PostForm.Get("do"), r.PostForm)
	p.read()
	return p, true
}

// read reads the changed text.
func (p *posting) read() {
	if len(p.problems) == 0 {
		p.plan, p.problems = plan.Parse("plan", p.text)
	}
	p.f.problems = p.problems
}

// act does what a button of the form asks beyond putting the values in.
func (p *posting) act(do string, posted url.Values) {
	list := fmt.Sprintf("tubs[%d].lid.keep_clear", p.tub)
	var err error
	text := p.text
	switch word, index, _ := strings.Cut(do, "-"); word {
	case "drop":
		text, err = plan.Remove(text, list+"["+index+"]")
	case "keep":
		var item string
		if item, err = p.f.keepItem(posted); err == nil {
			text, err = plan.Append(text, list, item)
		}
	case "another":
		text, err = plan.Append(text, "tubs", anotherTub(plan.Read(text), p.tub, p.f.asked))
		p.added = err == nil
	case "without":
		text, err = plan.Remove(text, fmt.Sprintf("tubs[%d]", p.tub))
		p.tub = 0
	case "free":
		text, err = plan.Replace(text, fmt.Sprintf("tubs[%d].lid.holes", p.tub), "[]")
	default:
		return
	}
	p.done(text, err, list, "Fill the fields, or change it on the page 'plan as text'.")
}

// typed takes the values that the form has other than the text.
func (p *posting) typed() {
	for _, c := range p.f.changes() {
		p.edits = append(p.edits, edit{c, false})
	}
}

// done takes the text that a button made, or says at its field why it could not.
// The edit without a path tells that the text as a whole is wanted.
func (p *posting) done(text []byte, err error, field, hint string) {
	if err != nil {
		p.problems = append(p.problems, plan.Problem{Field: field, What: err.Error(), Hint: hint})
		return
	}
	p.text = text
	p.edits = append(p.edits, edit{plan.Change{}, true})
}

// saveBuild puts the form in the plan.
func (s *Server) saveBuild(w http.ResponseWriter, r *http.Request) {
	p, ok := s.posted(w, r)
	if !ok {
		return
	}
	if len(p.problems) > 0 {
		last, err := s.assess(r.Context(), p.o, lid.Full)
		if err != nil {
			s.failed(w, r, err)
			return
		}
		s.buildPage(w, r, http.StatusUnprocessableEntity, p.o, last, p.f, p.tub)
		return
	}
	if s.save(w, r, p.o.ID, p.base, p.text, p.mine(), why(p)) {
		if p.added {
			p.tub = len(p.plan.Tubs) - 1
		}
		http.Redirect(w, r, buildAddress(p.o.ID, p.plan.Tubs[p.tub].Name, "saved"), http.StatusSeeOther)
	}
}

// mine are the changes as a conflict shows them; none where a shape or a bag was
// added or taken out, and the whole text is what is wanted.
func (p posting) mine() []edit {
	mine := slices.DeleteFunc(slices.Clone(p.edits), func(e edit) bool { return e.Path == "" })
	if len(mine) < len(p.edits) {
		return nil
	}
	return mine
}

// why says in a few words what a revision changed.
func why(p posting) string {
	d := plan.Differences(p.o.Text, p.text)
	switch len(d) {
	case 0:
		return "put in the plan"
	case 1:
		return d[0].Words + " changed"
	}
	return fmt.Sprintf("%s and %d more changed", d[0].Words, len(d)-1)
}

// tried is the answer to a form as it is being typed: nothing is saved.
type tried struct {
	Parts    map[string]string `json:"parts,omitempty"`
	Problems []problemView     `json:"problems"`
	Status   string            `json:"status"`
	Full     bool              `json:"full"`
}

// refused answers with what is wrong in the form, as it is seen there; false
// where nothing is.
func (p *posting) refused(w http.ResponseWriter, seen func(plan.Problem) problemView, says string) bool {
	if len(p.problems) == 0 {
		return false
	}
	out := tried{Status: says, Full: true}
	for _, q := range p.problems {
		out.Problems = append(out.Problems, seen(q))
	}
	answerJSON(w, out)
	return true
}

// typedPlan is the garden with what is typed in place of what is saved.
func (p *posting) typedPlan() *opened {
	o := *p.o
	o.Text, o.Plan = p.text, p.plan
	return &o
}

// effortAsked is how hard the script asks for a first answer, or for all of it.
func effortAsked(r *http.Request) lid.Effort {
	if r.URL.Query().Get("effort") == "quick" {
		return lid.Quick
	}
	return lid.Full
}

// parts are the named parts of a page as they now read.
func (s *Server) parts(page string, names []string, work any) map[string]string {
	out := map[string]string{}
	for _, name := range names {
		out[page+"-"+name] = s.part(page, page+"-"+name, work)
	}
	return out
}

// lastNumbers is said while what is typed cannot be worked out.
const lastNumbers = "What stands here are the last numbers that could be worked out."

// tryBuild works out what is being typed: with quick effort first, then in full.
func (s *Server) tryBuild(w http.ResponseWriter, r *http.Request) {
	p, ok := s.posted(w, r)
	if !ok {
		return
	}
	if p.refused(w, func(q plan.Problem) problemView { return p.f.problem(q, p.tub) }, "The drawing shows the last numbers that could be worked out.") {
		return
	}
	effort := effortAsked(r)
	o := p.typedPlan()
	a, err := s.assess(r.Context(), o, effort)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	work := workOf(o, a, p.f, p.tub)
	out := tried{Problems: []problemView{}, Full: effort == lid.Full, Status: "Not in the plan yet. What is drawn is the best layout.", Parts: map[string]string{}}
	if !out.Full {
		out.Status = "Still improving the layout."
	}
	for _, part := range []string{"answer", "lid", "layouts", "findings", "limits", "section"} {
		out.Parts[part] = s.part("build", "build-"+part, work)
	}
	answerJSON(w, out)
}

func answerJSON(w http.ResponseWriter, v any) {
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	if err := json.NewEncoder(w).Encode(v); err != nil {
		return // the browser is gone, and nobody is left to be told
	}
}
