package lamp

import (
	"fmt"
	"strconv"

	"rootbell/internal/base/finding"
)

// Day is what one tub's plants get in a day, and what they want.
type Day struct {
	Crop       string
	DLI        float64 // mean over the holes, mol/m²/d
	Low, High  float64 // the crop's band, mol/m²/d
	Hours      float64 // the longest any lamp is lit, h/d
	Heading    bool    // a lettuce that makes a head, whose inner leaves burn
	Fan        bool    // blows down on the plants
	LongNight  bool    // tomato, strawberry
	WindowOnly bool    // no lamp, no lux reading
}

// Check is what there is to say about the light of a tub. field is the place in
// the plan that would change it.
func (d Day) Check(field string) []finding.Finding {
	var out []finding.Finding
	warn := func(code, text, hint string) {
		out = append(out, finding.Finding{Level: finding.Warn, Code: code, Field: field, Text: text, Hint: hint})
	}
	if d.WindowOnly {
		warn("window-only", "There is no lamp and no reading of the light. A window in winter gives too little for a harvest in most schools.",
			"Read a lux meter at the lid at 9:00, 12:00 and 15:00, or hang a lamp.")
		return out
	}
	most, night := value(factLampHoursMax), value(factLampDarkMin)
	tip := value(factLampTipburnDli)
	switch {
	case !(d.DLI > 0):
		warn("lamp-dark", "No light reaches the lid.", "See to the lamp's flux, height and hours.")
	case d.DLI < d.Low:
		warn("light-low", fmt.Sprintf("The light of a day is %s mol/m²; %s wants %s to %s. It will grow, but slowly.", short(d.DLI), d.Crop, short(d.Low), short(d.High)),
			"Hang the lamp lower, light it longer (at most "+short(most)+" h), or add a lamp.")
	case d.DLI > d.High && d.High > 0:
		out = append(out, finding.Finding{
			Level: finding.Note, Code: "light-high", Field: field, Text: fmt.Sprintf("The light of a day is %s mol/m²; over %s it brings %s no more.", short(d.DLI), short(d.High), d.Crop),
			Hint: "Fewer hours save electricity.",
		})
	}
	if d.Heading && !d.Fan && d.DLI > tip {
		warn("tip-burn", fmt.Sprintf("Over %s mol/m² a day the inner leaves of a head grow faster than calcium reaches them, and their tips turn brown.", short(tip)),
			"Fewer hours, or a small fan that blows down on the plants.")
	}
	if d.Hours > most {
		warn("light-long", fmt.Sprintf("The lamp is lit %s h a day. In a published trial 20 h gave lighter heads than 16 h.", short(d.Hours)), "Light it "+short(most)+" h at most.")
	}
	if d.LongNight && d.Hours > 24-night {
		warn("night-short", fmt.Sprintf("%s wants %s h of dark; the lamp leaves %s h.", d.Crop, short(night), short(24-d.Hours)), "Light it "+short(24-night)+" h at most.")
	}
	return out
}

// Cautions are what stands where a lamp is hung or worked under.
func Cautions() []string {
	return []string{
		"Do not look into the lamp. Hang it so that its face is below the eyes of whoever stands there, or screen it.",
		"Ask for the lamp's eye safety group (IEC 62471) and whether it sends ultraviolet light; follow what its label says.",
		"Switch off and unplug before you raise, lower or clean a lamp. An adult does it, with dry hands, from the floor.",
		"Mains near water: a socket with a residual-current device, plugs higher than the water, a drip loop in each lead. The local rules and a licensed electrician decide.",
	}
}

// short writes a number with one decimal at most.
func short(v float64) string {
	text := strconv.FormatFloat(v, 'f', 1, 64)
	if n := len(text); n > 2 && text[n-2:] == ".0" {
		return text[:n-2]
	}
	return text
}
