// Package choose sets what a school could buy beside what it could build: how
// many plants each really feeds, what each lacks, and what a harvested plant
// costs. It gives reasons and no winner.
package choose

//go:generate go run rootbell/internal/base/facts/factgen choose
