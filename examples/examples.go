// Package examples holds the two invented gardens that documents, tests and the
// pages' read-only examples use.
package examples

import "embed"

// The logbook is what the program's own forecast makes of the plan, read with
// the errors of a class's instruments.
//go:generate go test ../internal/garden -run ^TestInventedLogbook$ -invent

// Plans are the plan documents, by file name.
//
//go:embed *.yaml
var Plans embed.FS

// Logbooks are the invented readings of some of them, as the page Logbook gives
// a table, by file name.
//
//go:embed *.csv
var Logbooks embed.FS
