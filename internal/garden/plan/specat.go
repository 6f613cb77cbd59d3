package plan

import (
	"reflect"

	"rootbell/internal/base/quantity"
)

// Spec is what the format says of the value at one path. Kind is that of a
// quantity; Measured tells whether the value is one at all, and not a word.
type Spec struct {
	Key
	Kind     quantity.Kind
	Measured bool
}

// SpecAt is the specification of the value at a path such as
// tubs[0].inside.top[0]; ok is false where the format has no such value. The
// place in a list does not matter.
func SpecAt(path string) (spec Spec, ok bool) {
	t := reflect.TypeFor[Plan]()
	for _, s := range splitPath(path) {
		for t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		if s.index >= 0 {
			switch {
			case t == reflect.TypeFor[Corners]():
				t = reflect.TypeFor[Length]()
			case t.Kind() == reflect.Slice || t.Kind() == reflect.Array:
				t = t.Elem()
			default:
				return Spec{}, false
			}
			continue
		}
		if t.Kind() != reflect.Struct {
			return Spec{}, false
		}
		found := false
		for _, key := range Keys(t) {
			if key.Name == s.key {
				spec.Key, t, found = key, t.Field(key.Index).Type, true
				break
			}
		}
		if !found {
			return Spec{}, false
		}
	}
	spec.Kind, spec.Measured = kindOf(t)
	return spec, spec.Name != ""
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
