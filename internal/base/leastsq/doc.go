// Package leastsq finds the non-negative numbers whose weighted sum comes
// nearest to what is wanted, with ceilings that must not be passed.
package leastsq
