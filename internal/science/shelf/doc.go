// Package shelf holds what a shelf bay bears and how high it is: load,
// headroom under the lamp and tubs side by side.
package shelf

//go:generate go run rootbell/internal/base/facts/factgen shelf
