// Package reading is one row of the logbook: what was read at a tub, how sure
// it is, what to ask before it is written down, and what corrects it.
package reading

//go:generate go run rootbell/internal/base/facts/factgen reading
