package web

import (
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/figure"
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
	Room    string        // broad or slim, for a drawing whose letters need it
	Hand    template.HTML // the same for a phone, where the letters would be too small
}

// figureOf is a figure as the page shows it: as wide as its letters need.
func figureOf(f content.Figure) figureView {
	const broadMM, slimMM = 120, 75
	// The drawing writes its own SVG and escapes every word in it.
	v := figureView{Caption: f.Caption, SVG: template.HTML(f.SVG)}
	switch {
	case f.WidthMM > broadMM:
		v.Room = "broad"
	case f.WidthMM < slimMM:
		v.Room = "slim"
	}
	return v
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
	query := url.Values{}
	if r.URL.Query().Get("paper") != "" {
		query.Set("paper", ask.name)
	}
	if ask.on != "" {
		query.Set("on", ask.on)
	}
	if len(query) > 0 {
		body.Address += "?" + query.Encode()
	}
	if ask.Kind == pack.PDF {
		body.Other = map[string]string{"A4": "Letter", "Letter": "A4"}[ask.name]
	}
	body.drawSection(ask.a)
	f := s.frameOf(r, ask.o, ask.a, "papers", page.Heading())
	f.Paper = ask.name
	f.Style = []string{paperStyle}
	s.show(w, http.StatusOK, "paper", f, body)
}

// drawSection puts the section as it is drawn for a phone beside the paper's.
func (b *paperBody) drawSection(a *garden.Assessment) {
	if !strings.HasPrefix(b.Page.Name, "section-") {
		return
	}
	i := slices.IndexFunc(a.Tubs, func(t garden.Tub) bool { return t.Name == b.Page.Tub })
	if i < 0 {
		return
	}
	if hand, ok := figure.Section(a, i, figure.Hand); ok {
		b.Sheets[0].Sections[0].Figures[0].Hand = template.HTML(hand)
	}
}

func sheetViews(sheets []content.Sheet) []sheetView {
	var out []sheetView
	for _, sheet := range sheets {
		v := sheetView{Sheet: sheet}
		for _, section := range sheet.Sections {
			part := sectionView{Section: section}
			for _, f := range section.Figures {
				part.Figures = append(part.Figures, figureOf(f))
			}
			v.Sections = append(v.Sections, part)
		}
		out = append(out, v)
	}
	return out
}
