package oxygen

import "rootbell/internal/base/finding"

// Check is what there is to say about the oxygen of a tub with a pump; field is
// the place in the plan that would change it.
func (t Tub) Check(field string) []finding.Finding {
	_, warn, act, _ := Levels()
	aim := t.Hold()
	steady := t.Steady()
	more := "More air, a finer stone, cooler water or fewer plants."
	if flow, ok := t.FlowFor(aim); ok {
		more = "For " + one(aim) + " mg/L give it " + one(flow) + " L/min, or a finer stone, cooler water or fewer plants."
	}
	says := func(level finding.Level, code, text string) []finding.Finding {
		return []finding.Finding{{Level: level, Code: code, Field: field, Text: text, Hint: more}}
	}
	switch {
	case steady < act:
		return says(finding.Warn, "oxygen-short", "With the pump running the oxygen settles at "+one(steady)+" mg/L; roots suffer under "+one(act)+".")
	case steady < warn:
		return says(finding.Warn, "oxygen-low", "With the pump running the oxygen settles at "+one(steady)+" mg/L; it should not fall under "+one(warn)+".")
	case steady < aim:
		return says(finding.Note, "oxygen-aim", "With the pump running the oxygen settles at "+one(steady)+" mg/L; "+one(aim)+" is what to aim at.")
	}
	return nil
}

// WarmFrom is the solution's temperature in °C over which roots rot more easily;
// spinach minds it sooner.
func WarmFrom(spinach bool) float64 {
	if spinach {
		return value(factWaterWarmSpinach)
	}
	return value(factWaterWarm)
}

// CheckWater is what there is to say about the temperature of the solution.
func CheckWater(field string, tempC float64, spinach bool) []finding.Finding {
	if !(tempC > WarmFrom(spinach)) {
		return nil
	}
	return []finding.Finding{{
		Level: finding.Warn, Code: "water-warm", Field: field,
		Text: "The solution is " + one(tempC) + " °C; over " + one(WarmFrom(spinach)) + " °C roots rot more easily, and warm water holds less oxygen.",
		Hint: "Shade the tub, light the lamp in the cool hours, lift the tub off a warm floor.",
	}}
}

// CheckValve is what there is to say about the air line of a pump that stands
// below the water. All heights count from the tub's inside floor.
func CheckValve(field string, lineMM, stoneMM, pumpMM float64) []finding.Finding {
	level, drains := SiphonMM(lineMM, stoneMM, pumpMM)
	if !drains {
		return nil
	}
	return []finding.Finding{{
		Level: finding.Warn, Code: "siphon", Field: field,
		Text: "The pump stands below the water. When it stops, the air line can empty the tub down to " + one(level/10) + " cm, over the pump and the floor.",
		Hint: "Stand the pump above the water. A check valve in the line helps, and can fail.",
	}}
}
