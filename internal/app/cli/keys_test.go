package cli_test

import (
	"encoding/json"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// reliedOn are the keys of 'check --json' that scripts read. More may come;
// none of these may be renamed or go.
var reliedOn = map[string]string{
	"":                             "format garden on tubs findings numbers",
	"tubs.0":                       "name fill_depth_mm volume_fill_l displaced_l volume_solution_l volume_reserve_l mass_filled_kg plants lid",
	"tubs.0.plants":                "count binds limits",
	"tubs.0.plants.limits":         "lid|nutrient volume",
	"tubs.0.lid":                   "layouts chosen air_line service",
	"tubs.0.lid.layouts.0":         "name min_spacing_mm upper_bound_mm min_web_mm min_edge_mm holes",
	"tubs.0.lid.layouts.0.holes.0": "n x_mm y_mm diameter_mm",
	"tubs.0.lid.air_line":          "x_mm y_mm on height_mm diameter_mm",
	"tubs.0.lid.service":           "x_mm y_mm diameter_mm",
	"tubs.0.mix":                   "elements_mg_l ec_ms_cm band weigh acid ph_after_salts solution_l water steps",
	"tubs.0.mix.weigh.0":           "name grams rounded_grams stock",
	"tubs.0.mix.acid":              "name ml_closed ml_open dose_today_ml ph_at_once ph_after_air mmol_l_closed mmol_l_open",
	"tubs.0.mix.steps.0":           "when who do",
	"findings.0":                   "level code field line column text hint",
	"numbers.0":                    "key name value unit symbol formula put_in basis source",
}

func TestKeysThatScriptsRelyOn(t *testing.T) {
	var document any
	if err := json.Unmarshal(check(t, filepath.Join(examples, "fernhollow.yaml"), "--json"), &document); err != nil {
		t.Fatal(err)
	}
	for path, keys := range reliedOn {
		object, ok := at(document, path).(map[string]any)
		if !ok {
			t.Errorf("%q is no object", path)
			continue
		}
		part := " "
		if strings.Contains(keys, "|") {
			part = "|"
		}
		for _, key := range strings.Split(keys, part) {
			if _, ok := object[key]; !ok {
				t.Errorf("%q has no key %q", path, key)
			}
		}
	}
}

func TestWordsThatScriptsRelyOn(t *testing.T) {
	var document any
	if err := json.Unmarshal(check(t, filepath.Join(examples, "fernhollow.yaml"), "--json"), &document); err != nil {
		t.Fatal(err)
	}
	var layouts []string
	for i := range 3 {
		name, _ := at(document, "tubs.0.lid.layouts."+string(rune('0'+i))+".name").(string)
		layouts = append(layouts, name)
	}
	if slices.Sort(layouts); !slices.Equal(layouts, []string{"rows", "ruler", "widest"}) {
		t.Errorf("layouts are %v", layouts)
	}
	for i, f := range at(document, "findings").([]any) {
		level := f.(map[string]any)["level"]
		if !slices.Contains([]any{"stop", "warn", "note"}, level) {
			t.Errorf("finding %d has level %v", i, level)
		}
	}
	for i, n := range at(document, "numbers").([]any) {
		basis := n.(map[string]any)["basis"]
		if !slices.Contains([]any{"law", "rule of the trade", "typed", "search"}, basis) {
			t.Errorf("number %d has basis %v", i, basis)
		}
	}
}

// at is what stands at a path such as tubs.0.plants; nil where nothing does.
func at(v any, path string) any {
	if path == "" {
		return v
	}
	step, rest, _ := strings.Cut(path, ".")
	switch v := v.(type) {
	case map[string]any:
		return at(v[step], rest)
	case []any:
		if i := int(step[0] - '0'); i < len(v) {
			return at(v[i], rest)
		}
	}
	return nil
}
