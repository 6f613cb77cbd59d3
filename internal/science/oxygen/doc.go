// Package oxygen is the oxygen in the water of a tub: what water can hold, what
// roots take, what bubbles bring, and how long it lasts when the pump stops.
package oxygen

//go:generate go run rootbell/internal/base/facts/factgen oxygen
