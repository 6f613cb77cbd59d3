// Package shopping turns a design into the list of what to buy, with the
// teacher's own prices and no others.
package shopping

//go:generate go run rootbell/internal/base/facts/factgen shopping
