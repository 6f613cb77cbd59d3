package main

import (
	"encoding/json"
	"reflect"
	"strconv"
	"strings"

	"github.com/invopop/jsonschema"
	orderedmap "github.com/pb33f/ordered-map/v2"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
)

// writer builds the schema and the documentation.
type writer struct {
	comments    map[string]string
	definitions jsonschema.Definitions
}

func (w *writer) root() *jsonschema.Schema {
	s := w.group(reflect.TypeFor[plan.Plan]())
	s.Version = jsonschema.Version
	s.Title = "A garden's plan, format " + strconv.Itoa(plan.Format)
	s.Definitions = w.definitions
	return s
}

// comment is the Go comment of a type or of a field.
func (w *writer) comment(t reflect.Type, field string) string {
	key := planPackage + "." + t.Name()
	if field != "" {
		key += "." + field
	}
	return strings.Join(strings.Fields(w.comments[key]), " ")
}

// group is the schema of a mapping with known keys.
func (w *writer) group(t reflect.Type) *jsonschema.Schema {
	s := &jsonschema.Schema{
		Type: "object", Description: w.comment(t, ""),
		Properties: orderedmap.New[string, *jsonschema.Schema](), AdditionalProperties: jsonschema.FalseSchema,
	}
	keys := plan.Keys(t)
	for _, k := range keys {
		field := t.Field(k.Index)
		value := *w.value(field.Type, k)
		value.Description = w.describe(t, field.Name, k)
		s.Properties.Set(k.Name, &value)
		if k.Required {
			s.Required = append(s.Required, k.Name)
		}
		for _, other := range []string{k.Needs, k.With} {
			if other != "" {
				if s.DependentRequired == nil {
					s.DependentRequired = map[string][]string{}
				}
				s.DependentRequired[k.Name] = append(s.DependentRequired[k.Name], other)
			}
		}
	}
	w.choices(s, keys)
	return s
}

func (w *writer) describe(t reflect.Type, field string, k plan.Key) string {
	text := w.comment(t, field)
	if k.In != "" {
		text += " Takes " + k.In + "."
	}
	if k.Default != "" {
		text += " Left out: " + k.Default + "."
	}
	return text
}

// choices says that exactly one, or at most one, key of each choice is there.
func (w *writer) choices(s *jsonschema.Schema, keys []plan.Key) {
	var must []*jsonschema.Schema
	for i, k := range keys {
		if k.Must {
			must = append(must, &jsonschema.Schema{Required: []string{k.Name}})
			continue
		}
		for _, other := range keys[:i] {
			if k.Choice != "" && other.Choice == k.Choice {
				s.Not = &jsonschema.Schema{Required: []string{other.Name, k.Name}}
			}
		}
	}
	s.OneOf = must
}

// define puts a schema among the definitions once, and gives a reference to it.
func (w *writer) define(name string, build func() *jsonschema.Schema) *jsonschema.Schema {
	if _, there := w.definitions[name]; !there {
		w.definitions[name] = nil
		w.definitions[name] = build()
	}
	return &jsonschema.Schema{Ref: "#/$defs/" + name}
}

// value is the schema of one value of a type, under the key's specification.
func (w *writer) value(t reflect.Type, k plan.Key) *jsonschema.Schema {
	if s := w.special(t, k); s != nil {
		return s
	}
	switch t.Kind() {
	case reflect.Pointer:
		return w.value(t.Elem(), k)
	case reflect.Slice:
		s := &jsonschema.Schema{Type: "array", Items: w.value(t.Elem(), k), MinItems: count(k.Least)}
		s.MaxItems = count(k.Most)
		return s
	case reflect.Array:
		n := uint64(t.Len())
		return &jsonschema.Schema{Type: "array", Items: w.value(t.Elem(), k), MinItems: &n, MaxItems: &n}
	case reflect.String:
		return word(k)
	case reflect.Int:
		return whole(k)
	}
	return w.define(t.Name(), func() *jsonschema.Schema { return w.group(t) })
}

func count(n int) *uint64 {
	if n == 0 {
		return nil
	}
	u := uint64(n)
	return &u
}

// special is the schema of the types that have a form of their own, or nil.
func (w *writer) special(t reflect.Type, k plan.Key) *jsonschema.Schema {
	switch reflect.Zero(t).Interface().(type) {
	case plan.Tick:
		return w.define("Tick", func() *jsonschema.Schema {
			return &jsonschema.Schema{Enum: []any{"yes", "no", true, false, "true", "false"}}
		})
	case plan.Whole, plan.Number:
		return whole(k)
	case plan.Answer:
		return w.define("Answer", func() *jsonschema.Schema {
			return &jsonschema.Schema{Enum: []any{"yes", "no", "ask", true, false, "true", "false"}}
		})
	case plan.Clock:
		return w.define("Clock", func() *jsonschema.Schema {
			return &jsonschema.Schema{Type: "string", Pattern: `^(([01]?[0-9]|2[0-4]):[0-5][0-9]( ?[ap]m)?|(0?[1-9]|1[0-2]) ?[ap]m)$`, Examples: []any{"08:30"}}
		})
	case plan.Date:
		return w.define("Date", func() *jsonschema.Schema {
			return &jsonschema.Schema{Type: "string", Pattern: `^20[0-9]{2}-[01][0-9]-[0-3][0-9]$`, Examples: []any{"2027-01-11"}}
		})
	case plan.Plants:
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Const: "best"}, whole(k)}}
	case plan.Corners:
		pair := w.value(reflect.TypeFor[plan.Pair](), k)
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{w.value(reflect.TypeFor[plan.Length](), k), pair}}
	case plan.Tap:
		return w.define("Tap", func() *jsonschema.Schema {
			return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Const: "unknown"}, w.group(t)}}
		})
	case plan.Label:
		return w.keyed(plan.Nutrients(), w.value(reflect.TypeFor[plan.Share](), k))
	case plan.Target:
		return w.keyed(plan.Aims(), w.value(reflect.TypeFor[plan.Content](), k))
	case plan.Dose:
		return w.define("Dose", func() *jsonschema.Schema {
			return &jsonschema.Schema{Type: "string", Pattern: plan.DoseForm(), Examples: []any{"2 mL/L", "5 mL per 10 L", "1 g/L"}}
		})
	case plan.Prices:
		cash := w.value(reflect.TypeFor[plan.Cash](), k)
		return &jsonschema.Schema{Type: "object", AdditionalProperties: cash, PropertyNames: &jsonschema.Schema{Pattern: plan.ItemForm()}}
	case quantity.System:
		return word(k)
	case plan.DailyVolume:
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{w.measure(t), w.measure(reflect.TypeFor[plan.Volume]())}}
	}
	if _, is := reflect.Zero(t).Interface().(interface{ Kind() quantity.Kind }); is {
		return w.measure(t)
	}
	return nil
}

// keyed is the schema of a mapping whose keys are nutrients.
func (w *writer) keyed(nutrients []string, value *jsonschema.Schema) *jsonschema.Schema {
	s := &jsonschema.Schema{
		Type: "object", Properties: orderedmap.New[string, *jsonschema.Schema](), AdditionalProperties: jsonschema.FalseSchema,
	}
	for _, nutrient := range nutrients {
		s.Properties.Set(nutrient, value)
	}
	return s
}

// measure is the schema of a quantity: a text with a unit, and where YAML reads
// a bare number, that number.
func (w *writer) measure(t reflect.Type) *jsonschema.Schema {
	kind := reflect.Zero(t).Interface().(interface{ Kind() quantity.Kind }).Kind()
	interval := strings.Contains(t.Name(), "Interval")
	name := defName(kind)
	if interval {
		name += "Reading"
	}
	return w.define(name, func() *jsonschema.Schema {
		text := &jsonschema.Schema{Type: "string", Pattern: quantity.Pattern(kind, interval)}
		switch {
		case kind.Dim == quantity.LengthDim:
			return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{text, {Const: 0}}}
		case kind.Metric.Symbol == "":
			return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{{Type: "number"}, text}}
		}
		return text
	})
}

// defName is the definition's name for a kind: a daily volume is DailyVolume.
func defName(k quantity.Kind) string {
	var b strings.Builder
	for _, part := range strings.Fields(k.Name)[1:] {
		b.WriteString(strings.ToUpper(part[:1]) + part[1:])
	}
	return b.String()
}

func word(k plan.Key) *jsonschema.Schema {
	s := &jsonschema.Schema{Type: "string"}
	for _, one := range k.Words {
		s.Enum = append(s.Enum, one)
	}
	s.Pattern, _ = plan.FormOf(k.Form)
	return s
}

func whole(k plan.Key) *jsonschema.Schema {
	low, high, _ := strings.Cut(k.In, " to ")
	return &jsonschema.Schema{Type: "integer", Minimum: json.Number(low), Maximum: json.Number(high)}
}
