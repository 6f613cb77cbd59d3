package crop

import "testing"

// BenchmarkDay is one member's day of light and night at the usual precision.
func BenchmarkDay(b *testing.B) {
	m := Published()
	light, night := m.Under(Air{21, 400, 55}), m.Under(Air{21, 400, 0})
	spans := []Span{{&light, 16 * 3600}, {&night, 8 * 3600}}
	start := m.Start(16)
	b.ReportAllocs()
	s, day := start, 0
	for b.Loop() {
		if s = Follow(s, spans); day == 49 {
			s, day = start, -1
		}
		day++
	}
}
