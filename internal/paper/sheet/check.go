package sheet

import (
	"errors"
	"fmt"

	"rootbell/internal/paper/scene"
)

// mostLidMM is the largest lid a sheet is drawn for: longer than any table.
const mostLidMM = 3000

// Check says why no true sheet can be drawn.
func (l Lid) Check(paper scene.Size) error {
	if paper != scene.A4 && paper != scene.Letter {
		return fmt.Errorf("the lid sheet is drawn on A4 or Letter, not on %g × %g mm", paper.Width, paper.Height)
	}
	if len(l.Outline.Vertices) < 2 || !l.Outline.Closed {
		return errors.New("the lid has no outline to draw")
	}
	box := l.Outline.Bounds()
	// Written so that a size that is not a number fails too.
	if !(box.Width() > 0 && box.Height() > 0 && box.Width() <= mostLidMM && box.Height() <= mostLidMM) {
		return fmt.Errorf("a lid of %g × %g mm cannot be drawn; each side must be over 0 and at most %d mm", box.Width(), box.Height(), mostLidMM)
	}
	for _, h := range l.Holes {
		if !(h.SizeMM > 0) {
			return fmt.Errorf("hole %d has no size", h.N)
		}
	}
	return nil
}
