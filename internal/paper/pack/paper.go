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
	ICS Kind = "ics"

	XLSX Kind = "xlsx"
)

// MediaType is what a browser is told the file is (RFC 7303, 4180 and 5545
// by way of the IANA registry; for DXF, which has no entry there, plain bytes).
func (k Kind) MediaType() string {
	switch k {
	case PDF:
		return "application/pdf"
	case SVG:
		return "image/svg+xml"
	case CSV:
		return "text/csv; charset=utf-8"
	case ICS:
		return "text/calendar; charset=utf-8"
	case XLSX:
		return "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
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

// Build lists every paper of the day of building, in the order in which they
// are told: the lids, then what is made of all of them, the dipsticks, the
// forms and the shopping. A paper that the assessment gives no ground for is
// left out. Nothing is drawn yet.
func Build(a *garden.Assessment) []Paper { return BuildOf(a, "") }

// BuildOf is Build for a revision of the plan, which stands in the title blocks;
// without one it is the first.
func BuildOf(a *garden.Assessment, revision string) []Paper {
	b := builder{a: a, cover: coverOf(a, revision)}
	b.lids()
	b.tubs()
	b.air()
	b.shopping()
	return b.papers
}

// Find is the paper of that file name.
func Find(a *garden.Assessment, name string) (Paper, bool) { return Named(Build(a), name) }

// Named is the paper of that file name among papers.
func Named(papers []Paper, name string) (Paper, bool) {
	for _, p := range papers {
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
