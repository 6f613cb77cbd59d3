package sheet

import "rootbell/internal/paper/scene"

// edgeMM lets the outline's full line width show at the edge of the tiles.
const edgeMM = 1

// tiling is how the lid is cut for a paper.
func (l Lid) tiling(paper scene.Size) Tiling {
	return tile(paper, l.Outline.Bounds().Grown(edgeMM))
}

// LidPDF is the lid sheet: a page of what to do, then the lid at true scale in
// tiles with registration marks and check bars. Paper is scene.A4 or
// scene.Letter, upright. It fails when the lid has no outline, is larger than
// any lid could be, or holds a place that is not a number.
func LidPDF(l Lid, paper scene.Size) ([]byte, error) {
	if err := l.Check(paper); err != nil {
		return nil, err
	}
	press := scene.NewPress("Lid sheet of "+l.Tub, l.On)
	t := l.tiling(paper)
	l.front(press, paper, t)
	l.pages(press, t)
	return press.Bytes()
}

// DrawnPages is the number of pages the lid itself takes on a paper.
func DrawnPages(l Lid, paper scene.Size) int { return l.tiling(paper).Pages() }
