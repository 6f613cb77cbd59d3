package reading

import (
	"time"

	"rootbell/internal/base/quantity"
)

// Point is one value of a series; Low and High are equal where one value was
// read. Values are in the unit of their field: pH, mS/cm, °C, L, mm.
type Point struct {
	At        time.Time
	Low, High float64
	ID        string
	Doubtful  bool
}

// Points are the values of a field, by moment. A level that was poured up
// gives two points of one moment, before and after.
func Points(entries []Entry, f Field, v Vessel) []Point {
	var out []Point
	for _, e := range entries {
		doubtful := e.Doubts(f) || e.Doubts(FieldTub) || e.Doubts(FieldMoment)
		add := func(low, high float64) { out = append(out, Point{e.At, low, high, e.ID, doubtful}) }
		switch f {
		case FieldPH:
			if e.PH.Read.Set() {
				add(float64(e.PH.Read.Low), float64(e.PH.Read.High))
			}
		case FieldEC:
			if ec, ok := e.AtTwentyFive(); ok {
				add(float64(ec.Read.Low), float64(ec.Read.High))
			}
		case FieldWater:
			one(e.Water, add)
		case FieldHeight:
			one(e.Height, add)
		case FieldLevel:
			if before, after, ok := e.Litres(v); ok {
				add(float64(before), float64(before))
				if after != before {
					add(float64(after), float64(after))
				}
			}
		}
	}
	return out
}

func one[Q quantity.Quantity](t quantity.Typed[Q], add func(low, high float64)) {
	if t.Set() {
		add(float64(t.Value), float64(t.Value))
	}
}

// perBucket is how many points a stretch of time keeps: its first, its last,
// its lowest and its highest.
const perBucket = 4

// Thin gives at most n of the points of a long series, in their order, for a
// chart that has no room for more: the time is cut into equal stretches, and
// each keeps its first, last, lowest and highest point. The lowest and highest
// of all are thus always there, and so are the first and the last. A series of
// n points or fewer is given whole; n under 4 counts as 4. The points are by
// moment.
func Thin(points []Point, n int) []Point {
	n = max(n, perBucket)
	if len(points) <= n {
		return append([]Point(nil), points...)
	}
	buckets := int64(n / perBucket)
	from := points[0].At
	span := points[len(points)-1].At.Sub(from).Milliseconds() + 1
	out := make([]Point, 0, n)
	for start := 0; start < len(points); {
		b := bucketOf(points[start], from, span, buckets)
		end := start + 1
		for end < len(points) && bucketOf(points[end], from, span, buckets) == b {
			end++
		}
		out = append(out, ends(points[start:end])...)
		start = end
	}
	return out
}

// bucketOf avoids the overflow that a product of two long times would have.
func bucketOf(p Point, from time.Time, span, buckets int64) int64 {
	b := int64(float64(p.At.Sub(from).Milliseconds()) / float64(span) * float64(buckets))
	return min(max(b, 0), buckets-1)
}

// ends keeps the first, the last, the lowest and the highest, in order.
func ends(points []Point) []Point {
	low, high := 0, 0
	for i, p := range points {
		if p.Low < points[low].Low {
			low = i
		}
		if p.High > points[high].High {
			high = i
		}
	}
	keep := [perBucket]int{0, min(low, high), max(low, high), len(points) - 1}
	var out []Point
	last := -1
	for _, i := range keep {
		if i != last {
			out = append(out, points[i])
		}
		last = i
	}
	return out
}
