package web

import (
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/figure"
	"rootbell/internal/school/term"
)

// stripOf is the term strip of a garden; a plan without a calendar has none.
func stripOf(a *garden.Assessment, today plan.Date) stripView {
	day := term.Date{Year: today.Year, Month: today.Month, Day: today.Day}
	v := stripView{Desk: svg(figure.Strip(a, day, figure.Desk)), Hand: svg(figure.Strip(a, day, figure.Hand))}
	v.None = v.Desk == ""
	return v
}
