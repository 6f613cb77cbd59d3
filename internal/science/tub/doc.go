// Package tub holds the shape of a tub: water by depth, depth by water, the
// lines it is filled to and the mass that then stands on the shelf.
package tub

//go:generate go run rootbell/internal/base/facts/factgen tub
