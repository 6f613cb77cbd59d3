package figure

import (
	"rootbell/internal/paper/scene"
)

// region is the chain line inside which centres may lie.
func (f *lidFigure) region() {
	if !f.laid {
		return
	}
	for _, edge := range f.edges() {
		f.path("cen", edge)
	}
}

func (f *lidFigure) edges() []scene.Path { return nil }
