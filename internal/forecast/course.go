package forecast

import (
	"math"
	"slices"
)

// climate is what decides the pace of plants during a segment.
type climate struct {
	span Span // with Hours 0
	lit  bool
}

// segment is some hours during which nothing changes, and what happens at
// their end.
type segment struct {
	from, hours float64
	climate     int
	pumped      bool
	events      []int // of the season, at the end
	readings    []int // at the end, before the events
	day         int   // that ends with it; -1 for none
	begins      bool  // a day begins with it
}

// course is a season cut into segments, shared by all members.
type course struct {
	Season
	climates []climate
	segments []segment
	first    segment // what happens before any time passes
	lowestL  float64 // at the lowest line
	mostL    float64 // at the rim
	gauge    [gaugeSteps + 1]float64
}

// gaugeSteps are how many even steps of litres the gauge of a tub has: a
// quarter of a millimetre and less in any tub that a class has, which is for
// what bubbles and roots notice. Levels that are told are worked out exactly.
const gaugeSteps = 512

// instant is two moments that count as one, in hours.
const instant = 1e-9

// lay cuts a season at whatever happens.
func lay(s Season) *course {
	c := &course{Season: s}
	c.measure()
	cuts := s.cuts()
	c.first = c.at(0)
	hour := 0.0
	for d, day := range s.Days {
		lit, begins := 0.0, true
		for _, span := range day {
			end := hour + span.Hours
			for hour < end-instant {
				to := c.next(cuts, hour, end)
				most := c.lampHours(hour)
				on := span.Lit && lit < most-instant
				if on {
					to = min(to, hour+most-lit)
					lit += to - hour
				}
				c.add(span, on, hour, to, begins)
				hour, begins = to, false
			}
			hour = end
		}
		c.segments[len(c.segments)-1].day = d
	}
	return c
}

// measure makes the gauge of a tub.
func (c *course) measure() {
	c.lowestL = c.Tub.LitresAt(c.Tub.LowestMM)
	c.mostL = c.Tub.LitresAt(c.Tub.Shape.HeightMM())
	depth := 0.0
	for i := range c.gauge {
		depth = c.Tub.depthFrom(depth, c.mostL*float64(i)/gaugeSteps)
		c.gauge[i] = depth
	}
}

// cuts are the hours at which something happens, in order.
func (s Season) cuts() []float64 {
	var cuts []float64
	for _, e := range s.Events {
		cuts = append(cuts, e.AtHour)
		if e.Kind == LampOff || e.Kind == PumpOff || e.Kind == PowerCut {
			cuts = append(cuts, e.AtHour+e.Hours)
		}
	}
	for _, r := range s.Readings {
		cuts = append(cuts, r.AtHour)
	}
	for _, w := range s.Watches {
		cuts = append(cuts, w.FromHour, w.ToHour)
	}
	slices.Sort(cuts)
	return cuts
}

// next is the first cut after an hour, or the end.
func (c *course) next(cuts []float64, hour, end float64) float64 {
	i, _ := slices.BinarySearch(cuts, hour+instant)
	if i < len(cuts) && cuts[i] < end-instant {
		return cuts[i]
	}
	return end
}

// lampHours is how long the lamp may be lit each day at an hour.
func (c *course) lampHours(hour float64) float64 {
	most, at := math.Inf(1), -1.0
	for _, e := range c.Events {
		if e.Kind == LampHours && e.AtHour <= hour+instant && e.AtHour >= at {
			most, at = e.Hours, e.AtHour
		}
	}
	return most
}

func (c *course) add(span Span, lit bool, from, to float64, begins bool) {
	pumped := !c.Tub.Still
	for _, e := range c.Events {
		lamp, pump := e.off(from + instant)
		lit, pumped = lit && !lamp, pumped && !pump
	}
	g := c.at(to)
	g.from, g.hours, g.pumped, g.begins = from, to-from, pumped, begins
	span.Hours, span.Lit = 0, lit
	kind := climate{span, lit}
	g.climate = slices.Index(c.climates, kind)
	if g.climate < 0 {
		g.climate = len(c.climates)
		c.climates = append(c.climates, kind)
	}
	c.segments = append(c.segments, g)
}

// at is an empty segment with what happens at its end.
func (c *course) at(hour float64) segment {
	g := segment{day: -1}
	for i, e := range c.Events {
		if math.Abs(e.AtHour-hour) <= instant {
			g.events = append(g.events, i)
		}
	}
	for i, r := range c.Readings {
		if math.Abs(r.AtHour-hour) <= instant {
			g.readings = append(g.readings, i)
		}
	}
	return g
}

// level is the depth of so much solution by the gauge, in mm.
func (c *course) level(litres float64) float64 {
	if !(litres > 0) || !(c.mostL > 0) {
		return c.gauge[0]
	}
	at := min(litres/c.mostL, 1) * gaugeSteps
	i := min(int(at), gaugeSteps-1)
	return c.gauge[i] + (at-float64(i))*(c.gauge[i+1]-c.gauge[i])
}
