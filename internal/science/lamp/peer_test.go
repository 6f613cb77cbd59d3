package lamp

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"
)

const python = "/usr/bin/python3"

// scipyScript sums the patches of each panel by scipy's own quadrature.
const scipyScript = `
import json, math, sys
from scipy.integrate import dblquad
out = []
for l in json.load(sys.stdin):
    w, d, h, x, y, flux = l
    f = lambda v, u: h * h / (math.pi * ((u - x) ** 2 + (v - y) ** 2 + h * h) ** 2)
    out.append(flux / (w * d) * dblquad(f, -w / 2, w / 2, -d / 2, d / 2, epsabs=1e-12, epsrel=1e-11)[0])
json.dump(out, sys.stdout)
`

// The closed form against scipy.integrate.dblquad, at places under the panel,
// at its rim and far beyond.
func TestAgainstScipy(t *testing.T) {
	if err := exec.Command(python, "-c", "import scipy.integrate").Run(); err != nil {
		t.Skip("no scipy for /usr/bin/python3: make tools")
	}
	rng := rand.New(rand.NewPCG(7, 1))
	draw := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	panels := make([][6]float64, 60)
	for i := range panels {
		panels[i] = [6]float64{draw(0.02, 0.8), draw(0.02, 1.5), draw(0.15, 1), draw(-1, 1), draw(-1, 1), 100}
	}
	question, err := json.Marshal(panels)
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(python, "-c", scipyScript)
	run.Stdin = bytes.NewReader(question)
	answer, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	var theirs []float64
	if err := json.Unmarshal(answer, &theirs); err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for i, p := range panels {
		ours := Lamp{AlongXMM: 1000 * p[0], AlongYMM: 1000 * p[1], AboveMM: 1000 * p[2], FluxUmolS: p[5]}.PPFD(1000*p[3], 1000*p[4])
		worst = max(worst, math.Abs(ours/theirs[i]-1))
	}
	t.Logf("largest difference of %d panels: %.1e", len(panels), worst)
	if worst > 1e-9 {
		t.Errorf("differs from scipy by %v", worst)
	}
}
