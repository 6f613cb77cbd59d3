// Package card lays a paper that is words, tables and lines to write on: on one
// page in the largest type that fits, else over several.
package card

import (
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Card is one paper of a garden.
type Card struct {
	Name   string // of the file
	Title  string
	About  string  // one sentence: what it is for
	Points float64 // type size, 11 or more
	Least  float64 // the smallest type size; 0 for 11
	// HandMM is the width of a letter written by hand, so that a blank is as wide
	// as what goes in; 0 stretches blanks over the line.
	HandMM float64
	RowMM  float64 // height of a table's row; 0 for 8.6
	// Sheets is what it says, a sheet for each page that is begun.
	Sheets func(scene.Size) []content.Sheet

	// Drawn are pages in place of the first sheets, each with its own; a sheet
	// for which it has none is set. Nil: all are set.
	Drawn func(scene.Size) [][]Page

	Cover sheet.Lid // what stands in the title block
}

// Page is a page that is drawn and not set.
type Page struct {
	Size     scene.Size
	Elements []scene.Element
}
