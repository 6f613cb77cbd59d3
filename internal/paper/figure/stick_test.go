package figure_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/figure"
)

var readHere = regexp.MustCompile(`here ([0-9.]+)\x{a0}(L|gal)`)

// The stick is to scale: what is read at the drawn water is what the tub's shape
// holds at that depth, and the drawing says so in both places.
func TestTheStickIsReadWhereTheWaterStands(t *testing.T) {
	// 1 US gallon is 231 cubic inches of 25.4 mm.
	litres := map[string]float64{"L": 1, "gal": 231 * 25.4 * 25.4 * 25.4 / 1e6}
	for _, name := range []string{"fernhollow", "saltbrook"} {
		a := assess(t, name, read(t, "../../../examples/"+name+".yaml"))
		for tub := range a.Tubs {
			for _, w := range []figure.Width{figure.Desk, figure.Hand} {
				svg, ok := figure.Stick(a, tub, w)
				if !ok {
					t.Fatalf("%s: no stick", a.Tubs[tub].Name)
				}
				root := parsed(t, svg)
				said := readHere.FindStringSubmatch(root.attr["aria-label"])
				if said == nil {
					t.Fatalf("the label says no reading: %s", root.attr["aria-label"])
				}
				value, _ := strconv.ParseFloat(said[1], 64)
				depth, _ := a.Tubs[tub].Shape.Depth(quantity.L(value * litres[said[2]]))
				var water, floor, rim float64
				bold := ""
				root.walk(func(n *node) {
					switch {
					case n.has("watl"):
						water = n.num("y1")
					case n.has("kk"):
						ys := heights(n.attr["d"])
						rim, floor = ys[0], ys[1]
					case n.name == "text" && n.has("b"):
						bold = n.text
					}
				})
				scale := (floor - rim) / a.Tubs[tub].Shape.HeightMM()
				if got := (floor - water) / scale; math.Abs(got-depth) > 0.5 { // half a millimetre, from rounding to hundredths of a pixel
					t.Errorf("%s: the water is drawn at %.1f mm, and %s stand %.1f mm deep", a.Tubs[tub].Name, got, said[0], depth)
				}
				if bold != "read here: "+said[1]+"\u00a0"+said[2] {
					t.Errorf("the drawing says %q and its label %q", bold, said[0])
				}
			}
		}
	}
}

// heights are the y of the corners of a path of straight lines.
func heights(d string) []float64 {
	var out []float64
	for part := range strings.FieldsFuncSeq(d, func(r rune) bool { return r == 'M' || r == 'L' }) {
		_, y, _ := strings.Cut(strings.TrimSpace(part), " ")
		v, _ := strconv.ParseFloat(strings.TrimSuffix(y, "Z"), 64)
		out = append(out, v)
	}
	return out
}
