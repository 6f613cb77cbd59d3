// Package jobs is who does which job in which week of a term: equal turns, new
// partners, every job met, absences made good, and no job that is an adult's.
package jobs

//go:generate go run rootbell/internal/base/facts/factgen jobs
