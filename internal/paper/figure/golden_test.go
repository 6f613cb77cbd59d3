package figure_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"rootbell/internal/paper/figure"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

// One drawing is kept whole, so that a change of any line is seen by whoever
// makes it. Its holes are given in the plan, not searched for.
func TestDrawingsKeepTheirBytes(t *testing.T) {
	a := assess(t, "kit", read(t, "../../garden/testdata/kit.yaml"))
	lid, _ := figure.Lid(a, 0, "", figure.Hand)
	section, _ := figure.Section(a, 0, figure.Hand)
	for name, svg := range map[string]string{"testdata/kit-lid-hand.svg": lid, "testdata/kit-section-hand.svg": section} {
		// An element a line, so that a difference can be read.
		got := strings.ReplaceAll(svg, "><", ">\n<") + "\n"
		if *update {
			if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if want := read(t, name); got != want {
			t.Errorf("%s is drawn otherwise now; look at it, then: go test ./internal/paper/figure -update", name)
		}
	}
}
