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

// BenchmarkSchoolDay is a day of four spans, as a school's room has them: dark,
// lit and closed, lit and open, lit and closed again.
func BenchmarkSchoolDay(b *testing.B) {
	m := Published()
	night, closed, open := m.Under(Air{16, 420, 0}), m.Under(Air{16, 420, 55}), m.Under(Air{21, 800, 55})
	spans := []Span{{&night, 8 * 3600}, {&closed, 2.5 * 3600}, {&open, 7 * 3600}, {&closed, 6.5 * 3600}}
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

func BenchmarkUnder(b *testing.B) {
	m := Published()
	for b.Loop() {
		m.Under(Air{21, 400, 55})
	}
}

// A thousand seasons of fifty days against general-purpose solvers; quality is
// the largest difference from DOP853 at 1e-11 over twenty of them.
func againstPeer(b *testing.B, how string, asked int, goal float64) {
	all := drawSeasons(1000, 2, 16)
	some := seasons{all.Seasons[:asked], all.Days}
	var theirs, reference ends
	ask(b, []string{peerScript, how}, some, &theirs)
	twenty := seasons{all.Seasons[:20], all.Days}
	ask(b, []string{peerScript, "dop853"}, twenty, &reference)
	for b.Loop() {
		all.ours()
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N), "ours-s")
	b.ReportMetric(theirs.Seconds*float64(len(all.Seasons))/float64(asked), "peer-s")
	b.ReportMetric(goal, "goal")
	b.ReportMetric(apart(twenty.ours(), reference.Ends), "quality")
}

func BenchmarkSeasonsAgainstNumpy(b *testing.B)     { againstPeer(b, "rk4", 1000, 5) }
func BenchmarkSeasonsAgainstNumpyLong(b *testing.B) { againstPeer(b, "rk4long", 1000, 1) }

// LSODA takes half a minute for a thousand, so a tenth of them stands for all.
func BenchmarkSeasonsAgainstLSODA(b *testing.B) { againstPeer(b, "lsoda", 100, 300) }
