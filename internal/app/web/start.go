package web

import (
	"context"
	"io/fs"
	"net/http"
	"strings"

	"rootbell/examples"
	"rootbell/internal/base/finding"
	"rootbell/internal/science/lid"
)

// startBody is the first page: what is here, an example, and the way to begin.
type startBody struct {
	Gardens  []gardenRow
	Examples []gardenRow
	Begin    beginForm
	Bin      []gardenRow
}

// gardenRow is one garden with what is next to do in it.
type gardenRow struct {
	ID, Name, Changed string
	State             string
	Next              string
	Act               bool
}

func (s *Server) showStart(w http.ResponseWriter, r *http.Request) {
	s.startPage(w, r, http.StatusOK, newBegin(viewOf(r).orElse(), r.URL.Query().Get("shape"), nil, nil))
}

func (s *Server) startPage(w http.ResponseWriter, r *http.Request, status int, begin beginForm) {
	gardens, err := s.Store.Gardens(r.Context())
	if err != nil {
		s.failed(w, r, err)
		return
	}
	body := startBody{Begin: begin, Examples: exampleRows()}
	for _, g := range gardens {
		row := gardenRow{ID: g.ID, Name: g.Name, Changed: g.Changed.In(s.Zone).Format("Mon 2 Jan 2006")}
		row.State, row.Next, row.Act = s.due(r.Context(), g.ID)
		body.Gardens = append(body.Gardens, row)
	}
	bin, err := s.Store.Bin(r.Context())
	if err != nil {
		s.failed(w, r, err)
		return
	}
	for _, g := range bin {
		body.Bin = append(body.Bin, gardenRow{ID: g.ID, Name: g.Name})
	}
	f := s.plainFrame(r, "Start", "start")
	f.Here = "/"
	f.Message = messages[r.URL.Query().Get("said")]
	f.Script = []string{"begin.js"}
	s.show(w, status, "start", f, body)
}

// due says in a few words how a garden stands and what is next: the gravest
// thing first.
func (s *Server) due(ctx context.Context, id string) (state, next string, act bool) {
	o, err := s.garden(ctx, id, 0, viewing{})
	if err != nil || o.Plan == nil {
		return "its plan has something to mend", "open the plan as text", true
	}
	a, err := s.assess(ctx, o, lid.Quick)
	if err != nil {
		return "", "", false
	}
	var parts []string
	for i := range a.Tubs {
		if p := a.Tubs[i].Plants; p != nil {
			parts = append(parts, a.Tubs[i].Name+": "+countOf(p.Count, "plant"))
		}
	}
	state = strings.Join(parts, ", ")
	worst := finding.Worst(a.Findings)
	if worst == finding.Stop {
		return state, a.Findings[0].Text, true
	}
	next, act, err = s.nextToday(ctx, o)
	switch {
	case err == nil && act: // what the plants wait for goes before what may be better
		return state, next, true
	case worst == finding.Warn:
		return state, a.Findings[0].Text, true
	case err == nil && next != "":
		return state, next, false
	}
	return state, "print the lid sheet and mark the holes", false
}

func exampleRows() []gardenRow {
	names, err := fs.Glob(examples.Plans, "*.yaml")
	if err != nil {
		return nil
	}
	var out []gardenRow
	for _, file := range names {
		text, err := examples.Plans.ReadFile(file)
		if err == nil {
			out = append(out, gardenRow{ID: examplePrefix + strings.TrimSuffix(file, ".yaml"), Name: nameOf(text)})
		}
	}
	return out
}

// copyGarden makes an example, or another garden, one's own.
func (s *Server) copyGarden(w http.ResponseWriter, r *http.Request) {
	o, ok := s.open(w, r)
	if !ok {
		return
	}
	why := "copied from " + o.Name
	g, err := s.Store.Create(r.Context(), o.Name, o.Text, why, s.Now())
	if err != nil {
		s.failed(w, r, err)
		return
	}
	http.Redirect(w, r, "/g/"+g.ID+"/build?said=copied", http.StatusSeeOther)
}

// putAway takes a garden off the list; it is kept and can be brought back.
func (s *Server) putAway(w http.ResponseWriter, r *http.Request) {
	if err := s.Store.Discard(r.Context(), r.PathValue("garden"), s.Now()); err != nil {
		s.failed(w, r, err)
		return
	}
	http.Redirect(w, r, "/?said=away", http.StatusSeeOther)
}

func (s *Server) bringBack(w http.ResponseWriter, r *http.Request) {
	if err := s.Store.BringBack(r.Context(), r.PathValue("garden"), s.Now()); err != nil {
		s.failed(w, r, err)
		return
	}
	http.Redirect(w, r, "/?said=back", http.StatusSeeOther)
}

// messages are what a page says after something was done.
var messages = map[string]string{
	"saved":    "It is in the plan.",
	"copied":   "This copy is yours: change what you like.",
	"offered":  "The offer stands beside building a tub of usual size. Give prices and what your school has, and measure your own tub on the page Build.",
	"begun":    "Your lid is drawn. Check the measures, then print the lid sheet.",
	"away":     "The garden is put away. It can be brought back from the foot of this page.",
	"back":     "The garden is back.",
	"imported": "The garden was read in.",
	"written":  "It is in the book.",
	"wiped":    "The class is wiped. The tubs and their readings are all there.",

	"wipedleft": "The class is wiped. The file was busy, so bytes of it may still lie in free parts: stop the program, start it again, and wipe once more.",
	"takenout":  "It is out of the book. What was written stays, struck through.",
	"there":     "This entry was in the book already. It stands there once.",
	"returned":  "The plan is as it was then. The one before that is kept too.",
}
