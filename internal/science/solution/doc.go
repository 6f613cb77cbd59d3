// Package solution is the chemistry of nutrient solution: what salts and labels
// bring, what to weigh, the EC a meter should then show, the pH, and the acid
// that lasts in aerated water.
package solution

//go:generate go run rootbell/internal/base/facts/factgen solution
