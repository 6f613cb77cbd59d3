package web

import (
	"regexp"
	"strconv"
	"strings"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// defaultsOf are what a new garden is taken to be until the teacher says
// otherwise, with where each comes from.
func defaultsOf(system quantity.System, crop string) []defaultRow {
	var out []defaultRow
	slug := strings.ReplaceAll(crop, " ", "_")
	for _, f := range garden.Facts() {
		switch string(f.ID) {
		case "crop." + slug + ".litres_refill":
			out = append(out, defaultRow{"solution for each " + crop + ", topped up", shownFact(f, quantity.Volume, system), sourceOf(f)})
		case "crop." + slug + ".spacing":
			out = append(out, defaultRow{"between centres for " + crop + ", at least", shownFact(f, quantity.Length, system), sourceOf(f)})
		}
	}
	for _, d := range []struct{ path, what string }{
		{"tubs[0].spacing.edge", "hole's centre to the lid's edge, at least"},
		{"tubs[0].lid.thickness", "thickness of the lid"},
		{"tubs[0].method", "air"},
		{"place.air_temperature", "room air"},
	} {
		if spec, ok := plan.SpecAt(d.path); ok && spec.Default != "" {
			out = append(out, defaultRow{d.what, inUnits(spec, system), "the plan's own default"})
		}
	}
	return out
}

// inUnits shows a default in the units asked for, where it is a quantity.
func inUnits(spec plan.Spec, system quantity.System) string {
	if spec.Measured {
		if base, err := quantity.Parse(spec.Kind, spec.Default); err == nil {
			return quantity.Format(spec.Kind, base, system)
		}
	}
	return spec.Default
}

// measureInWords is a measure within a default told in words.
var measureInWords = regexp.MustCompile(`\b\d+(?:\.\d+)? (?:L/min|mm|cm|mL|L|°C|kg|g)(?: under)?(?:[ ,.;]|$)`)

// defaultWords tells a default in words as a form does: measures in the units
// asked for, and keys of the plan as words.
func defaultWords(text string, system quantity.System) string {
	text = strings.ReplaceAll(text, "_", " ")
	if metric, us, both := strings.Cut(text, "; "); both && strings.HasSuffix(us, " with US units") {
		return map[quantity.System]string{quantity.Metric: metric, quantity.US: strings.TrimSuffix(us, " with US units")}[system]
	}
	if system == quantity.Metric {
		return text
	}
	return measureInWords.ReplaceAllStringFunc(text, func(measure string) string {
		core := strings.TrimRight(measure, " ,.;")
		end := measure[len(core):]
		if degrees, ok := strings.CutSuffix(core, " °C under"); ok {
			if n, err := strconv.ParseFloat(degrees, 64); err == nil {
				return quantity.FormatNumber(1.8*n, 0) + " °F under" + end
			}
		}
		for _, kind := range []quantity.Kind{quantity.Length, quantity.Volume, quantity.Temperature, quantity.Mass} {
			if base, err := quantity.Parse(kind, core); err == nil {
				unit := kind.Unit(system)
				return quantity.FormatNumber(unit.From(base), kind.Decimals[system]) + " " + unit.Symbol + end
			}
		}
		return measure
	})
}

func shownFact(f facts.Fact, kind quantity.Kind, system quantity.System) string {
	base, err := quantity.Parse(kind, strconv.FormatFloat(f.Value, 'g', -1, 64)+" "+f.Unit)
	if err != nil {
		return f.Says()
	}
	return quantity.Format(kind, base, system)
}

func sourceOf(f facts.Fact) string {
	if f.Source == "" {
		return f.Status
	}
	return f.Source
}
