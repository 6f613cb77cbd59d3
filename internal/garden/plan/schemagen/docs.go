package main

import (
	_ "embed" // the prose
	"fmt"
	"reflect"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
)

//go:embed prose.md
var prose string

// documentation is docs/plan.md: the prose and a table of keys for each group.
func (w *writer) documentation() string {
	var b strings.Builder
	b.WriteString("<!-- Generated from the plan's structs; do not edit. -->\n\n")
	b.WriteString(prose)
	w.section(&b, "The plan itself", reflect.TypeFor[plan.Plan](), map[reflect.Type]bool{})
	return b.String()
}

// section writes the table of a group, and the sections of the groups in it.
func (w *writer) section(b *strings.Builder, title string, t reflect.Type, seen map[reflect.Type]bool) {
	if seen[t] {
		return
	}
	seen[t] = true
	keys := plan.Keys(t)
	fmt.Fprintf(b, "\n### %s\n\n%s\n\n| key | what it is | takes | left out |\n|---|---|---|---|\n", title, w.comment(t, ""))
	for _, k := range keys {
		field := t.Field(k.Index)
		fmt.Fprintf(b, "| `%s` | %s | %s | %s |\n", k.Name, cell(w.comment(t, field.Name)), cell(takes(field.Type, k)), cell(leftOut(k)))
	}
	for _, k := range keys {
		inner := t.Field(k.Index).Type
		for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice {
			inner = inner.Elem()
		}
		if len(groupKeys(inner)) > 0 {
			w.section(b, "`"+k.Name+"`", inner, seen)
		}
	}
}

// groupKeys are the keys of a type that is a group, and none of any other.
func groupKeys(t reflect.Type) []plan.Key {
	if t.Kind() != reflect.Struct {
		return nil
	}
	return plan.Keys(t)
}

func cell(text string) string { return strings.ReplaceAll(text, "|", `\|`) }

func leftOut(k plan.Key) string {
	switch {
	case k.Required:
		return "**needed**"
	case k.Must:
		return "**one of these is needed**"
	case k.With != "":
		return "needed with `" + k.With + "`"
	}
	return k.Default
}

// takes says in words what a value may be.
func takes(t reflect.Type, k plan.Key) string {
	many := ""
	for t.Kind() == reflect.Slice {
		t, many = t.Elem(), "list of "
	}
	if many != "" && one(t, k) == "group" {
		return "list of groups"
	}
	return many + one(t, k)
}

func one(t reflect.Type, k plan.Key) string {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	in := ""
	if k.In != "" {
		in = ", " + k.In
	}
	switch reflect.Zero(t).Interface().(type) {
	case plan.Tick:
		return "`yes` or `no`"
	case plan.Answer:
		return "`yes`, `no` or `ask`"
	case plan.Clock:
		return "time of day"
	case plan.Date:
		return "day, as 2027-01-11"
	case plan.Whole, plan.Number, int:
		return "whole number" + in
	case plan.Plants:
		return "`best` or a whole number" + in
	case plan.Corners:
		return "length, or `[top, base]`" + in
	case plan.Pair:
		return "`[length, length]`" + in
	case [2]plan.Number:
		return "`[number, number]`" + in
	case plan.Disc:
		return "`[x, y, radius]`" + in
	case plan.Box:
		return "`[x0, y0, x1, y1]`" + in
	case plan.Line:
		return "`[[x, y], [x, y]]`" + in
	case [2]plan.Clock:
		return "`[from, to]`"
	case plan.Label:
		return "shares by nutrient: " + strings.Join(plan.Nutrients(), ", ")
	case plan.Target:
		return "contents by nutrient: " + strings.Join(plan.Aims(), ", ") + in
	case plan.Dose:
		return "so much for so much water, as 2 mL/L, 5 mL per 10 L or 1 g/L"
	case plan.Prices:
		return "amounts of money by item"
	case plan.Tap:
		return "group, or the word `unknown`"
	}
	return oneMeasure(t, k, in)
}

func oneMeasure(t reflect.Type, k plan.Key, in string) string {
	if held, is := reflect.Zero(t).Interface().(interface{ Kind() quantity.Kind }); is {
		_, noun, _ := strings.Cut(held.Kind().Name, " ")
		return noun + in
	}
	switch {
	case len(k.Words) > 0:
		return "`" + strings.Join(k.Words, "`, `") + "`"
	case t.Kind() == reflect.Struct:
		return "group"
	}
	return "text"
}
