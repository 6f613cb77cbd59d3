// Package stations is a whole class at one tub for ten minutes: which groups
// stand where, how long, who comes next, and which pair adopts which hole.
package stations

//go:generate go run rootbell/internal/base/facts/factgen stations
