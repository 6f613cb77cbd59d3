package pack

import (
	"rootbell/internal/paper/booklet"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// reader is how the content of a paper is made for a size of paper.
type reader = func(scene.Size) ([]content.Sheet, error)

// one is a paper of one sheet that may fail.
func one(read func(scene.Size) (content.Sheet, error)) reader {
	return func(size scene.Size) ([]content.Sheet, error) {
		s, err := read(size)
		if err != nil {
			return nil, err
		}
		return []content.Sheet{s}, nil
	}
}

// sure is a paper of one sheet that cannot fail.
func sure(read func(scene.Size) content.Sheet) reader {
	return func(size scene.Size) ([]content.Sheet, error) { return []content.Sheet{read(size)}, nil }
}

// cards is a card for each lid.
func cards(lids []sheet.Lid) reader {
	return func(size scene.Size) ([]content.Sheet, error) {
		var out []content.Sheet
		for _, l := range lids {
			s, err := booklet.CardContent(l, size)
			if err != nil {
				return nil, err
			}
			out = append(out, s)
		}
		return out, nil
	}
}

// drawn is the content of one of a lid's files beside the lid sheet.
func drawn(l sheet.Lid, read func(sheet.Lid) (content.Sheet, error)) reader {
	return one(func(scene.Size) (content.Sheet, error) { return read(l) })
}
