package web

import (
	"html/template"
	"net/http"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/pack"
)

// paperBody is one paper as a page.
type paperBody struct {
	ID      string
	Page    pack.Page
	Sheets  []sheetView
	Size    string
	Other   string // the other size, where the paper is printed
	Address string // of the file
}

// sheetView is a sheet with its figures as a template may write them.
type sheetView struct {
	content.Sheet
	Sections []sectionView
}

type sectionView struct {
	content.Section
	Figures []figureView
}

type figureView struct {
	Caption string
	SVG     template.HTML
}

// showPaperPage shows what a paper says, to read and to print as a copy.
func (s *Server) showPaperPage(w http.ResponseWriter, r *http.Request) {
	ask, ok := s.paperAsked(w, r)
	if !ok {
		return
	}
	page, err := ask.Page(ask.size)
	if err != nil {
		s.undrawn(w, r, err)
		return
	}
	body := paperBody{ID: ask.o.ID, Page: page, Sheets: sheetViews(page.Sheets), Size: ask.name, Address: "/g/" + ask.o.ID + "/papers/" + ask.Name}
	if r.URL.Query().Get("paper") != "" {
		body.Address += "?paper=" + ask.name
	}
	if ask.Kind == pack.PDF {
		body.Other = map[string]string{"A4": "Letter", "Letter": "A4"}[ask.name]
	}
	f := s.frameOf(r, ask.o, ask.a, "papers", page.Heading())
	f.Paper = ask.name
	f.Style = []string{paperStyle}
	s.show(w, http.StatusOK, "paper", f, body)
}

func sheetViews(sheets []content.Sheet) []sheetView {
	var out []sheetView
	for _, sheet := range sheets {
		v := sheetView{Sheet: sheet}
		for _, section := range sheet.Sections {
			part := sectionView{Section: section}
			for _, f := range section.Figures {
				// The drawing writes its own SVG and escapes every word in it.
				part.Figures = append(part.Figures, figureView{f.Caption, template.HTML(f.SVG)})
			}
			v.Sections = append(v.Sections, part)
		}
		out = append(out, v)
	}
	return out
}
