package web

import (
	"net/http"
	"strings"

	"rootbell/internal/base/working"
	"rootbell/internal/garden"
)

// workingBody lists the numbers of one part of the garden, or unfolds one.
type workingBody struct {
	ID     string
	Scopes []scopeView
	Groups []numberGroup
	One    *workingView
	Blanks []workingView // the chain of one number, first what is needed first
}

// scopeView is a part of the garden that has numbers: a tub, or the rest.
type scopeView struct {
	Name, Address string
	Here          bool
}

type numberGroup struct {
	Name string
	Rows []workingView
}

// workingDepth is how many levels a page unfolds without asking again.
const workingDepth = 4

// showWorkings lists the numbers of a tub or of the rest of the garden.
func (s *Server) showWorkings(w http.ResponseWriter, r *http.Request) {
	o, a, on, ok := s.readyOn(w, r)
	if !ok {
		return
	}
	if on != "" {
		on = "&" + on
	}
	scope := r.URL.Query().Get("of")
	body := workingBody{ID: o.ID}
	known := false
	for i := range a.Tubs {
		slug := garden.Slug(a.Tubs[i].Name)
		known = known || scope == slug
		body.Scopes = append(body.Scopes, scopeView{a.Tubs[i].Name, "?of=" + slug + on, scope == slug})
		if a.Tubs[i].Mix != nil {
			mix := slug + mixScope
			known = known || scope == mix
			body.Scopes = append(body.Scopes, scopeView{a.Tubs[i].Name + ", its mix", "?of=" + mix + on, scope == mix})
		}
		if a.Term.Known() {
			days := slug + seasonScope
			known = known || scope == days
			body.Scopes = append(body.Scopes, scopeView{a.Tubs[i].Name + ", its season", "?of=" + days + on, scope == days})
		}
	}
	if a.Choose != nil {
		known = known || scope == chooseScope
		body.Scopes = append(body.Scopes, scopeView{"Buy or build", "?of=" + chooseScope + on, scope == chooseScope})
	}
	if !known && scope != "garden" && len(a.Tubs) > 0 {
		scope = garden.Slug(a.Tubs[0].Name)
		body.Scopes[0].Here = true
	}
	body.Scopes = append(body.Scopes, scopeView{"Shelf, crops and the rest", "?of=garden" + on, scope == "garden"})
	body.Groups = groupsOf(a, o.ID, scope)
	f := s.frameOf(r, o, a, "working", "Working")
	f.Script = []string{"working.js"}
	s.show(w, http.StatusOK, "working", f, body)
}

// groupsOf are the numbers of a scope by how they came about.
func groupsOf(a *garden.Assessment, id, scope string) []numberGroup {
	groups := []numberGroup{{Name: "Worked out"}, {Name: "Found by a search"}, {Name: "Rules of the trade"}, {Name: "As typed"}}
	at := map[working.Basis]int{working.OfNature: 0, working.BySearch: 1, working.OfTrade: 2, working.AsTyped: 3}
	u := unfolding{id, a.Plan.Units, 0}
	steps := stepsOf(a)
	for _, n := range a.Book.Numbers() {
		if scopeOf(a, n.Key) == scope && n.Known() && !steps[n.Key] {
			g := &groups[at[n.Basis]]
			g.Rows = append(g.Rows, u.one(n))
		}
	}
	return groups
}

// stepsOf are the numbers that are steps towards others and bear a name that
// other numbers bear too, as 'area at the water' does at each line. They unfold
// in what they lead to, where one sees which is meant.
func stepsOf(a *garden.Assessment) map[string]bool {
	called, used := map[string]int{}, map[string]bool{}
	for _, n := range a.Book.Numbers() {
		called[scopeOf(a, n.Key)+n.Name]++
		for _, in := range n.Inputs {
			used[in.Key] = true
		}
	}
	steps := map[string]bool{}
	for _, n := range a.Book.Numbers() {
		steps[n.Key] = used[n.Key] && called[scopeOf(a, n.Key)+n.Name] > 1
	}
	return steps
}

// Ends of the scopes of the numbers of a tub's mix, and of its season.
const (
	mixScope    = ".mix"
	seasonScope = ".season"
)

// asksSeason tells whether an address asks for a number of a season, which most
// pages do not work out.
func asksSeason(r *http.Request) bool {
	key := r.PathValue("key")
	return strings.HasSuffix(r.URL.Query().Get("of"), seasonScope) || strings.HasPrefix(key, "season.") || strings.Contains(key, seasonScope+".")
}

// chooseScope is the scope of the numbers of buying or building.
const chooseScope = "choose"

func scopeOf(a *garden.Assessment, key string) string {
	for i := range a.Tubs {
		slug := garden.Slug(a.Tubs[i].Name)
		switch {
		case strings.HasPrefix(key, "tubs."+slug+".mix."):
			return slug + mixScope
		case strings.HasPrefix(key, "tubs."+slug+".season."):
			return slug + seasonScope
		case strings.HasPrefix(key, "tubs."+slug+"."):
			return slug
		}
	}
	if strings.HasPrefix(key, chooseScope+".") {
		return chooseScope
	}
	return "garden"
}

// numberAsked finds the number an address names.
func (s *Server) numberAsked(w http.ResponseWriter, r *http.Request) (*opened, *garden.Assessment, working.Number, bool) {
	o, a, _, ok := s.readyOn(w, r)
	if !ok {
		return nil, nil, working.Number{}, false
	}
	n, ok := a.Book.Find(r.PathValue("key"))
	if !ok {
		s.refuse(w, r, http.StatusNotFound, "There is no number "+r.PathValue("key")+" in this garden now.", "The page 'working' lists all of them.")
	}
	return o, a, n, ok
}

// showWorking unfolds one number.
func (s *Server) showWorking(w http.ResponseWriter, r *http.Request) {
	o, a, n, ok := s.numberAsked(w, r)
	if !ok {
		return
	}
	v := workingOf(a, o.ID, n, workingDepth)
	v.Open = true
	f := s.frameOf(r, o, a, "working", "Working")
	f.Script = []string{"working.js"}
	s.show(w, http.StatusOK, "working", f, workingBody{ID: o.ID, One: &v})
}

// showWorkingPart is the same as a piece that unfolds in a page.
func (s *Server) showWorkingPart(w http.ResponseWriter, r *http.Request) {
	o, a, n, ok := s.numberAsked(w, r)
	if !ok {
		return
	}
	v := workingOf(a, o.ID, n, 1)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write([]byte(s.part("working", "unfolded", v)))
}

// showBlanks is a pupils' sheet: the formula and the numbers put in are there,
// the results are blank.
func (s *Server) showBlanks(w http.ResponseWriter, r *http.Request) {
	o, a, n, ok := s.numberAsked(w, r)
	if !ok {
		return
	}
	f := s.frameOf(r, o, a, "working", "Working with blanks")
	s.show(w, http.StatusOK, "blanks", f, workingBody{ID: o.ID, Blanks: chainOf(a, o.ID, n)})
}

// chainOf is a number and all that is worked out behind it, what is needed
// first first, each once.
func chainOf(a *garden.Assessment, id string, n working.Number) []workingView {
	u := unfolding{id, a.Plan.Units, 0}
	seen, worked := map[string]bool{}, map[string]bool{}
	var out []workingView
	var visit func(working.Number)
	visit = func(n working.Number) {
		if seen[n.Key] || n.Law == nil {
			return
		}
		seen[n.Key] = true
		for _, in := range n.Inputs {
			visit(in)
		}
		v := u.one(n)
		for i, l := range v.Letters {
			v.Letters[i].Blank = worked[l.Key]
		}
		worked[n.Key] = true
		out = append(out, v)
	}
	visit(n)
	return out
}
