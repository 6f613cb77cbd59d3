package solution

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/finding"
)

func codes(all []finding.Finding) []string {
	var out []string
	for _, f := range all {
		out = append(out, f.Code)
	}
	return out
}

// A tap made whole has the pH and the alkalinity that were told, and no charge.
func TestTapsAreMadeWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tap := Tap{
			PH: Exactly(rapid.Float64Range(6, 8.3).Draw(t, "pH")), Alkalinity: Exactly(rapid.Float64Range(5, 400).Draw(t, "alkalinity")),
		}
		if rapid.Bool().Draw(t, "report") {
			tap.Calcium, tap.Magnesium = Exactly(rapid.Float64Range(0, 150).Draw(t, "Ca")), Exactly(rapid.Float64Range(0, 40).Draw(t, "Mg"))
			tap.Sulfate, tap.Chloride = Exactly(rapid.Float64Range(0, 150).Draw(t, "SO4")), Exactly(rapid.Float64Range(0, 150).Draw(t, "Cl"))
		}
		w, err := tap.Water()
		if err != nil {
			t.Fatal(err)
		}
		s := at25.Equilibrium(w.Ions, Closed)
		if math.Abs(s.PH-tap.PH.Value) > 1e-4 {
			t.Fatalf("pH %v, told %v", s.PH, tap.PH.Value)
		}
		if alkalinity := w.Ions.strongCharge() * 1000 * perMeq(); math.Abs(alkalinity-tap.Alkalinity.Value) > 1e-6 {
			t.Fatalf("alkalinity %v, told %v", alkalinity, tap.Alkalinity.Value)
		}
	})
}

func TestWhatIsSaidOfTaps(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Tap)
		want   []string
	}{
		{"a good one, without chlorine", func(t *Tap) { t.Chlorine = Exactly(0) }, nil},
		{"chlorine", func(*Tap) {}, []string{"tap-chlorine"}},
		{"softened", func(t *Tap) { t.Chlorine, t.Softened = Figure{}, true }, []string{"tap-softened"}},
		{"sodium", func(t *Tap) { t.Chlorine, t.Sodium, t.Chloride = Figure{}, Exactly(60), Exactly(90) }, []string{"tap-sodium"}},
		{"hard and full of lime", func(t *Tap) { t.Chlorine, t.Alkalinity, t.Calcium = Figure{}, Exactly(280), Exactly(110) }, []string{"tap-alkalinity-high"}},
		{"out of balance", func(t *Tap) { t.Chlorine, t.Calcium = Figure{}, Exactly(75) }, []string{"tap-balance"}},
		{"alkalinity unknown", func(t *Tap) { t.Chlorine, t.Alkalinity = Figure{}, Figure{} }, []string{"tap-alkalinity-unknown"}},
		{"a strip between two colours", func(t *Tap) { t.Chlorine, t.Alkalinity = Figure{}, Between(120, 180) }, []string{"tap-alkalinity-high"}},
	} {
		tap := hardTap()
		tap.EC = Figure{} // its own test is below
		c.change(&tap)
		if got := codes(tap.Findings(waterOf(t, tap))); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	for _, c := range []struct {
		free, bound Figure
		says        string
	}{{Exactly(0.4), Figure{}, "holds chlorine"}, {Exactly(0), Exactly(2), "holds chloramine"}, {Exactly(0.4), Exactly(2), "does not go by standing"}} {
		tap := hardTap()
		tap.Chlorine, tap.Chloramine = c.free, c.bound
		if f := tap.chlorinated(); !strings.Contains(f.Text, c.says) {
			t.Errorf("%+v: %s", c, f.Text)
		}
	}
	tap := hardTap()
	tap.Calcium = Exactly(450) // milligrams of another unit
	w := waterOf(t, tap)
	if f := tap.Findings(w); f[0].Level != finding.Stop || f[0].Code != "tap-balance" {
		t.Errorf("%v", f)
	}
}

func TestTapsThatCannotBe(t *testing.T) {
	for field, change := range map[string]func(*Tap){
		"ph":         func(t *Tap) { t.PH = Exactly(14) },
		"alkalinity": func(t *Tap) { t.Alkalinity = Exactly(-5) },
		"calcium":    func(t *Tap) { t.Calcium = Exactly(math.NaN()) },
		"chlorine":   func(t *Tap) { t.Chlorine = Exactly(200) },
		"sulfate":    func(t *Tap) { t.Sulfate = Between(80, 20) },
	} {
		tap := hardTap()
		change(&tap)
		_, err := tap.Water()
		if f, ok := err.(*Fault); !ok || f.Field != field || f.Hint == "" {
			t.Errorf("%s: %v", field, err)
		}
		if f, ok := err.(*Fault); ok && f.Finding("tap").Field != "tap."+field {
			t.Errorf("%s: %+v", field, f.Finding("tap"))
		}
	}
}

// Whole quarters, and never one more than needed.
func TestBlends(t *testing.T) {
	for _, c := range []struct{ mgL, limit, share float64 }{
		{100, 150, 0}, {150, 150, 0}, {151, 150, 0.25}, {200, 150, 0.25}, {201, 150, 0.5}, {300, 150, 0.5}, {600, 150, 0.75}, {700, 150, 1}, {0, 150, 0},
	} {
		if got := BlendFor(c.mgL, c.limit); got != c.share {
			t.Errorf("%v mg/L to %v: %v, want %v", c.mgL, c.limit, got, c.share)
		}
	}
	hard := Tap{Alkalinity: Exactly(280), PH: Exactly(7.4)}
	w := waterOf(t, hard).Blend(0.5)
	if math.Abs(w.AlkalinityMgL-140) > 1e-9 || math.Abs(w.PH-7.4) > 0.15 {
		t.Errorf("half and half: alkalinity %v, pH %v", w.AlkalinityMgL, w.PH)
	}
}

// One degree of carbonate hardness is 17.8 mg/L as CaCO3 (an encyclopaedia
// article on carbonate hardness, read).
func TestPublishedDropTest(t *testing.T) {
	if got := DropTest(7); math.Abs(got-124.9) > 0.05 {
		t.Errorf("seven drops are %v mg/L", got)
	}
}

func TestAnECWithoutAReport(t *testing.T) {
	w := waterOf(t, Tap{EC: Exactly(0.5)})
	if got := EC25(w.Ions, Closed); math.Abs(got-0.5) > 0.01 || w.Known {
		t.Errorf("water of 0.5 mS/cm is taken for %v", got)
	}
	contrary := hardTap()
	contrary.Chlorine, contrary.EC = Figure{}, Exactly(0.9)
	if got := codes(contrary.Findings(waterOf(t, contrary))); !slices.Equal(got, []string{"tap-ec"}) {
		t.Errorf("%v", got)
	}
}

// The least alkalinity of a strip gives the least acid.
func TestEndsOfAStrip(t *testing.T) {
	least, most := Tap{Alkalinity: Between(80, 120), PH: Exactly(7.5)}.Ends()
	a, _ := at25.Acidify(waterOf(t, least).Ions, phDown(t), 5.8, OutdoorAir())
	b, _ := at25.Acidify(waterOf(t, most).Ions, phDown(t), 5.8, OutdoorAir())
	if r := b.OpenMolL / a.OpenMolL; math.Abs(r-1.5) > 0.01 {
		t.Errorf("half as much again is %v times", r)
	}
}

// Without alkalinity no water holds a high pH: that is told, not clipped.
func TestPHAndAlkalinityThatDoNotGoTogether(t *testing.T) {
	w := waterOf(t, Tap{Alkalinity: Exactly(0), PH: Exactly(9.5)})
	if w.PH > 7.5 || !strings.Contains(strings.Join(w.Assumed, " "), "do not go together") {
		t.Errorf("pH %v, %v", w.PH, w.Assumed)
	}
	if w := waterOf(t, hardTap()); w.PH != 7.6 || len(w.Assumed) != 0 {
		t.Errorf("a whole report: pH %v, %v", w.PH, w.Assumed)
	}
}
