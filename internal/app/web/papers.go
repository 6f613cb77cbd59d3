package web

import (
	"mime"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/pack"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/science/lid"
)

// papersBody lists the papers of a garden.
type papersBody struct {
	ID      string
	Size    string
	Answer  string
	Counts  string // how many there are, and for what
	Stops   []string
	Groups  []paperGroup
	Missing []string // tubs without a lid sheet
}

// paperGroup is the papers of one tub, or of the whole garden.
type paperGroup struct {
	Name   string
	Papers []pack.Paper
}

// showPapers lists every paper, as a file and as a page.
func (s *Server) showPapers(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.ready(w, r)
	if !ok {
		return
	}
	papers := papersOf(o, a)
	morning, err := s.morning(r.Context(), o, plan.Date{})
	if err != nil {
		s.failed(w, r, err)
		return
	}
	daily := pack.TodayOf(morning, revisionOf(o))
	mixed, err := s.mixed(r.Context(), o)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	mixing := pack.MixOf(mixed, revisionOf(o))
	seasoned, err := s.seasoned(r.Context(), o, lid.Full)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	season := pack.SeasonOf(seasoned, revisionOf(o))
	deciding := pack.ChooseOf(mixed, revisionOf(o))
	body := papersBody{
		ID: o.ID, Size: a.Paper(), Groups: paperGroups(a, papers), Stops: stopsOf(a),
		Answer: "Begin with three: the lid sheet, the helper card and the wet test.",
	}
	body.Groups = append(body.Groups, paperGroup{Name: "For the day of mixing", Papers: mixing})
	if len(season) > 0 {
		body.Groups = append(body.Groups, paperGroup{Name: "For the season", Papers: season})
	}
	body.Groups = append(body.Groups, paperGroup{Name: "At the tub", Papers: daily}, paperGroup{Name: "Buy or build", Papers: deciding})
	// Which papers there are does not rest on the logbook, and all of it is much
	// to read for a list of names.
	classed, err := s.work.of(r.Context(), o.Text, o.Plan, o.Today, lid.Full, garden.StageMix|garden.StageClass)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	forClass := pack.ClassOf(classed, revisionOf(o))
	body.Groups = append(body.Groups, paperGroup{Name: "For the class", Papers: forClass})
	body.Counts = paperCounts([]counted{
		{len(papers), "building"},
		{len(mixing), "mixing"},
		{len(season), "the season"},
		{len(daily), "the days at the tub"},
		{len(deciding), "the decision to buy or build"},
		{len(forClass), "the class"},
	})
	for _, t := range a.Tubs {
		if _, ok := pack.Named(papers, "lid-"+garden.Slug(t.Name)+".pdf"); !ok {
			body.Missing = append(body.Missing, t.Name)
		}
	}
	s.show(w, http.StatusOK, "papers", s.frameOf(r, o, a, "papers", "Papers"), body)
}

// counted is so many papers for one part of the work.
type counted struct {
	many int
	of   string
}

// paperCounts says how many papers there are for each part of the work; a part
// without any is not named.
func paperCounts(parts []counted) string {
	var out []string
	for _, p := range parts {
		if p.many > 0 {
			out = append(out, quantity.InWords(p.many)+" for "+p.of)
		}
	}
	if len(out) < 2 {
		return strings.Join(out, "")
	}
	return strings.Join(out[:len(out)-1], ", ") + " and " + out[len(out)-1]
}

// papersOf are the papers of a garden as it is open; their title blocks name
// the revision where it has one.
func papersOf(o *opened, a *garden.Assessment) []pack.Paper {
	return pack.BuildOf(a, revisionOf(o))
}

// revisionOf is the number of the revision that is open; empty for an example.
func revisionOf(o *opened) string {
	if o.Revision.Number > 0 {
		return strconv.Itoa(o.Revision.Number)
	}
	return ""
}

// paperGroups puts the papers of each tub together, then those of all tubs.
func paperGroups(a *garden.Assessment, papers []pack.Paper) []paperGroup {
	var out []paperGroup
	add := func(name, tub string) {
		g := paperGroup{Name: name}
		for _, p := range papers {
			if p.Tub == tub {
				g.Papers = append(g.Papers, p)
			}
		}
		if len(g.Papers) > 0 {
			out = append(out, g)
		}
	}
	for _, t := range a.Tubs {
		add(t.Name, t.Name)
	}
	add("All tubs", "")
	return out
}

// stopsOf are the stops that stand across papers, each once.
func stopsOf(a *garden.Assessment) []string {
	var out []string
	said := map[string]bool{}
	for i, t := range a.Tubs {
		if reason := a.StopOf(i); reason != "" && !said[reason] {
			said[reason] = true
			out = append(out, t.Name+": "+sheet.StopWords(reason))
		}
	}
	return out
}

// askedPaper is one paper of a garden, for a size.
type askedPaper struct {
	pack.Paper
	o    *opened
	a    *garden.Assessment
	size scene.Size
	name string // of the size
	on   string // the day of a paper at the tub, where the address names one
}

// paperAsked is the paper that an address names, for the size it asks for: the
// plan's own where it asks for none. What cannot be given is answered here.
func (s *Server) paperAsked(w http.ResponseWriter, r *http.Request) (ask askedPaper, ok bool) {
	ask.o, ask.a, ok = s.ready(w, r)
	if !ok {
		return ask, false
	}
	ask.name = r.URL.Query().Get("paper")
	if ask.name == "" {
		ask.name = ask.a.Paper()
	}
	if ask.size, ok = pack.Size(ask.name); !ok {
		s.refuse(w, r, http.StatusBadRequest, "There is no paper of the size "+ask.name+" here.", "Ask for A4 or Letter.")
		return ask, false
	}
	if ask.Paper, ok = pack.Named(papersOf(ask.o, ask.a), r.PathValue("name")); ok {
		return ask, true
	}
	mixed, err := s.mixed(r.Context(), ask.o)
	if err != nil {
		s.failed(w, r, err)
		return ask, false
	}
	if ask.Paper, ok = pack.Named(slices.Concat(pack.MixOf(mixed, revisionOf(ask.o)), pack.ChooseOf(mixed, revisionOf(ask.o))), r.PathValue("name")); ok {
		ask.a = mixed
		return ask, true
	}
	on, ok := s.dayAsked(w, r)
	if !ok {
		return ask, false
	}
	morning, err := s.morning(r.Context(), ask.o, on)
	if err != nil {
		s.failed(w, r, err)
		return ask, false
	}
	ask.a = morning
	if on.Set() {
		ask.on = on.String()
	}
	if ask.Paper, ok = pack.Named(pack.TodayOf(morning, revisionOf(ask.o)), r.PathValue("name")); ok {
		return ask, true
	}
	return s.laterPaper(w, r, ask)
}

// laterPaper is a paper of the class or of the season, whose working out costs
// most.
func (s *Server) laterPaper(w http.ResponseWriter, r *http.Request, ask askedPaper) (_ askedPaper, ok bool) {
	classed, err := s.classed(r.Context(), ask.o)
	if err != nil {
		s.failed(w, r, err)
		return ask, false
	}
	if _, ok = pack.Named(pack.ClassOf(classed, revisionOf(ask.o)), r.PathValue("name")); ok {
		if ask.a, err = s.handedOn(r.Context(), ask.o, classed); err != nil {
			s.failed(w, r, err)
			return ask, false
		}
		ask.Paper, _ = pack.Named(pack.ClassOf(ask.a, revisionOf(ask.o)), r.PathValue("name"))
		ask.on = ""
		return ask, true
	}
	seasoned, err := s.seasoned(r.Context(), ask.o, lid.Full)
	if err != nil {
		s.failed(w, r, err)
		return ask, false
	}
	ask.a, ask.on = seasoned, ""
	if ask.Paper, ok = pack.Named(pack.SeasonOf(seasoned, revisionOf(ask.o)), r.PathValue("name")); !ok {
		s.refuse(w, r, http.StatusNotFound, "There is no paper "+r.PathValue("name")+" in this garden now.", "The page 'papers' lists all of them. A tub whose lid could not be laid out has no lid sheet.")
		return ask, false
	}
	return ask, true
}

// downloadPaper draws one paper.
func (s *Server) downloadPaper(w http.ResponseWriter, r *http.Request) {
	ask, ok := s.paperAsked(w, r)
	if !ok {
		return
	}
	text, err := ask.Draw(ask.size)
	if err != nil {
		s.undrawn(w, r, err)
		return
	}
	w.Header().Set("Content-Type", ask.Kind.MediaType())
	w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": ask.Name}))
	w.Header().Set("Content-Length", strconv.Itoa(len(text)))
	_, _ = w.Write(text)
}

// undrawn says why a paper cannot be drawn.
func (s *Server) undrawn(w http.ResponseWriter, r *http.Request, err error) {
	s.refuse(w, r, http.StatusUnprocessableEntity, "This paper cannot be drawn: "+err.Error()+".", "Look at the measures on the page 'Build' again.")
}
