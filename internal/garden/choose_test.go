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
		{"a hole for each plant, and no pattern", "offers: [{name: kit, price: 9, sites: 3, volume: 40 L}]\n", "", "nobody knows whether they keep the distance"},
		{"holes close together", "offers: [{name: kit, volume: 40 L, holes: [[0 cm, 0 cm], [6 cm, 0 cm], [12 cm, 0 cm], [30 cm, 0 cm]]}]\n", "", "of them stand far enough apart"},
		{"plants that cannot be counted", "offers: [{name: kit, sites: 14, volume: 17 L, pattern: {rows: 3, columns: 5, pitch: 11 cm}}]\n", "offer-holes", "so its plants are not known"},
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

// A share at which the order turns is counted as the share that is taken now, 0
// to 1: the contract's own rule for chances and shares.
func TestAShareIsOneOfOne(t *testing.T) {
	a := chosenFrom(t, quantity.Metric, "prices: {"+everyPrice+"}\nlamps: [{name: lamp, power: 40 W}]\noffers: [{name: kit, price: 90, delivery: 0, per_crop: 9, sites: 4, volume: 17 L, includes: [pump, tube, stones, valve, cups, tray, towels, goggles]}]\n")
	for _, s := range a.Choose.Senses {
		if s.Kind == "share" && s.Turn > 0 && s.Turn < 1 && s.Now == 0.9 {
			return
		}
	}
	t.Errorf("no share that would change the order: %+v, unknown %q, %q", a.Choose.Senses, a.Choose.Offers[0].Unknown, a.Choose.Offers[1].Unknown)
}

// everyPrice is a price for all that a build and a kit want; invented.
const everyPrice = `tub: 12, saw: 14, service_saw: 6, drill_bit: 2, cup: 0.4, pebbles: 1, plug: 1, cap: 0.4, pump: 16, stone: 2, spare_stone: 2, check_valve: 2, tube: 1, tray: 4, towel: 2, cover: 3, eye_protection: 7, backing_board: 0, clamp: 5, deburring_tool: 4, bucket: 3, seed: 0.04, seed_plug: 0.15, nutrient: 6, electricity: 0.3, ph_test: 8, ec_meter: 20, lamp: 30, timer: 9`

// The permission pack speaks of what there is: no watts of a lamp that nobody
// has, no pumps of still tubs, the water of the biggest offer, and no eating
// where the school says no.
func TestThePermissionPackSpeaksOfWhatThereIs(t *testing.T) {
	for _, c := range []struct {
		name, more  string
		says, never string
	}{
		{"no lamp", "", "What a lamp takes is not known yet", "Lamps take"},
		{"an offer that holds more", "offers: [{name: barrel, sites: 4, volume: 90 L}]\n", "Of 'barrel' it would be 90.0", "nothing at all"},
		{"no eating", "school: {site: {kitchen: no}}\n", "Until it says yes nobody eats.", "the plan says no. Without it nothing is switched on"},
	} {
		a := chosenFrom(t, quantity.Metric, c.more)
		var said strings.Builder
		for _, p := range a.Permissions() {
			said.WriteString(strings.Join(p.Facts, " ") + " " + p.Ask + " ")
		}
		if s := strings.ReplaceAll(said.String(), "\u00a0", " "); !strings.Contains(s, c.says) || strings.Contains(s, c.never) {
			t.Errorf("%s: %q is not said, or %q is, in %q", c.name, c.says, c.never, s)
		}
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
