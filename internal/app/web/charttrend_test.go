package web

import (
	"math"
	"testing"
	"time"

	"rootbell/internal/paper/chart"
)

var mondayMorning = time.Date(2027, 1, 25, 10, 30, 0, 0, time.UTC)

// daily is a reading a day.
func daily(values ...float64) []chart.Point {
	var out []chart.Point
	for i, v := range values {
		out = append(out, chart.Point{At: mondayMorning.AddDate(0, 0, i), Low: v, High: v})
	}
	return out
}

// The line through the readings is that of Theil and Sen, as scipy has it.
func TestTheLineThroughReadings(t *testing.T) {
	const source = "scipy 1.10.1, stats.theilslopes(y, 24·i, method='joint')"
	for _, c := range []struct {
		name     string
		values   []float64
		from, to float64
		source   string
	}{
		{"drift", []float64{5.6, 5.7, 5.7, 5.9, 5.8, 6.0, 6.1, 6.1}, 5.60625, 5.60625 + 0.003229166666666663*168, source},
		{"one slip", []float64{1.50, 1.52, 1.49, 2.90, 1.46, 1.44, 1.45}, 1.514, 1.514 - 0.0005*144, source},
		{"none", []float64{20.1, 19.8, 20.3, 20.0, 19.9, 20.2}, 20.02, 20.02 + 0.0008333333333333156*120, source},
	} {
		got := trendOf(daily(c.values...), time.Time{}, 0.2, time.UTC)
		if math.Abs(got.from-c.from) > rounding || math.Abs(got.to-c.to) > rounding {
			t.Errorf("%s: from %.6f to %.6f, %s says %.6f to %.6f", c.name, got.from, got.to, c.source, c.from, c.to)
		}
	}
}

func TestWhereAQuantityGoes(t *testing.T) {
	doubtful := daily(5.8, 5.8, 5.9, 9.9, 5.8)
	doubtful[3].Kind = chart.Doubtful
	strips := daily(5.5, 5.5, 6.0, 6.0, 6.0)
	for i := range strips {
		strips[i].High += 0.5
	}
	sameDay := daily(5.8, 5.8)
	sameDay = append(sameDay, chart.Point{At: mondayMorning.Add(25 * time.Hour), Low: 6.4, High: 6.4}, chart.Point{At: mondayMorning.Add(26 * time.Hour), Low: 6.5, High: 6.5})
	for _, c := range []struct {
		name   string
		points []chart.Point
		after  time.Time
		want   way
	}{
		{"nothing read", nil, time.Time{}, wayUnknown},
		{"one reading", daily(5.8), time.Time{}, wayUnknown},
		{"three readings", daily(5.8, 6.0, 6.2), time.Time{}, wayUnknown},
		{"four readings on two days", sameDay, time.Time{}, wayUnknown},
		{"rising", daily(5.6, 5.7, 5.9, 6.1), time.Time{}, wayRising},
		{"falling", daily(6.6, 6.5, 6.3, 6.1, 6.1), time.Time{}, wayFalling},
		{"steady", daily(5.8, 5.9, 5.8, 5.8, 5.9), time.Time{}, waySteady},
		{"less than the meter can tell", daily(5.80, 5.85, 5.90, 5.95), time.Time{}, waySteady},
		{"up and down", daily(5.2, 6.6, 5.3, 6.5, 5.2, 6.6), time.Time{}, wayAbout},
		{"a doubtful one does not count", doubtful, time.Time{}, waySteady},
		{"strips: one colour on is no more than the strip can tell", strips, time.Time{}, waySteady},
		{"only since it was changed out", daily(6.6, 6.5, 6.4, 5.8, 5.8, 5.9, 5.8), mondayMorning.AddDate(0, 0, 2), waySteady},
		{"of the last week, what was before is past", daily(4.0, 4.1, 4.2, 4.3, 4.4, 5.8, 5.8, 5.8, 5.9, 5.8, 5.8, 5.9, 5.8), time.Time{}, waySteady},
	} {
		if got := trendOf(c.points, c.after, 0.2, time.UTC).way; got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A tub loses what is missing between two readings that nothing was poured in
// between: two of one moment are before and after the filling.
func TestWhatATubLosesADay(t *testing.T) {
	points := daily(20, 19.4, 18.7, 20, 19.5)
	points[3].At = points[2].At
	points[4].At = points[2].At.Add(24 * time.Hour)
	perDay, pairs, days := thirst(points)
	if want := (0.6 + 0.7 + 0.5) / 3; math.Abs(perDay-want) > rounding || pairs != 3 || days != 3 {
		t.Errorf("%.3f a day by %d pairs over %.1f days, want %.3f by 3 over 3", perDay, pairs, days, want)
	}
	if _, pairs, _ := thirst(daily(20)); pairs != 0 {
		t.Error("one reading loses nothing")
	}
}
