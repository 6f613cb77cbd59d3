package crop

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"
)

const (
	python     = "/usr/bin/python3"
	peerScript = "../../../bench/peers/growth.py"
)

// ask runs a script with a question as JSON and reads its answer as JSON.
func ask(t testing.TB, script []string, question, answer any) {
	t.Helper()
	if err := exec.Command(python, "-c", "import scipy.integrate, scipy.stats").Run(); err != nil {
		t.Skip("no scipy for /usr/bin/python3: make tools")
	}
	text, err := json.Marshal(question)
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(python, script...)
	run.Stdin = bytes.NewReader(text)
	var complaint bytes.Buffer
	run.Stderr = &complaint
	out, err := run.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, complaint.String())
	}
	if err := json.Unmarshal(out, answer); err != nil {
		t.Fatal(err)
	}
}

type seasons struct {
	Seasons [][6]float64 `json:"seasons"`
	Days    int          `json:"days"`
}

type ends struct {
	Ends    [][2]float64 `json:"ends"`
	Seconds float64      `json:"seconds"`
}

// drawSeasons are rooms and lamps as they occur; the hours are the same for all
// where they are given.
func drawSeasons(n int, seed uint64, hours float64) seasons {
	rng := rand.New(rand.NewPCG(7, seed))
	draw := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	all := seasons{Days: 50}
	for range n {
		lit := hours
		if lit == 0 {
			lit = draw(10, 20)
		}
		all.Seasons = append(all.Seasons, [6]float64{draw(80, 400), lit, draw(14, 28), draw(380, 1500), draw(8, 45), draw(0.05, 0.15)})
	}
	return all
}

func (all seasons) ours() [][2]float64 {
	out := make([][2]float64, len(all.Seasons))
	m := Published()
	for i, s := range all.Seasons {
		m.RootShare = s[5]
		light, night := m.Under(Air{s[2], s[3], s[0] / daylight}), m.Under(Air{s[2], s[3], 0})
		end := m.Start(s[4])
		for range all.Days {
			end = light.Grow(end, s[1]*3600)
			end = night.Grow(end, (24-s[1])*3600)
		}
		out[i] = [2]float64{end.Store, end.Structure}
	}
	return out
}

func apart(a, b [][2]float64) float64 {
	worst := 0.0
	for i := range a {
		worst = max(worst, math.Abs(a[i][0]/b[i][0]-1), math.Abs(a[i][1]/b[i][1]-1))
	}
	return worst
}

// Twenty random rooms over fifty days, at the usual precision.
func TestGrowthAgainstScipy(t *testing.T) {
	all := drawSeasons(20, 1, 0)
	var theirs ends
	ask(t, []string{peerScript, "dop853"}, all, &theirs)
	worst := apart(all.ours(), theirs.Ends)
	t.Logf("largest difference of %d seasons: %.1e", len(all.Seasons), worst)
	if worst > 1e-6 {
		t.Errorf("differs from DOP853 by %.1e of the mass", worst)
	}
}

// Chances and numbers of seeds against scipy.stats.binom.
func TestSeedsAgainstScipy(t *testing.T) {
	const script = `
import json, sys
from scipy.stats import binom
out = []
for k, n, p in json.load(sys.stdin):
    out.append(float(binom.sf(k - 1, n, p)))
json.dump(out, sys.stdout)`
	rng := rand.New(rand.NewPCG(7, 3))
	var rows [][3]float64
	for range 500 {
		n := 1 + rng.IntN(300)
		rows = append(rows, [3]float64{float64(rng.IntN(n + 2)), float64(n), 0.02 + 0.97*rng.Float64()})
	}
	var theirs []float64
	ask(t, []string{"-c", script}, rows, &theirs)
	worst := 0.0
	for i, r := range rows {
		worst = max(worst, math.Abs(AtLeast(int(r[0]), int(r[1]), r[2])-theirs[i]))
	}
	t.Logf("largest difference of %d chances: %.1e", len(rows), worst)
	if worst > 1e-11 {
		t.Errorf("differs from scipy by %v", worst)
	}
}
