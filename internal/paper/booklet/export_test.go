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
