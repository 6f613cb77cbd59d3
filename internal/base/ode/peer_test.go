package ode

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"
)

const python = "/usr/bin/python3"

// scipyScript follows each pair of species with scipy's method of order eight.
const scipyScript = `
import json, sys
from scipy.integrate import solve_ivp
out = []
for p in json.load(sys.stdin):
    b, c, g, d = p["H"]
    f = lambda t, y: [y[0] * (b - c * y[1]), y[1] * (g * y[0] - d)]
    out.append(list(solve_ivp(f, (0, p["Span"]), p["Start"], method="DOP853", rtol=1e-12, atol=1e-13).y[:, -1]))
json.dump(out, sys.stdout)
`

type question struct {
	H     [4]float64
	Start [2]float64
	Span  float64
}

// A hundred random pairs against scipy.integrate.solve_ivp.
func TestAgainstScipy(t *testing.T) {
	if err := exec.Command(python, "-c", "import scipy.integrate").Run(); err != nil {
		t.Skip("no scipy for /usr/bin/python3: make tools")
	}
	rng := rand.New(rand.NewPCG(5, 4))
	draw := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	questions := make([]question, 100)
	for i := range questions {
		questions[i] = question{
			H:     [4]float64{draw(0.2, 1.5), draw(0.2, 1.5), draw(0.2, 1.5), draw(0.2, 1.5)},
			Start: [2]float64{draw(0.2, 2), draw(0.2, 2)}, Span: draw(1, 20),
		}
	}
	text, err := json.Marshal(questions)
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(python, "-c", scipyScript)
	run.Stdin = bytes.NewReader(text)
	answer, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	var theirs [][2]float64
	if err := json.Unmarshal(answer, &theirs); err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for i, q := range questions {
		h := hunt{q.H[0], q.H[1], q.H[2], q.H[3]}
		y := q.Start
		if _, err := New(2, Tolerance{Relative: 1e-11, Absolute: 1e-13}).Solve(h.system, 0, q.Span, y[:]); err != nil {
			t.Fatal(err)
		}
		for j := range y {
			worst = max(worst, math.Abs(y[j]-theirs[i][j])/(1e-3+theirs[i][j]))
		}
	}
	t.Logf("largest difference of %d pairs: %.1e", len(questions), worst)
	// Errors of some hundred steps at 1e-11 grow along a cycle of prey and hunter.
	if worst > 1e-7 {
		t.Errorf("differs from scipy by %v", worst)
	}
}
