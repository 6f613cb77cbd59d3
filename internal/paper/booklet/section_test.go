package booklet_test

import (
	"encoding/xml"
	"math"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/booklet"
	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/sheet"
)

func bay() booklet.Section {
	return booklet.Section{
		Cover: booklet.Cover{Garden: "Fernhollow science room", Invented: true, On: "2027-01-11"}, Tub: "Heron",
		Cut: cutaway.Cut{
			Profile: []cutaway.Width{{HeightMM: 0, MM: 460}, {HeightMM: 220, MM: 520}}, OutsideWidthMM: 560, FloorMM: 18,
			LidWidthMM: 540, LidThicknessMM: 2, LidFaceMM: 222, Cup: sheet.Cup{BodyMM: 72, RimMM: 83, DepthMM: 65},
			CupsAtMM: []float64{60, 205, 335, 480}, FillMM: 167, LaterFillMM: 132, LowestMM: 80, Aerated: true, StoneMM: 25,
			PlantMM: 250, SpreadMM: 200, LampMM: 300, LampWideMM: 1100, ShelfWideMM: 1200, ClearMM: 850,
		},
	}
}

func TestSectionIsToScale(t *testing.T) {
	data, err := booklet.SectionSVG(bay())
	if err != nil {
		t.Fatal(err)
	}
	var drawing struct {
		Desc  string `xml:"desc"`
		Lines []struct {
			Class string  `xml:"class,attr"`
			X1    float64 `xml:"x1,attr"`
			X2    float64 `xml:"x2,attr"`
			Y1    float64 `xml:"y1,attr"`
		} `xml:"line"`
	}
	if err := xml.Unmarshal(data, &drawing); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(drawing.Desc, "1 : 8") {
		t.Fatalf("the scale is not the one this test reckons with: %s", drawing.Desc)
	}
	heights := map[string][2]float64{}
	for _, l := range drawing.Lines {
		if l.Class == "lowl" || l.Class == "hid" {
			heights[l.Class] = [2]float64{l.Y1, math.Abs(l.X2 - l.X1)}
		}
	}
	// 132 − 80 mm between the lines, and the widths of a straight wall from 460
	// to 520 mm over 220 mm: by similar triangles.
	if got := (heights["lowl"][0] - heights["hid"][0]) * 8; math.Abs(got-52) > 0.02 {
		t.Errorf("the two lines stand %g mm apart, want 52", got)
	}
	if got, want := heights["lowl"][1]*8, 460+60*80/220.0; math.Abs(got-want) > 0.02 {
		t.Errorf("the lowest line is %g mm long, want %g", got, want)
	}
}

func TestSectionSaysWhereThePumpStands(t *testing.T) {
	data, _ := booklet.SectionSVG(bay())
	for _, want := range []string{"above the water line", "tied", "check valve", "drip loop", "lowest safe line", "lamp", "at harvest"} {
		if !strings.Contains(string(data), want) {
			t.Errorf("the section does not say %q", want)
		}
	}
	still := bay()
	still.Aerated, still.StoneMM = false, 0
	data, _ = booklet.SectionSVG(still)
	if strings.Contains(string(data), "pump") {
		t.Error("a still tub is drawn with a pump")
	}
}

func TestSectionKeepsItsWordsApart(t *testing.T) {
	cases := map[string]func(*booklet.Section){
		"as it is":          func(*booklet.Section) {},
		"US":                func(s *booklet.Section) { s.System = quantity.US },
		"no shelf, no lamp": func(s *booklet.Section) { s.ShelfWideMM, s.ClearMM, s.LampMM = 0, 0, 0 },
		"lines close by":    func(s *booklet.Section) { s.FillMM, s.LaterFillMM, s.LowestMM = 100, 95, 90 },
		"one cup":           func(s *booklet.Section) { s.CupsAtMM = []float64{270} },
	}
	for name, change := range cases {
		t.Run(name, func(t *testing.T) {
			s := bay()
			change(&s)
			all := texts(booklet.SectionElements(s), false)
			for i, a := range all {
				for _, b := range all[:i] {
					if a.Bounds().Grown(-0.15).Overlaps(b.Bounds()) {
						t.Errorf("%q and %q overlap", a.Text, b.Text)
					}
				}
			}
		})
	}
}

func TestSectionRefusesLengthsThatAreNone(t *testing.T) {
	for name, spoil := range map[string]func(*booklet.Section){
		"one width":   func(s *booklet.Section) { s.Profile = s.Profile[:1] },
		"no number":   func(s *booklet.Section) { s.FillMM = math.NaN() },
		"a building":  func(s *booklet.Section) { s.ClearMM = 1e7 },
		"no lid":      func(s *booklet.Section) { s.LidFaceMM = 0 },
		"below floor": func(s *booklet.Section) { s.LowestMM = -1 },
	} {
		s := bay()
		spoil(&s)
		if _, err := booklet.SectionSVG(s); err == nil {
			t.Errorf("%s: a section was drawn", name)
		}
	}
}
