package figure

import "rootbell/internal/garden"

// sectionFigure is one section being drawn.
type sectionFigure struct{ pen }

func sectionOf(*garden.Assessment, int, Width) (*sectionFigure, bool) { return nil, false }

func (f *sectionFigure) draw()        {}
func (f *sectionFigure) svg() string  { return "" }
func (f *sectionFigure) note() string { return "" }
