package plan

import (
	"reflect"
	"testing"

	"rootbell/internal/base/quantity"
)

// checkRanges reads every range of a group's keys as its values are read.
func checkRanges(t *testing.T, group reflect.Type, path string) {
	for _, k := range Keys(group) {
		inner := group.Field(k.Index).Type
		for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice || inner.Kind() == reflect.Array {
			inner = inner.Elem()
		}
		if inner == reflect.TypeFor[Corners]() {
			inner = reflect.TypeFor[Length]()
		}
		switch inner {
		case reflect.TypeFor[Label]():
			inner = reflect.TypeFor[Share]()
		case reflect.TypeFor[Target]():
			inner = reflect.TypeFor[Content]()
		}
		here := join(path, k.Name)
		kind := quantity.Factor
		if held, is := reflect.Zero(inner).Interface().(bounded); is {
			kind = held.Kind()
			if k.In == "" {
				t.Errorf("%s has no range", here)
			}
		} else if inner.Kind() == reflect.Struct && len(Keys(inner)) > 0 {
			checkRanges(t, inner, here)
		}
		if k.In == "" {
			continue
		}
		if low, high, err := quantity.ParseInterval(kind, k.In); err != nil || low > high {
			t.Errorf("%s: the range %q: %v", here, k.In, err)
		}
	}
}
