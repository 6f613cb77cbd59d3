package trouble

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/plainwords"
)

// Every sign leads to a cause or to a step at once, and every cause but that of
// a wrong number has a sign that hardly anything else makes.
func TestEverySignLeadsSomewhere(t *testing.T) {
	for _, s := range Signs() {
		a := Diagnose(Ask{Seen: []string{s.ID}})
		if len(a.Causes) == 0 && len(a.Danger) == 0 {
			t.Errorf("%s leads nowhere", s.ID)
		}
		if a.First == "" || a.Says == "" {
			t.Errorf("%s: nothing is said", s.ID)
		}
	}
	ids := map[string]bool{}
	for _, c := range Causes() {
		if ids[c.ID] {
			t.Errorf("%s stands twice", c.ID)
		}
		ids[c.ID] = true
		sure := false
		for id, p := range c.seen {
			if _, ok := SignOf(id); !ok {
				t.Errorf("%s: %s is no sign", c.ID, id)
			}
			sure = sure || p == 3
		}
		if !sure && !slices.Contains([]string{"number", "warm", "strong", "weak", "sour", "chlorine", "cold"}, c.ID) {
			t.Errorf("%s has no sure sign", c.ID)
		}
		if c.Source == "" || c.First == "" || c.Why == "" || len(c.Measure) == 0 {
			t.Errorf("%s lacks its source, first step, reason or measure", c.ID)
		}
	}
}

// What a teacher would be told, held against handbooks and papers.
func TestPublishedTroubles(t *testing.T) {
	for _, c := range []struct {
		source string
		ask    Ask
		cause  string
	}{
		{"Bates & Stanghellini 1984, Plant Disease 68:989: P. aphanidermatum over 23 °C", Ask{Seen: []string{"roots-slimy"}, Known: Known{Crop: "spinach", WaterC: Of(24)}}, "rot"},
		{"Sago 2016, HortScience 51:1087: tip burn rises with light", Ask{Seen: []string{"edges-new"}, Known: Known{DLI: Of(20), Heading: true}}, "tip-burn"},
		{"McGehee & Raudales 2023, HortTechnology 33(1):125", Ask{Seen: []string{"roots-short", "small"}, Known: Known{ChlorineMgL: Of(1)}}, "chlorine"},
		{"Kratky 2004, Acta Hort. 648:83, abstract", Ask{Seen: []string{"raised", "hang"}, Known: Known{Still: true}}, "drowned"},
		{"Harrington & Minges, Univ. of California: lettuce at 30 °C", Ask{Seen: []string{"no-seedlings"}}, "seeds"},
		{practice, Ask{Seen: []string{"pale-new"}, Known: Known{PH: Of(7.4), PHHigh: 6.5}}, "iron"},
		{practice, Ask{Seen: []string{"edges-old"}, Known: Known{EC: Of(3), ECHigh: 1.8}}, "strong"},
		{practice, Ask{Seen: []string{"pale-all"}, Known: Known{EC: Of(0.5), ECLow: 1.2}}, "weak"},
		{practice, Ask{Seen: []string{"no-bubbles", "hang"}}, "air"},
		{practice, Ask{Seen: []string{"hang-dry", "low"}}, "dry"},
		{practice, Ask{Seen: []string{"leggy"}, Known: Known{DLI: Of(5), DLILow: 12}}, "dim"},
		{practice, Ask{Seen: []string{"small", "roots-short"}, Known: Known{PH: Of(4.5), PHLow: 5.5}}, "sour"},
		{practice, Ask{Seen: []string{"hang"}, Known: Known{WaterC: Of(28)}}, "warm"},
		{practice, Ask{Seen: []string{"small"}, Known: Known{WaterC: Of(11)}}, "cold"},
	} {
		a := Diagnose(c.ask)
		if !a.Enough || a.Causes[0].ID != c.cause {
			t.Errorf("%v: %+v, want %s (%s)", c.ask.Seen, a.Says, c.cause, c.source)
		}
		if len(a.Causes[0].For) == 0 {
			t.Errorf("%s has no reason", c.cause)
		}
	}
}

func TestNotEnoughToSayIsAnAnswer(t *testing.T) {
	for _, seen := range [][]string{nil, {"small"}, {"hang"}, {"no such sign"}} {
		a := Diagnose(Ask{Seen: seen})
		if a.Enough {
			t.Errorf("%v: %s", seen, a.Says)
		}
		if len(seen) > 0 && seen[0] != "no such sign" && (len(a.Look) == 0 || !strings.Contains(a.Says, "Not enough")) {
			t.Errorf("%v: %q, look at %v", seen, a.Says, a.Look)
		}
	}
}

// A danger goes before every cause.
func TestDangerGoesFirst(t *testing.T) {
	for id := range dangers {
		a := Diagnose(Ask{Seen: []string{"hang-dry", "edges-old", id}})
		if len(a.Danger) != 1 || a.First != a.Danger[0].Do || a.Danger[0].Call == "" || !strings.HasPrefix(a.Says, "First of all") {
			t.Errorf("%s: %+v", id, a)
		}
	}
	a := Diagnose(Ask{Seen: []string{"unknown-liquid"}})
	if !strings.Contains(a.First, "Nobody eats") {
		t.Error(a.First)
	}
}

// A reading speaks for and against, and changes the order.
func TestReadingsSpeakAgainst(t *testing.T) {
	seen := []string{"edges-old", "pale-old"}
	strongly := Diagnose(Ask{Seen: seen, Known: Known{EC: Of(3), ECLow: 1.2, ECHigh: 1.8}})
	weakly := Diagnose(Ask{Seen: seen, Known: Known{EC: Of(0.5), ECLow: 1.2, ECHigh: 1.8}})
	if strongly.Causes[0].ID != "strong" || weakly.Causes[0].ID != "weak" {
		t.Errorf("%s, %s", strongly.Says, weakly.Says)
	}
}

var anyAsk = rapid.Custom(func(t *rapid.T) Ask {
	var ids []string
	for _, s := range Signs() {
		ids = append(ids, s.ID)
	}
	figure := func(label string, low, high float64) Figure {
		return Figure{rapid.Float64Range(low, high).Draw(t, label), rapid.Bool().Draw(t, label+" known")}
	}
	return Ask{Seen: rapid.SliceOf(rapid.SampledFrom(ids)).Draw(t, "seen"), Known: Known{
		Crop: rapid.SampledFrom([]string{"spinach", "basil"}).Draw(t, "crop"), Still: rapid.Bool().Draw(t, "still"),
		EC: figure("EC", 0, 5), ECLow: 1.2, ECHigh: 1.8, PH: figure("pH", 3, 9), PHLow: 5.5, PHHigh: 6.5, WaterC: figure("water", 1, 40),
		OxygenMgL: figure("oxygen", 0, 12), DLI: figure("light", 0, 40), DLILow: 12, DLIHigh: 17, ChlorineMgL: figure("chlorine", 0, 5),
		SinceFed: figure("fed", 0, 400), SinceMove: figure("moved", 0, 60), Low: rapid.Bool().Draw(t, "low"), Lacks: rapid.SampledFrom([][]string{nil, {"Fe"}, {"Mg"}}).Draw(t, "lacks"),
	}}
})

// Whatever is seen: no dose of anything, nothing sprayed, the same answer in
// any order of ticking, and no cause without a reason.
func TestAnyTroubleIsSafe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ask := anyAsk.Draw(t, "ask")
		a := Diagnose(ask)
		said := a.First + strings.Join(a.Measure, " ")
		for _, l := range a.Causes {
			if len(l.For) == 0 || l.Points <= 0 {
				t.Errorf("%s has no reason", l.ID)
			}
			said += l.First + l.Throw
		}
		for _, never := range []string{" mL", " ml ", "teaspoon", "add acid", "hydrogen peroxide"} {
			if strings.Contains(said, never) {
				t.Errorf("%q is said: %s", never, said)
			}
		}
		back := slices.Clone(ask.Seen)
		slices.Reverse(back)
		other := Diagnose(Ask{Seen: back, Known: ask.Known})
		if other.Says != a.Says || other.First != a.First {
			t.Errorf("%q and %q by the order of ticking", a.Says, other.Says)
		}
		if !slices.IsSortedFunc(a.Causes, func(x, y Likely) int { return y.Points - x.Points }) {
			t.Errorf("not in order: %+v", a.Causes)
		}
	})
}

// The signs are ticked by pupils too, the steps read by any adult.
func TestPlainWords(t *testing.T) {
	const most = 9 // the look's own bound is grade 6 to 8; names of trade count one more
	var all strings.Builder
	for _, s := range Signs() {
		all.WriteString(s.Words + ". ")
	}
	for _, c := range Causes() {
		all.WriteString(c.Name + " " + c.First + " ")
	}
	if g := plainwords.Grade(all.String()); g > most {
		t.Errorf("grade %.1f (%s)", g, plainwords.Source)
	}
}

// Reasons about warmth are told in the garden's units: 28 °C are 82 °F, by
// 28*9/5 + 32.
func TestWarmthIsToldInTheGardensUnits(t *testing.T) {
	for system, says := range map[quantity.System]string{quantity.Metric: "28 °C", quantity.US: "82 °F"} {
		a := Diagnose(Ask{Seen: []string{"hang"}, Known: Known{WaterC: Of(28), Units: system}})
		if why := strings.ReplaceAll(strings.Join(a.Causes[0].For, "; "), "\u00a0", " "); !strings.Contains(why, says) {
			t.Errorf("%q is not said in %q", says, why)
		}
	}
}
