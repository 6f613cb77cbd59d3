package chart_test

import (
	"testing"
	"time"

	"rootbell/internal/paper/chart"
	"rootbell/internal/paper/figure"
)

// BenchmarkDraw is one chart as full as it may be.
func BenchmarkDraw(b *testing.B) {
	d, c := february(), levels()
	c.Points = nil
	for i := range chart.Room(figure.Desk) {
		v := 15 + float64(i*7919%97)/20
		c.Points = append(c.Points, chart.Point{At: d.From.At(0, dublin).Add(time.Duration(i) * 6 * time.Hour), Low: v, High: v})
	}
	size := 0
	for b.Loop() {
		size = len(chart.Draw(c, d, figure.Desk, true))
	}
	b.ReportMetric(float64(size)/1000, "kB")
}
