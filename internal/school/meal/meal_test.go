package meal

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func allGood() map[string]Reply {
	out := map[string]Reply{}
	for _, g := range Gates() {
		out[g.ID] = g.Good
	}
	return out
}

func TestTheGates(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(map[string]Reply)
		known  Known
		never  bool
		asked  bool
		who    string // decides on the first that is left
		source string
	}{
		{"all is well", func(map[string]Reply) {}, Known{}, false, true, "", Practice},
		{"somebody poured something in", func(r map[string]Reply) { r["unknown"] = Yes }, Known{}, true, false, garden, Practice},
		{"nobody knows whether", func(r map[string]Reply) { r["unknown"] = Unknown }, Known{}, false, false, garden, Practice},
		{"the sanitiser was not rinsed", func(r map[string]Reply) { r["rinsed"] = No }, Known{}, true, false, garden, Practice},
		{"somebody is not well", func(r map[string]Reply) { r["ill"] = No }, Known{}, false, false, health, memory},
		{"cut leaves out of the cold", func(r map[string]Reply) { r["cold"] = No }, Known{}, false, false, kitchen, usda},
		{"the kitchen was not asked", func(r map[string]Reply) { r["permission"] = Unknown }, Known{}, false, false, kitchen, Practice},
		{"the kitchen agreed, says the plan", func(r map[string]Reply) { r["permission"] = Unknown }, Known{KitchenYes: true}, false, true, "", Practice},
		{"a tub of unknown past", func(map[string]Reply) {}, Known{SecondHand: true}, true, false, garden, Practice},
		{"brown roots in the logbook", func(map[string]Reply) {}, Known{BadRoots: true}, false, false, garden, Practice},
		{"the kitchen said no, whatever is ticked", func(map[string]Reply) {}, Known{KitchenNo: true}, true, false, kitchen, Practice},
		{"the kitchen said no, and something was poured in", func(r map[string]Reply) { r["unknown"] = Yes }, Known{KitchenNo: true}, true, false, garden, Practice},
	} {
		r := allGood()
		c.change(r)
		a := Judge(r, c.known)
		if a.Never != c.never || a.Asked != c.asked {
			t.Errorf("%s: never %v, asked %v: %s (%s)", c.name, a.Never, a.Asked, a.Says, c.source)
		}
		if c.who != "" && (len(a.Left) == 0 || a.Left[0].Who != c.who || a.Left[0].Does == "") {
			t.Errorf("%s: %+v", c.name, a.Left)
		}
	}
}

// A question that was answered is not called open; what may be poisonous is
// neither weighed nor touched.
func TestWhatIsClosedIsNotCalledOpen(t *testing.T) {
	for _, id := range []string{"permission", "unknown", "sound", "ill", "cold"} {
		r := allGood()
		r[id] = map[Reply]Reply{Yes: No, No: Yes}[r[id]]
		a := Judge(r, Known{})
		if strings.Contains(a.Says, "open") {
			t.Errorf("%s: %s", id, a.Says)
		}
		r["sound"], r["permission"] = Unknown, No
		if id == "unknown" {
			for _, j := range Judge(r, Known{}).Left {
				if strings.Contains(j.Does, "eigh") || strings.Contains(j.Does, "Lift") {
					t.Errorf("with something poured in: %s", j.Does)
				}
			}
		}
		if weighs := strings.Contains(a.Says+a.Counts, "eigh"); weighs == (id == "unknown") {
			t.Errorf("%s: %s %s", id, a.Says, a.Counts)
		}
	}
}

// 5 °C are 41 °F: USDA Food and Nutrition Service, Handling Fresh Produce in
// Classrooms.
func TestPublishedCold(t *testing.T) {
	if f := ColdMostC()*9/5 + 32; f != 41 {
		t.Errorf("%v °F", f)
	}
}

// Nothing is ever approved, whatever is answered; nobody asks who is ill or
// with what; babies are named.
func TestNothingIsEverApproved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := map[string]Reply{}
		for _, g := range Gates() {
			r[g.ID] = rapid.SampledFrom([]Reply{Unknown, Yes, No}).Draw(t, g.ID)
		}
		k := Known{SecondHand: rapid.Bool().Draw(t, "past"), BadRoots: rapid.Bool().Draw(t, "roots"), KitchenYes: rapid.Bool().Draw(t, "yes")}
		a := Judge(r, k)
		said := a.Says + a.Counts
		for _, j := range a.Gates {
			said += j.Asks + j.Does
			if j.Open == (j.Does != "") || j.Who == "" || j.Source == "" {
				t.Errorf("%+v", j)
			}
			if (j.Final && j.Reply != Unknown && !j.Open) && !a.Never {
				t.Errorf("%s is closed for good, and yet it may be eaten", j.ID)
			}
		}
		for _, s := range Steps("5 °C") {
			said += s.Do
		}
		for _, never := range []string{"approved", "is safe", "safe to eat", "name of the"} {
			if strings.Contains(strings.ToLower(said), never) {
				t.Errorf("%q is said", never)
			}
		}
		if !strings.Contains(said, "Not for babies") || !strings.Contains(said, "still counts") {
			t.Error("babies or the harvest that is not eaten are not named")
		}
		if a.Asked && (a.Never || len(a.Left) > 0) {
			t.Errorf("%+v", a)
		}
	})
}
