package web

import (
	"context"
	"errors"
	"net/http"
	"strings"
	"time"

	"rootbell/examples"
	"rootbell/internal/app/store"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// examplePrefix begins the id of a read-only example.
const examplePrefix = "example-"

// opened is a garden as a page needs it: its text, what could be read of it,
// and the day.
type opened struct {
	ID       string
	Example  bool
	Name     string
	Revision store.Revision
	Text     []byte
	Plan     *plan.Plan // nil where the text has problems
	Problems []plan.Problem
	Today    plan.Date
	Now      time.Time

	typed    bool            // what is being typed stands in place of what is saved
	invented []store.Written // of an example that has a logbook

	rows []reading.Row // the last of each tub, once they were asked for
}

// open finds the garden that an address names. What cannot be opened is
// answered here, and ok is false.
func (s *Server) open(w http.ResponseWriter, r *http.Request) (o *opened, ok bool) {
	o, err := s.garden(r.Context(), r.PathValue("garden"), 0, viewOf(r))
	if err == nil {
		return o, true
	}
	s.failed(w, r, err)
	return nil, false
}

// failed answers with what went wrong in the store.
func (s *Server) failed(w http.ResponseWriter, r *http.Request, err error) {
	var missing *store.NotFound
	switch {
	case errors.As(err, &missing):
		s.refuse(w, r, http.StatusNotFound, "There is no such garden here.", "It may have been put away. The first page lists all of them.")
	case r.Context().Err() != nil:
		s.refuse(w, r, http.StatusServiceUnavailable, "This took too long and was given up.", "Nothing was changed. Go back and try again.")
	default:
		s.refuse(w, r, http.StatusInternalServerError, "The gardens could not be read: "+err.Error()+".", "Nothing was changed. The page 'what is stored where' says where the file is.")
	}
}

// garden opens a garden at a revision, 0 for the latest.
func (s *Server) garden(ctx context.Context, id string, revision int, v viewing) (*opened, error) {
	o := &opened{ID: id}
	if name, ok := strings.CutPrefix(id, examplePrefix); ok {
		text, err := examples.Plans.ReadFile(name + ".yaml")
		if err != nil {
			return nil, &store.NotFound{}
		}
		o.Example = true
		o.Text, o.invented = v.apply(text), s.books[name]
	} else {
		g, rev, err := s.Store.Latest(ctx, id)
		if err == nil && revision > 0 && revision != rev.Number {
			rev, err = s.Store.Revision(ctx, id, revision)
		}
		if err != nil {
			return nil, err
		}
		o.Revision, o.Text = rev, rev.Text
		if !g.Discarded.IsZero() {
			return nil, &store.NotFound{What: "garden of that name on the list"}
		}
		o.Name = g.Name
	}
	o.Plan, o.Problems = s.plans.of(o.Text)
	if o.Plan != nil {
		o.Name = o.Plan.Garden
	}
	o.Now = s.Now().In(s.zoneOf(o.Plan))
	o.isDayOfBook()
	o.Today = plan.Date{Year: o.Now.Year(), Month: o.Now.Month(), Day: o.Now.Day()}
	return o, nil
}

// zoneOf is the time zone of a plan, else the one of this machine.
func (s *Server) zoneOf(p *plan.Plan) *time.Location {
	if p != nil && p.Place.TimeZone != "" {
		if zone, err := time.LoadLocation(p.Place.TimeZone); err == nil {
			return zone
		}
	}
	return s.Zone
}

// assess works the garden out.
func (s *Server) assess(ctx context.Context, o *opened, effort lid.Effort) (*garden.Assessment, error) {
	return s.work.of(ctx, o.Text, o.Plan, o.Today, effort, 0)
}

// mixed is the garden worked out in full, with what its tubs are filled with and
// what there is to choose between.
func (s *Server) mixed(ctx context.Context, o *opened) (*garden.Assessment, error) {
	return s.work.of(ctx, o.Text, o.Plan, o.Today, lid.Full, garden.StageMix|garden.StageChoose)
}

// ready opens a garden whose plan can be read and works it out in full. A text
// with problems leads to the page where it can be mended.
func (s *Server) ready(w http.ResponseWriter, r *http.Request) (*opened, *garden.Assessment, bool) {
	return s.readyFor(w, r, func(ctx context.Context, o *opened) (*garden.Assessment, error) { return s.assess(ctx, o, lid.Full) })
}

func (s *Server) readyFor(w http.ResponseWriter, r *http.Request, assess func(context.Context, *opened) (*garden.Assessment, error)) (*opened, *garden.Assessment, bool) {
	o, ok := s.open(w, r)
	if !ok {
		return nil, nil, false
	}
	if o.Plan == nil {
		http.Redirect(w, r, "/g/"+o.ID+"/text", http.StatusSeeOther)
		return nil, nil, false
	}
	a, err := assess(r.Context(), o)
	if err != nil {
		s.failed(w, r, err)
		return nil, nil, false
	}
	return o, a, true
}
