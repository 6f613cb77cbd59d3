package solution

import (
	"os"
	"testing"
)

// howMany waters and recipes are put to the peer: a thousand with
// ROOTBELL_PEER=all, which takes a minute or two, else a fifth of that.
func howMany() int {
	if os.Getenv("ROOTBELL_PEER") == "all" {
		return 1000
	}
	return 200
}

// The same waters through this speciation and through numpy's, pH and EC of
// each; quality is the largest difference.
func BenchmarkSpeciationAgainstNumpy(b *testing.B) {
	needs(b, "scipy.optimize")
	all := waters(howMany())
	var theirs restAnswer
	ask(b, []string{peerScript, "speciate"}, map[string]any{"waters": forPeer(all)}, &theirs)
	c := at(b, 25)
	for b.Loop() {
		for _, w := range all {
			c.Equilibrium(w, Closed).Conductivity()
		}
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N), "ours-s")
	b.ReportMetric(theirs.Seconds, "peer-s")
	b.ReportMetric(50, "goal")
	b.ReportMetric(apart(c, all, theirs), "quality")
}

// The same recipes through this fit and through scipy's nnls, from shares and
// target to grams; quality is the largest difference in g/L.
func BenchmarkRecipesAgainstScipy(b *testing.B) {
	needs(b, "scipy.optimize")
	shelf, targets := shelfAndTargets(1000)
	var theirs gramsAnswer
	ask(b, []string{peerScript, "recipes"}, map[string]any{"shares": sharesOf(shelf), "targets": targets}, &theirs)
	fit := newPlainFit(b, shelf)
	for b.Loop() {
		for _, target := range targets {
			if _, err := fit.to(target); err != nil {
				b.Fatal(err)
			}
		}
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(b.N), "ours-s")
	b.ReportMetric(theirs.Seconds, "peer-s")
	b.ReportMetric(50, "goal")
	worst, err := gramsApart(fit, targets, theirs)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(worst, "quality")
}

// BenchmarkMix is the whole mix of a tub from salts on hard water with acid.
func BenchmarkMix(b *testing.B) {
	o := order(b)
	for b.Loop() {
		if _, err := Mix(o); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	for b.Loop() {
		At(20)
	}
}

func BenchmarkEquilibrium(b *testing.B) {
	c, w := at(b, 25), recipeIons["Hoagland & Arnon no. 2"].Times(1e-3)
	for b.Loop() {
		c.Equilibrium(w, Closed)
	}
}
