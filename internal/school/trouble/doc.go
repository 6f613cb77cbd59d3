// Package trouble is what may be wrong with a tub: from what is seen and from
// what its readings and its history tell to the safest first step, and to the
// causes in their order, each with its reason. 'Not enough to say' is an answer.
package trouble

//go:generate go run rootbell/internal/base/facts/factgen trouble
