// Package season is how a crop fits the school's calendar: sown back from the
// meal on days that allow it, and left alone over closed stretches so that the
// water lasts (docs/season.md).
package season

//go:generate go run rootbell/internal/base/facts/factgen season
