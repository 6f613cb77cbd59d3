package garden_test

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// chosenFrom works out a starter plan with lines put behind it.
func chosenFrom(t *testing.T, system quantity.System, more string) *garden.Assessment {
	t.Helper()
	p, problems := plan.Parse("plan", []byte(plan.Starter(system)+more))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageChoose})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// bestApart is the largest least distance among so many of the holes, by trying
// every subset.
func bestApart(holes [][2]float64, k int) float64 {
	best := 0.0
	for set := uint32(0); set < 1<<len(holes); set++ {
		if bits.OnesCount32(set) == k {
			best = max(best, leastOf(holes, func(i int) bool { return set>>i&1 == 1 }))
		}
	}
	return best
}

func leastOf(holes [][2]float64, in func(int) bool) float64 {
	least := math.Inf(1)
	for i := range holes {
		for j := range i {
			if in(i) && in(j) {
				least = min(least, math.Hypot(holes[i][0]-holes[j][0], holes[i][1]-holes[j][1]))
			}
		}
	}
	return least
}

// The holes to use are the best subset, held against every subset there is, to
// 16 holes: straight patterns and lists of places, in both unit systems. No
// published table of such choices was found; trying all is the check.
func TestHolesToUseAreTheBestOfAllSubsets(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	for _, system := range systems {
		var text strings.Builder
		text.WriteString("offers:\n")
		var all [][][2]float64
		for i := range 24 {
			var holes [][2]float64
			litres := 8 + rng.IntN(30)
			if i%2 == 0 {
				rows, columns, pitch := 1+rng.IntN(4), 2+rng.IntN(3), 60+rng.IntN(180)
				for r := range rows {
					for c := range columns {
						holes = append(holes, [2]float64{float64(c * pitch), float64(r * pitch)})
					}
				}
				fmt.Fprintf(&text, "  - {name: kit %d, sites: %d, volume: %d L, pattern: {rows: %d, columns: %d, pitch: %d mm}}\n", i, rows*columns, litres, rows, columns, pitch)
			} else {
				var places []string
				for range 6 + rng.IntN(11) {
					h := [2]float64{float64(rng.IntN(900)), float64(rng.IntN(600))}
					if slices.Contains(holes, h) {
						continue
					}
					holes = append(holes, h)
					places = append(places, fmt.Sprintf("[%.0f mm, %.0f mm]", h[0], h[1]))
				}
				fmt.Fprintf(&text, "  - {name: kit %d, volume: %d L, holes: [%s]}\n", i, litres, strings.Join(places, ", "))
			}
			all = append(all, holes)
		}
		a := chosenFrom(t, system, text.String())
		for i, holes := range all {
			o := a.Choose.Offers[i]
			if len(o.UseHoles) != o.PlantSites || len(o.UseHoles)+len(o.CapHoles) != len(holes) || o.Sites != len(holes) {
				t.Fatalf("%s: %d plants, %v in use, %v capped, of %d", o.Name, o.PlantSites, o.UseHoles, o.CapHoles, len(holes))
			}
			if o.PlantSites < 2 {
				continue
			}
			got := leastOf(holes, func(k int) bool { return slices.Contains(o.UseHoles, k+1) })
			want := bestApart(holes, o.PlantSites)
			if math.Abs(got-want) > 1e-6 || !o.Proved || math.Abs(*o.LeastMM-got) > 0.06 {
				t.Errorf("%s: %d of %d stand %v apart (told %v), all subsets give %v", o.Name, o.PlantSites, len(holes), got, *o.LeastMM, want)
			}
			wanted := a.Choose.Need.Spacing.Base
			if o.Binds == "spacing" && bestApart(holes, o.PlantSites+1) >= wanted || o.PlantSites > 1 && got < wanted-0.5 {
				t.Errorf("%s: %d plants, bound by %s, %v apart where the crop wants %v", o.Name, o.PlantSites, o.Binds, got, wanted)
			}
		}
	}
}

// The keys that scripts rely on stand in the document for every option.
func TestTheDecisionsKeys(t *testing.T) {
	a := chosenFrom(t, quantity.Metric, "offers: [{name: kit on offer, price: 92.00, delivery: 6.50, per_crop: 9.00, sites: 15, pattern: {rows: 3, columns: 5, pitch: 11 cm}, volume: 17 L, includes: [pump, stone, cups]}]\n")
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Choose struct{ Offers []map[string]any }
	}
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Choose.Offers) != 2 {
		t.Fatalf("%d options, want the kit and the build", len(doc.Choose.Offers))
	}
	for _, o := range doc.Choose.Offers {
		for _, key := range []string{"name", "total", "first_crop", "per_harvested", "per_planted", "sites", "plant_sites", "use_holes", "lacks", "possible"} {
			if _, ok := o[key]; !ok {
				t.Errorf("%v has no %s", o["name"], key)
			}
		}
	}
	kit, own := doc.Choose.Offers[0], doc.Choose.Offers[1]
	if kit["total"] != 125.5 || kit["first_crop"] != 107.5 { // by hand: 92 + 6.50 + 3*9; 92 + 6.50 + 9
		t.Errorf("the kit costs %v, its first crop %v", kit["total"], kit["first_crop"])
	}
	if own["possible"] != false || own["total"] != nil {
		t.Errorf("without an adult who drills and without prices the build is possible: %v, and costs %v", own["possible"], own["total"])
	}
}

// What is wrong or missing in an offer is said in clear words, and what rests on
// it is left out.
func TestBadOffers(t *testing.T) {
	for _, c := range []struct {
		name, offers string
		code         string
		says         string // in what is told of the first option
	}{
		{"none", "", "", "No offer is in the plan yet"},
		{"no price", "offers: [{name: kit, sites: 9, volume: 17 L}]\n", "", "a count only"},
		{"no pattern", "offers: [{name: kit, price: 9, sites: 9, volume: 17 L}]\n", "", "a count only"},
		{"nothing but a name", "offers: [{name: kit}]\n", "", "not told yet"},
		{"rows that do not make the holes", "offers: [{name: kit, sites: 14, volume: 17 L, pattern: {rows: 3, columns: 5, pitch: 11 cm}}]\n", "offer-holes", "3 rows of 5 make 15"},
		{"a list that is shorter", "offers: [{name: kit, sites: 3, volume: 17 L, holes: [[1 cm, 1 cm], [20 cm, 1 cm]]}]\n", "offer-holes", "list of holes has 2"},
		{"two in one place", "offers: [{name: kit, volume: 17 L, holes: [[1 cm, 1 cm], [20 cm, 1 cm], [1 cm, 1 cm]]}]\n", "offer-holes", "holes 1 and 3 lie in the same place"},
		{"more than can be chosen from", "offers: [{name: kit, volume: 60 L, pattern: {rows: 10, columns: 10, pitch: 5 cm}}]\n", "offer-many-holes", "a count only"},
		{"no water for one", "offers: [{name: kit, sites: 9, volume: 1 L}]\n", "", "does not feed one plant"},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := chosenFrom(t, quantity.Metric, c.offers)
			bold, rest := a.Choose.Answer(a)
			o := &a.Choose.Offers[0]
			said := strings.Join(append(append([]string{bold, rest, o.Feeds(a), o.Which(a)}, o.Against...), texts(a.Findings)...), " ")
			if !strings.Contains(said, c.says) {
				t.Errorf("%q is not said in %q", c.says, said)
			}
			if c.code == "" {
				return
			}
			i := slices.IndexFunc(a.Findings, func(f finding.Finding) bool { return f.Code == c.code })
			if i < 0 || a.Findings[i].Line == 0 || a.Findings[i].Hint == "" {
				t.Fatalf("no finding %s with its place: %+v", c.code, a.Findings)
			}
			if o.UseHoles != nil || c.code == "offer-holes" && (o.Possible || o.PlantSites != 0) {
				t.Errorf("numbers rest on what cannot be: %+v", o)
			}
			if a.StopOf(0) != "" {
				t.Errorf("an offer stops the drill: %s", a.StopOf(0))
			}
		})
	}
}

func texts(all []finding.Finding) []string {
	var out []string
	for _, f := range all {
		out = append(out, f.Text)
	}
	return out
}

// A second-hand tub of unknown past gives no food, as an offer and as a tub of
// the plan.
func TestSecondHandTubsGiveNoFood(t *testing.T) {
	a := chosenFrom(t, quantity.US, "offers: [{name: old tub, sites: 4, volume: 5 gal, price: 2, past: unknown}]\n")
	if o := a.Choose.Offers[0]; o.ForFood || o.PerServing != nil || !strings.Contains(strings.Join(o.Against, " "), "Not for food") {
		t.Errorf("%+v", o)
	}
	text, err := plan.Edit([]byte(plan.Starter(quantity.Metric)), "tubs[0].past", "unknown")
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse("plan", text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	b, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageChoose})
	if err != nil {
		t.Fatal(err)
	}
	if o := b.Choose.Offers[0]; !o.Built || o.ForFood {
		t.Errorf("a tub of unknown past is for food: %+v", o)
	}
}

// The decision is the same whatever else is asked for.
func TestTheDecisionDoesNotDependOnOtherStages(t *testing.T) {
	for _, name := range plans(t) {
		p := parsed(t, name, text(t, name))
		var docs []string
		for _, stages := range []garden.Stages{garden.StageChoose, garden.StageChoose | garden.StageMix | garden.StageClass} {
			a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: stages})
			if err != nil {
				t.Fatal(err)
			}
			doc, err := json.Marshal(a.Choose)
			if err != nil {
				t.Fatal(err)
			}
			docs = append(docs, string(doc))
		}
		if docs[0] != docs[1] {
			t.Errorf("%s: the decision is another with the mix", name)
		}
	}
}
