package garden_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/garden"
)

// under is a plan of one tub with one hole in the middle of its lid and more
// keys of the garden; the lamp hangs over that hole.
func under(t testing.TB, keys ...string) *garden.Assessment {
	t.Helper()
	return assessed(t, parsed(t, "under", []byte(`rootbell: 1
garden: under a lamp
`+strings.Join(keys, "\n")+`
tubs:
  - name: One
    plants: 1
    inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm}
    lid: {size: [54 cm, 38 cm], thickness: 2 mm, above_rim: 0 mm, holes: [{at: [27 cm, 19 cm]}]}
    cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}
    hole: 76 mm
    air: {flow: 2 L/min, stones: 1, stone_height: 25 mm}
`)))
}

const term11 = "school: {terms: [{from: 2027-01-11, to: 2027-04-02}]}"

// What others measured or worked out comes out of a plan.
func TestPublishedLight(t *testing.T) {
	lux := func(v, source string) string { return fmt.Sprintf("lux: [{value: %s, source: %s}]", v, source) }
	lit := func(flux, hours string) string {
		return "lamps: [{name: panel, flux: " + flux + ", length: 30 cm, width: 30 cm, above_lid: 30 cm, lit: " + hours + "}]"
	}
	const (
		gavhane = "Gavhane et al. 2023, Sci. Rep. 13, 10.1038/s41598-023-36997-2: 200 µmol/m²/s for 12, 16 and 20 h"
		panel   = "computed: the cosine law summed over the patches of a panel of 0.3 m, 0.3 m over the leaf"
		double  = `["06:00", "22:00"]`
	)
	flux200 := fmt.Sprintf("%.3f µmol/s", 200/266.063*100)
	for _, row := range []struct {
		source string
		keys   string
		ppfd   float64
		dli    float64
		within float64 // of both, as a share
	}{
		{"Sharakshane 2018, 10.1101/289280: 11,000 lx of white LED", lux("11000 lx", "white LED"), 165, 165 * 16 * 3600e-6, 0.001},
		{"Thimijan & Heins 1983, HortScience 18:818: 108,000 lx of sun and sky; eight hours are common practice", lux("108 klx", "daylight"), 2000, 57.6, 0.001},
		{panel, lit("100 µmol/s", double), 266.063, 266.063 * 16 * 3600e-6, 1e-3},
		{gavhane, lit(flux200, `["06:00", "18:00"]`), 200, 8.64, 1e-3},
		{gavhane, lit(flux200, double), 200, 11.52, 1e-3},
		{gavhane + "; over midnight", lit(flux200, `["20:00", "16:00"]`), 200, 14.4, 1e-3},
	} {
		l := under(t, row.keys).Tubs[0].Light
		if l == nil || math.Abs(l.MeanPPF/row.ppfd-1) > row.within || math.Abs(l.DLI/row.dli-1) > row.within {
			t.Errorf("%s: want %v and %v, got %+v", row.source, row.ppfd, row.dli, l)
		}
	}
}

// The light at a hole is the sum over the patches of each lamp, hung and stood
// as the plan's note says: worked out here from the plan's own figures.
func TestLightIsThatOfTheBay(t *testing.T) {
	for _, name := range []string{"../../examples/fernhollow.yaml", "../../examples/saltbrook.yaml"} {
		p, a := standing(t, name, systems[0])
		lamp := p.Lamps[0]
		all, before := 0.0, 0.0
		for _, one := range p.Tubs {
			all += float64(one.Outside.Size[0].Value)
		}
		for i, one := range p.Tubs {
			middle := (float64(p.Shelf.Width.Value)-all)/2 + before + float64(one.Outside.Size[0].Value)/2
			before += float64(one.Outside.Size[0].Value)
			l := a.Tubs[i].Light
			chosen, _ := a.Tubs[i].Lid.Layout(a.Tubs[i].Lid.Chosen)
			if l == nil || len(l.PPFD) != len(chosen.Holes) {
				t.Fatalf("%s: %+v", a.Tubs[i].Name, l)
			}
			wide, deep := float64(one.Lid.Size[0].Value), float64(one.Lid.Size[1].Value)
			if one.Lid.Diameter.Set() {
				wide, deep = float64(one.Lid.Diameter.Value), float64(one.Lid.Diameter.Value)
			}
			mean := 0.0
			for k, h := range chosen.Holes {
				x := middle + h.XMM - wide/2 - float64(p.Shelf.Width.Value)/2
				want := patches(float64(lamp.Flux.Value), float64(lamp.Length.Value), float64(lamp.Width.Value), float64(lamp.AboveLid.Value), x, h.YMM-deep/2)
				mean += want / float64(len(chosen.Holes))
				if got := l.PPFD[k]; got.N != h.N || math.Abs(got.PPFD-want) > 0.06+1e-3*want {
					t.Errorf("%s, hole %d: %v, want %.2f", a.Tubs[i].Name, h.N, got.PPFD, want)
				}
			}
			if want := mean * 16 * 3600e-6; math.Abs(l.DLI-want) > 0.01 {
				t.Errorf("%s: DLI %v, want %.3f", a.Tubs[i].Name, l.DLI, want)
			}
		}
	}
}

// patches sums the cosine law over a lamp in mm, seen from a place beside its
// middle and under it.
func patches(flux, long, wide, high, x, y float64) float64 {
	const n, m = 220, 40
	sum := 0.0
	for i := range n {
		for k := range m {
			dx, dy := x-long*((float64(i)+0.5)/n-0.5), y-wide*((float64(k)+0.5)/m-0.5)
			r2 := (dx*dx + dy*dy + high*high) / 1e6
			sum += flux / (n * m) * high * high / 1e6 / (math.Pi * r2 * r2)
		}
	}
	return sum
}

// Each thing about lamps and readings is said, at its place.
func TestWhatIsSaidOfLight(t *testing.T) {
	lampWith := func(keys string) string { return "lamps: [{name: bar, " + keys + "}]" }
	const good = "flux: 200 µmol/s, power: 80 W, length: 100 cm, width: 10 cm, "
	for _, c := range []struct{ what, keys, code, field string }{
		{"no lamp", "", "window-only", "garden"},
		{"no flux and no watts", lampWith("above_lid: 30 cm"), "lamp-no-flux", "lamps[0]"},
		{"no flux and no watts: dark", lampWith("above_lid: 30 cm"), "lamp-dark", "lamps[0]"},
		{"watts alone", lampWith("power: 40 W"), "flux-from-watts", "lamps[0]"},
		{"no hours", lampWith(good + `lit: ["06:00", "06:00"]`), "lamp-no-hours", "lamps[0].lit"},
		{"scorching", lampWith(good + "above_lid: 10 cm"), "lamp-close", "lamps[0].above_lid"},
		{"no height", lampWith(good[:len(good)-2]), "lamp-height", "lamps[0]"},
		{"no size", lampWith("flux: 200 µmol/s"), "lamp-size", "lamps[0]"},
		{"eyes", lampWith(good + "above_lid: 30 cm"), "lamp-eyes", "lamps[0]"},
		{"where it hangs", lampWith(good + "above_lid: 30 cm"), "lamp-place", "lamps[0]"},
		{"a weak lamp", lampWith("flux: 20 µmol/s, length: 100 cm, width: 10 cm, above_lid: 30 cm"), "light-low", "lamps[0]"},
		{"a strong lamp", lampWith("flux: 600 µmol/s, length: 100 cm, width: 10 cm, above_lid: 30 cm"), "light-high", "lamps[0]"},
		{"day and night", lampWith(good + `lit: ["00:00", "24:00"]`), "light-long", "lamps[0]"},
		{"red and blue", "lux: [{value: 9 klx, source: red and blue LED}]", "lux-useless", "lux[0].source"},
		{"lux without a lamp", "lux: [{value: 9 klx}]", "lux-hours", "lux[0]"},
		{"a window", "lux: [{value: 9 klx, source: daylight}]", "window-read", "lux[0]"},
		{"not by the meal", lampWith("flux: 12 µmol/s, length: 100 cm, width: 10 cm, above_lid: 30 cm") + "\n" + term11, "light-meal", "lamps[0]"},
	} {
		f, said := found(under(t, c.keys), c.code)
		if !said || f.Field != c.field || f.Hint == "" {
			t.Errorf("%s: %q at %q, want %s at %s; said are %v", c.what, f.Code, f.Field, c.code, c.field, codes(under(t, c.keys)))
		}
	}
}

// A head of lettuce burns at its tips where the light is strong, and a plant
// that fruits wants a night.
func TestWhatACropMinds(t *testing.T) {
	for crop, code := range map[string]string{"butterhead": "tip-burn", "dwarf cherry tomato": "night-short"} {
		a := edited(t, "../../examples/fernhollow.yaml", edit{"tubs[0].crop", crop}, edit{"lamps[0].flux", "500 µmol/s"}, edit{"lamps[0].lit[0]", "00:00"}, edit{"lamps[0].lit[1]", "23:00"})
		if _, said := found(a, code); !said {
			t.Errorf("%s: no %s among %v", crop, code, codes(a))
		}
	}
}

// The example's holes differ, and its darkest is named.
func TestUnevenLight(t *testing.T) {
	_, a := standing(t, "../../examples/fernhollow.yaml", systems[0])
	for code, word := range map[string]string{"light-uneven": "Heron", "light-dark-hole": "pak choi"} {
		if f, said := found(a, code); !said || !strings.Contains(f.Text, word) {
			t.Errorf("%s: %+v", code, f)
		}
	}
}

// A light that brings no plant on is a warning and never a limit of nought; a
// brighter one brings on as many or more.
func TestLampLimit(t *testing.T) {
	last := 0
	for _, flux := range []string{"2", "20", "40", "60", "110", "300"} {
		a := edited(t, "../../examples/fernhollow.yaml", edit{"lamps[0].flux", flux + " µmol/s"})
		p := a.Tubs[0].Plants
		n, limited := p.Limits[garden.ByLamp]
		if limited && n < 1 || n < last {
			t.Errorf("%s µmol/s: %d plants, after %d", flux, n, last)
		}
		last = max(last, n)
		least := 200
		for _, limit := range p.Limits {
			least = min(least, limit)
		}
		if p.Count != least || p.Limits[p.Binds] != least {
			t.Errorf("%s µmol/s: %d by %s of %v", flux, p.Count, p.Binds, p.Limits)
		}
		if p.Moves[garden.ByLamp] == "" {
			t.Errorf("%s µmol/s: nothing would move the lamp", flux)
		}
		if limited {
			if got := number(t, a, "tubs.Heron.limit_lamp"); got.Value != float64(n) || !strings.Contains(got.Source, "wanted") {
				t.Errorf("%+v", got)
			}
		}
	}
	if last < 12 {
		t.Errorf("only %d plants in the brightest light", last)
	}
}

// Without a meal and a term no date is known, so the light limits nothing; with
// either it does.
func TestLampNeedsADate(t *testing.T) {
	const lamp = "lamps: [{name: bar, flux: 200 µmol/s, length: 100 cm, width: 10 cm, above_lid: 30 cm}]"
	for keys, want := range map[string]bool{lamp: false, lamp + "\n" + term11: true, term11: false} {
		if _, got := under(t, keys).Tubs[0].Plants.Limits[garden.ByLamp]; got != want {
			t.Errorf("%s: limited %v", keys, got)
		}
	}
	early := "school: {terms: [{from: 2027-01-11, to: 2027-04-02}], meal: {day: 2027-01-12}}"
	if _, limited := under(t, lamp, early).Tubs[0].Plants.Limits[garden.ByLamp]; limited {
		t.Error("the meal is on the second day of the term, and the light still limits")
	}
}

// What the lamps take is power times time, and costs its price.
func TestElectricity(t *testing.T) {
	m := edited(t, "../../examples/fernhollow.yaml", edit{"prices.electricity", "0.30"}).Tubs[0].Light.Meal
	if want := 44 * 16 * float64(m.Days) / 1000; math.Abs(m.KWh-want) > 0.01 || m.Cost == nil || math.Abs(*m.Cost-0.30*want) > 0.01 {
		t.Errorf("%+v, want %v kWh", m, want)
	}
}

// Any lamp over any place gives figures that can be told.
func TestAnyLampCanBeTold(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		draw := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(r, name) }
		keys := fmt.Sprintf("lamps: [{name: a, flux: %d µmol/s, power: %d W, length: %d cm, width: %d mm, above_lid: %d cm, lit: [\"%02d:00\", \"%02d:30\"]}]\n%s",
			draw("flux", 1, 5000), draw("watts", 1, 2000), draw("long", 1, 500), draw("wide", 1, 3000), draw("high", 1, 300), draw("on", 0, 23), draw("off", 0, 23), term11)
		a := under(t, keys)
		finite(t, document(t, a))
		l := a.Tubs[0].Light
		if l == nil || l.LowDLI > l.DLI+0.01 || l.DLI > l.HighDLI+0.01 || l.Hours < 0 || l.Hours > 24 || l.NeedH < 0 || l.NeedH > 24 {
			r.Fatalf("%s: %+v", keys, l)
		}
		if n, limited := a.Tubs[0].Plants.Limits[garden.ByLamp]; limited && n < 1 {
			r.Fatalf("%s: a limit of %d", keys, n)
		}
		if len(a.LightWords(0)) == 0 || strings.Contains(strings.Join(a.LightWords(0), " "), "%!") {
			r.Fatalf("%s: %v", keys, a.LightWords(0))
		}
	})
}
