package figure_test

import (
	"testing"

	"rootbell/internal/paper/figure"
)

// All drawings of one Build page: a page that recomputes as one types draws
// them each time.
func BenchmarkBuildPage(b *testing.B) {
	t := &testing.T{}
	a := assess(t, "fernhollow", read(t, "../../../examples/fernhollow.yaml"))
	for b.Loop() {
		for _, w := range []figure.Width{figure.Desk, figure.Hand} {
			figure.Lid(a, 0, "", w)
			figure.Section(a, 0, w)
			for _, layout := range []string{"ruler", "widest", "rows"} {
				figure.Layout(a, 0, layout, w)
			}
		}
	}
}

func BenchmarkLid(b *testing.B) {
	t := &testing.T{}
	a := assess(t, "fernhollow", read(t, "../../../examples/fernhollow.yaml"))
	for b.Loop() {
		figure.Lid(a, 0, "", figure.Desk)
	}
}
