// Package forecast follows growth, thirst, salts and oxygen of one tub in its
// real shape through the days of a season, as an ensemble that learns from
// readings and is scored against them.
package forecast

//go:generate go run rootbell/internal/base/facts/factgen forecast
