package season

import (
	"strconv"
	"syscall"
	"testing"
)

// BenchmarkSeason is one tub's whole season: sown back from the lunch, followed,
// and left over every closed stretch. The tub is crowded and its line lowered,
// so that the break has to be planned for. It reports milliseconds of processor
// time for each, and members times days followed on the way back.
func BenchmarkSeason(b *testing.B) {
	for _, members := range []int{60, 200, 1000} {
		for _, settled := range []bool{false, true} {
			name := strconv.Itoa(members) + "/free"
			if settled {
				name = strconv.Itoa(members) + "/settled"
			}
			b.Run(name, func(b *testing.B) {
				w := wish(b, 14)
				w.NeededG, w.Care.Lower = 1000, true
				if settled {
					w.MoveOn = day(b, "2027-01-19")
				}
				e := Effort{Members: members, Workers: 2}
				spent, began := 0, processorMS(b)
				for b.Loop() {
					a := backs(b, w, e)
					c := Course{Bed: w.Bed, MoveOn: a.MoveOn, To: a.ReadyBy, NeedG: w.NeededG}
					leaves(b, c, a.Followed, Ways{MayVisit: true}, e)
					spent = a.Spent
				}
				b.ReportMetric((processorMS(b)-began)/float64(b.N), "cpu-ms/op")
				b.ReportMetric(float64(spent), "member-days")
			})
		}
	}
}

func processorMS(b *testing.B) float64 {
	b.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e6
}
