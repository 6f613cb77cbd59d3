package crop

import "rootbell/internal/base/finding"

// CheckAir is what there is to say about the air that a crop stands in, by day
// or when nobody is there; field is the place in the plan that would change it.
func (c Crop) CheckAir(field string, tempC float64) []finding.Finding {
	says := func(code, text, hint string) []finding.Finding {
		return []finding.Finding{{Level: finding.Warn, Code: code, Field: field, Text: text, Hint: hint}}
	}
	switch {
	case !(tempC > grown(factGrowthAirLow)) || tempC >= grown(factGrowthAirHigh):
		return says("air-outside", "At "+degrees(tempC)+" the growth formulas do not hold; the forecast is not valid there.", "Measure the air at the leaves; between 15 and 25 °C is best.")
	case tempC < c.WarmFrom():
		return says("air-cold", c.Name+" hardly grows at "+degrees(tempC)+"; it wants "+degrees(c.WarmFrom())+" or more.", "Ask the caretaker what the heating does when the school is closed.")
	case tempC > grown(factGrowthAirWarm):
		return says("air-warm", "At "+degrees(tempC)+" lettuce bolts and roots rot more easily.", "Light the lamp in the cool hours, and open a window.")
	}
	return nil
}
