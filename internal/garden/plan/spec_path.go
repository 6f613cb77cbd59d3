package plan

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
)

var planType = reflect.TypeFor[Plan]()

// kin is what the document format says about a path.
type kin struct {
	of  reflect.Type // the type of what stands there
	key Key          // of the last key on the way
}

// isList tells whether any number of items may stand there.
func (k kin) isList() bool { return k.of.Kind() == reflect.Slice }

// fixed is how many values a list of fixed length has there, or 0. A radius of
// corners may be written as such a list.
func (k kin) fixed() int {
	switch {
	case k.of == reflect.TypeFor[Corners]():
		return 2
	case k.of.Kind() == reflect.Array:
		return k.of.Len()
	}
	return 0
}

// kinOf looks a path up in the document format.
func kinOf(steps []step, path string) (kin, error) {
	k := kin{of: planType}
	for _, s := range steps {
		next, known := k.step(s)
		if !known {
			return kin{}, fmt.Errorf("a plan has no %s", path)
		}
		k = next
	}
	return k, nil
}

func (k kin) step(s step) (kin, bool) {
	t := k.of
	switch {
	case t == reflect.TypeFor[Corners]():
		return kin{reflect.TypeFor[Length](), k.key}, s.index >= 0 && s.index < 2
	case s.index < 0 && t.Kind() == reflect.Struct:
		keys := Keys(t)
		i := slices.IndexFunc(keys, func(f Key) bool { return f.Name == s.key })
		if i < 0 {
			return kin{}, false
		}
		of := t.Field(keys[i].Index).Type
		for of.Kind() == reflect.Pointer {
			of = of.Elem()
		}
		return kin{of, keys[i]}, true
	case s.index < 0 && t == reflect.TypeFor[Prices]():
		return kin{reflect.TypeFor[Cash](), Key{Name: s.key}}, itemName.MatchString(s.key)
	case s.index < 0 && t == reflect.TypeFor[Label]():
		return kin{reflect.TypeFor[Share](), Key{Name: s.key}}, slices.Contains(Nutrients(), s.key)
	case s.index < 0 && t == reflect.TypeFor[Target]():
		return kin{reflect.TypeFor[Content](), Key{Name: s.key}}, slices.Contains(Aims(), s.key)
	case s.index >= 0 && t.Kind() == reflect.Slice:
		return kin{t.Elem(), k.key}, true
	case s.index >= 0 && t.Kind() == reflect.Array:
		return kin{t.Elem(), k.key}, s.index < t.Len()
	}
	return kin{}, false
}

// named takes a path apart and looks it up. words are what messages call it.
func (d *Document) named(path string) (steps []step, words string, k kin, err error) {
	steps = splitPath(path)
	if len(steps) == 0 {
		return nil, "", kin{}, errors.New("no value is named")
	}
	k, err = kinOf(steps, path)
	return steps, d.Words(path), k, err
}
