package crop

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Where the values below come from.
const (
	harrington = "Harrington & Minges 1954 via Knott's Handbook, appendix 4, read"
	legal      = "7 CFR 201.31, read in the text of 1994"
	binomial   = "binomial worked out with scipy.stats"
	secondary  = "a secondary page without its own source, read"
)

func TestPublishedEmergence(t *testing.T) {
	for _, row := range []struct {
		crop         string
		tempC        float64
		days, normal float64 // normal in % of the best of the table
		source       string
	}{
		{"leaf lettuce", 20, 3, 100, harrington},
		{"leaf lettuce", 30, 3, 100 * 12. / 99, harrington},
		{"leaf lettuce", 5, 15, 100 * 98. / 99, harrington},
		{"spinach", 25, 5, 100 * 28. / 96, harrington},
		{"spinach", 10, 12, 100 * 91. / 96, harrington},
		{"parsley", 20, 14, 100, harrington},
		{"dwarf cherry tomato", 35, 9, 100 * 46. / 98, harrington},
		{"Swiss chard", 20, 12, 100, secondary},
	} {
		c, _ := Find(row.crop)
		e, ok := c.Emergence(row.tempC)
		if !ok {
			t.Errorf("%s at %v °C: nothing comes up", row.crop, row.tempC)
		}
		near(t, row.crop+" days", e.Days, row.days, 1e-12, row.source)
		near(t, row.crop+" normal", 100*e.Normal, row.normal, 1e-9, row.source)
	}
	for name, tempC := range map[string]float64{"leaf lettuce": 35, "spinach": 36, "dwarf cherry tomato": 5, "mint": 20, "strawberry": 20} {
		c, _ := Find(name)
		if e, ok := c.Emergence(tempC); ok {
			t.Errorf("%s comes up at %v °C: %+v", name, tempC, e)
		}
	}
}

func TestPublishedGermination(t *testing.T) {
	for name, percent := range map[string]float64{
		"leaf lettuce": 80, "romaine": 80, "Swiss chard": 65, "kale": 75, "pak choi": 75, "spinach": 60, "parsley": 60, "dwarf cherry tomato": 75,
	} {
		c, _ := Find(name)
		near(t, name, 100*c.Germination(), percent, 1e-12, legal)
	}
}

func TestPublishedSeeds(t *testing.T) {
	for _, row := range []struct {
		plants    int
		p, chance float64
		seeds     int
	}{
		{8, 0.80, 0.95, 13}, {8, 0.60, 0.95, 19}, {8, 0.75, 0.95, 14}, {8, 0.65, 0.95, 17}, {16, 0.80, 0.95, 24}, {32, 0.60, 0.90, 61},
	} {
		if n, ok := SeedsFor(row.plants, row.p, row.chance); n != row.seeds || !ok {
			t.Errorf("%d plants at %v: %d seeds, want %d (%s)", row.plants, row.p, n, row.seeds, binomial)
		}
	}
	near(t, "13 seeds", AtLeast(8, 13, 0.8), 0.969965, 5e-7, binomial)
	near(t, "12 seeds", AtLeast(8, 12, 0.8), 0.927445, 5e-7, binomial)
	near(t, "10 seeds, by division", AtLeast(8, 10, 0.8), 0.678, 5e-4, binomial)
	near(t, "a cell of two", CellChance(0.8, 2), 0.96, 1e-12, binomial)
	s, ok := Sow(8, 0.8, 2, 0.95)
	if s.Cells != 9 || s.Seeds != 18 || !ok {
		t.Errorf("%+v, want 9 cells (%s)", s, binomial)
	}
	near(t, "nine cells", s.Enough, 0.9522, 5e-5, binomial)
}

// One seed fewer is too few; a bigger wish never takes fewer.
func TestSeedsAreTheFewest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plants := rapid.IntRange(1, 60).Draw(t, "plants")
		p, chance := rapid.Float64Range(0.05, 1).Draw(t, "p"), rapid.Float64Range(0.5, 0.99).Draw(t, "chance")
		n, ok := SeedsFor(plants, p, chance)
		if !ok || AtLeast(plants, n, p) < chance || n > plants && AtLeast(plants, n-1, p) >= chance {
			t.Fatalf("%d seeds: %v, one fewer %v", n, AtLeast(plants, n, p), AtLeast(plants, n-1, p))
		}
		if more, _ := SeedsFor(plants+1, p, chance); more <= n && more < plants+1 {
			t.Fatalf("%d seeds for one more, %d without", more, n)
		}
		// Exactly k of n, summed the long way.
		sum, choose := 0.0, 1.0
		for i := range plants {
			sum += choose * math.Pow(p, float64(i)) * math.Pow(1-p, float64(n-i))
			choose *= float64(n-i) / float64(i+1)
		}
		if math.Abs(1-sum-AtLeast(plants, n, p)) > 1e-9 {
			t.Fatalf("the long way %v, tail %v", 1-sum, AtLeast(plants, n, p))
		}
	})
}

func TestSeedCorners(t *testing.T) {
	for _, row := range []struct {
		plants    int
		p, chance float64
		n         int
		ok        bool
	}{
		{0, 0.8, 0.95, 0, true},
		{-3, 0.8, 0.95, 0, true},
		{8, 0, 0.95, 0, false},
		{8, math.NaN(), 0.95, 0, false},
		{8, 0.8, 1, 0, false},
		{8, 1, 1, 8, true},
		{8, 1, 0.95, 8, true},
		{8, 1e-7, 0.95, 0, false},
	} {
		if n, ok := SeedsFor(row.plants, row.p, row.chance); ok != row.ok || ok && n != row.n {
			t.Errorf("%+v: %d, %v", row, n, ok)
		}
	}
	if AtLeast(0, 0, 0.5) != 1 || AtLeast(3, 2, 0.5) != 0 || AtLeast(1, 5, 0) != 0 || AtLeast(5, 5, 1) != 1 {
		t.Error("certain chances are not certain")
	}
	if UsualChance() != 0.95 {
		t.Errorf("%v", UsualChance())
	}
}

// What a class gets of a packet: germination, age, temperature, and its own hands.
func TestChanceOfASeed(t *testing.T) {
	lettuce, _ := Find("leaf lettuce")
	mint, _ := Find("mint")
	for _, row := range []struct {
		name string
		crop Crop
		seed Seed
		want float64
	}{
		{"fresh and cool: 0.8 × 0.85", lettuce, Seed{0.8, 0, 20}, 0.68},
		{"two years old: 0.6 × 0.85", lettuce, Seed{0.8, 2, 20}, 0.51},
		{"on the radiator: 0.8 × 12/99 × 0.85", lettuce, Seed{0.8, 0, 30}, 0.8 * 12 / 99 * 0.85},
		{"too hot for any", lettuce, Seed{0.8, 0, 36}, 0},
		{"older than it lives", lettuce, Seed{0.8, 9, 20}, 0},
		{"a cutting has no temperature of emergence", mint, Seed{0.9, 0, 50}, 0.765},
	} {
		if got := row.crop.Chance(row.seed); math.Abs(got-row.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", row.name, got, row.want)
		}
	}
	for plants, spares := range map[int]int{0: 0, 1: 1, 8: 2, 9: 3} {
		if got := Spares(plants); got != spares {
			t.Errorf("%d plants, %d spares, want %d", plants, got, spares)
		}
	}
}

func TestWhatIsSaidOfTheNursery(t *testing.T) {
	for _, row := range []struct {
		crop  string
		tempC float64
		code  string
	}{
		{"leaf lettuce", 20, ""},
		{"leaf lettuce", 30, "nursery-poor"},
		{"leaf lettuce", 36, "nursery-none"},
		{"leaf lettuce", 5, "nursery-slow"},
		{"spinach", 25, "nursery-poor"},
		{"spinach", 15, ""},
		{"mint", 40, ""},
		{"parsley", 10, "nursery-slow"},
	} {
		c, _ := Find(row.crop)
		code := ""
		for _, f := range c.CheckNursery("tubs[0].nursery.temperature", row.tempC) {
			if code += f.Code; f.Text == "" || f.Hint == "" || f.Field == "" {
				t.Errorf("%+v", f)
			}
		}
		if code != row.code {
			t.Errorf("%s at %v °C: said %q, want %q", row.crop, row.tempC, code, row.code)
		}
	}
	lettuce, _ := Find("leaf lettuce")
	if best := lettuce.bestNursery(); best != 25 {
		t.Errorf("lettuce is best sown at %v °C", best)
	}
}

// Every table of emergence is read whole, and every crop's exists.
func TestTablesOfEmergence(t *testing.T) {
	for _, name := range Names() {
		c, _ := Find(name)
		row, _ := c.growthRow("emergence")
		_, grows := c.Emergence(20)
		if grows != (row.Word != "none") {
			t.Errorf("%s takes the table %s, which gives nothing at 20 °C", name, row.Word)
		}
		if c.SeedsInACell() < 1 || c.Germination() <= 0 || c.Germination() > 1 {
			t.Errorf("%s: %d seeds, %v", name, c.SeedsInACell(), c.Germination())
		}
	}
	if got := tableOf("5:15 x 10:7 a:b"); len(got) != 2 || got[1] != [2]float64{10, 7} {
		t.Errorf("%v", got)
	}
}
