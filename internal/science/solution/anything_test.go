package solution

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func drawTap(t *rapid.T) Tap {
	figure := func(name string, most float64) Figure {
		switch rapid.IntRange(0, 2).Draw(t, name+" known") {
		case 0:
			return Figure{}
		case 1:
			return Exactly(rapid.Float64Range(0, most).Draw(t, name))
		}
		low := rapid.Float64Range(0, most).Draw(t, name)
		return Between(low, low*1.2)
	}
	tap := Tap{
		Alkalinity: figure("alkalinity", 350), EC: figure("EC", 1.5), Calcium: figure("calcium", 160), Magnesium: figure("magnesium", 50),
		Sodium: figure("sodium", 90), Potassium: figure("potassium", 10), Chloride: figure("chloride", 150), Sulfate: figure("sulfate", 150),
		NitrateN: figure("nitrate", 12), PhosphateP: figure("phosphate", 2), Iron: figure("iron", 0.5), Boron: figure("boron", 0.3), Chlorine: figure("chlorine", 3),
		Softened: rapid.Bool().Draw(t, "softened"),
	}
	if rapid.Bool().Draw(t, "pH known") {
		tap.PH = Exactly(rapid.Float64Range(5.5, 9.5).Draw(t, "pH"))
	}
	return tap
}

func drawOrder(t *rapid.T) Order {
	recipe, err := RecipeNamed(rapid.SampledFrom(RecipeNames()).Draw(t, "recipe"))
	if err != nil {
		t.Fatal(err)
	}
	tap := drawTap(t)
	if rapid.Bool().Draw(t, "needs acid") {
		tap.Alkalinity, tap.PH = Exactly(60+rapid.Float64Range(0, 240).Draw(t, "more alkalinity")), Exactly(7.4)
	}
	water, err := tap.Water()
	if err != nil {
		t.Fatal(err)
	}
	o := Order{
		Litres: rapid.Float64Range(2, 150).Draw(t, "litres"), Water: water, MgL: recipe.MgL, PH: rapid.SampledFrom([]float64{0, 5.5, 5.8, 6.2}).Draw(t, "target"),
		EC: rapid.SampledFrom([]float64{0, 0.8, 1.4, 2.2}).Draw(t, "EC wanted"), Air: Air{rapid.SampledFrom([]float64{420, 800}).Draw(t, "air")},
		TemperatureC: rapid.Float64Range(5, 32).Draw(t, "temperature"), Planted: rapid.Bool().Draw(t, "planted"),
		Tools: Tools{ScaleStepG: rapid.SampledFrom([]float64{0, 0.01, 0.1, 1}).Draw(t, "scale")}, Field: "fertilisers",
	}
	for _, id := range rapid.SliceOfNDistinct(rapid.SampledFrom(SaltNames()), 1, 9, rapid.ID[string]).Draw(t, "shelf") {
		f, _ := SaltNamed(id)
		o.Shelf = append(o.Shelf, f)
	}
	if rapid.Bool().Draw(t, "a bottle too") {
		f, err := Label{Name: "bottle", Liquid: true, DensityKgL: 1.15, Declares: []Declared{{"N", 4}, {"P2O5", 3}, {"K2O", 6}, {"Fe", 0.05}}}.Read()
		if err != nil {
			t.Fatal(err)
		}
		o.Shelf = append(o.Shelf, f)
	}
	if rapid.Bool().Draw(t, "an acid") {
		r, err := NewReagent(rapid.SampledFrom([]string{"sulfuric", "phosphoric", "nitric", "citric"}).Draw(t, "acid"), 10, 1.05, false)
		if err != nil {
			t.Fatal(err)
		}
		o.Acid = &r
	}
	return o
}

// Whatever the tap, the shelf and the wish: an answer that can be measured, or a
// fault with a hint; the same twice; and the rules of safety hold.
func TestAnythingGoesOrSaysWhyNot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := drawOrder(t)
		b, err := Mix(o)
		again, _ := Mix(o)
		if !reflect.DeepEqual(b.Portions, again.Portions) || !reflect.DeepEqual(b.Findings, again.Findings) || b.MgL != again.MgL {
			t.Fatal("the same order twice gives two answers")
		}
		if err != nil {
			if f, ok := err.(*Fault); !ok || f.Hint == "" {
				t.Fatalf("%v", err)
			}
			return
		}
		for _, p := range b.Portions {
			if !(p.RoundedGrams >= 0) || math.IsInf(p.RoundedGrams, 0) || math.Abs(p.RoundedGrams-p.Grams) > 2.1*p.step {
				t.Fatalf("%+v", p)
			}
		}
		for _, v := range []float64{b.Band.Low, b.Band.EC, b.Band.High, b.PHAfterSalts, b.Acid.OpenML, b.Acid.ClosedML, b.Acid.DoseTodayML} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				t.Fatalf("%+v", b)
			}
		}
		safe(t, o, b)
		for _, f := range b.Findings {
			if f.Hint == "" || !strings.HasSuffix(f.Text, ".") || strings.ContainsAny(f.Text+f.Hint, "!") || strings.Contains(f.Text, "%!") {
				t.Fatalf("%+v", f)
			}
		}
	})
}

// safe are the rules that no order may break.
func safe(t *rapid.T, o Order, b Batch) {
	a := b.Acid
	if (!o.Water.Known || o.Water.AlkalinityMgL < 60 || o.Acid == nil) && a.DoseTodayML != 0 {
		t.Fatalf("a dose of acid without knowing the water or the acid: %+v", a)
	}
	if o.Planted && a.DoseTodayML > 0 && a.PHAtOnce < 5.2-1e-6 {
		t.Fatalf("pH %v at once in a planted tub", a.PHAtOnce)
	}
	if o.Acid != nil && o.Acid.Citric() && a.DoseTodayML > 0 {
		if mgL := o.Acid.Mol(a.DoseTodayML) / o.Litres * o.Acid.MolarMass() * 1000; mgL > 25*(1+1e-9) {
			t.Fatalf("%v mg/L of citric acid", mgL)
		}
	}
	for _, l := range b.Target.Limits {
		// What the water brings by itself is told, and nothing is added to it.
		if fit := b.Fit.MgL[l.Of]; fit > max(l.MostMgL, o.Water.Content[l.Of]+a.Adds[l.Of])*(1+1e-9)+1e-12 {
			t.Fatalf("%v mg/L of %s, at most %v", fit, l.Of, l.MostMgL)
		}
	}
}

// Whatever is said of a tap has a hint and no exclamation.
func TestWhatIsSaidOfAnyTap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tap := drawTap(t)
		w, err := tap.Water()
		if err != nil {
			t.Fatal(err)
		}
		for i, v := range w.Ions {
			if v < 0 || math.IsNaN(v) {
				t.Fatalf("%s: %v", Ion(i).Symbol(), v)
			}
		}
		for _, f := range tap.Findings(w) {
			if f.Hint == "" || !strings.HasSuffix(f.Text, ".") || strings.Contains(f.Text+f.Hint, "!") {
				t.Fatalf("%+v", f)
			}
		}
	})
}
