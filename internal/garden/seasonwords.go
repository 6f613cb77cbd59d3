package garden

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/school/season"
	"rootbell/internal/school/term"
)

// seasonCodes are the findings that are about the days of a tub.
var seasonCodes = []string{
	"air-outside", "humidity-full", "lamp-no-flux", "lamp-no-hours", "light-low", "light-meal", "lux-useless", "meal-before-sowing", "meal-closed",
	"nursery-cells", "nursery-dark", "nursery-none", "nursery-poor", "nursery-slow", "open-days-none", "oxygen-low", "reading-impossible", "reading-far",
	"reading-harvested", "reading-risen", "sow-after-transplant", "water-warm", "window-read", "zone-missing", "zone-unknown",
}

// OfSeason tells whether a finding is about the days of a tub, or about the
// light and the water that they rest on.
func OfSeason(f finding.Finding) bool {
	return strings.HasPrefix(f.Code, "season-") || slices.Contains(seasonCodes, f.Code)
}

// words is a day of the JSON as people write it; empty for none.
func words(day string) string {
	d, err := term.ParseDate(day)
	if err != nil {
		return ""
	}
	return d.Words()
}

// Answer is the season in some sentences: when to sow, and how likely it is
// ready.
func (s *Season) Answer(a *Assessment) string {
	by := "the term's end"
	if day := term.Date(a.Plan.School.Meal.Day); day.Set() && a.Term.Open(day) {
		by = "the meal on " + day.Words()
	}
	if s.TransplantOn == "" {
		return "No day was found on which to sow so that it is ready by " + by + "."
	}
	var out []string
	moved := a.On != "" && s.TransplantOn <= a.On
	switch {
	case moved: // when it was sown moves nothing any more
	case s.SowOn != "" && s.SowLatest != "" && s.SowLatest != s.SowOn:
		out = append(out, fmt.Sprintf("Sow on %s, at the latest on %s.", words(s.SowOn), words(s.SowLatest)))
	case s.SowOn != "":
		out = append(out, fmt.Sprintf("Sow on %s.", words(s.SowOn)))
	}
	if moved {
		out = append(out, fmt.Sprintf("The plants are in the tub since %s.", words(s.TransplantOn)))
	} else {
		out = append(out, fmt.Sprintf("The plants move on %s.", words(s.TransplantOn)))
	}
	if s.ReadyChance < s.WantedChance {
		out = append(out, "That is not as sure as you want it.")
	}
	out = append(out, fmt.Sprintf("Ready by %s: %s, as %s came; %s is wanted.", by, quantity.Chance(s.ReadyChance), s.counted(s.ReadyChance), strings.TrimPrefix(quantity.Chance(s.WantedChance), "about ")))
	if s.NeededG > 0 {
		gram := func(g float64) string {
			return quantity.Format(quantity.SmallMass, quantity.Gram.Base(g), a.Plan.Units)
		}
		out = append(out, fmt.Sprintf("The meal needs %s of this tub; nine runs in ten bring %s to %s.", gram(s.NeededG), gram(s.ExpectedG.P5), gram(s.ExpectedG.P95)))
	}
	return strings.Join(out, " ")
}

// counted is a chance as runs were counted: 812 of 1,000 runs.
func (s *Season) counted(p float64) string { return Runs(p, s.Runs) }

// Runs is a chance as runs were counted: 812 of 1,000 runs.
func Runs(p float64, of int) string {
	return thousands(int(math.Round(p*float64(of)))) + " of " + thousands(of) + " runs"
}

// thousands is a whole number with a comma after its thousands.
func thousands(n int) string {
	if n < 1000 {
		return strconv.Itoa(n)
	}
	return fmt.Sprintf("%d,%03d", n/1000, n%1000)
}

// dry says when the lowest line is reached.
func (c LeaveIt) dry() string {
	at := func(t *time.Time) string { return term.DateOf(*t).Words() + t.Format(", 15:04") }
	switch {
	case c.RunsDryP95 == nil:
		return ""
	case c.RunsDryP50 == nil:
		return fmt.Sprintf(" The first of twenty runs dry on %s.", at(c.RunsDryP95))
	}
	return fmt.Sprintf(" The first of twenty runs dry on %s, half of them by %s.", at(c.RunsDryP95), at(c.RunsDryP50))
}

// Answer is a closed stretch in some sentences.
func (c LeaveIt) Answer(of int) string {
	out := Runs(c.Risk, of) + " fell below the lowest line"
	if thirsty := quantity.Chance(c.RiskHigh); c.RiskHigh > c.Risk && thirsty != quantity.Chance(c.Risk) {
		out += "; where the class's plants drink much, " + thirsty
	}
	out += "." + c.dry()
	switch {
	case c.Risk < season.MostRisk() && len(c.Options) > 0:
		out += " That is under 1 in 20: filling up to the line is enough. For plants that drink much:"
	case c.Take >= 0 && c.Take < len(c.Options):
		out += " To do: " + c.Options[c.Take].Do
	case len(c.Options) > 0:
		out += " Nothing that was tried brings it under 1 in 20."
	default:
		out += " Nothing needs doing but filling up to the line."
	}
	return out
}
