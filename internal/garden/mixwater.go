package garden

import (
	"fmt"
	"math"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/solution"
)

// readTap makes the tap's water whole, blends it where the plan has something to
// blend with, and says what it is good for.
func (m *mixer) readTap() {
	m.tap = tapOf(m.plan.Tap)
	whole, err := m.tap.Water()
	if err != nil {
		m.fault(finding.Stop, "tap", err)
		m.broken = true
		return
	}
	if m.plan.Blend == "rain" || m.plan.Blend == "deionised" {
		m.share = m.tap.BlendShare()
	}
	for _, f := range m.tap.Findings(whole) {
		f.Field = joinField("tap", f.Field)
		if m.share > 0 && f.Level == finding.Warn && f.Code != "tap-chlorine" && f.Code != "tap-balance" {
			continue
		}
		m.findings = append(m.findings, f)
		m.broken = m.broken || f.Level == finding.Stop
	}
	least, _ := m.tap.Ends()
	if m.water, err = least.Water(); err != nil {
		m.fault(finding.Stop, "tap", err)
		m.broken = true
		return
	}
	m.blended()
	m.strips()
}

func joinField(path, below string) string {
	if below == "" {
		return path
	}
	return path + "." + below
}

// blended thins the tap's water, and says so.
func (m *mixer) blended() {
	if m.share <= 0 {
		return
	}
	before := m.water.AlkalinityMgL
	m.water = m.water.Blend(m.share)
	hint := "Measure the pH of the blend before anything goes in: rain and filters differ."
	if m.plan.Blend == "rain" {
		hint = "Rain from a roof is not for food crops in a school unless the site agrees: birds, metals. Catch it clean, or take deionised water."
	}
	m.note("tap-blended", "blend", fmt.Sprintf("The tap is blended, %d parts of %s to %d of tap water: its alkalinity goes from %.0f to %.0f mg/L, and the rest with it.",
		quartersOf(m.share), m.blendWords(), 4-quartersOf(m.share), before, m.water.AlkalinityMgL), hint)
}

func quartersOf(share float64) int { return int(math.Round(4 * share)) }

func (m *mixer) blendWords() string {
	if m.plan.Blend == "rain" {
		return "rain water"
	}
	return "deionised water"
}

// strips says what an interval of alkalinity leaves open.
func (m *mixer) strips() {
	a := m.tap.Alkalinity
	if !a.Known || a.Low == a.High {
		return
	}
	m.note("tap-strip", "tap.alkalinity", fmt.Sprintf("The strip leaves an alkalinity of %g to %g mg/L open. Acid is worked out for %g, so that it is never too much.", a.Low, a.High, a.Low),
		"A drop test for carbonate hardness tells it closer.")
}

// fillWater enters the litres of tap and of rain for a tub.
func (m *mixer) fillWater(b *working.Book, litres working.Number, out *Mix) {
	w := &out.Water
	w.TapL, w.AlkalinityMgL, w.AlkalinityTold, w.PH = out.SolutionL, quantity.Round(m.water.AlkalinityMgL, 1), m.water.Known, quantity.Round(m.water.PH, 2)
	w.EC = quantity.Round(solution.EC25(m.water.Ions, solution.Closed), 3)
	w.Assumed = m.water.Assumed
	if m.share <= 0 {
		return
	}
	rain := b.Work(rainLaw, "blend_volume", m.blendWords()+" for the tub", litres,
		b.Found("blend_share", "share of "+m.blendWords(), "s", quantity.Share, m.share, "whole quarters, the least that brings all figures of the tap under their limits"))
	rest := b.Work(tapLaw, "tap_volume", "tap water for the tub", litres, rain)
	w.BlendL, w.TapL, w.Blend = *in(rain, quantity.Litre, 2), *in(rest, quantity.Litre, 2), m.plan.Blend
}

// chlorine is how it comes out of the tap's part of the water.
func (m *mixer) chlorine(b *working.Book, litres working.Number, out *Mix) {
	free, bound := m.tap.Chlorine, m.tap.Chloramine
	told := free.Known || bound.Known
	d := solution.Dechlorinate(out.Water.TapL, free.High, bound.High)
	if told && free.High < d.UseBelowMgL && bound.High < d.UseBelowMgL {
		return
	}
	c := &MixChlorine{Told: told, UseBelowMgL: d.UseBelowMgL, StandHours: d.StandHours, DeepHours: d.StandHoursDeep}
	if told {
		water := litres
		if n, ok := m.book.Find(b.Key("tap_volume")); ok {
			water = n
		}
		n := solution.ShowAscorbic(b, water, free.High+bound.High)
		c.AscorbicMg = rounded(1e6*n.Base, 0)
		c.ThiosulfateMg = rounded(d.ThiosulfateMg, 0)
		c.JugMg = rounded(solution.Dechlorinate(10, free.High, bound.High).AscorbicMg, 0)
	}
	out.Chlorine = c
}

// rounded is a number for the JSON.
func rounded(v float64, decimals int) *float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil
	}
	v = quantity.Round(v, decimals)
	return &v
}
