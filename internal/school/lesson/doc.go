// Package lesson is the sheets of sums that a class works out from its own tub
// and logbook: what is told, what is asked, and the key with its working.
package lesson

//go:generate go run rootbell/internal/base/facts/factgen lesson
