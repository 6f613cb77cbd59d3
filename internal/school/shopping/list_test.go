package shopping

import (
	"bytes"
	"encoding/csv"
	"math"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func design(b *working.Book) Design {
	solution := b.In("tubs.Heron").Typed("volume_solution", "nutrient solution", "V", quantity.Volume, quantity.Litre.Base(25), 0)
	return Design{
		System: quantity.Metric, Prices: map[string]float64{"tub": 12, "cup": 0.5, "sundries": 3},
		Tubs: []Tub{{
			Name: "Heron", Key: "tubs.Heron", Cups: 8, Empty: 2, Cup: Cup{BodyMM: 72, RimMM: 83, DepthMM: 65}, HoleMM: 76,
			AirHoleMM: 6.5, ServiceMM: 32, Solution: solution, Stones: 1, HeightMM: 220, Crops: []Crop{{"leaf lettuce", 8}},
		}},
	}
}

func find(items []Item, key string) (Item, bool) {
	for _, i := range items {
		if i.Key == key {
			return i, true
		}
	}
	return Item{}, false
}

func TestListByHand(t *testing.T) {
	b := working.NewBook()
	items := List(b, design(b))
	for _, c := range []struct {
		key, why string
		count    float64
	}{
		{"cup", "eight and a spare", 9},
		{"seed_plug", "8 plants, a quarter more, of which 85 in 100 reach the tub: 11.8", 12},
		{"seed", "two a cell", 24},
		{"pebbles", "8 x pi/4 x 7.2 x 7.2 x 6.5 = 2117 cm³", 2.1},
		{"cap", "two holes without a plant", 2},
		{"stone", "one and a spare", 2},
		{"tube", "0.22 m and a metre, to the next half metre", 1.5},
	} {
		if got, ok := find(items, c.key); !ok || math.Abs(got.Count-c.count) > 1e-9 {
			t.Errorf("%s: %v, want %v (%s)", c.key, got.Count, c.count, c.why)
		}
	}
	if pump, _ := find(items, "pump"); pump.Size != "2.5\u00a0L/min or more" {
		t.Errorf("pump for 25 L: %q", pump.Size)
	}
}

func TestPricesAreTheTeachersAndNoOthers(t *testing.T) {
	b := working.NewBook()
	known := map[string]float64{}
	for _, i := range List(b, design(b)) {
		if cost, ok := i.Total(); ok {
			known[i.Key] = cost
		}
	}
	if len(known) != 2 || known["tub"] != 12 || known["cup"] != 4.5 {
		t.Errorf("priced: %v, want the tub at 12 and nine cups at 4.50", known)
	}
}

func TestStillTubNeedsNoAir(t *testing.T) {
	b := working.NewBook()
	d := design(b)
	d.Tubs[0].Still, d.Tubs[0].AirHoleMM = true, 0
	for _, key := range []string{"pump", "stone", "check_valve", "tube", "drill_bit"} {
		if _, there := find(List(working.NewBook(), d), key); there {
			t.Errorf("a still tub lists a %s", key)
		}
	}
}

func TestAFoamBoardIsCutAndNotDrilled(t *testing.T) {
	b := working.NewBook()
	d := design(b)
	d.Tubs[0].Foam, d.Tubs[0].ServiceMM = true, 32
	items := List(working.NewBook(), d)
	for key, want := range map[string]bool{"saw": false, "service_saw": false, "drill_bit": false, "foam_cutter": true, "plug": true} {
		if _, there := find(items, key); there != want {
			t.Errorf("%s listed: %v", key, there)
		}
	}
}

func TestTwoTubsShareTheirTools(t *testing.T) {
	b := working.NewBook()
	d := design(b)
	second := d.Tubs[0]
	second.Name, second.Key = "Otter", "tubs.Otter"
	d.Tubs = append(d.Tubs, second)
	items := List(b, d)
	for key, want := range map[string]float64{"cup": 18, "saw": 1, "clamp": 2, "seed_plug": 24} {
		if got, _ := find(items, key); got.Count != want {
			t.Errorf("%s for two tubs alike: %v, want %v", key, got.Count, want)
		}
	}
}

func TestCSVIsReadBackByAnyReader(t *testing.T) {
	price := 1.5
	text, err := CSV([]Item{{Key: "cup", What: "=1+1", Count: 3, Size: "a, b", Price: &price}}, "EUR")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(text, []byte("\xef\xbb\xbf")) || !bytes.Contains(text, []byte("\r\n")) {
		t.Error("no UTF-8 mark, or no CRLF")
	}
	rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(string(text), "\ufeff"))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(rows[1], "|"); got != "cup|'=1+1|3||a, b||1.50|4.50" {
		t.Errorf("row %q", got)
	}
}
