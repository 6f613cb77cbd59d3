package web

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
)

// keepItem is a shape to keep clear, as the form's fields describe it: a
// rectangle by its lower left corner and size, or a circle by its middle and
// what it measures across.
func (f *form) keepItem() (string, error) {
	posted := f.posted
	value := func(name string) (string, error) {
		typed := strings.TrimSpace(posted.Get("keep." + name))
		if typed == "" {
			return "", errors.New("a shape to keep clear needs all its measures")
		}
		return flowText(f.typedIn("tubs[0].lid.size[0]", typed)), nil
	}
	var v [4]string
	for i, name := range []string{"right", "up", "long", "wide"} {
		if name == "wide" && posted.Get("keep.shape") == "circle" {
			continue
		}
		var err error
		if v[i], err = value(name); err != nil {
			return "", err
		}
	}
	why := strings.TrimSpace(posted.Get("keep.why"))
	if why == "" {
		why = "kept clear"
	}
	if posted.Get("keep.shape") == "circle" {
		radius, err := half(f, posted.Get("keep.long"))
		if err != nil {
			return "", err
		}
		return fmt.Sprintf("{circle: [%s, %s, %s], why: %s}", v[0], v[1], radius, quoted(why)), nil
	}
	right, err := sum(f, posted.Get("keep.right"), posted.Get("keep.long"))
	if err != nil {
		return "", err
	}
	up, err := sum(f, posted.Get("keep.up"), posted.Get("keep.wide"))
	if err != nil {
		return "", err
	}
	return fmt.Sprintf("{rectangle: [%s, %s, %s, %s], why: %s}", v[0], v[1], right, up, quoted(why)), nil
}

// sum and half work on typed lengths and give them back in the form's unit.
func sum(f *form, a, b string) (string, error) {
	x, err := f.lengthMM(a)
	if err != nil {
		return "", err
	}
	y, err := f.lengthMM(b)
	if err != nil {
		return "", err
	}
	return f.lengthText(x + y), nil
}

func half(f *form, a string) (string, error) {
	x, err := f.lengthMM(a)
	if err != nil {
		return "", err
	}
	return f.lengthText(x / 2), nil
}

func (f *form) lengthMM(typed string) (float64, error) {
	mm, err := quantity.Parse(quantity.Length, f.typedIn("tubs[0].lid.size[0]", typed))
	if err != nil {
		return 0, fmt.Errorf("%q is not a length: %w", typed, err)
	}
	return mm, nil
}

// lengthText writes a length with enough digits to be the same one again.
func (f *form) lengthText(mm float64) string {
	unit := quantity.Length.Unit(f.units)
	return strconv.FormatFloat(math.Round(mm/unit.Scale*1e4)/1e4, 'f', -1, 64) + " " + unit.Symbol
}

// quoted is a word as a YAML text in a list.
func quoted(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", " ", "\r", " ", "\t", " ").Replace(text) + `"`
}

// keepFields are the fields of a shape to be added.
func (f *form) keepFields() []field {
	unit := quantity.Length.Unit(f.units).Symbol
	var out []field
	for _, k := range [][2]string{{"right", "its left side, right"}, {"up", "its lower side, up"}, {"long", "long, or across"}, {"wide", "wide"}, {"why", "what it is"}} {
		one := field{Name: k[0], Label: k[1], Unit: unit, Value: f.posted.Get("keep." + k[0])}
		if k[0] == "why" {
			one.Unit = ""
		}
		out = append(out, one)
	}
	return out
}
