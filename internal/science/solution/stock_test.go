package solution

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func lettuceStocks(t testing.TB, strength, coldest float64) Stocks {
	t.Helper()
	var shelf []Fertiliser
	var grams []float64
	r, err := RecipeNamed(DefaultRecipe)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range r.Salts {
		f, _ := SaltNamed(s.Salt)
		shelf, grams = append(shelf, f), append(grams, s.MgL/1000)
	}
	s, err := MakeStocks(shelf, grams, strength, 1, coldest, 25, "stocks")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Calcium stands apart from sulfate and phosphate, as in the published tanks.
func TestPublishedTanks(t *testing.T) {
	s := lettuceStocks(t, 100, 20)
	names := func(tank Tank) (out []string) {
		for _, p := range tank.Portions {
			out = append(out, p.Name)
		}
		return out
	}
	a, b := names(s.A), names(s.B)
	for _, want := range []string{"calcium nitrate, fertiliser grade", "ammonium nitrate", "potassium nitrate"} {
		if !slices.Contains(a, want) {
			t.Errorf("tank A holds %v, not %s (Mattson & Peters 2014, %s)", a, want, fromMind)
		}
	}
	for _, want := range []string{"monopotassium phosphate", "magnesium sulfate, Epsom salt", "manganese sulfate", "zinc sulfate", "copper sulfate"} {
		if !slices.Contains(b, want) {
			t.Errorf("tank B holds %v, not %s (Mattson & Peters 2014, %s)", b, want, fromMind)
		}
	}
	if s.DoseMLPerL != 10 || s.Fills != 4 || s.LifeDays != 90 {
		t.Errorf("%v mL for a litre, %v fills of 25 L, %v days", s.DoseMLPerL, s.Fills, s.LifeDays)
	}
	if len(s.Findings) != 0 || s.A.Gypsum > 0 || s.B.Gypsum > 0 || s.A.Brushite > 0 || s.B.Brushite > 0 {
		t.Errorf("apart they are clear: %+v", s.Findings)
	}
	if gypsum, brushite := s.Together(); gypsum <= 0 || brushite <= 0 {
		t.Errorf("in one tank: gypsum %.2f, brushite %.2f, want both above 0 (%s)", gypsum, brushite, phreeqc)
	}
}

// Potassium nitrate is the one that falls out in a cool room.
func TestPublishedSolubility(t *testing.T) {
	kno3, _ := SaltNamed("potassium-nitrate")
	for _, c := range []struct{ tempC, grams float64 }{{10, 21}, {20, 31.6}, {15, 26.3}, {30, 31.6}} {
		if got := kno3.dissolves.at(c.tempC); math.Abs(got-c.grams) > 1e-9 {
			t.Errorf("at %v °C 100 g of water take %v g, want %v (textbook at 10 °C, read; CRC at 20 °C, %s)", c.tempC, got, c.grams, fromMind)
		}
	}
	if got := kno3.dissolves.at(0); got >= 21 || got < 13 {
		t.Errorf("at 0 °C %v g, want under 21 and above the 13.3 of CRC (%s)", got, fromMind)
	}
	strong := lettuceStocks(t, 400, 10)
	if got := strings.Join(codes(strong.Findings), " "); !strings.Contains(got, "stock-cold") {
		t.Errorf("400 times at 10 °C: %s", got)
	}
	if warm := lettuceStocks(t, 100, 10); len(warm.Findings) != 0 || warm.A.Load >= 1 {
		t.Errorf("100 times at 10 °C: load %v, %v", warm.A.Load, warm.Findings)
	}
}

func TestStocksThatCannotBe(t *testing.T) {
	powder, err := Label{Name: "all in one", Declares: []Declared{{"N", 10}, {"P2O5", 5}, {"K2O", 15}, {"Ca", 8}, {"S", 3}}}.Read()
	if err != nil {
		t.Fatal(err)
	}
	s, err := MakeStocks([]Fertiliser{powder}, []float64{1}, 100, 1, 20, 25, "stocks")
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Apart) != 1 || !slices.Equal(codes(s.Findings), []string{"stock-one-bag"}) {
		t.Errorf("%+v", s)
	}
	for _, c := range []struct{ strength, litres float64 }{{1, 1}, {1000, 1}, {math.NaN(), 1}, {100, 0}, {100, 1e6}, {100, math.NaN()}} {
		if _, err := MakeStocks(nil, nil, c.strength, c.litres, 20, 25, "stocks"); err == nil {
			t.Errorf("%+v is taken", c)
		}
	}
}
