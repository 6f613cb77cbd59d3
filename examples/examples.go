// Package examples holds the two invented gardens that documents, tests and the
// pages' read-only examples use.
package examples

import "embed"

// Plans are the plan documents, by file name.
//
//go:embed *.yaml
var Plans embed.FS
