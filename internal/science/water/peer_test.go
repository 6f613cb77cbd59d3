package water

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"
)

const python = "/usr/bin/python3"

// scipyScript finds each leaf's temperature by bracketing and gives it with the
// water breathed out.
const scipyScript = `
import json, math, sys
from scipy.optimize import brentq
out = []
for t, rh, ppfd, lai, ra in json.load(sys.stdin):
    es = lambda x: 0.6108 * math.exp(17.27 * x / (x + 237.3))
    chi = lambda e, x: e * 1000 * 18.015 / (8.314 * (x + 273.15))
    rs = 60 * (1500 + ppfd) / (200 + ppfd)
    net = 0.94 * ppfd / 4.57 * (1 - math.exp(-0.9 * lai))
    le = lambda x: lai * 2450 * (chi(es(x), x) - chi(es(t) * rh, t)) / (rs + ra)
    leaf = brentq(lambda x: net - lai * 1215.6 * (x - t) / ra - le(x), t - 40, t + 80, xtol=1e-12)
    out.append([leaf, le(leaf) / 2450 * 3600])
json.dump(out, sys.stdout)
`

// Two hundred rooms and lights against scipy.optimize.brentq.
func TestAgainstScipy(t *testing.T) {
	if err := exec.Command(python, "-c", "import scipy.optimize").Run(); err != nil {
		t.Skip("no scipy for /usr/bin/python3: make tools")
	}
	rng := rand.New(rand.NewPCG(7, 2))
	draw := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	cases := make([][5]float64, 200)
	for i := range cases {
		cases[i] = [5]float64{draw(5, 38), draw(0.1, 0.95), draw(0, 900), draw(0.02, 3), draw(60, 300)}
	}
	question, err := json.Marshal(cases)
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(python, "-c", scipyScript)
	run.Stdin = bytes.NewReader(question)
	answer, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	var theirs [][2]float64
	if err := json.Unmarshal(answer, &theirs); err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for i, c := range cases {
		canopy := NewCanopy(Room{c[0], c[1]}, c[2], c[2]/4.57, c[4])
		leaf := canopy.Breathe(c[3])
		worst = max(worst, math.Abs(leaf.TempC-theirs[i][0]), math.Abs(leaf.GM2H/theirs[i][1]-1))
	}
	t.Logf("largest difference of %d leaves, in kelvin or as a share: %.1e", len(cases), worst)
	if worst > 1e-8 {
		t.Errorf("differs from scipy by %v", worst)
	}
}
