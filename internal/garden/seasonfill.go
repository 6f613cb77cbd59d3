package garden

import (
	"fmt"
	"math"
	"strings"
	"time"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/forecast"
	"rootbell/internal/school/season"
	"rootbell/internal/school/term"
)

// text is a day as the JSON has it; empty for none.
func dayText(d term.Date) string {
	if !d.Set() {
		return ""
	}
	return d.String()
}

// rangeOf is a band rounded to what it is worth.
func rangeOf(b forecast.Band, decimals int) Range {
	r := func(v float64) float64 {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return 0
		}
		return quantity.Round(v, decimals)
	}
	return Range{P5: r(b.P5), P25: r(b.P25), P50: r(b.P50), P75: r(b.P75), P95: r(b.P95)}
}

// share is a chance as counted in runs.
func share(p float64) float64 { return quantity.Round(p, 4) }

// fill writes the season down.
func (s *tubSeason) fill(a season.Answer, closed []season.Closed) {
	o := s.out
	o.Key = "tubs." + Slug(s.t.name) + ".season"
	o.SowOn, o.SowFrom, o.SowLatest = dayText(a.SowOn), dayText(a.SowFrom), dayText(a.SowLatest)
	o.TransplantOn = dayText(a.MoveOn)
	o.HarvestFrom, o.HarvestTo = dayText(a.HarvestFrom), dayText(a.HarvestTo)
	o.ReadyChance, o.WantedChance = share(a.Chance), share(a.Wanted)
	o.NeededG, o.ExpectedG = quantity.Round(s.needG, 1), rangeOf(a.MassG, 1)
	o.Runs = a.Followed.Members
	o.Days, o.Closed, o.Tasks, o.Moves = []SeasonDay{}, []LeaveIt{}, []SeasonTask{}, []string{}
	o.Score, o.Ready, o.Learnt = []SeasonScore{}, []CropReady{}, []Learnt{}
	for _, t := range a.Tasks {
		o.Tasks = append(o.Tasks, SeasonTask{Kind: t.Kind, On: dayText(t.On), Do: t.Do(s.plan.Units), Why: t.Why(s.plan.Units), overLidMM: t.MM})
	}
	for _, m := range a.Moves {
		o.Moves = append(o.Moves, m.Says(s.plan.Units))
	}
	for _, f := range a.Findings {
		if f.Field == "" {
			f.Field = s.field
		}
		f.Text = s.t.name + ": " + f.Text
		f.Level = min(f.Level, finding.Warn) // no date keeps anybody from drilling
		s.findings = append(s.findings, f)
	}
	o.More = []MoreSown{}
	for _, m := range a.More {
		o.More = append(o.More, MoreSown{SowOn: dayText(m.SowOn), TransplantOn: dayText(m.MoveOn), ReadyOn: dayText(m.ReadyOn), Chance: share(m.Chance)})
	}
	s.crops(a)
	s.nursery(a)
	s.days(a.Followed)
	s.shortOfAir()
	for i, c := range closed {
		o.Closed = append(o.Closed, s.leaveIt(i, c))
	}
	if a.SowOn.Set() && a.MoveOn.Set() {
		o.Nursery = term.Span{From: a.SowOn, To: a.MoveOn}
	}
	s.learned(a.Followed)
	s.show(a, closed)
}

// crops fills what comes of each crop.
func (s *tubSeason) crops(a season.Answer) {
	for _, c := range a.Crops {
		g := s.t.out.Crops[c.Crop]
		s.out.Seeds += c.Seeds
		s.out.Ready = append(s.out.Ready, CropReady{
			Crop: g.Name, Plants: g.Plants, PickG: quantity.Round(pickG(s.t.typed, s.bed.Crops[c.Crop].Kind), 1), MassG: rangeOf(c.MassG, 1),
			ReadyChance: share(c.Ready), Seeds: c.Seeds, SowOn: dayText(c.SowOn), Transplant: dayText(c.MoveOn),
			UpOn: dayText(c.UpOn), ThinOn: dayText(c.ThinOn), Cells: c.Cells, CoverMM: season.CoverMM(s.bed.Crops[c.Crop].Kind),
		})
	}
}

// days fills each day from the move on.
func (s *tubSeason) days(f season.Followed) {
	gone := 0.0
	for i, d := range f.Days {
		litres := d.DrunkL.P50 - gone
		gone = d.DrunkL.P50
		s.out.Days = append(s.out.Days, SeasonDay{
			Date: dayText(f.Dates[i].Date), Open: f.Dates[i].Open, Filled: f.Dates[i].Filled, LineMM: quantity.Round(s.followed.Line(f.Dates[i].Date), 1),
			LevelMM: rangeOf(d.LevelMM, 1), Litres: quantity.Round(max(0, litres), 3), EC: quantity.Round(d.ECmS.P50, 3), ECBand: rangeOf(d.ECmS, 3),
			MassG: rangeOf(d.CropG, 1), DOMgL: quantity.Round(d.OxygenMgL.P50, 2), DOBand: rangeOf(d.OxygenMgL, 2),
		})
	}
}

// momentOf is a moment that may not come.
func momentOf(t time.Time) *time.Time {
	if t.IsZero() {
		return nil
	}
	return &t
}

func (s *tubSeason) leaveIt(i int, c season.Closed) LeaveIt {
	out := LeaveIt{
		From: c.Stretch.Since, To: c.Stretch.Until, Hours: quantity.Round(c.Stretch.Hours(), 2), Why: c.Stretch.Why, Risk: share(c.Risk), RiskHigh: share(c.RiskHigh),
		RunsDryP50: momentOf(c.DryHalf), RunsDryP95: momentOf(c.DryFirst), Options: []LeaveDo{}, Take: c.Take, Key: s.keyed(i),
		PowerCut: s.failing(c.PowerCut, "without power"), PumpFailure: s.failing(c.Pump, "without the pump"),
	}
	for _, o := range c.Options {
		plants := 0
		for _, n := range o.Plants {
			plants += n
		}
		var meal *float64
		if plants > 0 && s.needG > 0 {
			left := share(o.Meal)
			meal = &left
		}
		out.Options = append(out.Options, LeaveDo{
			Meal: meal, Kind: o.Kind, Do: o.Do(s.plan.Units), Risk: share(o.Risk), LineMM: quantity.Round(o.LineMM, 1), Hours: quantity.Round(o.LampHours, 2), Timer: o.Timer(),
			Plants: plants, Litres: quantity.Round(o.VisitL, 2), PourL: quantity.Round(o.PourL, 3), VisitA: momentOf(o.VisitFrom), VisitB: momentOf(o.VisitTo),
		})
	}
	return out
}

// failing is what a failure within a stretch does.
func (s *tubSeason) failing(c *season.Case, what string) *LeaveCase {
	if c == nil {
		return nil
	}
	hours := func(b forecast.Band) float64 { return quantity.Round(finiteOr(b.P50, c.Hours), 1) }
	out := &LeaveCase{Hours: quantity.Round(c.Hours, 2), To4: hours(c.To4), To3: hours(c.To3), To2: hours(c.To2), Risk: share(c.Risk)}
	out.Says = sentenceStart(what) + " " + out.Breath()
	return out
}

// Breath says how fast the oxygen falls, from where it stands on the stretch's
// last day.
func (c LeaveCase) Breath() string {
	var falls, under []string
	for _, to := range []struct {
		mgL   string
		hours float64
	}{{"4", c.To4}, {"3", c.To3}, {"2", c.To2}} {
		if to.hours <= 0 {
			under = append(under, to.mgL)
			continue
		}
		falls = append(falls, "to "+to.mgL+" mg/L in "+hourWords(to.hours))
	}
	out := "the oxygen falls " + strings.Join(falls, ", ") + "."
	if len(under) == 0 {
		return out
	}
	low := "the oxygen is under " + under[len(under)-1] + " mg/L already before"
	if len(falls) == 0 {
		return low + "."
	}
	return low + ", and falls " + strings.Join(falls, ", ") + "."
}

func finiteOr(v, otherwise float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return otherwise
	}
	return v
}

func sentenceStart(text string) string { return string(text[0]-'a'+'A') + text[1:] }

// hourWords is a length of time as people say it.
func hourWords(h float64) string {
	switch {
	case h >= 72:
		return fmt.Sprintf("about %.0f days", h/24)
	case h < 1:
		return "less than an hour"
	}
	return fmt.Sprintf("about %.0f h", h)
}

// learned fills how earlier forecasts did and what was learned.
func (s *tubSeason) learned(f season.Followed) {
	all := s.followed.Readings
	for _, x := range f.Scores(all, 0) {
		s.out.Score = append(s.out.Score, s.scored(x))
	}
	if says, guess := f.Guess(all); guess && s.out.TransplantOn != "" {
		s.out.Guess = says
		if s.now.Before(f.Clock.Start) {
			s.out.Guess = "The rate is the model's guess until the class has read the water three times."
		}
	}
	for _, x := range f.Expected {
		r := all[x.Reading]
		at, _ := f.Clock.Moment(r.AtHour)
		s.out.Readings = append(s.out.Readings, SeenMark{At: at, Of: quantityWord(r.Of), Value: r.Value, Learned: x.Learned, Was: rangeOf(x.Band, 3)})
	}
	if len(f.Expected) == 0 {
		return
	}
	s.farOff(f)
	for _, k := range []struct {
		of   forecast.Factor
		word string
		says string
	}{{forecast.Growth, "growth", "plants grow"}, {forecast.Thirst, "thirst", "plants drink"}} {
		b := f.Learned(k.of)
		s.out.Learnt = append(s.out.Learnt, Learnt{Of: k.word, Band: rangeOf(b, 3), Says: fmt.Sprintf("This class's %s %.2f times what the model says; nine in ten of what fits the readings lies from %.2f to %.2f.", k.says, b.P50, b.P5, b.P95)})
	}
}

// farOff says which readings fit nothing that the forecast held possible.
func (s *tubSeason) farOff(f season.Followed) {
	for _, x := range f.Expected {
		r := s.followed.Readings[x.Reading]
		if !x.Band.Far(r.Value) {
			continue
		}
		at, _ := f.Clock.Moment(r.AtHour)
		then := "Nothing is learned from it."
		if r.Of == forecast.Level {
			then = "The water is taken to stand there, and nothing else is learned from it."
		}
		s.once(finding.Warn, "reading-far", fmt.Sprintf("%s: %s on %s was read as %s; the forecast held %s to %s possible. %s", s.t.name, readWords[r.Of], s.stamp(at),
			s.readAs(r.Of, r.Value), s.readAs(r.Of, x.Band.P5), s.readAs(r.Of, x.Band.P95), then),
			"If it is right, something is not written down: a top-up, a feed, a leak. If not, correct it in the logbook or keep it as doubtful.")
	}
}

// readWords are what is read.
var readWords = map[forecast.Quantity]string{forecast.Level: "the water's depth", forecast.Strength: "the EC", forecast.Height: "the plants' height", forecast.Picked: "a picked plant", forecast.Leaves: "the leaves on one plant"}

// readAs writes a figure that is read, in the plan's units.
func (s *tubSeason) readAs(of forecast.Quantity, v float64) string {
	switch of {
	case forecast.Strength:
		return quantity.Format(quantity.Conductivity, quantity.MillisiemensPerCM.Base(v), s.plan.Units)
	case forecast.Leaves:
		return quantity.FormatNumber(v, 0)
	case forecast.Picked:
		return quantity.Format(quantity.SmallMass, quantity.Gram.Base(v), s.plan.Units)
	}
	return quantity.Format(quantity.Length, v, s.plan.Units)
}

func quantityWord(q forecast.Quantity) string {
	return [...]string{forecast.Level: "level", forecast.Strength: "ec", forecast.Height: "height", forecast.Picked: "harvest", forecast.Leaves: "leaves"}[q]
}

func (s *tubSeason) scored(x forecast.Score) SeasonScore {
	off := s.readAs(x.Of, x.MeanOff)
	if x.Of == forecast.Leaves {
		off += " leaves"
	}
	return SeasonScore{
		Of: quantityWord(x.Of), Count: x.Count, InWide: x.InWide, InHalf: x.InHalf, MeanOff: quantity.Round(x.MeanOff, 3),
		Says: fmt.Sprintf("%d of %d fell into the band of nine in ten; the middle was off by %s on average.", x.InWide, x.Count, off),
	}
}
