package web

import (
	"bytes"
	"html/template"
	"io/fs"
	"net/http"
	"path"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
)

// frame is what stands around every page.
type frame struct {
	Title   string
	Page    string // the page's name among the tabs
	Head    *gardenHead
	Units   string // metric or us
	Paper   string
	Here    string // where the switches come back to
	Drawing string // what the title block calls the page
	Saved   string
	Wide    bool
	Script  []string
	Style   []string // beyond the one that all pages have
	Message string   // what was just done
}

// gardenHead is what the frame says of the garden that is open.
type gardenHead struct {
	ID       string
	Name     string
	Example  bool
	Book     bool // an example with an invented logbook
	Invented bool
	Revision int
	Tabs     []tab
	Later    []tab // whose week has not come yet
	Strip    stripView
}

// tab is one page of a garden.
type tab struct {
	Name, Address string
	Here          bool
}

// stripView is the term as two drawings, for a desk and for a hand.
type stripView struct {
	Desk, Hand template.HTML
	None       bool
}

// view is a page as its template sees it.
type view struct {
	Frame frame
	Body  any
}

func readPages(static *assets) (map[string]*template.Template, error) {
	own := template.FuncMap{
		"own":   static.at,
		"words": quantity.InWords,
		"lower": strings.ToLower,
		"title": capital,
		"slug":  garden.Slug,
		"add":   func(a, b int) int { return a + b },

		"sentence": sentence,
		"exact":    exact,
	}
	names, err := fs.Glob(files, "templates/*.html")
	if err != nil {
		return nil, err
	}
	shared, err := template.New("").Funcs(own).ParseFS(files, "templates/layout.html", "templates/parts.html")
	if err != nil {
		return nil, err
	}
	pages := map[string]*template.Template{}
	for _, name := range names {
		base := strings.TrimSuffix(path.Base(name), ".html")
		if base == "layout" || base == "parts" {
			continue
		}
		t, err := template.Must(shared.Clone()).ParseFS(files, name)
		if err != nil {
			return nil, err
		}
		pages[base] = t
	}
	return pages, nil
}

// show writes a page: whole, or not at all.
func (s *Server) show(w http.ResponseWriter, status int, page string, f frame, body any) {
	var b bytes.Buffer
	if err := s.pages[page].ExecuteTemplate(&b, "layout", view{f, body}); err != nil {
		panic(err)
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(b.Bytes())
}

// part writes one named part of a page as HTML.
func (s *Server) part(page, name string, body any) string {
	var b strings.Builder
	if err := s.pages[page].ExecuteTemplate(&b, name, body); err != nil {
		panic(err)
	}
	return b.String()
}

// refuse answers with a page that says what is wrong and what to do.
func (s *Server) refuse(w http.ResponseWriter, r *http.Request, status int, what, hint string) {
	s.show(w, status, "refusal", s.plainFrame(r, "Not done", ""), struct{ What, Hint string }{what, hint})
}
