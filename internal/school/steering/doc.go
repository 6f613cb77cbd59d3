// Package steering is what to do about today's reading, by sums that a pencil
// can do: wait, read again, top up, thin, strengthen, change out, or write it
// down and do nothing. It never doses acid or salts.
package steering

//go:generate go run rootbell/internal/base/facts/factgen steering
