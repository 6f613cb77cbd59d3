package quantity

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestChancesAreSaidAsPeopleKnowThem(t *testing.T) {
	for _, c := range []struct {
		p                float64
		words, inHundred string
	}{
		{0, "less than 1 in 100", "under 1"},
		{0.004, "less than 1 in 100", "under 1"},
		{0.01, "about 1 in 100", "1"},
		{0.05, "about 1 in 20", "5"},
		{0.23, "about 1 in 4", "23"},
		{0.5, "about 1 in 2", "50"},
		{0.8, "about 4 in 5", "80"},
		{0.88, "about 9 in 10", "88"},
		{0.991, "about 99 in 100", "99"},
		{0.996, "more than 99 in 100", "over 99"},
		{1, "more than 99 in 100", "over 99"},
		{1.2, "–", "–"},
		{math.NaN(), "–", "–"},
	} {
		if got := Chance(c.p); got != c.words {
			t.Errorf("%v is said as %q, want %q", c.p, got, c.words)
		}
		if got := InHundred(c.p); got != c.inHundred {
			t.Errorf("%v in 100 is %q, want %q", c.p, got, c.inHundred)
		}
	}
}

// What is said is never far off: the odds by less than half, either way.
func TestASaidChanceIsNearTheTrueOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(leastChance, mostChance).Draw(t, "chance")
		var k, n int
		if _, err := fmt.Sscanf(Chance(p), "about %d in %d", &k, &n); err != nil {
			t.Fatal(err)
		}
		q := float64(k) / float64(n)
		if off := q / (1 - q) / (p / (1 - p)); off < 0.49 || off > 2.05 {
			t.Fatalf("%v is said as %d in %d", p, k, n)
		}
	})
}
