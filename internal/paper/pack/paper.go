package pack

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// Kind is what a paper is written as. Its text is the ending of the file name.
type Kind string

// The kinds of paper.
const (
	PDF Kind = "pdf"
	SVG Kind = "svg"
	DXF Kind = "dxf"
	CSV Kind = "csv"
)

// MediaType is what a browser is told the file is (RFC 7303 and 4180 by way of
// the IANA registry; for DXF, which has no entry there, plain bytes).
func (k Kind) MediaType() string {
	switch k {
	case PDF:
		return "application/pdf"
	case SVG:
		return "image/svg+xml"
	case CSV:
		return "text/csv; charset=utf-8"
	}
	return "application/octet-stream"
}

// Paper is one paper of the day of building, not drawn yet.
type Paper struct {
	Name  string // of the file, unique within the pack: lid-Heron.pdf
	Title string // in the teacher's words
	About string // one sentence: what it is for
	Kind  Kind
	Tub   string // the tub's name; empty for a paper of the whole garden
	// Draw makes the file for a size of paper, scene.A4 or scene.Letter; a file
	// that is not printed takes no notice of it. The same size gives the same
	// bytes.
	Draw func(scene.Size) ([]byte, error)

	read func(scene.Size) ([]content.Sheet, error)
}

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

// Build lists every paper of the day of building, in the order in which they
// are told: the lids, then what is made of all of them, the dipsticks, the
// forms and the shopping. A paper that the assessment gives no ground for is
// left out. Nothing is drawn yet.
func Build(a *garden.Assessment) []Paper {
	b := builder{a: a, cover: coverOf(a)}
	b.lids()
	b.tubs()
	b.shopping()
	return b.papers
}

// Find is the paper of that file name.
func Find(a *garden.Assessment, name string) (Paper, bool) {
	for _, p := range Build(a) {
		if p.Name == name {
			return p, true
		}
	}
	return Paper{}, false
}

// Size is the sheet of a size's name, A4 or Letter.
func Size(name string) (scene.Size, bool) {
	switch name {
	case "A4":
		return scene.A4, true
	case "Letter":
		return scene.Letter, true
	}
	return scene.Size{}, false
}

// PageOf is what the paper of that file name says on the plan's own size of
// paper; ok is false where there is no such paper, or it cannot be drawn.
func PageOf(a *garden.Assessment, name string) (page Page, ok bool) {
	p, found := Find(a, name)
	size, known := Size(a.Paper())
	if !found || !known {
		return Page{}, false
	}
	page, err := p.Page(size)
	return page, err == nil
}
