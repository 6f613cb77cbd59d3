package web

import (
	"net/http"

	"rootbell/internal/garden"
)

// plainFrame is the frame of a page that belongs to no garden.
func (s *Server) plainFrame(r *http.Request, title, page string) frame {
	v := viewOf(r).orElse()
	return frame{Title: title, Page: page, Units: v.Units, Paper: v.Paper, Here: r.URL.RequestURI(), Drawing: title}
}

// frameOf is the frame of a garden's page; a is nil where the plan cannot be
// read.
func (s *Server) frameOf(r *http.Request, o *opened, a *garden.Assessment, page, title string) frame {
	f := s.plainFrame(r, title+": "+o.Name, page)
	f.Drawing = title
	if r.Method == http.MethodGet {
		f.Here = r.URL.RequestURI()
	} else {
		f.Here = "/g/" + o.ID + "/" + page
	}
	f.Head = &gardenHead{ID: o.ID, Name: o.Name, Example: o.Example, Revision: o.Revision.Number}
	if !o.Example {
		f.Saved = o.Revision.At.In(o.Now.Location()).Format("Mon 2 Jan 2006, 15:04")
	}
	for _, t := range []tab{{Name: "Today", Address: "today"}, {Name: "Build", Address: "build"}, {Name: "Mix", Address: "mix"}, {Name: "Logbook", Address: "logbook"}, {Name: "Working", Address: "working"}, {Name: "Papers", Address: "papers"}, {Name: "Plan as text", Address: "text"}} {
		t.Here = t.Address == page
		t.Address = "/g/" + o.ID + "/" + t.Address
		f.Head.Tabs = append(f.Head.Tabs, t)
	}
	if a != nil {
		f.Units, f.Paper = a.Plan.Units.String(), a.Paper()
		f.Head.Invented = a.Invented()
		f.Head.Strip = stripOf(a, o.Today)
	}
	return f
}
