package garden

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/school/shopping"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/netcup"
	"rootbell/internal/science/shelf"
	"rootbell/internal/science/tub"
)

// Facts are all sourced values that assessments rest on, by id.
func Facts() []facts.Fact {
	return facts.Join(crop.Facts, netcup.Facts, shelf.Facts, shopping.Facts, tub.Facts)
}
