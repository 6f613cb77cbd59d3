package booklet

import (
	"fmt"

	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Lengths of the card's page, mm.
const (
	sideMM   = 12
	footMM   = 11 // the title block
	gutterMM = 8
)

// fitting is one way to set the card: the type sizes in points, whether the
// table of centres is on it, and how many distances to measure.
type fitting struct {
	text, table float64
	centres     bool
	pairs       int
}

// fittings are tried in order; the first that fits is taken. The last leaves
// the tables to the lid sheet, which has them in full.
var fittings = []fitting{
	{11, 10, true, 16},
	{11, 9, true, 12},
	{10.5, 9, true, 12},
	{10.5, 8.5, true, 8},
	{10, 8.5, true, 8},
	{10, 8, true, 6},
	{10, 8, false, 6},
	{9, 8, false, 0},
	{8, 8, false, 0},
}

// HelperCards is one page for each lid: what the adult who drills needs at the
// bench. Paper is scene.A4 or scene.Letter. It fails where a lid cannot be
// drawn.
func HelperCards(lids []sheet.Lid, paper scene.Size) ([]byte, error) {
	return cards("Helper card", lids, paper)
}

// FoamCards is the same for lids of foam board, which are cut and not drilled.
func FoamCards(lids []sheet.Lid, paper scene.Size) ([]byte, error) {
	return cards("Foam card", lids, paper)
}

func cards(title string, lids []sheet.Lid, paper scene.Size) ([]byte, error) {
	on := ""
	if len(lids) > 0 {
		on, title = lids[0].On, title+": "+lids[0].Garden
	}
	press := scene.NewPress(title, on)
	for _, l := range lids {
		if err := l.Check(paper); err != nil {
			return nil, fmt.Errorf("%s of %s: %w", title, l.Tub, err)
		}
		press.Page(paper).Draw(layCard(l, paper).elements...)
	}
	return press.Bytes()
}

// laid is a page ready to print, with the blocks it was laid in.
type laid struct {
	elements []scene.Element
	blocks   []scene.Box
	fits     bool
}

func (p *laid) add(columns ...*scene.Column) {
	for _, c := range columns {
		p.elements = append(p.elements, c.Elements...)
		p.blocks = append(p.blocks, c.Blocks...)
		p.fits = p.fits && !c.Full()
	}
}

func layCard(l sheet.Lid, paper scene.Size) laid {
	var page laid
	for _, f := range fittings {
		page = card{l, paper, f}.lay()
		if page.fits {
			break
		}
	}
	return page
}

// card is one lid's card in one fitting.
type card struct {
	sheet.Lid
	paper scene.Size
	fit   fitting
}

// wording is what a card says beside the lid's own numbers.
type wording struct {
	name, plate string
	tools, stop string
	parts       []part
	// What the set-up drawing shows, its scale as one to so many, and what is
	// to be known of it.
	caption, note string
	shows         string // the drawing in words
	scale         int
	setUp         func(width float64) (scene.Box, []scene.Element)
}

func (w wording) ready() string { return "Have ready: " + w.tools }

// halt is the warning that starts with the word 'Stop'.
func (w wording) halt() string { return haltWord + " " + w.stop }

const haltWord = "Stop"

// title heads the card, drawing names it in its title block.
func (c card) title() string { return c.wording().name + ": the lid of " + c.Tub }

func (c card) drawing() string {
	return c.wording().name + ": lid of " + c.Tub + ", " + c.holesInWords()
}

func (c card) wording() wording {
	if c.Foam != nil {
		return c.foamWording()
	}
	return wording{
		name: "Helper card", plate: "For an adult. No pupil drills.", tools: c.tools(), parts: c.instructions(),
		stop:    "if the lid cracks, the saw grabs, a clamp slips or a pupil comes near. Let go of the trigger first. A cracked lid is not used.",
		caption: "Set-up, cut through", scale: setUpScale, setUp: c.setUp, shows: c.setUpShown(),
	}
}

func (c card) style(face scene.Face) scene.Style {
	return scene.Style{Face: face, SizeMM: c.fit.text * scene.PointMM, Leading: 1.22}
}

func (c card) small(face scene.Face) scene.Style {
	return scene.Style{Face: face, SizeMM: c.fit.table * scene.PointMM, Leading: 1.25}
}

func (c card) lay() laid {
	page := laid{fits: true}
	title := scene.BoxAt(scene.Point{X: sideMM, Y: sideMM}, c.paper.Width-2*sideMM, footMM)
	page.elements = c.TitleBlock(title, c.drawing(), c.paper)
	page.blocks = append(page.blocks, title)

	body := scene.Box{
		Min: scene.Point{X: sideMM, Y: title.Max.Y + 3},
		Max: scene.Point{X: c.paper.Width - sideMM, Y: c.paper.Height - sideMM},
	}
	head := scene.NewColumn(body)
	c.head(head)
	body.Max.Y = body.Min.Y + head.Left()
	// The steps take a little more than half.
	middle := body.Min.X + (body.Width()-gutterMM)*0.53
	left := scene.NewColumn(scene.Box{Min: body.Min, Max: scene.Point{X: middle, Y: body.Max.Y}})
	right := scene.NewColumn(scene.Box{Min: scene.Point{X: middle + gutterMM, Y: body.Min.Y}, Max: body.Max})
	c.steps(left)
	c.pictures(right)
	// The distances stand where there is room for them.
	roomier := left
	if right.Left() > left.Left() {
		roomier = right
	}
	c.pairs(roomier)
	page.add(head, left, right)
	if c.Stop != "" {
		page.elements = append(page.elements, sheet.StopPlate(body, c.Stop)...)
	}
	return page
}

func (c card) holesInWords() string {
	if len(c.Holes) == 0 {
		return "no holes"
	}
	size := c.Holes[0].SizeMM
	for _, h := range c.Holes {
		if h.SizeMM != size {
			return fmt.Sprintf("%d holes", len(c.Holes))
		}
	}
	if len(c.Holes) == 1 {
		return "1 hole ⌀ " + sheet.ToolSize(size, c.System)
	}
	return fmt.Sprintf("%d holes ⌀ %s", len(c.Holes), sheet.ToolSize(size, c.System))
}

func (c card) head(head *scene.Column) {
	const badgeMM = 68
	w := c.wording()
	if box, ok := head.Take(11); ok {
		size := 20 * scene.PointMM
		title := scene.Serif.Fitted(c.title(), size, box.Width()-badgeMM-4)
		head.Elements = append(head.Elements, scene.Text{
			At: box.Min.Plus(scene.Point{Y: 3}), Text: title, SizeMM: size, Face: scene.Serif,
		})
		badge := scene.BoxAt(scene.Point{X: box.Max.X - badgeMM, Y: box.Min.Y + 1}, badgeMM, 9)
		head.Elements = append(head.Elements, scene.Shape{Path: scene.Rectangle(badge), Class: scene.Edge}, scene.Text{
			At: badge.Centre().Minus(scene.Point{Y: 1.4}), Text: w.plate, SizeMM: 12 * scene.PointMM, Face: scene.SansBold, Anchor: scene.Middle,
		})
	}
	head.Rule(scene.Part, 0.6)
	head.Rule(scene.Part, 2)
	head.Text(c.small(scene.Sans), w.ready())
	head.Gap(2)
	head.Rule(scene.Edge, 2.5)
}
