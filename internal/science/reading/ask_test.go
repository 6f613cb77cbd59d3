package reading

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
)

var heron = Vessel{Name: "Heron", FillL: 24, RimL: 34, InsideHeight: 220, LitresAtDepth: func(d quantity.MM) quantity.L { return quantity.L(d) / 7 }}

// yesterday is what the tub was like before the rows of these tests.
func yesterday() Beside {
	last := Row{
		ID: "last", Tub: "Heron", At: monday.Add(-24 * time.Hour), PH: ph(6.0), EC: ec(1.4), Water: typed[quantity.DegC](20),
		Level: Level{Litres: typed[quantity.L](23)},
	}
	other := Row{ID: "other", Tub: "Otter", At: last.At, PH: ph(6.9), EC: ec(2.2), Level: Level{Litres: typed[quantity.L](15)}}
	return Beside{
		Now: monday, Tub: heron, Last: []Entry{{Row: last}}, Others: map[string]Row{"Otter": other}, Target: 1.4,
	}
}

func today(change func(*Row)) Row {
	r := Row{ID: "new", Tub: "Heron", At: monday, PH: ph(6.1), EC: ec(1.45), Water: typed[quantity.DegC](20.5), Level: Level{Litres: typed[quantity.L](22)}}
	change(&r)
	return r
}

func ecTyped(t *testing.T, text string, s Scale) EC {
	t.Helper()
	read, err := ParseEC(text, s)
	if err != nil {
		t.Fatal(err)
	}
	return EC{Read: read, With: Meter, Scale: s}
}

func TestQuestions(t *testing.T) {
	for _, c := range []struct {
		name   string
		row    Row
		code   string // empty: no question
		likely string // in the first label
		says   string
	}{
		{"all as ever", today(func(*Row) {}), "", "", ""},
		{"point forgotten in pH", today(func(r *Row) { r.PH = ph(61) }), "ph-range", "6.1", "pH 61: did you mean 6.1?"},
		{"point twice", today(func(r *Row) { r.PH = ph(0.61) }), "ph-range", "6.1", "0.61"},
		{"pH that nothing explains", today(func(r *Row) { r.PH = ph(0) }), "ph-range", "", "is that right?"},
		{"pH moved far", today(func(r *Row) { r.PH = ph(8.2) }), "ph-jump", "", "the last one was 6"},
		{"EC without its point", today(func(r *Row) { r.EC = ecTyped(t, "14", MilliSiemens) }), "ec-range", "1.4 mS/cm", "EC 14: did you mean 1.4"},
		{"µS typed as mS", today(func(r *Row) { r.EC = ecTyped(t, "1430", MilliSiemens) }), "ec-range", "1.43 mS/cm", "µS/cm"},
		{"ppm typed as mS", today(func(r *Row) { r.EC = ecTyped(t, "715", MilliSiemens) }), "ec-range", "1.43 mS/cm", "ppm 500"},
		{"mS typed as ppm", today(func(r *Row) { r.EC = ecTyped(t, "1.4", PPM700) }), "ec-range", "1.4 mS/cm", "in mS/cm"},
		{"water in °F", today(func(r *Row) { r.Water = typed[quantity.DegC](70) }), "water-range", "21.1", "70"},
		{"°C typed as °F", today(func(r *Row) {
			r.Water = quantity.Typed[quantity.DegC]{Value: -6.1111, Text: "21 °F"}
		}), "water-range", "21.0", "21 °F"},
		{"water without its point", today(func(r *Row) { r.Water = typed[quantity.DegC](205) }), "water-range", "20.5", "205"},
		{"more than the tub holds", today(func(r *Row) { r.Level.Litres = typed[quantity.L](225) }), "level-rim", "22.5", "225"},
		{"mL", today(func(r *Row) { r.Level = Level{Filled: typed[quantity.L](3500)} }), "level-rim", "3.5", "3500"},
		{"deeper than the tub", today(func(r *Row) { r.Level = Level{Depth: typed[quantity.MM](1560)} }), "level-rim", "15.6", "1560"},
		{"level rose by itself", today(func(r *Row) { r.Level.Litres = typed[quantity.L](26) }), "level-risen", "", "3.0\u00a0L above"},
		{"tub was changed out", today(func(r *Row) { r.Level.Litres, r.Done = typed[quantity.L](26), []Deed{ChangedOut} }), "", "", ""},
		{"poured in more than fits", today(func(r *Row) { r.Added.Litres = typed[quantity.L](350) }), "added-range", "", "350"},
		{"pH and EC swapped", today(func(r *Row) { r.PH, r.EC = ph(1.4), ec(6.1) }), "swapped", "pH 6.1, EC 1.4", "each other"},
		{"the other tub", today(func(r *Row) {
			r.PH, r.EC, r.Level.Litres = ph(6.8), ec(2.25), typed[quantity.L](15)
		}), "tub-other", "Otter", "near the one of Otter"},
		{"tomorrow", today(func(r *Row) { r.At = monday.Add(24 * time.Hour) }), "moment-ahead", "Mon 11 Jan 2027 08:40", "still to come"},
		{"half a day ahead", today(func(r *Row) { r.At = monday.Add(11 * time.Hour) }), "moment-ahead", "Mon 11 Jan 2027 07:40", ""},
		{"a clock four minutes ahead", today(func(r *Row) { r.At = monday.Add(4 * time.Minute) }), "", "", ""},
		{"last year", today(func(r *Row) { r.At = monday.AddDate(-1, 0, 0) }), "moment-late", "Mon 11 Jan 2027 08:40", "long past"},
		{"a tall plant", today(func(r *Row) { r.Height = typed[quantity.MM](1800) }), "height-range", "18.0", "1800"},
		{"leaves without their point", today(func(r *Row) { r.Counted = typed[quantity.Number](180) }), "leaves-range", "18", "180 leaves"},
		{"as many leaves as a plant has", today(func(r *Row) { r.Counted = typed[quantity.Number](24) }), "", "", ""},
		{"more plants than a tub has", today(func(r *Row) { r.Picked.Plants = typed[quantity.Number](800) }), "picked-range", "80", "800 plants"},
		{"a harvest in kilograms", today(func(r *Row) { r.Picked = picked(8, 0.84) }), "picked-mass", "840\u00a0g (the figure is in kg)", "weigh 0.84 together"},
		{"a harvest of two figures too few, or in ounces", today(func(r *Row) { r.Picked = picked(6, 5) }), "picked-mass", "500\u00a0g", "weigh 5 together"},
		{"a harvest with its point lost", today(func(r *Row) { r.Picked = picked(1, 1045) }), "picked-mass", "105\u00a0g", "weigh 1045 together"},
		{"a usual harvest", today(func(r *Row) { r.Picked = picked(8, 840) }), "", "", ""},
		{"a harvest that nobody counted", today(func(r *Row) { r.Picked.Mass = typed[quantity.G](2400) }), "", "", ""},
		{"a cold room", today(func(r *Row) { r.Water = typed[quantity.DegC](12) }), "", "", ""},
	} {
		qs := Ask(c.row, yesterday())
		if c.code == "" {
			if len(qs) > 0 {
				t.Errorf("%s: asked %+v", c.name, qs)
			}
			continue
		}
		if len(qs) != 1 || qs[0].Code != c.code {
			t.Errorf("%s: asked %+v, want %s", c.name, qs, c.code)
			continue
		}
		q := qs[0]
		if (c.likely == "") != (len(q.Likely) == 0) && c.code != "added-range" || c.likely != "" && !strings.Contains(q.Likely[0].Label, c.likely) {
			t.Errorf("%s: likely %+v, want %q", c.name, q.Likely, c.likely)
		}
		if !strings.Contains(q.Text, c.says) {
			t.Errorf("%s: %q does not say %q", c.name, q.Text, c.says)
		}
	}
}

func picked(plants quantity.Number, grams quantity.G) Picked {
	return Picked{typed[quantity.Number](plants), typed[quantity.G](grams)}
}

func TestTheThreeAnswers(t *testing.T) {
	row, beside := today(func(r *Row) { r.PH = ph(61) }), yesterday()
	q := Ask(row, beside)[0]
	taken := q.Likely[0].Take(row)
	if taken.PH.Read.Low != 6.1 || taken.PH.Read.High != 6.1 || taken.PH.Read.Text != "61" {
		t.Errorf("taken: %+v; what was typed has to stay", taken.PH.Read)
	}
	if again := Ask(taken, beside); len(again) > 0 {
		t.Errorf("asked again: %+v", again)
	}
	kept := q.Keep(row)
	if !kept.Doubts(FieldPH) || kept.PH.Read.Low != 61 || row.Doubts(FieldPH) {
		t.Errorf("kept: %+v", kept)
	}
	if again := Ask(kept, beside); len(again) > 0 {
		t.Errorf("asked about what is kept: %+v", again)
	}
	if p := append(taken.Check(nil), kept.Check(nil)...); len(p) > 0 {
		t.Errorf("an answer makes the row impossible: %v", p)
	}
}

// Whatever is typed: an answer settles its question, nothing but its field is
// touched without need, and nothing panics.
func TestAnswersSettle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		row, beside := rowOf(t, "new"), yesterday()
		beside.Now = row.At
		for _, q := range Ask(row, beside) {
			for _, again := range Ask(q.Keep(row), beside) {
				if again.Field == q.Field {
					t.Errorf("kept %s, asked again %q", q.Field, again.Text)
				}
			}
			for _, choice := range q.Likely {
				for _, again := range Ask(choice.Take(row), beside) {
					if again.Code == q.Code && q.Code != "level-rim" {
						t.Errorf("took %q for %q, asked again %q", choice.Label, q.Text, again.Text)
					}
				}
			}
			if q.Text == "" || len(q.Likely) > mostLikely {
				t.Errorf("%+v", q)
			}
		}
	})
}

func TestLeak(t *testing.T) {
	for _, c := range []struct {
		name                        string
		had, has, poured, thirst95L quantity.L
		lost                        float64
		leak                        bool
	}{
		{"ordinary thirst", 23, 21, 0, 1.5, 2, false},
		{"just twice the thirst", 23, 20, 0, 1.5, 3, false},
		{"more than twice", 23, 19.9, 0, 1.5, 3.1, true},
		{"under 2 L, however small the thirst", 23, 21.1, 0, 0.2, 1.9, false},
		{"just 2 L", 23, 21, 0, 0.2, 2, false},
		{"what was poured in is gone too", 23, 22.5, 3, 1, 3.5, true},
	} {
		last, now := Row{Level: Level{Litres: typed(c.had)}}, Row{Level: Level{Litres: typed(c.has)}}
		loss, ok := Lost(book(), heron, last, now, c.poured, c.thirst95L)
		got := quantity.Litre.From(loss.Lost.Base)
		if !ok || got < c.lost-1e-9 || got > c.lost+1e-9 || loss.Leak != c.leak {
			t.Errorf("%s: %+v, %v", c.name, loss, ok)
		}
		f, says := loss.Finding(quantity.Metric)
		if says != c.leak || says && !strings.HasPrefix(f.Hint, "look for a leak before topping up") {
			t.Errorf("%s: %+v", c.name, f)
		}
	}
	changed := Row{Level: Level{Filled: typed[quantity.L](24)}, Done: []Deed{ChangedOut}}
	if _, ok := Lost(book(), heron, Row{Level: Level{Litres: typed[quantity.L](23)}}, changed, 0, 1); ok {
		t.Error("a change of water makes a leak")
	}
	doubtful := Row{Level: Level{Litres: typed[quantity.L](2)}, Doubtful: []Field{FieldLevel}}
	if _, ok := Lost(book(), heron, Row{Level: Level{Litres: typed[quantity.L](23)}}, doubtful, 0, 1); ok {
		t.Error("a doubtful level makes a leak")
	}
}
