// Package meal is the day on which the class eats what it grew: what has to be
// answered before, who answers it, and what is done in which order. It never
// says that food is approved: that is for the people it names.
package meal

//go:generate go run rootbell/internal/base/facts/factgen meal
