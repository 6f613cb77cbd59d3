package pack

import (
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/booklet"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/daily"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// builder lists the papers of one assessment.
type builder struct {
	a      *garden.Assessment
	cover  booklet.Cover
	papers []Paper
}

func (b *builder) add(p Paper) {
	p.Kind = Kind(p.Name[strings.LastIndexByte(p.Name, '.')+1:])
	b.papers = append(b.papers, p)
}

// card adds a paper that is laid as a card, of one tub or, where tub is empty, of
// the garden.
func (b *builder) card(c card.Card, tub string) {
	b.add(Paper{Name: c.Name, Title: c.Title, About: c.About, Tub: tub, Draw: c.PDF, read: readOf(c)})
}

// readOf is what a card's page says.
func readOf(c card.Card) func(scene.Size) ([]content.Sheet, error) {
	return func(size scene.Size) ([]content.Sheet, error) { return c.Sheets(size), nil }
}

// unsized is a file that no size of paper changes.
func unsized(draw func() ([]byte, error)) func(scene.Size) ([]byte, error) {
	return func(scene.Size) ([]byte, error) { return draw() }
}

func (b *builder) lids() {
	var lids, boards []sheet.Lid
	for i := range b.a.Tubs {
		l, ok := sheet.Of(b.a, i, b.cover.Revision)
		if !ok {
			continue
		}
		if l.Foam != nil {
			boards = append(boards, l)
		} else {
			lids = append(lids, l)
		}
		b.lid(l)
		if s, ok := booklet.SectionOf(b.a, i); ok {
			s.Revision = b.cover.Revision
			b.add(Paper{
				Name: "section-" + garden.Slug(l.Tub) + ".svg", Tub: l.Tub, Title: "Section of " + l.Tub,
				About: "The tub cut through on its shelf: where the water stands, and what fits over and under it.",
				Draw:  unsized(func() ([]byte, error) { return booklet.SectionSVG(s) }),
				read:  one(func(scene.Size) (content.Sheet, error) { return booklet.SectionContent(s) }),
			})
		}
	}
	if len(lids) > 0 {
		b.add(Paper{
			Name: "helper-card.pdf", Title: "Helper card", About: "What the adult who drills needs at the bench, a page for each lid.",
			Draw: func(size scene.Size) ([]byte, error) { return booklet.HelperCards(lids, size) },
			read: cards(lids),
		})
	}
	if len(boards) > 0 {
		b.add(Paper{
			Name: "foam-card.pdf", Title: "Foam card", About: "What the adult who cuts the foam needs at the bench, a page for each board.",
			Draw: func(size scene.Size) ([]byte, error) { return booklet.FoamCards(boards, size) },
			read: cards(boards),
		})
	}
}

// lid lists the papers of one lid.
func (b *builder) lid(l sheet.Lid) {
	slug := "lid-" + garden.Slug(l.Tub)
	work := "drill"
	if l.Foam != nil {
		work = "cut"
	}
	b.add(Paper{
		Name: slug + ".pdf", Tub: l.Tub, Title: "Lid sheet of " + l.Tub + ", true scale",
		About: "Print it, tape it on the lid, measure its bars and " + work + " through it.",
		Draw:  func(size scene.Size) ([]byte, error) { return sheet.LidPDF(l, size) },
		read:  one(func(size scene.Size) (content.Sheet, error) { return sheet.LidContent(l, size) }),
	})
	b.add(Paper{
		Name: slug + ".svg", Tub: l.Tub, Title: "Lid of " + l.Tub + " as a drawing",
		About: "One drawing at true scale, for a screen or a drawing program.",
		Draw:  unsized(func() ([]byte, error) { return sheet.LidSVG(l) }),
		read:  drawn(l, sheet.PictureContent),
	})
	b.add(Paper{
		Name: slug + ".dxf", Tub: l.Tub, Title: "Lid of " + l.Tub + " for a machine",
		About: "The same lid in millimetres, on layers, for a workshop that cuts from drawings.",
		Draw:  unsized(func() ([]byte, error) { return sheet.LidDXF(l) }),
		read:  drawn(l, sheet.LayersContent),
	})
	b.add(Paper{
		Name: slug + ".csv", Tub: l.Tub, Title: "Holes of " + l.Tub + " as a table",
		About: "The place and size of each hole in millimetres, for a spreadsheet.",
		Draw:  unsized(func() ([]byte, error) { return sheet.LidCSV(l) }),
		read:  drawn(l, sheet.HolesContent),
	})
	b.add(Paper{
		Name: "rings-" + garden.Slug(l.Tub) + ".pdf", Tub: l.Tub, Title: "Numbered rings for " + l.Tub,
		About: "Cut them out and lay one round each cup, so that a class knows which cup is whose.",
		Draw:  func(size scene.Size) ([]byte, error) { return sheet.RingsPDF(l, size) },
		read:  one(func(size scene.Size) (content.Sheet, error) { return sheet.RingsContent(l, size) }),
	})
}

// air lists the card that hangs at the shelf.
func (b *builder) air() {
	c, ok := daily.LightAndAir(b.a, b.cover.Revision)
	if !ok {
		return
	}
	b.card(c, "")
}

// tubs lists the papers of the store room and of the filled tub.
func (b *builder) tubs() {
	for i := range b.a.Tubs {
		d, ok := sheet.DipstickOf(b.a, i, b.cover.Revision)
		if !ok {
			continue
		}
		b.add(Paper{
			Name: "dipstick-" + garden.Slug(d.Tub) + ".pdf", Tub: d.Tub, Title: "Dipstick of " + d.Tub + ", true scale",
			About: "Cut it out and stand it in the tub: it reads the depth of the water and its volume.",
			Draw:  func(size scene.Size) ([]byte, error) { return sheet.DipstickPDF(d, size) },
			read:  one(func(size scene.Size) (content.Sheet, error) { return sheet.DipstickContent(d, size) }),
		})
	}
	b.add(Paper{
		Name: "measuring-sheet.pdf", Title: "Measuring sheet", About: "Blanks to fill in beside the tub, the lid, the cups and the shelf.",
		Draw: func(size scene.Size) ([]byte, error) { return booklet.MeasuringSheet(b.cover, size) },
		read: sure(func(size scene.Size) content.Sheet { return booklet.MeasuringContent(b.cover, size) }),
	})
	if wet := wetTubs(b.a); len(wet) > 0 {
		b.add(Paper{
			Name: "wet-test.pdf", Title: "Wet test", About: "A day with water alone, before anything grows: does the tub hold, does the air run?",
			Draw: func(size scene.Size) ([]byte, error) { return booklet.WetTest(b.cover, wet, size) },
			read: sure(func(size scene.Size) content.Sheet { return booklet.WetTestContent(b.cover, wet, size) }),
		})
	}
}
