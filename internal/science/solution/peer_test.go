package solution

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"

	"rootbell/internal/base/leastsq"
)

const python = "/usr/bin/python3"

// ask runs a script with a question as JSON and reads its answer as JSON.
func ask(t testing.TB, script []string, question, answer any) {
	t.Helper()
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

func needs(t testing.TB, module string) {
	t.Helper()
	if err := exec.Command(python, "-c", "import "+module).Run(); err != nil {
		t.Skip("no " + module + " for /usr/bin/python3: make tools")
	}
}

// Every salt and reagent against python3-periodictable, whose weights are some
// years older: they agree to a few parts in ten thousand, not to the last digit.
func TestMolarMassesAgainstPeriodictable(t *testing.T) {
	needs(t, "periodictable")
	const script = `
import json, re, sys, periodictable
def part(p):
    n, rest = re.match(r'(\d*)(.*)', p).groups()
    return int(n or 1) * periodictable.formula(rest).mass
def mass(f):
    return sum(part(p) for p in f.split('.'))
json.dump({f: mass(f) for f in json.load(sys.stdin)}, sys.stdout)`
	var formulas []string
	for _, id := range SaltNames() {
		f, _, _ := SaltFormula(id)
		formulas = append(formulas, f.Text)
	}
	for _, r := range reagentRows {
		formulas = append(formulas, r.formula)
	}
	theirs := map[string]float64{}
	ask(t, []string{"-c", script}, formulas, &theirs)
	worst := 0.0
	for _, text := range formulas {
		mass := mustFormula(t, text).MolarMass()
		off := math.Abs(mass/theirs[text] - 1)
		worst = max(worst, off)
		// Zn moved from 65.409 to 65.38 and S from 32.065 to 32.06 since.
		if off > 3e-4 {
			t.Errorf("%s: %.4f g/mol, periodictable %.4f", text, mass, theirs[text])
		}
	}
	t.Logf("largest difference of %d formulas: %.1e", len(formulas), worst)
}

const peerScript = "../../../bench/peers/solution.py"

// waters are feeds and tap waters as they occur, with every component in turn
// left out: closed, and balanced by carbonate or nitrate.
func waters(count int) []Ions {
	rng := rand.New(rand.NewPCG(6, 12))
	out := make([]Ions, count)
	for k := range out {
		var w Ions
		for _, i := range []Ion{NH4, K, Na, Ca, Mg, Cl, SO4, PO4, Borate, Citrate} {
			if rng.IntN(5) > 0 {
				w[i] = 5e-3 * rng.Float64() * rng.Float64()
			}
		}
		w[Citrate] /= 10
		w[CO3] = 4e-3 * rng.Float64()
		// A pH between 4 and 9 in the end: the rest of the charge is nitrate.
		spare := w.strongCharge() - w[PO4] - 2*w[Citrate] - w[CO3]*rng.Float64()
		if spare > 0 {
			w[NO3] = spare
		} else {
			w[K] -= spare
		}
		out[k] = w
	}
	return out
}

// forPeer are the components that the peer knows, in its order.
func forPeer(all []Ions) [][]float64 {
	out := make([][]float64, len(all))
	for k, w := range all {
		for _, i := range []Ion{NH4, K, Na, Ca, Mg, NO3, Cl, SO4, CO3, PO4, Borate, Citrate} {
			out[k] = append(out[k], w[i])
		}
	}
	return out
}

type restAnswer struct {
	PH, EC  []float64
	Seconds float64
}

// apart is the largest difference to the peer in pH, and in EC as a share.
func apart(c *Chemistry, all []Ions, theirs restAnswer) (worst float64) {
	for k, w := range all {
		s := c.Equilibrium(w, Closed)
		worst = max(worst, math.Abs(s.PH-theirs.PH[k]), math.Abs(s.Conductivity()/theirs.EC[k]-1))
	}
	return worst
}

// The same waters by Newton's method on all components at once, in numpy, with
// constants typed a second time.
func TestSpeciationAgainstNumpy(t *testing.T) {
	needs(t, "scipy.optimize")
	all := waters(40)
	var theirs restAnswer
	ask(t, []string{peerScript, "speciate"}, map[string]any{"waters": forPeer(all)}, &theirs)
	worst := apart(at(t, 25), all, theirs)
	t.Logf("largest difference of %d waters: %.1e in pH or EC", len(all), worst)
	if worst > 1e-6 {
		t.Errorf("differs from the peer by %v", worst)
	}
}

// shelfAndTargets are six salts and random targets that they may or may not
// reach.
func shelfAndTargets(count int) ([]Fertiliser, [][]float64) {
	var shelf []Fertiliser
	for _, id := range []string{"calcium-nitrate-double-salt", "potassium-nitrate", "potassium-dihydrogen-phosphate", "magnesium-sulfate", "ammonium-nitrate", "potassium-sulfate"} {
		f, _ := SaltNamed(id)
		shelf = append(shelf, f)
	}
	rng := rand.New(rand.NewPCG(6, 13))
	targets := make([][]float64, count)
	for k := range targets {
		for _, middle := range []float64{150, 31, 210, 90, 24, 40} {
			targets[k] = append(targets[k], middle*(0.4+1.2*rng.Float64()))
		}
	}
	return shelf, targets
}

var peerAims = []Nutrient{Nitrogen, Phosphorus, Potassium, Calcium, Magnesium, Sulfur}

func sharesOf(shelf []Fertiliser) [][]float64 {
	out := make([][]float64, len(shelf))
	for j, f := range shelf {
		for _, n := range peerAims {
			out[j] = append(out[j], f.Share[n])
		}
	}
	return out
}

type gramsAnswer struct {
	Grams   [][]float64
	Seconds float64
}

// plainFit is the fit without limits and with all weights one, as the peer's:
// how the shelf's shares, prepared once, serve one target after another.
type plainFit struct {
	*leastsq.Repeated
	want, weight, grams []float64
}

func newPlainFit(tb testing.TB, shelf []Fertiliser) *plainFit {
	tb.Helper()
	a := leastsq.NewMatrix(len(peerAims), len(shelf))
	for i, n := range peerAims {
		for j, f := range shelf {
			a.Set(i, j, 1000*f.Share[n])
		}
	}
	r, err := leastsq.NewRepeated(a)
	if err != nil {
		tb.Fatal(err)
	}
	return &plainFit{r, make([]float64, a.Rows), make([]float64, a.Rows), make([]float64, a.Columns)}
}

func (p *plainFit) to(target []float64) ([]float64, error) {
	for i, t := range target {
		p.weight[i] = 1 / t
	}
	return p.grams, p.Fit(p.grams, target, p.weight)
}

func gramsApart(fit *plainFit, targets [][]float64, theirs gramsAnswer) (worst float64, err error) {
	for k, target := range targets {
		ours, err := fit.to(target)
		if err != nil {
			return 0, err
		}
		for j, g := range theirs.Grams[k] {
			worst = max(worst, math.Abs(g-ours[j]))
		}
	}
	return worst, nil
}

func TestRecipesAgainstScipy(t *testing.T) {
	needs(t, "scipy.optimize")
	shelf, targets := shelfAndTargets(200)
	var theirs gramsAnswer
	ask(t, []string{peerScript, "recipes"}, map[string]any{"shares": sharesOf(shelf), "targets": targets}, &theirs)
	worst, err := gramsApart(newPlainFit(t, shelf), targets, theirs)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("largest difference of %d recipes: %.1e g/L", len(targets), worst)
	if worst > 1e-9 {
		t.Errorf("differs from scipy by %v g/L", worst)
	}
}
