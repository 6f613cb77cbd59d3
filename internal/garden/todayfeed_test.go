package garden_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/school/steering"
)

func advised(t *testing.T, a *garden.Assessment, code string) garden.Advised {
	t.Helper()
	all := a.Tubs[0].Today.Advice
	i := slices.IndexFunc(all, func(x garden.Advised) bool { return x.Code == code })
	if i < 0 {
		t.Fatalf("%s is not advised: %+v", code, all)
	}
	return all[i]
}

// The sums of a morning go by the curve of the tub's own mix: the parts of the
// feed that stand in the water are balanced, worked out here, and not the EC.
func TestTheMorningGoesByTheCurve(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml", edit{"tap.chlorine", "0 mg/L"})
	got := morningOf(t, a, "2027-02-10", append(slices.Clone(well), "Heron 2027-02-10 09:00 level=10 EC=3.0 pH=6.0", "Heron 2027-02-10 09:10 level=10 EC=3.0")...)
	x := advised(t, got, "too-strong")
	curve := got.Tubs[0].Mix.Curve()
	now, ok := curve.Strength(3)
	aim, reached := curve.Strength(1.5)
	if !ok || !reached {
		t.Fatal("off the curve")
	}
	v := number(t, got, "tubs.Heron.today.in_tub").Value
	need := v * (now - aim) / aim
	straight := v * (3 - 1.5) / (1.5 - 0.36)
	if math.Abs(*x.PourInL-need) > 0.2 {
		t.Errorf("%v L are poured in; the curve wants %.2f (the straight line %.2f)", *x.PourInL, need, straight)
	}
	if math.Abs(need-straight) < 0.3 {
		t.Errorf("the straight line gives the same, %.2f and %.2f: nothing is tested", need, straight)
	}
	after := curve.EC(v * now / (v + *x.PourInL))
	if math.Abs(*x.ECAfter-after) > 0.01 {
		t.Errorf("EC %v is expected, the curve gives %.3f", *x.ECAfter, after)
	}
}

// EC times litres tells evaporation from uptake, and the next top-up follows.
func TestEvaporationAndUptakeAreToldApart(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml", edit{"tap.chlorine", "0 mg/L"}, edit{"feed.ec", "1.6 mS/cm"})
	for _, c := range []struct {
		name  string
		wrote []string
		says  string
		of    string
	}{
		{"water alone: 25 × 1.5 is about 20.5 × 1.83", []string{"Heron 2027-02-05 09:00 level=25.5 EC=1.2 pH=6.0", "Heron 2027-02-10 09:00 level=18 EC=1.7 pH=6.0"}, "take water faster than food", "of water"},
		{"food faster", []string{"Heron 2027-02-05 09:00 level=25.5 EC=1.9 pH=6.0", "Heron 2027-02-10 09:00 level=18 EC=1.1 pH=6.0"}, "take food faster than water", "of solution"},
		{"in the lower half of the band and nothing known: what leaves take", []string{"Heron 2027-02-10 09:00 level=18 EC=1.3 pH=6.0"}, "", "of top-up solution"},
		{"fed with something of which nobody wrote the EC", []string{"Heron 2027-02-05 09:00 level=18 EC=1.9 pH=6.0 added=2 done=fed", "Heron 2027-02-10 09:00 level=18 EC=1.3 pH=6.0"}, "", "of top-up solution"},
	} {
		got := morningOf(t, a, "2027-02-10", append(slices.Clone(well), c.wrote...)...)
		if u := got.Tubs[0].Today.Uptake; !strings.Contains(u, c.says) || c.says == "" && u != "" {
			t.Errorf("%s: %q, want %q", c.name, u, c.says)
		}
		if x := advised(t, got, "top-up"); !strings.Contains(x.Text, c.of) {
			t.Errorf("%s: %q, want %q", c.name, x.Text, c.of)
		}
	}
}

// A tap of 35 mg/L sodium: half of what plants bear, 25, is there in the fresh
// filling, so it counts to 50. With 25 L in the tub 8 L of tap water bring it to
// 46 and 13 L to 53.
func TestSodiumBuildsUp(t *testing.T) {
	const source = "Oklahoma State University fact sheet, EC and pH guide for hydroponics, table 1: sodium under 50 mg/L; mass balance by hand"
	a := edited(t, "../../examples/fernhollow.yaml", edit{"tap.sodium", "35 mg/L"})
	topped := func(litres string) *garden.Assessment {
		return morningOf(t, a, "2027-02-10", append(slices.Clone(well),
			"Heron 2027-02-03 09:00 level=25.5 done=changed_out", "Heron 2027-02-08 09:00 level=12 added="+litres+" done=topped_up", "Heron 2027-02-10 09:00 level=25 EC=1.5 pH=6.0")...)
	}
	for _, c := range []struct {
		litres string
		due    bool
	}{{"8", false}, {"13", true}} {
		got := topped(c.litres)
		due := slices.ContainsFunc(got.Tubs[0].Today.Advice, func(x garden.Advised) bool { return x.Code == "changeout-build-up" })
		if due != c.due {
			t.Errorf("%s L topped up: change due %v, want %v (%s); %v mg/L", c.litres, due, c.due, source, number(t, got, "tubs.Heron.today.gathered.build_up_Na").Value)
		}
	}
	got := topped("13")
	fill := number(t, got, "tubs.Heron.today.fill").Value
	want := got.Tubs[0].Mix.ElementsMgL["Na"] + 35*13/fill
	if n := number(t, got, "tubs.Heron.today.gathered.build_up_Na").Value; math.Abs(n-want) > 0.2 {
		t.Errorf("%v mg/L, by hand %.1f (%s)", n, want, source)
	}
	if x := advised(t, got, "changeout-build-up"); x.Do != steering.ChangeOut || !strings.Contains(x.Text, "Sodium") {
		t.Errorf("%+v", x)
	}
}

// A tub with a feed of its own is steered to that.
func TestATubsOwnFeedIsAimedAt(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml", edit{"tubs[0].feed.ec", "1.3 mS/cm"})
	got := morningOf(t, a, "2027-02-10", "Heron 2027-02-10 09:00 level=20 EC=2.4 pH=6.0", "Heron 2027-02-10 09:10 level=20 EC=2.4")
	if x := advised(t, got, "too-strong"); !strings.Contains(x.Text, "target is 1.3") {
		t.Errorf("%s", x.Text)
	}
}
