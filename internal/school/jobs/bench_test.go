package jobs

import "testing"

// A class of 32 with five jobs in pairs for 14 weeks.
func BenchmarkRotaOfAClass(b *testing.B) {
	const goalSeconds = 1.0 // what a teacher may wait for a rota
	ask := Ask{Pupils: 32, Jobs: some(5, 2), Weeks: 14}
	for b.Loop() {
		if r, _ := Make(ask); !r.Fairness.Proved {
			b.Fatalf("%+v", r.Fairness)
		}
	}
	b.ReportMetric(goalSeconds, "goal-s")
}
