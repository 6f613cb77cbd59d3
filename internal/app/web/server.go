package web

import (
	"fmt"
	"html/template"
	"net/http"
	"time"

	"github.com/klauspost/compress/gzhttp"

	"rootbell/internal/app/store"
	"rootbell/internal/garden"
)

// Options are what the pages need of the world.
type Options struct {
	Store   *store.Store
	Now     func() time.Time
	Zone    *time.Location // of a garden whose plan names none
	Version string
	Data    string // where the database lies, told on the page that says what is stored
	Hosts   []string
	Longest time.Duration // how long one answer may take before it is given up; nought is half a minute
}

// Server is the pages of one database.
type Server struct {
	Options
	pages   map[string]*template.Template
	static  *assets
	work    *assessments
	seasons *recent[*garden.Assessment] // the last of each plan and day, for the strip
	plans   *plans
	books   inventedBooks
	gate    http.Handler
}

// New makes the pages. An error is a mistake in the program's own templates.
func New(o Options) (*Server, error) {
	static, err := readAssets()
	if err != nil {
		return nil, fmt.Errorf("the pages' own files: %w", err)
	}
	pages, err := readPages(static)
	if err != nil {
		return nil, fmt.Errorf("the pages' templates: %w", err)
	}
	books, err := readInvented()
	if err != nil {
		return nil, fmt.Errorf("the logbooks of the examples: %w", err)
	}
	if o.Zone == nil {
		o.Zone = time.UTC
	}
	s := &Server{Options: o, pages: pages, static: static, work: newAssessments(), plans: newPlans(), books: books, seasons: newRecent[*garden.Assessment]()}
	squeeze, err := gzhttp.NewWrapper(gzhttp.MinSize(1024))
	if err != nil {
		return nil, err
	}
	s.gate = squeeze(s.guarded(s.routes()))
	return s, nil
}

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.gate.ServeHTTP(w, r) }
