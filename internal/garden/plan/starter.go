package plan

import (
	_ "embed" // the starter plans

	"rootbell/internal/base/quantity"
)

//go:embed starter_metric.yaml
var starterMetric string

//go:embed starter_us.yaml
var starterUS string

// Starter is a commented plan to begin with, its figures invented.
func Starter(s quantity.System) string {
	if s == quantity.US {
		return starterUS
	}
	return starterMetric
}
