package lesson

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
)

// norris are the points of the data set Norris, y then x.
var norris = [][2]float64{
	{0.1, 0.2},
	{338.8, 337.4},
	{118.1, 118.2},
	{888.0, 884.6},
	{9.2, 10.1},
	{228.1, 226.5},
	{668.5, 666.3},
	{998.5, 996.3},
	{449.1, 448.6},
	{778.9, 777.0},
	{559.2, 558.2},
	{0.3, 0.4},
	{0.1, 0.6},
	{778.1, 775.5},
	{668.8, 666.9},
	{339.3, 338.0},
	{448.9, 447.5},
	{10.8, 11.6},
	{557.7, 556.0},
	{228.3, 228.1},
	{998.0, 995.8},
	{888.8, 887.6},
	{119.6, 120.2},
	{0.3, 0.3},
	{0.6, 0.3},
	{557.6, 556.8},
	{339.3, 339.1},
	{888.0, 887.2},
	{998.5, 999.0},
	{778.9, 779.0},
	{10.2, 11.1},
	{117.6, 118.3},
	{228.9, 229.2},
	{668.4, 669.1},
	{449.2, 448.9},
	{0.2, 0.5},
}

// The certified line of Norris, by the sums and by the formula of the sheet.
// source: NIST Statistical Reference Datasets, linear regression, Norris (points
// and certified values from memory; that both fit together is the check)
func TestTheCertifiedLine(t *testing.T) {
	const start, slope = -0.262323073774029, 1.00211681802045
	var x, y []float64
	var sx, sy, sxy, sxx float64
	for _, p := range norris {
		x, y = append(x, p[1]), append(y, p[0])
		sx, sy, sxy, sxx = sx+p[1], sy+p[0], sxy+p[0]*p[1], sxx+p[1]*p[1]
	}
	a, b := fit(x, y)
	if math.Abs(a-start) > 1e-12 || math.Abs(b-slope) > 1e-14 {
		t.Errorf("fitted %.15f and %.15f", a, b)
	}
	// The pencil's sums cancel some of a float's digits.
	law := slopeLaw.Value(float64(len(x)), sxy, sx, sy, sxx)
	if math.Abs(law-slope) > 1e-12 || math.Abs(interceptLaw.Value(sy, law, sx, float64(len(x)))-start) > 1e-9 {
		t.Errorf("by the formula: %.15f", law)
	}
}

// The certified mean and standard deviation of NumAcc1.
// source: NIST Statistical Reference Datasets, univariate, NumAcc1 (from memory)
func TestTheCertifiedDeviation(t *testing.T) {
	x := []float64{10000001, 10000003, 10000002}
	m := meanLaw(3, number).Value(x...)
	if m != 10000002 || deviationLaw(3, number).Value(append(x, m)...) != 1 {
		t.Errorf("mean %v", m)
	}
}

func TestPublishedQuartiles(t *testing.T) {
	cases := []struct {
		source    string
		x         []float64
		low, high float64
		median    float64
	}{
		{"Moore and McCabe's rule, halves without the middle; the usual textbook row, from memory", []float64{6, 7, 15, 36, 39, 40, 41, 42, 43, 47, 49}, 15, 43, 40},
		{"the same rule, an even row, from memory", []float64{7, 15, 36, 39, 40, 41}, 15, 40, 37.5},
	}
	for _, c := range cases {
		if l, h := quartiles(c.x); l != c.low || h != c.high || median(c.x) != c.median {
			t.Errorf("%s: %v %v %v", c.source, l, median(c.x), h)
		}
	}
}

// Units against their definitions.
func TestPublishedUnits(t *testing.T) {
	cases := []struct {
		source string
		got    float64
		want   float64
	}{
		{"US gallon of 231 cubic inches: NIST Handbook 44, appendix C, from memory", cubicInches.From(quantity.USGallon.Base(1)), 231},
		{"4 quarts a gallon, likewise", quart.From(quantity.USGallon.Base(1)), 4},
		{"16 cups a gallon, likewise", cup.From(quantity.USGallon.Base(1)), 16},
		{"3.785 411 784 L a gallon, likewise", quantity.Litre.From(quantity.USGallon.Base(1)), 3.785411784},
		{"1000 cm³ a litre: SI brochure, from memory", cubicCentimetre.From(quantity.Litre.Base(1)), 1000},
		{"3.6 MJ a kilowatt hour: SI brochure, from memory", kilowattHour.Scale / quantity.Watt.Scale, 3.6e6},
	}
	for _, c := range cases {
		if math.Abs(c.got/c.want-1) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.source, c.got, c.want)
		}
	}
}

// Sums of the sheets worked by hand.
func TestSumsWorkedByHand(t *testing.T) {
	cases := []struct {
		what string
		got  float64
		want float64
	}{
		{"12 January to 3 March 2027: 19 + 28 + 3", overMonth.Value(19, 28, 3), 50},
		{"26 litres in jugs of 4", jugsLaw.Value(26, 4), 6},
		{"what is missing", restLaw.Value(26, 6, 4), 2},
		{"06:00 to 22:30", clockLaw.Value(22, 30, 6, 0), 990},
		{"22:00 to 06:00 over midnight", clockOver.Value(6, 0, 22, 0), 480},
		{"20 L at 2.0 down to 1.5 with water of 0.4: 10/1.1", thinLaw.Value(20, 2, 1.5, 0.4), 20 * 0.5 / 1.1},
		{"6 plants at 80 %", sowLaw.Value(6, 0.8), 8},
		{"pH 6 to pH 4", tenfoldLaw.Value(6, 4), 100},
		{"3-4-5 triangle", straight.Value(3, 0, 4, 0), 5},
		{"grid steps", gridLaw.Value(3, 0, 0, 4), 7},
		{"10 L to spare at 1 L a day, 30 % more thirst", thirstyLaw.Value(10, 1), 10 / 1.3},
		{"fences of 2 and 4", lowFence.Value(2, 4), -1},
		{"fences of 2 and 4", highFence.Value(2, 4), 7},
	}
	for _, c := range cases {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	// The salts before are the salts after.
	x := thinLaw.Value(20, 2, 1.5, 0.4)
	if math.Abs(20*2+x*0.4-(20+x)*1.5) > 1e-9 {
		t.Error("the mixture has other salts than its parts")
	}
}

const python = "/usr/bin/python3"

// statistics as numpy and scipy work them out: mean, median, quartiles as
// medians of halves, standard deviation with n - 1 below, least squares, and the
// line of Theil and Sen.
const script = `
import json, sys, numpy as np
from scipy import stats
out = []
for x, y in json.load(sys.stdin):
    s = np.sort(y); n = len(s)
    line = stats.linregress(x, y)
    b, a, _, _ = stats.theilslopes(y, x)
    out.append([np.mean(y), np.median(y), np.median(s[:n//2]), np.median(s[(n+1)//2:]), np.std(y, ddof=1), line.intercept, line.slope, b])
json.dump(out, sys.stdout)`

// ours are the same by the formulas of the sheets.
func ours(x, y []float64) []float64 {
	n := len(y)
	m := meanLaw(n, number).Value(y...)
	l, h := quartiles(y)
	var sx, sy, sxy, sxx float64
	for i := range x {
		sx, sy, sxy, sxx = sx+x[i], sy+y[i], sxy+x[i]*y[i], sxx+x[i]*x[i]
	}
	b := slopeLaw.Value(float64(n), sxy, sx, sy, sxx)
	_, steady := steadyLine(x, y)
	return []float64{m, median(y), l, h, deviationLaw(n, number).Value(append(append([]float64(nil), y...), m)...), interceptLaw.Value(sy, b, sx, float64(n)), b, steady}
}

// source: numpy 1.24.2 and scipy 1.10.1 on the row of heights 4.0 5.1 6.0 7.4 61.0
// 9.5 10.8 on days 0 2 4 6 8 10 12, recorded 2026-11-25
var recorded = []float64{14.828571428571427, 7.4, 5.1, 10.8, 20.49981416872799, 5.807142857142855, 1.5035714285714286, 0.5666666666666668}

func TestStatisticsAsRecorded(t *testing.T) {
	got := ours([]float64{0, 2, 4, 6, 8, 10, 12}, []float64{4, 5.1, 6, 7.4, 61, 9.5, 10.8})
	for i, want := range recorded {
		if math.Abs(got[i]-want) > 1e-12*math.Abs(want) {
			t.Errorf("figure %d: %v, scipy %v", i, got[i], want)
		}
	}
}

func TestStatisticsAgainstScipy(t *testing.T) {
	if err := exec.Command(python, "-c", "import scipy").Run(); err != nil {
		t.Skip("no scipy for /usr/bin/python3: make tools")
	}
	rng := rand.New(rand.NewPCG(8, 8))
	var rows [][2][]float64
	for n := 5; n < 45; n++ {
		var x, y []float64
		for i := range n {
			x, y = append(x, float64(2*i)), append(y, math.Round(100*(3+0.5*float64(i)+rng.NormFloat64()))/100)
		}
		rows = append(rows, [2][]float64{x, y})
	}
	text, err := json.Marshal(rows)
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(python, "-c", script)
	run.Stdin = strings.NewReader(string(text))
	out, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	var theirs [][]float64
	if err := json.Unmarshal(out, &theirs); err != nil {
		t.Fatal(err)
	}
	for i, r := range rows {
		for k, v := range ours(r[0], r[1]) {
			if math.Abs(v-theirs[i][k]) > 1e-9*(1+math.Abs(v)) {
				t.Errorf("row %d, figure %d: %v, scipy %v", i, k, v, theirs[i][k])
			}
		}
	}
}
