package garden_test

import (
	"fmt"
	"math"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/science/lid"
)

const common = "common practice, no source"

// published is one value from outside the project, and how near ours must come:
// half of the last digit that the source gives.
type published struct {
	source string
	key    string
	want   float64
	within float64
}

func compared(t *testing.T, a *garden.Assessment, rows []published) {
	t.Helper()
	for _, r := range rows {
		if got := number(t, a, r.key); math.Abs(got.Value-r.want) > r.within+1e-12 {
			t.Errorf("%s is %v %s; %s: %v", r.key, got.Value, got.Unit, r.source, r.want)
		}
	}
}

// The trade's chain: a low tub of 10 US gal filled to 6, 3 in cups, 0.75 US gal
// a plant → 8 plants, about 6 in between centres.
func TestTheTradesTub(t *testing.T) {
	shown := [2][]published{
		{
			{common, "tubs.Ten.volume_solution", 22.7, 0.05}, // 6 US gal in litres
			{common, "tubs.Ten.litres_per_plant", 2.84, 0.005},
			{common, "tubs.Ten.limit_nutrient_volume", 8, 0},
			{common, "tubs.Ten.between", 15.2, 0.05},
		},
		{
			{common, "tubs.Ten.volume_solution", 6, 0.05},
			{common, "tubs.Ten.litres_per_plant", 0.75, 0.005},
			{common, "tubs.Ten.limit_nutrient_volume", 8, 0},
			{common, "tubs.Ten.between", 6, 0.005},
		},
	}
	for i, system := range systems {
		p := parsed(t, "trade", text(t, "testdata/published/trade-tub.yaml"))
		p.Units = system
		a := assessedWith(t, p, lid.Full)
		compared(t, a, shown[i])
		tub := a.Tubs[0]
		if tub.Plants.Count != 8 || tub.Plants.Binds != garden.ByWater || tub.Plants.Limits[garden.ByLid] < 8 {
			t.Errorf("%d plants, %s binds, limits %v", tub.Plants.Count, tub.Plants.Binds, tub.Plants.Limits)
		}
		for _, l := range tub.Lid.Layouts {
			if len(l.Holes) != 8 || l.SpacingMM < 6*25.4-roundedMM {
				t.Errorf("%d holes, '%s' keeps %.2f in; the trade has 8 about 6 in apart", len(l.Holes), l.Name, l.SpacingMM/25.4)
			}
			kept(t, p, &p.Tubs[0], l)
		}
		for _, code := range []string{"fill-under-cup", "fill-over-freeboard", "over-limit", "closer-than-wanted", "web-thin", "no-plant"} {
			if _, said := found(a, code); said {
				t.Errorf("the trade's tub is told %s", code)
			}
		}
	}
	tenGallons(t)
}

// tenGallons holds that the tub is one of 10 US gal: 7.5 in high, its mean area
// between that of the floor, half way up and the rim by the prismoidal formula.
func tenGallons(t *testing.T) {
	t.Helper()
	cubicInches := 7.5 / 6 * (21*13.25 + 4*22*14.125 + 23*15)
	if gallons := cubicInches / 231; math.Abs(gallons-10) > 0.15 {
		t.Errorf("the tub holds %.2f US gal", gallons)
	}
}

// A float bed as published: 125 US gal for 72 plants on a grid of 8 in.
func TestAPublishedFloatBed(t *testing.T) {
	const source = "Shuler et al., Proc. Fla. State Hort. Soc.: 125 US gal, 72 plants, 8 in grid"
	const litresEach = 125 * 3.785411784 / 72 // 6.572
	p := parsed(t, "bed", text(t, "testdata/published/float-bed.yaml"))
	a := assessedWith(t, p, 1)
	compared(t, a, []published{
		{source, "tubs.Bed.volume_fill", 125, 0.005},
		{source, "tubs.Bed.limit_nutrient_volume", 72, 0},
	})
	if math.Abs(litresEach-6.572) > 0.0005 || math.Abs(*a.Tubs[0].VolumeSolution/72-litresEach) > 0.001 {
		t.Errorf("%v L a plant; %s: %.3f", *a.Tubs[0].VolumeSolution/72, source, litresEach)
	}
	// A grid is not the most that 8 in allow: the lid may take one more.
	if n := a.Tubs[0].Plants; n.Count != 72 || n.Limits[garden.ByLid] < 72 {
		t.Errorf("%d plants, the lid takes %d; %s", n.Count, n.Limits[garden.ByLid], source)
	}
	for _, l := range a.Tubs[0].Lid.Layouts {
		if l.Name == "rows" && math.Abs(l.SpacingMM-203.2) > roundedMM {
			t.Errorf("rows keep %v mm; %s: 203.2", l.SpacingMM, source)
		}
	}
}

// The plain tub's numbers by hand. The area at height h is
// (460+60h/220)(300+60h/220) − (4−π)·40², its integral
// h·(138000 + 45600s/2 + 3600s²/3 − 1373.45) with s = h/220:
// 25.82 L at 167 mm, 19.90 L at 132 mm, 11.61 L at 80 mm.
func TestThePlainTubByHand(t *testing.T) {
	const source = "worked by hand from the measures"
	a := edited(t, "testdata/clean.yaml", edit{"tubs[0].plants", "8"})
	compared(t, a, []published{
		{source, "tubs.Plain.cup_bottom", 15.7, 0},
		{source, "tubs.Plain.fill_depth", 16.7, 0},
		{source, "tubs.Plain.lowered_depth", 13.2, 0},
		{source, "tubs.Plain.lowest_depth", 8, 0},
		{source, "tubs.Plain.volume_fill", 25.8, 0},
		{source, "tubs.Plain.volume_reserve", 14.2, 0},
		{source, "tubs.Plain.volume_reserve_lowered", 8.3, 0},
	})
	tub := a.Tubs[0]
	// Eight cups of 72 mm stand 10 mm in the water, and a stone of 50 mm is 25 mm high.
	displaced := (8*math.Pi/4*72*72*10 + math.Pi/4*50*50*25) / 1e6
	for _, row := range []struct {
		what         string
		got          *float64
		want, within float64
	}{
		{"fill_depth_mm", tub.FillDepthMM, 167, 0},
		{"volume_fill_l", tub.VolumeFillL, 25.822, 0.001},
		{"volume_reserve_l", tub.VolumeReserveL, 25.822 - 11.606, 0.001},
		{"displaced_l", tub.DisplacedL, displaced, 0.0005},
		{"volume_solution_l", tub.VolumeSolution, 25.822 - displaced, 0.001},
		// water of 21 °C weighs 0.99799 kg/L (Tanaka et al. 2001); the tub 1.9 kg
		{"mass_filled_kg", tub.MassFilledKG, 1.9 + (25.822-displaced)*0.99799, 0.006},
	} {
		if row.got == nil || math.Abs(*row.got-row.want) > row.within+1e-9 {
			t.Errorf("%s is %v, by hand %.3f", row.what, *row.got, row.want)
		}
	}
}

// A lid whose room for centres is a square of 1 m: the least distance that n
// points reach in the unit square.
func TestSpreadingOnASquareLid(t *testing.T) {
	const within = 1e-3
	nurmela := "Nurmela & Östergård, Discrete Comput. Geom. 22 (1999) 439-457"
	for _, row := range []struct {
		source string
		n      int
		want   float64
	}{
		{"the diagonal", 2, math.Sqrt2},
		{"the largest equilateral triangle in a square, √6 − √2", 3, math.Sqrt(6) - math.Sqrt2},
		{"four corners and the middle", 5, math.Sqrt2 / 2},
		{nurmela, 10, 0.421279543984},
	} {
		t.Run(fmt.Sprint(row.n), func(t *testing.T) {
			p := parsed(t, "square", text(t, "testdata/published/square.yaml", edit{"tubs[0].plants", fmt.Sprint(row.n)}))
			a := assessedWith(t, p, lid.Full)
			if got := a.Tubs[0].Lid.Layouts[0].SpacingMM / 1000; math.Abs(got-row.want) > within {
				t.Errorf("%d points keep %.6f; %s: %.6f", row.n, got, row.source, row.want)
			}
		})
	}
}
