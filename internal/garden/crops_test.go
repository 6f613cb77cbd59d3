package garden_test

import (
	"slices"
	"strings"
	"testing"

	"rootbell/internal/garden/plan"
	"rootbell/internal/science/crop"
)

// The crops that a plan may name are those whose wants are known.
func TestCropsOfThePlanAreKnown(t *testing.T) {
	var named []string
	for _, name := range plan.Crops() {
		named = append(named, strings.ToLower(name))
	}
	slices.Sort(named)
	if known := crop.Names(); !slices.Equal(named, known) {
		t.Errorf("a plan may name %v, known are %v", named, known)
	}
}
