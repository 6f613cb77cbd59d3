package web

import (
	"math"
	"slices"
	"time"

	"rootbell/internal/paper/chart"
	"rootbell/internal/school/term"
)

// way is where a quantity goes.
type way string

// The ways; wayUnknown is not enough to say.
const (
	wayUnknown way = ""
	waySteady  way = "steady"
	wayRising  way = "rising"
	wayFalling way = "falling"
	wayAbout   way = "going up and down"
)

// trend is where a quantity goes, from the readings of a stretch.
type trend struct {
	way         way
	since       time.Time
	from, to    float64 // of the line through the middle of the readings, at both ends
	lowest      float64
	highest     float64
	count, days int
}

// What it takes to say where a quantity goes (our own rule).
const (
	leastReadings = 4
	leastDays     = 3
	lookBack      = 7 * 24 * time.Hour
	longLookBack  = 14 * 24 * time.Hour
	mostPairs     = 120 // readings whose pairs are looked at
	// agreeing is how much more often two readings must go the one way than the
	// other: three quarters of the pairs.
	agreeing = 0.5
	rounding = 1e-9 // 6.1 less 5.9 is a little under 0.2
)

// trendOf is where a quantity goes, by the readings after a moment that stand
// and are not doubtful: of the last week, else of the last two. step is the
// change up to which the instrument may be all of it. The line is that of Theil and Sen:
// its slope is the median of the slopes of all pairs, so that one bad reading
// moves it little.
func trendOf(points []chart.Point, after time.Time, step float64, zone *time.Location) trend {
	sure := make([]chart.Point, 0, len(points))
	for _, p := range points {
		if p.Kind == chart.Sure && p.At.After(after) {
			sure = append(sure, p)
		}
	}
	if len(sure) == 0 {
		return trend{}
	}
	last := sure[len(sure)-1].At
	var recent []chart.Point
	for _, back := range []time.Duration{lookBack, longLookBack} {
		i, _ := slices.BinarySearchFunc(sure, last.Add(-back), func(p chart.Point, t time.Time) int { return p.At.Compare(t) })
		recent = sure[i:]
		if enough(recent, zone) {
			break
		}
	}
	t := trend{since: recent[0].At, lowest: math.Inf(1), highest: math.Inf(-1), count: len(recent), days: daysOf(recent, zone)}
	for _, p := range recent {
		t.lowest, t.highest = min(t.lowest, p.Low), max(t.highest, p.High)
		step = max(step, p.High-p.Low) // two colours: no finer than that
	}
	if enough(recent, zone) {
		t.judge(everyNth(recent, mostPairs), step)
	}
	return t
}

func enough(points []chart.Point, zone *time.Location) bool {
	return len(points) >= leastReadings && daysOf(points, zone) >= leastDays
}

func daysOf(points []chart.Point, zone *time.Location) int {
	n, last := 0, term.Date{}
	for _, p := range points {
		if d := term.DateOf(p.At.In(zone)); d != last {
			n, last = n+1, d
		}
	}
	return n
}

// judge finds the line and says whether it means something.
func (t *trend) judge(points []chart.Point, step float64) {
	mid := func(p chart.Point) float64 { return (p.Low + p.High) / 2 }
	hours := func(p chart.Point) float64 { return p.At.Sub(t.since).Hours() }
	var slopes []float64
	up, down := 0, 0
	for i := range points {
		for j := i + 1; j < len(points); j++ {
			apart := hours(points[j]) - hours(points[i])
			if apart <= 0 {
				continue
			}
			rise := mid(points[j]) - mid(points[i])
			slopes = append(slopes, rise/apart)
			switch {
			case rise > 0:
				up++
			case rise < 0:
				down++
			}
		}
	}
	if len(slopes) == 0 {
		return
	}
	slope := median(slopes)
	rest := make([]float64, len(points))
	least, most := math.Inf(1), math.Inf(-1)
	for i, p := range points {
		rest[i] = mid(p) - slope*hours(p)
		least, most = min(least, mid(p)), max(most, mid(p))
	}
	// One colour of a strip on may be next to nothing, however steep the line.
	told := most-least > step+rounding
	t.from = median(rest)
	t.to = t.from + slope*hours(points[len(points)-1])
	agree := float64(up-down) / float64(len(slopes))
	switch {
	case told && t.to-t.from > step+rounding && agree >= agreeing:
		t.way = wayRising
	case told && t.from-t.to > step+rounding && agree <= -agreeing:
		t.way = wayFalling
	case t.highest-t.lowest <= 2*step+rounding:
		t.way = waySteady
	default:
		t.way = wayAbout
	}
}

// median of values; they are put in order.
func median(values []float64) float64 {
	slices.Sort(values)
	n := len(values)
	return (values[(n-1)/2] + values[n/2]) / 2
}

// everyNth keeps about so many points, the first and the last among them.
func everyNth(points []chart.Point, most int) []chart.Point {
	if len(points) <= most {
		return points
	}
	out := make([]chart.Point, most)
	for i := range out {
		out[i] = points[i*(len(points)-1)/(most-1)]
	}
	return out
}

// thirst is what a tub loses a day between fillings, by the pairs of readings
// of the last two weeks that nothing was poured in between.
func thirst(points []chart.Point) (perDay float64, pairs int, days float64) {
	lost := 0.0
	var last *chart.Point
	for i := range points {
		p := &points[i]
		if p.Kind != chart.Sure {
			continue
		}
		if last != nil && p.At.After(last.At) && points[len(points)-1].At.Sub(p.At) <= longLookBack {
			lost += last.Low - p.Low
			days += p.At.Sub(last.At).Hours() / 24
			pairs++
		}
		last = p
	}
	if days == 0 {
		return 0, 0, 0
	}
	return lost / days, pairs, days
}
