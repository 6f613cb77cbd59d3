// Package working holds numbers that can show how they came about: a formula
// is parsed once, evaluating it gives the value, and printing the same tree
// gives the sum a pencil can follow, in either unit system.
package working
