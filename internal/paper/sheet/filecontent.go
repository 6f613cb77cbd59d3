package sheet

import (
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// PictureContent is what the lid's drawing file shows. It fails where the lid
// cannot be drawn.
func PictureContent(l Lid) (content.Sheet, error) {
	return l.fileContent("Lid of "+l.Tub, func() []content.Section {
		return []content.Section{
			l.PictureSection(),
			{Heading: "Where the holes are", Paragraphs: []string{markWords}, Tables: []content.Table{l.centres()}},
		}
	})
}

// LayersContent is what the lid's file for a machine holds. It fails where the
// lid cannot be drawn.
func LayersContent(l Lid) (content.Sheet, error) {
	layers := content.Table{Caption: "Layers of the drawing", Columns: []content.Column{{Head: "layer"}, {Head: "what lies on it"}}}
	for _, row := range layerWords {
		layers.Rows = append(layers.Rows, []string{row.layer, row.words})
	}
	return l.fileContent("Lid of "+l.Tub+" for a machine", func() []content.Section {
		return []content.Section{
			{Heading: "The file", Paragraphs: l.fileWords(), Tables: []content.Table{layers}},
			l.holesSection(),
		}
	})
}

// HolesContent is what the lid's table of holes holds. It fails where the lid
// cannot be drawn.
func HolesContent(l Lid) (content.Sheet, error) {
	return l.fileContent("Holes of "+l.Tub+" as a table", func() []content.Section { return []content.Section{l.holesSection()} })
}

// fileContent is a sheet of what sections gives, once the lid can be drawn.
func (l Lid) fileContent(title string, sections func() []content.Section) (content.Sheet, error) {
	if err := l.Check(scene.A4); err != nil {
		return content.Sheet{}, err
	}
	return content.Sheet{Title: title, Block: l.Block(title, scene.Size{}), Stop: StopWords(l.Stop), Sections: sections()}, nil
}

// holesSection are the cup holes as the files count them.
func (l Lid) holesSection() content.Section {
	t := content.Table{Caption: "Cup holes, millimetres from the lower left corner of the lid"}
	rows := l.holeRows()
	for i, head := range rows[0] {
		t.Columns = append(t.Columns, content.Column{Head: head, Number: i > 0})
	}
	t.Rows = rows[1:]
	return content.Section{Heading: "Where the holes are", Tables: []content.Table{t}}
}

// layerWords are the layers of the file for a machine, in the order in which
// they are told.
var layerWords = []struct{ layer, words string }{
	{"HOLES", "holes for the cups, as circles"},
	{"LID", "the lid's outline"},
	{"CLEAR", "where no hole may be"},
	{"AIR", "the air line's hole"},
	{"SERVICE", "the service hole"},
	{"CHECK", "a line to measure"},
	{"TEXT", "words"},
}
