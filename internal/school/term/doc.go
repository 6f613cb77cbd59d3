// Package term is the school's calendar: which days somebody comes, the weeks
// of a term, and the closed stretches between, in hours that passed for a tub.
package term
