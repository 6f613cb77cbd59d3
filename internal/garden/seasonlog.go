package garden

import (
	"math"
	"slices"
	"time"

	"rootbell/internal/base/finding"
	"rootbell/internal/forecast"
	"rootbell/internal/school/season"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// written is what the logbook says of one crop of a tub.
type written struct {
	entries []reading.Entry
	moved   term.Date // not set where nobody wrote it down
	until   time.Time // the last entry
}

// logbook are the crops of the tub that the logbook tells of, the present one
// last. Without 'planted' there is one, and it has no day.
func (s *tubSeason) logbook() []written {
	out := []written{{}}
	for _, e := range reading.Of(s.entries, s.t.name) {
		if e.Doubts(reading.FieldMoment) || e.Doubts(reading.FieldTub) {
			continue
		}
		if e.Did(reading.Planted) {
			day := term.DateOf(e.At.In(s.zone))
			if last := &out[len(out)-1]; !last.moved.Set() {
				*last = written{moved: day}
			} else if day != last.moved {
				out = append(out, written{moved: day})
			}
		}
		last := &out[len(out)-1]
		last.entries, last.until = append(last.entries, e), e.At
	}
	return out
}

// course is a crop as it was looked after and read, up to a last day.
func (s *tubSeason) course(w written, moveOn, to term.Date) season.Course {
	c := season.Course{Bed: s.bed, MoveOn: moveOn, To: to}
	clock := c.Clock()
	stood := math.Inf(1) // after the entry before, in mm
	kept := spaced{}
	left := s.growing()
	for _, e := range w.entries {
		if term.DateOf(e.At.In(s.zone)).Before(moveOn) {
			continue
		}
		at := max(0, clock.Hour(e.At))
		line := c.Line(term.DateOf(e.At.In(s.zone)))
		if mm, ok := s.levelRead(e, line); ok && mm > stood+2*float64(reading.LevelErrorMM()) && at > unwritten {
			c.Deeds = append(c.Deeds, forecast.Event{AtHour: at - unwritten, Kind: forecast.FillTo, LineMM: mm, ECmS: s.halfEC()})
			s.risen(e)
		}
		c.Readings = append(c.Readings, kept.of(s.readings(e, at, line))...)
		c.Deeds = append(c.Deeds, s.deeds(e, at, line)...)
		c.CareFrom = at + sameMorning
		c.Readings = append(c.Readings, s.leaves(e, at)...)
		s.harvest(&c, e, at, left)
		if after, ok := s.after(e, line); ok {
			stood = after
		}
	}
	return c
}

// spaced keeps when a figure of each kind was last taken.
type spaced map[forecast.Quantity]float64

// apart is how far two figures of one kind are apart to be learned from both, in
// hours: one that is read again at once says nothing new of the plants, and a
// logbook of a gauge that writes every few minutes would be followed for ever.
const apart = 4

// of are the figures that are far enough from the ones taken before.
func (k spaced) of(all []forecast.Reading) (out []forecast.Reading) {
	for _, r := range all {
		if last, before := k[r.Of]; before && r.AtHour-last < apart {
			continue
		}
		k[r.Of] = r.AtHour
		out = append(out, r)
	}
	return out
}

// unwritten is how long before a reading a top-up is taken to have been that
// nobody wrote down, in hours.
const unwritten = 1

// risen says that water came in which is in no entry.
func (s *tubSeason) risen(e reading.Entry) {
	s.once(finding.Note, "reading-risen", s.t.name+": the water stood higher on "+s.stamp(e.At)+" than after the entry before, and no top-up is written down. The forecast takes one for granted.",
		"Write down what was poured in, each time.")
}

// once says a finding that is not there yet: a season is followed more than
// once.
func (s *tubSeason) once(level finding.Level, code, text, hint string) {
	f := finding.Finding{Level: level, Code: code, Field: s.field, Text: text, Hint: hint}
	if !slices.Contains(s.findings, f) {
		s.findings = append(s.findings, f)
	}
}

// after is how deep the water stood when an entry was done with, in mm.
func (s *tubSeason) after(e reading.Entry, lineMM float64) (mm float64, ok bool) {
	mm, ok = s.levelRead(e, lineMM)
	switch {
	case e.Did(reading.ChangedOut), e.Level.Filled.Set(), e.Did(reading.Planted):
		return lineMM, true
	case ok && e.Added.Litres.Set():
		return s.bed.Tub.LevelMM(s.bed.Tub.LitresAt(mm) + float64(e.Added.Litres.Value)), true
	}
	return mm, ok
}

// sameMorning is how long after the last entry nobody tops up once more, in
// hours.
const sameMorning = 12

// nineteenInTwenty is how many standard deviations an error that 19 of 20
// readings stay within is.
const nineteenInTwenty = 1.96

// leastECSD is the least error of an EC that is read, in mS/cm.
const leastECSD = 0.02

// readings are the figures of an entry that a forecast learns from. What is
// doubtful, or cannot be in this tub, is left out.
func (s *tubSeason) readings(e reading.Entry, at, lineMM float64) []forecast.Reading {
	var out []forecast.Reading
	if mm, ok := s.levelRead(e, lineMM); ok {
		out = append(out, forecast.Reading{AtHour: at, Of: forecast.Level, Value: mm, SD: float64(reading.LevelErrorMM()) / nineteenInTwenty})
	}
	if ec, ok := e.AtTwentyFive(); ok && !e.Doubts(reading.FieldEC) {
		if sure, ok := ec.Sure(); ok {
			sd := float64(sure.High-sure.Low) / 2 / nineteenInTwenty
			out = append(out, forecast.Reading{AtHour: at, Of: forecast.Strength, Value: max(0, float64(ec.Read.Mid())), SD: max(sd, leastECSD)})
		}
	}
	if e.Height.Set() && !e.Doubts(reading.FieldHeight) && e.Height.Value > 0 {
		out = append(out, forecast.Reading{AtHour: at, Of: forecast.Height, Stand: s.tallest(), Value: float64(e.Height.Value), SD: forecast.HeightSDMM()})
	}
	return out
}

// levelRead is how deep the water stood before anything was done, in mm.
func (s *tubSeason) levelRead(e reading.Entry, lineMM float64) (mm float64, ok bool) {
	l := e.Level
	switch {
	case !l.Set() || e.Doubts(reading.FieldLevel):
		return 0, false
	case l.Depth.Set():
		mm = float64(l.Depth.Value)
	case l.Litres.Set():
		if mm, ok = s.t.shape.Depth(l.Litres.Value); !ok {
			mm = math.Inf(1)
		}
	case e.Did(reading.ChangedOut):
		return 0, false // what stood there before is not known
	default:
		if float64(l.Filled.Value) > s.bed.Tub.LitresAt(lineMM) {
			mm = math.Inf(1)
			break
		}
		mm = s.bed.Tub.BeforeFill(lineMM, float64(l.Filled.Value))
	}
	if mm > s.t.shape.HeightMM() || mm < 0 {
		s.impossible(e)
		return 0, false
	}
	return mm, true
}

// impossible says that a level cannot be of this tub.
func (s *tubSeason) impossible(e reading.Entry) {
	s.once(finding.Warn, "reading-impossible", s.t.name+": the level written down on "+s.stamp(e.At)+" is more than the tub holds, so nothing is learned from it.",
		"Correct the entry in the logbook, or keep it as doubtful.")
}

func (s *tubSeason) stamp(at time.Time) string {
	at = at.In(s.zone)
	return term.DateOf(at).Words() + at.Format(", 15:04")
}

// tallest is the stand whose plants stand highest at harvest.
func (s *tubSeason) tallest() int {
	best, most := 0, -1.0
	for j, one := range s.stood {
		if h := one.Crop.HeightMM(one.PickG) * (1 + one.PPFD*1e-9); h > most {
			best, most = j, h
		}
	}
	return best
}

// deeds are what was done at an entry, after it was read.
func (s *tubSeason) deeds(e reading.Entry, at, lineMM float64) []forecast.Event {
	ec := s.tapEC
	switch {
	case e.Added.EC.Set():
		ec = float64(e.Added.EC.Value)
	case e.Did(reading.Fed):
		ec = s.feedEC
	}
	switch {
	case e.Did(reading.ChangedOut):
		if !e.Added.EC.Set() {
			ec = s.feedEC
		}
		return []forecast.Event{{AtHour: at, Kind: forecast.ChangeOut, LineMM: lineMM, ECmS: ec}}
	case e.Did(reading.Planted):
		return nil // it was filled for that
	case e.Level.Filled.Set() && !e.Doubts(reading.FieldLevel):
		return []forecast.Event{{AtHour: at, Kind: forecast.FillTo, LineMM: lineMM, ECmS: ec}}
	case e.Added.Litres.Set() && !e.Doubts(reading.FieldAdded):
		return []forecast.Event{{AtHour: at, Kind: forecast.TopUp, Litres: max(0, float64(e.Added.Litres.Value)), ECmS: ec}}
	}
	return nil
}
