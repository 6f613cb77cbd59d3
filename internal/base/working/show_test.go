package working

import (
	"encoding/json"
	"math"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working/pencil"
)

// one is a law of one or two inputs, shown.
func one(formula string, out quantity.Kind, s quantity.System, in ...Number) Shown {
	l := Law{Symbol: "y", Kind: out, Formula: formula, Basis: OfNature, Source: "invented"}
	for _, n := range in {
		l.Where = append(l.Where, Symbol{Name: n.Symbol, Meaning: "invented", Kind: n.Kind})
	}
	return NewBook().Work(Must(l), "y", "y", in...).Show(s)
}

func typed(symbol string, k quantity.Kind, u quantity.Unit, v float64) Number {
	return NewBook().Typed(symbol, symbol, symbol, k, u.Base(v), 0)
}

func TestAFormulaCarriesOnlyTheFactorsItNeeds(t *testing.T) {
	flow := typed("q", quantity.AirFlow, quantity.LitrePerMinute, 2)
	daily := typed("q", quantity.DailyVolume, quantity.LitrePerDay, 1.5)
	count := typed("n", quantity.Count, quantity.One, 3)
	volume := typed("V", quantity.Volume, quantity.Litre, 25.8)
	for _, c := range []struct {
		name  string
		shown Shown
		want  string
	}{
		{"air for stones", one("n*q", quantity.AirFlow, quantity.Metric, count, flow), "3*2"},
		{"power of lamps", one("n*P", quantity.Power, quantity.US, count, typed("P", quantity.Power, quantity.Watt, 40)), "3*40"},
		{"light of lamps", one("n*F", quantity.PhotonFlux, quantity.Metric, count, typed("F", quantity.PhotonFlux, quantity.MicromolePerSecond, 90)), "3*90"},
		{"strength of two", one("n*E", quantity.Conductivity, quantity.Metric, count, typed("E", quantity.Conductivity, quantity.MillisiemensPerCM, 0.6)), "3*0.6"},
		{"money", one("n*m", quantity.Money, quantity.Metric, count, typed("m", quantity.Money, quantity.Money.Metric, 2.5)), "3*2.5"},
		{"days of water", one("V/q", quantity.Time, quantity.Metric, volume, daily), "25.8/1.5"},
		{"salt in grams", one("c*V", quantity.SmallMass, quantity.Metric, typed("c", quantity.Content, quantity.MilligramPerL, 200), volume), "200*25.8/1000"},
		{"a share of litres", one("s*V", quantity.Volume, quantity.Metric, typed("s", quantity.Share, quantity.Percent, 5), volume), "5/100*25.8"},
		{"in gallons", one("V/4", quantity.Volume, quantity.US, typed("V", quantity.Volume, quantity.USGallon, 6)), "6/4"},
	} {
		if c.shown.PutIn != c.want {
			t.Errorf("%s: put in %s, want %s (formula %s)", c.name, c.shown.PutIn, c.want, c.shown.Formula)
		}
	}
}

func TestTemperaturesShiftAsAPupilLearnsIt(t *testing.T) {
	empirical := func(out, in quantity.Unit, s quantity.System) Shown {
		l := Must(Law{
			Symbol: "y", Kind: quantity.Temperature, Unit: out, Formula: "t", Empirical: true, Basis: OfNature, Source: "invented",
			Where: []Symbol{{Name: "t", Meaning: "temperature", Kind: quantity.Temperature, Unit: in}},
		})
		return NewBook().Work(l, "y", "y", typed("t", quantity.Temperature, quantity.Celsius, 20)).Show(s)
	}
	for _, c := range []struct {
		shown   Shown
		formula string
		value   float64
	}{
		{empirical(quantity.Celsius, quantity.Celsius, quantity.Metric), "t", 20},
		{empirical(quantity.Fahrenheit, quantity.Fahrenheit, quantity.US), "t", 68},
		{empirical(quantity.Celsius, quantity.Celsius, quantity.US), "(t-32)/1.8*1.8+32", 68},
		{empirical(quantity.Fahrenheit, quantity.Fahrenheit, quantity.Metric), "(t*1.8+32-32)/1.8", 20},
	} {
		if c.shown.Formula != c.formula || c.shown.Value != c.value {
			t.Errorf("got %s = %v, want %s = %v", c.shown.Formula, c.shown.Value, c.formula, c.value)
		}
		if got, err := pencil.Round(c.shown.PutIn, 1); err != nil || got != c.value {
			t.Errorf("%s with the pencil is %v, %v", c.shown.PutIn, got, err)
		}
	}
}

// 157 fl oz are 4643.0441413125 mL and 40 °F are 4.444… °C: twelve digits fall
// short of the whole number, so the last one is rounded the other way.
func TestDecimalsThatFallShortOfAWholeNumber(t *testing.T) {
	for _, c := range []struct {
		kind quantity.Kind
		unit quantity.Unit
		at   float64
	}{
		{quantity.SmallVolume, quantity.FluidOunce, 157},
		{quantity.Temperature, quantity.Fahrenheit, 40},
	} {
		l := Must(Law{
			Symbol: "n", Kind: quantity.Count, Unit: quantity.One, Formula: "floor(x)", Empirical: true, Basis: OfNature, Source: "invented",
			Where: []Symbol{{Name: "x", Meaning: "invented", Kind: c.kind, Unit: c.unit}},
		})
		shown := NewBook().Work(l, "n", "n", typed("x", c.kind, c.unit, c.at)).Show(quantity.Metric)
		if got, err := pencil.Round(shown.PutIn, 0); err != nil || got != c.at || shown.Value != c.at {
			t.Errorf("%v %s: shown %v, %s with the pencil is %v, %v", c.at, c.unit.Symbol, shown.Value, shown.PutIn, got, err)
		}
	}
}

func TestWhatHasNoResultIsNeverPutOut(t *testing.T) {
	for name, v := range map[string]float64{"not a number": math.NaN(), "infinite": math.Inf(1), "minus infinite": math.Inf(-1), "absurd": 1e200, "nought below": 0} {
		b := NewBook()
		law := Must(Law{
			Symbol: "d", Kind: quantity.Time, Formula: "V/q", Basis: OfNature, Source: "invented",
			Where: []Symbol{{Name: "V", Meaning: "water", Kind: quantity.Volume}, {Name: "q", Meaning: "use", Kind: quantity.DailyVolume}},
		})
		use := b.Typed("q", "use", "q", quantity.DailyVolume, v, v)
		n := b.Work(law, "d", "days", b.Typed("V", "water", "V", quantity.Volume, 1e6, v), use)
		if n.Known() {
			t.Errorf("%s: known as %v", name, n.Base)
		}
		for _, s := range systems {
			shown := n.Show(s)
			if !shown.None || shown.Value != 0 || shown.PutIn != "" {
				t.Errorf("%s: %+v", name, shown)
			}
		}
		for _, listed := range b.Numbers() {
			if listed.Key == "d" {
				t.Errorf("%s is listed", name)
			}
			if _, err := json.Marshal(listed.Show(quantity.US)); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

func TestTooFewOrTooManyInputsAreNoNumber(t *testing.T) {
	b := NewBook()
	h := b.Typed("h", "depth", "h", quantity.Length, 100, 1)
	for name, n := range map[string]Number{"too few": b.Work(volumeLaw(), "few", "", h), "too many": b.Work(volumeLaw(), "many", "", h, h, h, h, h)} {
		if shown := n.Show(quantity.Metric); !shown.None {
			t.Errorf("%s: %+v", name, shown)
		}
	}
}

func FuzzShow(f *testing.F) {
	f.Add(1.0, 2.0, 0.5)
	f.Add(math.NaN(), 0.0, math.Inf(1))
	f.Add(1e-300, 1e300, -1.0)
	f.Add(math.Copysign(0, -1), 1e59, 1e-59)
	f.Fuzz(func(t *testing.T, a, c, e float64) {
		b := NewBook()
		law := Must(Law{
			Symbol: "V", Kind: quantity.Volume, Formula: "sqrt(a^2)*A+a^3*floor(A/a^2)", Basis: OfNature, Source: "invented",
			Where: []Symbol{{Name: "a", Meaning: "length", Kind: quantity.Length}, {Name: "A", Meaning: "area", Kind: quantity.Area}},
		})
		n := b.Work(law, "V", "", b.Typed("a", "", "a", quantity.Length, a, e), b.Typed("A", "", "A", quantity.Area, c, e))
		for _, s := range systems {
			for _, n := range append(b.Numbers(), n) {
				shown := n.Show(s)
				for _, v := range []float64{shown.Value, shown.Low, shown.High} {
					if math.IsNaN(v) || math.IsInf(v, 0) {
						t.Fatalf("a=%v A=%v ±%v: %+v", a, c, e, shown)
					}
				}
			}
		}
	})
}
