package web

import (
	"html/template"

	"rootbell/internal/paper/figure"
)

// stickView is how the dipstick is read, as two drawings.
type stickView struct{ Desk, Hand template.HTML }

func stickOf(l *logbook) stickView {
	return stickView{svg(figure.Stick(l.a, l.tub, figure.Desk)), svg(figure.Stick(l.a, l.tub, figure.Hand))}
}
