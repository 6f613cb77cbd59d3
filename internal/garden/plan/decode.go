package plan

import (
	"encoding"
	"errors"
	"reflect"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
)

// decoder fills the plan's structs from the tree, following their tags, and
// collects every problem on the way.
type decoder struct {
	problems []Problem
	broken   bool // a part of the text could not be read, so that keys may only seem to be missing
}

func (d *decoder) say(at place, path, what, hint string) {
	d.problems = append(d.problems, Problem{Line: at.line, Column: at.column, Field: path, What: what, Hint: hint})
}

// sayAbout says an error about the value of a key, naming the key.
func (d *decoder) sayAbout(n *node, path string, err error) {
	var bad *quantity.Error
	if !errors.As(err, &bad) {
		bad = &quantity.Error{What: err.Error()}
	}
	d.say(n.at, path, lastKey(path)+": "+bad.What, bad.Hint)
}

// lastKey is the key a person knows a path by: hole of tubs[0].hole, rectangle
// of tubs[0].lid.keep_clear[1].rectangle[2].
func lastKey(path string) string {
	path = path[strings.LastIndexByte(path, '.')+1:]
	key, _, _ := strings.Cut(path, "[")
	return key
}

// ownReader is a type with a form of its own; it is given the whole node.
type ownReader interface {
	readNode(d *decoder, n *node, f Key, path string)
}

// textReader is a type that is written as one text.
type textReader interface {
	readText(text string, f Key) error
}

// value reads a node into v, whose type decides how.
func (d *decoder) value(v reflect.Value, n *node, f Key, path string) {
	if n.shape == absent || n.shape == spoiled {
		return
	}
	switch target := v.Addr().Interface().(type) {
	case ownReader:
		target.readNode(d, n, f, path)
		return
	case textReader:
		if text, ok := d.text(n, path); ok {
			if err := target.readText(text, f); err != nil {
				d.sayAbout(n, path, err)
			}
		}
		return
	case encoding.TextUnmarshaler:
		d.measure(v, target, n, f, path)
		return
	}
	d.plain(v, n, f, path)
}

// plain reads the kinds of values that are not types of their own.
func (d *decoder) plain(v reflect.Value, n *node, f Key, path string) {
	switch v.Kind() {
	case reflect.Pointer:
		if n.shape == mapping {
			v.Set(reflect.New(v.Type().Elem()))
			d.value(v.Elem(), n, f, path)
			return
		}
		d.wantGroup(n, path, Keys(v.Type().Elem()))
	case reflect.Struct:
		d.group(v, n, path)
	case reflect.Array, reflect.Slice:
		d.list(v, n, f, path)
	case reflect.String:
		if text, ok := d.text(n, path); ok {
			d.word(v, n, text, f, path)
		}
	case reflect.Int:
		if text, ok := d.text(n, path); ok {
			if units, is := v.Addr().Interface().(*quantity.System); is {
				d.system(units, n, text, path)
				return
			}
			d.whole(v, n, text, f, path)
		}
	}
}

// text is the scalar of a node, or a problem.
func (d *decoder) text(n *node, path string) (string, bool) {
	switch n.shape {
	case scalar:
		if n.text == "" {
			return "", false
		}
		return n.text, true
	case sequence:
		d.say(n.at, path, lastKey(path)+": one value is wanted here, not a list", "write the value without [ ] or dashes")
	case mapping:
		d.say(n.at, path, lastKey(path)+": one value is wanted here, not a group of keys", "write the value behind the colon")
	}
	return "", false
}

// bounded is a quantity that can be held against a range.
type bounded interface {
	Kind() quantity.Kind
	Ends() (low, high float64)
}

// measure reads a quantity and holds it against its documented range.
func (d *decoder) measure(v reflect.Value, target encoding.TextUnmarshaler, n *node, f Key, path string) {
	text, ok := d.text(n, path)
	if !ok {
		return
	}
	err := target.UnmarshalText([]byte(text))
	if daily, is := v.Addr().Interface().(*DailyVolume); is && err != nil {
		err = readDaily(daily, text, err)
	}
	if err != nil {
		d.sayAbout(n, path, err)
		return
	}
	if held, is := v.Interface().(bounded); is && f.In != "" && !within(held, f.In) {
		d.say(n.at, path, lastKey(path)+": "+quote(text)+" is outside the range taken here", "it may be "+f.In)
		v.SetZero()
	}
}

// readDaily takes a plain volume as that much a day.
func readDaily(into *DailyVolume, text string, otherwise error) error {
	volume, err := quantity.ParseAs[quantity.L](text)
	if err != nil {
		return otherwise
	}
	*into = DailyVolume{Value: quantity.LPerDay(volume), Text: text}
	return nil
}

// rangeSlack lets a value through that stands on the end of its range and was
// typed in another unit.
const rangeSlack = 1e-9

func within(held bounded, in string) bool {
	low, high, err := quantity.ParseInterval(held.Kind(), in)
	if err != nil {
		return false
	}
	slack := rangeSlack * max(high-low, -low, high)
	least, most := held.Ends()
	return least >= low-slack && most <= high+slack
}

func (d *decoder) whole(v reflect.Value, n *node, text string, f Key, path string) {
	number, err := readWhole(text, f)
	if err != nil {
		d.sayAbout(n, path, err)
		return
	}
	v.SetInt(int64(number))
}

// readWhole reads a whole number within the field's range.
func readWhole(text string, f Key) (int, error) {
	number, err := strconv.Atoi(text)
	if err != nil || len(text) > 9 {
		return 0, &quantity.Error{What: quote(text) + " is not a whole number", Hint: "write it in digits, such as 8"}
	}
	if low, high, err := quantity.ParseInterval(quantity.Factor, f.In); err == nil && (float64(number) < low || float64(number) > high) {
		return 0, &quantity.Error{What: quote(text) + " is outside the range taken here", Hint: "it may be " + f.In}
	}
	return number, nil
}

// word reads a text: one of the words taken, a text of the form wanted, or any
// short text.
func (d *decoder) word(v reflect.Value, n *node, text string, f Key, path string) {
	read, err := readWord(text, f)
	if err != nil {
		d.sayAbout(n, path, err)
		return
	}
	v.SetString(read)
}

func (d *decoder) system(into *quantity.System, n *node, text, path string) {
	read, err := readSystem(text)
	if err != nil {
		d.sayAbout(n, path, err)
		return
	}
	*into = read
}
