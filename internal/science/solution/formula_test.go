package solution

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func mustFormula(t testing.TB, text string) Formula {
	t.Helper()
	f, err := ParseFormula(text)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return f
}

func TestFormulasAreRead(t *testing.T) {
	for _, c := range []struct {
		text   string
		parts  []Part
		charge int
	}{
		{"KNO3", []Part{{"K", 1}, {"N", 1}, {"O", 3}}, 0},
		{"Ca(NO3)2.4H2O", []Part{{"Ca", 1}, {"N", 2}, {"O", 10}, {"H", 8}}, 0},
		{"Ca(NO3)2·4H2O", []Part{{"Ca", 1}, {"N", 2}, {"O", 10}, {"H", 8}}, 0},
		{"Ca(NO₃)₂•4H₂O", []Part{{"Ca", 1}, {"N", 2}, {"O", 10}, {"H", 8}}, 0},
		{"5Ca(NO3)2.NH4NO3.10H2O", []Part{{"Ca", 5}, {"N", 12}, {"O", 43}, {"H", 24}}, 0},
		{"K4[Fe(CN)6]", []Part{{"K", 4}, {"Fe", 1}, {"C", 6}, {"N", 6}}, 0},
		{"CaSO4.0.5H2O", []Part{{"Ca", 1}, {"S", 1}, {"O", 4.5}, {"H", 1}}, 0},
		{"NH4+", []Part{{"N", 1}, {"H", 4}}, 1},
		{"SO4^2-", []Part{{"S", 1}, {"O", 4}}, -2},
		{"SO₄²⁻", []Part{{"S", 1}, {"O", 4}}, -2},
		{"PO4-3", []Part{{"P", 1}, {"O", 4}}, -3},
		{"PO4---", []Part{{"P", 1}, {"O", 4}}, -3},
		{"Ca+2", []Part{{"Ca", 1}}, 2},
		{"Ca^2+", []Part{{"Ca", 1}}, 2},
		{"  K  ", []Part{{"K", 1}}, 0},
	} {
		f, err := ParseFormula(c.text)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if !slices.Equal(f.Parts, c.parts) || f.Charge != c.charge {
			t.Errorf("%s: %v with charge %d, want %v, %d", c.text, f.Parts, f.Charge, c.parts, c.charge)
		}
	}
}

func TestWhatIsNoFormula(t *testing.T) {
	for _, text := range []string{
		"", " ", "4", "kno3", "KN O3", "Ca(NO3", "CaNO3)2", "Xx2O", "KNO3.", ".KNO3", "K()", "Ca2+", "SO4^", "SO4^2", "K+-", "SO4^0-",
		"((((((((((K))))))))))", "K99999999", "0K", "K0", "KNO3é", "99999999999999999999K",
	} {
		if f, err := ParseFormula(text); !errors.Is(err, ErrFormula) {
			t.Errorf("%q is read as %v, %v", text, f, err)
		}
	}
}

// Brackets and factors only repeat: the mass of n(A) is n times that of A, and
// joining with a dot adds.
func TestMassesAdd(t *testing.T) {
	symbols := make([]string, 0, len(atoms))
	for s := range atoms {
		symbols = append(symbols, s)
	}
	slices.Sort(symbols)
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.SampledFrom(symbols).Draw(t, "a") + rapid.SampledFrom([]string{"", "2", "13"}).Draw(t, "count")
		b := rapid.SampledFrom(symbols).Draw(t, "b")
		n := rapid.SampledFrom([]string{"2", "5", "12"}).Draw(t, "n")
		mass := func(text string) float64 {
			f, err := ParseFormula(text)
			if err != nil {
				t.Fatal(err)
			}
			return f.MolarMass()
		}
		times := map[string]float64{"2": 2, "5": 5, "12": 12}[n]
		for text, want := range map[string]float64{
			"(" + a + b + ")" + n:    times * (mass(a) + mass(b)),
			n + a + "." + b:          times*mass(a) + mass(b),
			a + "[" + b + "]" + n:    mass(a) + times*mass(b),
			a + "·" + n + b + "^2-":  mass(a) + times*mass(b),
			"(" + a + ")(" + b + ")": mass(a) + mass(b),
		} {
			if got := mass(text); math.Abs(got-want) > 1e-9*want {
				t.Fatalf("%s weighs %v, want %v", text, got, want)
			}
		}
	})
}

func FuzzParseFormula(f *testing.F) {
	for _, text := range []string{"KNO3", "5Ca(NO3)2.NH4NO3.10H2O", "K4[Fe(CN)6]", "SO₄²⁻", "CaSO4.0.5H2O", "((", "^", "1.5.5H", "Ca2+"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ParseFormula(text)
		if err != nil {
			if !errors.Is(err, ErrFormula) {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		if m := got.MolarMass(); !(m > 0) || math.IsInf(m, 0) {
			t.Fatalf("%q weighs %v", text, m)
		}
		share := 0.0
		for _, p := range got.Parts {
			share += got.Content(p.Element)
		}
		if math.Abs(share-1) > 1e-9 {
			t.Fatalf("%q: the shares add up to %v", text, share)
		}
	})
}
