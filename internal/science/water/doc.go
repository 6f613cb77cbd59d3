// Package water is where the water of a tub goes: leaves breathe it out under
// lamps and at night, gaps of the lid let it through, and roots take nutrients
// along.
package water

//go:generate go run rootbell/internal/base/facts/factgen water
