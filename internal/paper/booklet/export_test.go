package booklet

import (
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// LaidCard is a helper card before it is printed: what is drawn, the blocks it
// was laid in, and whether all of them found room.
func LaidCard(l sheet.Lid, paper scene.Size) (elements []scene.Element, blocks []scene.Box, fits bool) {
	page := layCard(l, paper)
	return page.elements, page.blocks, page.fits
}

// LaidForms are the other papers of a cover before they are printed.
func LaidForms(c Cover, tubs []WetTub, paper scene.Size) map[string][]scene.Element {
	out := map[string][]scene.Element{}
	for name, page := range map[string]laid{"measuring sheet": layMeasuring(c, paper), "wet test": layWetTest(c, tubs, paper)} {
		if page.fits {
			out[name] = page.elements
		}
	}
	return out
}

// SectionElements is the section before it is written.
func SectionElements(s Section) []scene.Element {
	d := sectionDraft{Section: s, scale: s.pick()}
	d.draw()
	return d.elements
}
