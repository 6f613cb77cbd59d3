package lid

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"rootbell/internal/base/plane"
)

// spacing is one row of testdata/spacings.csv.
type spacing struct {
	domain string
	n      int
	d      float64
}

func spacings(tb testing.TB) []spacing {
	tb.Helper()
	f, err := os.Open("testdata/spacings.csv")
	if err != nil {
		tb.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	c := csv.NewReader(f)
	c.Comment = '#'
	rows, err := c.ReadAll()
	if err != nil {
		tb.Fatal(err)
	}
	var out []spacing
	for _, r := range rows[1:] {
		n, errN := strconv.Atoi(r[1])
		d, errD := strconv.ParseFloat(r[2], 64)
		if errN != nil || errD != nil {
			tb.Fatalf("row %v: %v %v", r, errN, errD)
		}
		out = append(out, spacing{r[0], n, d})
	}
	return out
}

// domains are the regions of the spacings; rectangles are drawn with a short
// side of unitSide mm so that they are about as large as a lid.
const unitSide = 300

type domain struct {
	bounds []Inset
	keep   []KeepOut
	scale  float64 // mm per unit of the table
}

func rectangle(a float64) domain {
	return domain{[]Inset{{Shape: plane.Box(0, 0, a*unitSide, unitSide)}}, nil, unitSide}
}

func domains() map[string]domain {
	return map[string]domain{
		"rect_1_1": rectangle(1), "rect_4_3": rectangle(4.0 / 3), "rect_3_2": rectangle(1.5), "rect_2_1": rectangle(2),
		"lidA_circle": {
			[]Inset{{plane.Box(0, 0, 560, 380), 60}},
			[]KeepOut{{plane.Circle{Centre: plane.Point{X: 280, Y: 190}, Radius: 20}, 50}},
			1,
		},
		"lidB_rect": {
			[]Inset{{plane.Box(0, 0, 600, 400), 55}},
			[]KeepOut{{plane.Box(400, 250, 600, 400), 40}},
			1,
		},
	}
}

func (d domain) region(tb testing.TB) *Region {
	tb.Helper()
	r, err := NewRegion(d.bounds, d.keep)
	if err != nil {
		tb.Fatal(err)
	}
	return r
}
