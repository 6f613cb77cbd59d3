package figure_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"rootbell/internal/garden"
)

// The rulers of a lid bear numbers that stand where they say, counted in cm or
// inches from the lid's lower left corner, and enough of them to read by.
func TestRulersCountFromTheCorner(t *testing.T) {
	for _, f := range figures(t) {
		if !strings.Contains(f.name, " lid ") {
			continue
		}
		root := parsed(t, f.svg)
		outline, _, _ := f.a.LidShape(f.tub)
		b := outline.Bounds()
		scale, x0, y0 := root.num("data-scale"), root.num("data-x0"), root.num("data-y0")
		unit := 10.0
		if f.a.Plan.Units == garden.US {
			unit = 25.4
		}
		right, up := map[int]bool{}, map[int]bool{}
		for _, k := range root.kids {
			n, err := strconv.Atoi(k.text)
			if err != nil || k.name != "text" || !k.has("sm") {
				continue
			}
			along := float64(n) * unit * scale
			switch {
			case k.num("y") > y0 && k.has("mid"):
				right[n] = true
				if math.Abs(k.num("x")-x0-along) > 0.02 {
					t.Errorf("%s: %d stands at %g px", f.name, n, k.num("x"))
				}
			case k.num("x") < x0 && k.has("end"):
				up[n] = true
				// Half the height of a figure of 12 px lies under the tick.
				if math.Abs(k.num("y")-(y0-along)-0.36*12) > 0.02 {
					t.Errorf("%s: %d stands at %g px", f.name, n, k.num("y"))
				}
			}
		}
		for name, c := range map[string]struct {
			got  map[int]bool
			long float64
		}{"right": {right, b.Width()}, "up": {up, b.Height()}} {
			// Numbers stand at most 70 px apart unless the unit itself is wider.
			want := int(c.long * scale / math.Max(70, 5*unit*scale))
			if len(c.got) < want+1 || !c.got[0] {
				t.Errorf("%s: %d numbers to the %s on %.0f px", f.name, len(c.got), name, c.long*scale)
			}
		}
	}
}
