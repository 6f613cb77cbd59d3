package plan

import (
	"reflect"

	"rootbell/internal/base/quantity"
)

// Spec is what the format says of the value at one path. Kind is that of a
// quantity; Measured tells whether the value is one at all, and not a word; Day
// and Tick tell of a day of the calendar and of a yes or no.
type Spec struct {
	Key
	Kind     quantity.Kind
	Measured bool
	Day      bool
	Tick     bool
}

// SpecAt is the specification of the value at a path such as
// tubs[0].inside.top[0]; ok is false where the format has no such value. The
// place in a list does not matter.
func SpecAt(path string) (spec Spec, ok bool) {
	steps := splitPath(path)
	for i := range steps {
		steps[i].index = min(steps[i].index, 0)
	}
	k, err := kinOf(steps, path)
	if err != nil || len(steps) == 0 {
		return Spec{}, false
	}
	spec.Key = k.key
	spec.Kind, spec.Measured = kindOf(k.of)
	spec.Day = k.of == reflect.TypeFor[Date]()
	spec.Tick = k.of == reflect.TypeFor[Tick]()
	return spec, true
}

// kindOf is the kind of a typed quantity, an interval, or of the corners of a
// tub, which are typed as one length.
func kindOf(t reflect.Type) (quantity.Kind, bool) {
	if t == reflect.TypeFor[Corners]() {
		return quantity.Length, true
	}
	if k, ok := reflect.Zero(t).Interface().(interface{ Kind() quantity.Kind }); ok {
		return k.Kind(), true
	}
	return quantity.Kind{}, false
}
