package plan_test

import (
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
)

func TestSpecAt(t *testing.T) {
	for _, c := range []struct {
		path     string
		name     string
		kind     quantity.Kind
		measured bool
	}{
		{"garden", "garden", quantity.Kind{}, false},
		{"tubs[3].inside.top[1]", "top", quantity.Length, true},
		{"tubs[0].inside.corner_radius", "corner_radius", quantity.Length, true},
		{"tubs[0].inside.corner_radius[1]", "corner_radius", quantity.Length, true},
		{"tubs[0].litres_per_plant", "litres_per_plant", quantity.Volume, true},
		{"tap.calcium", "calcium", quantity.Content, true},
		{"shelf.rated_load", "rated_load", quantity.Mass, true},
		{"tubs[0].plants", "plants", quantity.Kind{}, false},
	} {
		spec, ok := plan.SpecAt(c.path)
		if !ok || spec.Name != c.name || spec.Measured != c.measured || c.measured && spec.Kind.Dim != c.kind.Dim {
			t.Errorf("%s: %v %q %v %v", c.path, ok, spec.Name, spec.Kind.Name, spec.Measured)
		}
	}
	for _, wrong := range []string{"", "no_such", "garden.x", "tubs[0].cup[0]", "tubs.name"} {
		if spec, ok := plan.SpecAt(wrong); ok {
			t.Errorf("%q is taken for %q", wrong, spec.Name)
		}
	}
}
