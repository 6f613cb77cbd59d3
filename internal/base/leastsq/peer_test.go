package leastsq

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"
)

const python = "/usr/bin/python3"

// scipyScript answers every problem on standard input with scipy's own search.
const scipyScript = `
import json, sys
import numpy as np
from scipy.optimize import nnls
out = []
for p in json.load(sys.stdin):
    x, r = nnls(np.array(p["A"], dtype=float), np.array(p["B"], dtype=float))
    out.append({"X": list(x), "R": r})
json.dump(out, sys.stdout)
`

type problem struct {
	A [][]float64
	B []float64
}

// Two hundred random problems of the size of a shelf, against scipy.optimize.nnls.
func TestAgainstScipy(t *testing.T) {
	if err := exec.Command(python, "-c", "import scipy.optimize").Run(); err != nil {
		t.Skip("no scipy for /usr/bin/python3: make tools")
	}
	rng := rand.New(rand.NewPCG(6, 1))
	problems := make([]problem, 200)
	for k := range problems {
		// As many rows as columns at least, so that the best point is one only.
		n := 1 + rng.IntN(9)
		m := n + rng.IntN(6)
		p := problem{B: make([]float64, m)}
		for i := range m {
			p.B[i] = rng.NormFloat64()
			row := make([]float64, n)
			for j := range row {
				row[j] = rng.NormFloat64()
			}
			p.A = append(p.A, row)
		}
		problems[k] = p
	}
	question, err := json.Marshal(problems)
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(python, "-c", scipyScript)
	run.Stdin = bytes.NewReader(question)
	answer, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	var theirs []struct {
		X []float64
		R float64
	}
	if err := json.Unmarshal(answer, &theirs); err != nil {
		t.Fatal(err)
	}
	worst := 0.0
	for k, p := range problems {
		ours, err := NonNegative(rowsOf(p.A...), p.B)
		if err != nil {
			t.Fatal(err)
		}
		for j, x := range theirs[k].X {
			worst = max(worst, math.Abs(x-ours.X[j])/(1+math.Abs(x)))
		}
		worst = max(worst, math.Abs(theirs[k].R-ours.Residual)/(1+theirs[k].R))
	}
	t.Logf("largest difference of %d problems: %.1e", len(problems), worst)
	// Both work in doubles; ten digits leave room for badly conditioned draws.
	if worst > 1e-10 {
		t.Errorf("differs from scipy by %v", worst)
	}
}

// BenchmarkShelf is one shelf of six salts for eleven nutrients.
func BenchmarkShelf(b *testing.B) {
	rng := rand.New(rand.NewPCG(6, 2))
	a, right := NewMatrix(11, 6), make([]float64, 11)
	for i := range a.Values {
		a.Values[i] = rng.Float64()
	}
	for i := range right {
		right[i] = 1
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := NonNegative(a, right); err != nil {
			b.Fatal(err)
		}
	}
}
