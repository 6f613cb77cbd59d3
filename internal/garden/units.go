package garden

import "rootbell/internal/base/quantity"

// System is the unit system in which a plan is shown.
type System = quantity.System

// The unit systems.
const (
	Metric = quantity.Metric
	US     = quantity.US
)

// Mark is a length in mm as it is marked with a ruler, with its unit: cm to
// 0.1, or inches to the nearest 1/16.
func Mark(mm float64, s System) string { return quantity.FormatMark(mm, s) }
