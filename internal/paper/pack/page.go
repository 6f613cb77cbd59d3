package pack

import (
	"slices"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// Page is what a paper says, for a page on a screen.
type Page struct {
	Paper
	Sheets []content.Sheet
}

// Page is the paper's content for a size of paper. It fails where Draw does.
func (p Paper) Page(size scene.Size) (Page, error) {
	sheets, err := p.read(size)
	if err != nil {
		return Page{}, err
	}
	return Page{Paper: p, Sheets: sheets}, nil
}

// Heading is what the page is called: as its sheet, or as the paper where it has
// several.
func (p Page) Heading() string {
	if len(p.Sheets) == 1 {
		return p.Sheets[0].Title
	}
	return p.Title
}

// Several says whether each sheet needs a head of its own.
func (p Page) Several() bool { return len(p.Sheets) > 1 }

// PageOf is what the paper of that file name says on the plan's own size of
// paper; ok is false where there is no such paper, or it cannot be drawn.
func PageOf(a *garden.Assessment, name string) (page Page, ok bool) {
	p, found := Find(a, name)
	if !found {
		p, found = Named(slices.Concat(Today(a), Mix(a), Season(a), Choose(a), Class(a)), name)
	}
	size, known := Size(a.Paper())
	if !found || !known {
		return Page{}, false
	}
	page, err := p.Page(size)
	return page, err == nil
}
