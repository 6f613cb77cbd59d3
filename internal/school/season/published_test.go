package season

import (
	"math"
	"testing"

	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
)

// Cells for some plants with nineteen chances in twenty, by the survival
// function of the binomial; 0.85 of what shows gets through in a class (common
// practice), and each of the seeds in a cell can fill it.
func TestCellsAgainstSciPy(t *testing.T) {
	const source = "scipy 1.10.1, stats.binom.sf(plants-1, cells, 1-(1-g*0.85)**seeds)"
	lettuce, _ := crop.Find("leaf lettuce")
	for _, c := range []struct {
		plants      int
		germination float64
		inACell     int
		cells       int
		enough      float64
	}{
		{6, 0.95, 1, 10, 0.9719094042564325},
		{6, 0.95, 2, 7, 0.9745332199078945},
		{8, 0.80, 1, 16, 0.961216557896113},
		{8, 0.80, 2, 11, 0.9799093214962454},
		{8, 0.90, 1, 14, 0.9722294570434105},
		{8, 0.90, 2, 10, 0.9849289524514886},
		{12, 0.75, 1, 25, 0.9653872734334965},
		{12, 0.75, 2, 16, 0.9509804570307961},
		{16, 0.60, 1, 41, 0.954922895733073},
		{16, 0.60, 2, 26, 0.9696149392175849},
		{1, 0.80, 1, 3, 0.967232},
		{1, 0.80, 2, 2, 0.98951424},
		{24, 0.95, 2, 27, 0.9832661274617107},
	} {
		got, ok := Crop{Kind: lettuce, SeedsInACell: c.inACell, Seed: crop.Seed{Germination: c.germination, TempC: 20}}.
			dates(spring(t), day(t, "2027-03-02"), day(t, "2027-01-11"), c.plants)
		if !ok || got.Cells != c.cells || got.Seeds != c.cells*c.inACell || math.Abs(got.Enough-c.enough) > 1e-12 {
			t.Errorf("%+v: %d cells, %d seeds, %v (%s)", c, got.Cells, got.Seeds, got.Enough, source)
		}
	}
}

// Days until seedlings show, half an inch deep, as printed; where the table has
// none, nothing is sown.
func TestSeedlingsShow(t *testing.T) {
	const source = "Harrington & Minges 1954, as in Knott's Handbook, appendix 4"
	for _, c := range []struct {
		crop  string
		tempC float64
		days  int // 0: does not grow
	}{
		{"leaf lettuce", 10, 7},
		{"leaf lettuce", 15, 4},
		{"leaf lettuce", 20, 3},
		{"leaf lettuce", 25, 2},
		{"leaf lettuce", 30, 3},
		{"leaf lettuce", 35, 0},
		{"spinach", 15, 7},
		{"spinach", 20, 6},
		{"spinach", 25, 5},
		{"parsley", 20, 14},
		{"parsley", 25, 13},
		{"dwarf cherry tomato", 15, 14},
		{"dwarf cherry tomato", 20, 8},
		{"dwarf cherry tomato", 25, 6},
	} {
		kind, ok := crop.Find(c.crop)
		if !ok {
			t.Fatal(c.crop)
		}
		got, ok := Crop{Kind: kind, Seed: crop.Seed{Germination: 0.9, TempC: c.tempC}}.
			dates(spring(t), day(t, "2027-03-24"), day(t, "2027-01-11"), 4)
		if days := got.UpOn.Since(got.SowOn); ok != (c.days > 0) || ok && days != c.days {
			t.Errorf("%s at %v °C shows after %d days, want %d (%s)", c.crop, c.tempC, days, c.days, source)
		}
	}
}

// A nursery is as much longer as seed takes longer to show.
func TestNurseryByTemperature(t *testing.T) {
	const source = "14 days at 20 to 22 °C (growers' pages) and Harrington & Minges 1954; the difference is this project's rule"
	lettuce, _ := crop.Find("leaf lettuce")
	for tempC, want := range map[float64]float64{10: 14 + 7 - 2.8, 15: 14 + 4 - 2.8, 20: 14 + 3 - 2.8, 25: 14 + 2 - 2.8} { // 2.8 days at 21 °C, between 3 and 2
		got, ok := Crop{Kind: lettuce, Seed: crop.Seed{TempC: tempC}}.Nursery()
		if !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%v days at %v °C, want %v (%s)", got, tempC, want, source)
		}
	}
}

// Hours that a tub is alone, from the last bell on one day to the first on
// another, over changes of clocks and without.
func TestHoursAloneByTheZone(t *testing.T) {
	const source = "python 3.11 zoneinfo; 65, 89, 233 and 401 h by counting"
	for _, c := range []struct {
		zone, from, to string
		hours          float64
	}{
		{"Europe/Dublin", "2027-02-12", "2027-02-22", 233},
		{"Europe/Dublin", "2027-02-26", "2027-03-01", 65},
		{"Europe/Dublin", "2027-02-25", "2027-03-01", 89},
		{"Europe/Dublin", "2027-02-05", "2027-02-22", 401},
		{"Europe/Dublin", "2027-03-26", "2027-03-29", 64},
		{"Europe/Dublin", "2027-10-29", "2027-11-01", 66},
		{"America/New_York", "2027-03-12", "2027-03-15", 64},
		{"America/New_York", "2027-11-05", "2027-11-08", 66},
		{"Australia/Lord_Howe", "2027-04-02", "2027-04-05", 65.5},
		{"Australia/Lord_Howe", "2027-10-01", "2027-10-04", 64.5},
		{"Asia/Kolkata", "2027-03-26", "2027-03-29", 65},
		{"Pacific/Auckland", "2027-04-02", "2027-04-05", 66},
		{"America/Phoenix", "2027-03-12", "2027-03-15", 65},
	} {
		from, to := day(t, c.from), day(t, c.to)
		z := zone(t, c.zone)
		clock := Clock{Start: from.At(15*60+30, z), Zone: z}
		if got := clock.At(to, 8*60+30); got != c.hours {
			t.Errorf("%s, %s to %s: %v h, want %v (%s)", c.zone, from, to, got, c.hours, source)
		}
		p := Place{Calendar: term.New(term.Given{ArriveMin: 510, LeaveMin: 930, Terms: []term.Span{{From: from, To: from}, {From: to, To: to}}}), Zone: z, Lamp: Lamp{360, 1320}}
		sum := 0.0
		for _, s := range p.Spans(clock.Start, to.At(8*60+30, z)) {
			sum += s.Hours
		}
		if math.Abs(sum-c.hours) > 1e-9 {
			t.Errorf("%s: spans of %v h, want %v", c.zone, sum, c.hours)
		}
	}
}

// A still tub is raised as a matter of course only from under its lowest line,
// by 20 mm at most, and what is poured in before a stretch raises it no more.
func TestStillRules(t *testing.T) {
	const source = "Kratky, Acta Hort. 648:83-89, 2004: additions above 2 cm may injure plants"
	c := thirsty(t, 9)
	c.Tub.Still = true
	e := quick()
	f := follows(t, c, e)
	for i, d := range f.Dates {
		if i == 0 || f.Days[i].LevelMM.P50 <= f.Days[i-1].LevelMM.P50+1e-9 {
			continue
		}
		if now := f.Days[i].LevelMM.P50; now > c.Tub.LowestMM+20 {
			t.Errorf("%s: filled up to %v mm (%s)", d.Date, now, source)
		}
	}
	fills := 0
	for _, s := range f.Standing {
		tr := tries{Course: c, Standing: s, ways: Ways{LineStepMM: 5}, e: e, clock: f.Clock}
		now, _ := tr.present()
		d := tr.fills()
		for n := 1; n <= d.most; n++ {
			var a attempt
			var o Option
			if d.do(&a, &o, n); o.LineMM > now+20 || o.LineMM > c.Tub.LineMM {
				t.Errorf("from %v mm to %v mm (%s)", now, o.LineMM, source)
			}
			fills++
		}
	}
	if fills == 0 {
		t.Error("nothing was tried")
	}
}
