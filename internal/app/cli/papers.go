package cli

import (
	"fmt"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/booklet"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/shopping"
)

// paperMaker makes the papers of one assessment; the first that fails ends it.
type paperMaker struct {
	a     *garden.Assessment
	size  scene.Size
	cover booklet.Cover
	files []file
	err   error
}

func (m *paperMaker) add(name string, draw func() ([]byte, error)) {
	if m.err != nil {
		return
	}
	text, err := draw()
	if err != nil {
		m.err = fmt.Errorf("%s: %w", name, err)
		return
	}
	m.files = append(m.files, file{name, text})
}

// buildPapers makes every paper of the day of building before any is written.
func buildPapers(a *garden.Assessment, size scene.Size) ([]file, error) {
	m := &paperMaker{a: a, size: size, cover: booklet.Cover{Garden: a.Garden, Invented: a.Invented(), System: a.Plan.Units, On: a.On}}
	m.lids()
	m.tubs()
	m.shopping()
	return m.files, m.err
}

func (m *paperMaker) lids() {
	var lids, boards []sheet.Lid
	for i := range m.a.Tubs {
		l, ok := sheet.Of(m.a, i, "")
		if !ok {
			continue
		}
		if l.Foam != nil {
			boards = append(boards, l)
		} else {
			lids = append(lids, l)
		}
		slug := "lid-" + garden.Slug(m.a.Tubs[i].Name)
		m.add(slug+".pdf", func() ([]byte, error) { return sheet.LidPDF(l, m.size) })
		m.add(slug+".svg", func() ([]byte, error) { return sheet.LidSVG(l) })
		m.add(slug+".dxf", func() ([]byte, error) { return sheet.LidDXF(l) })
		m.add(slug+".csv", func() ([]byte, error) { return sheet.LidCSV(l) })
		m.add("rings-"+garden.Slug(l.Tub)+".pdf", func() ([]byte, error) { return sheet.RingsPDF(l, m.size) })
		if s, ok := booklet.SectionOf(m.a, i); ok {
			m.add("section-"+garden.Slug(m.a.Tubs[i].Name)+".svg", func() ([]byte, error) { return booklet.SectionSVG(s) })
		}
	}
	if len(lids) > 0 {
		m.add("helper-card.pdf", func() ([]byte, error) { return booklet.HelperCards(lids, m.size) })
	}
	if len(boards) > 0 {
		m.add("foam-card.pdf", func() ([]byte, error) { return booklet.FoamCards(boards, m.size) })
	}
}

// tubs makes the papers of the store room and of the filled tub.
func (m *paperMaker) tubs() {
	var wet []booklet.WetTub
	for i := range m.a.Tubs {
		t := &m.a.Tubs[i]
		if len(t.Levels) == 0 {
			continue
		}
		wet = append(wet, booklet.WetTub{Name: t.Name, FillMM: t.Levels[0].DepthMM, Fill: quantity.FormatMark(t.Levels[0].DepthMM, m.a.Plan.Units)})
		d, _ := sheet.DipstickOf(m.a, i, "")
		m.add("dipstick-"+garden.Slug(t.Name)+".pdf", func() ([]byte, error) { return sheet.DipstickPDF(d, m.size) })
	}
	m.add("measuring-sheet.pdf", func() ([]byte, error) { return booklet.MeasuringSheet(m.cover, m.size) })
	if len(wet) > 0 {
		m.add("wet-test.pdf", func() ([]byte, error) { return booklet.WetTest(m.cover, wet, m.size) })
	}
}

func (m *paperMaker) shopping() {
	list := m.a.Shopping
	if len(list) == 0 {
		return
	}
	var rows []booklet.Buy
	sum, known := 0.0, false
	for _, i := range list {
		row := booklet.Buy{Count: strings.TrimSpace(quantity.FormatNumber(i.Count, countDecimals(i)) + " " + i.Unit), What: i.What, Size: i.Size, Measure: i.Measure}
		if cost, ok := i.Total(); ok {
			row.Price = m.a.Money(cost)
			sum, known = sum+cost, true
		}
		rows = append(rows, row)
	}
	total := ""
	if known {
		total = m.a.Money(sum)
	}
	m.add("shopping.pdf", func() ([]byte, error) { return booklet.ShoppingList(m.cover, rows, total, m.size) })
	m.add("shopping.csv", func() ([]byte, error) { return shopping.CSV(list, m.a.Plan.Currency) })
}

// countDecimals is none for pieces, one for what is measured out.
func countDecimals(i shopping.Item) int {
	if i.Count == float64(int(i.Count)) {
		return 0
	}
	return 1
}
