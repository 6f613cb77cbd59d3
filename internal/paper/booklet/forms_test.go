package booklet_test

import (
	"bytes"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/booklet"
	"rootbell/internal/paper/scene"
)

func covers() map[string]booklet.Cover {
	return map[string]booklet.Cover{
		"metric": {Garden: "Fernhollow science room", Invented: true, On: "2027-01-11"},
		"us":     {Garden: "Saltbrook After-School Club", System: quantity.US},
		"long":   {Garden: strings.Repeat("A very long garden name ", 20), Revision: strings.Repeat("7", 40)},
	}
}

func wetTubs(n int) []booklet.WetTub {
	var out []booklet.WetTub
	for range n {
		out = append(out, booklet.WetTub{Name: "Tub with twenty-four let", Fill: "16.5 cm", LetLight: true})
	}
	return out
}

func TestFormsKeepTheirTextOnThePageAndApart(t *testing.T) {
	for name, cover := range covers() {
		for paperName, paper := range papers {
			t.Run(name+", "+paperName, func(t *testing.T) {
				forms := booklet.LaidForms(cover, wetTubs(6), paper)
				if len(forms) != 2 {
					t.Errorf("only %d of the two forms fit their page", len(forms))
				}
				for _, elements := range forms {
					holdApart(t, scene.BoxAt(scene.Point{}, paper.Width, paper.Height).Grown(-10), texts(elements, false))
				}
			})
		}
	}
}

func TestFormsGiveTheSameBytesTwice(t *testing.T) {
	cover := covers()["metric"]
	forms := map[string]func() ([]byte, error){
		"measuring sheet": func() ([]byte, error) { return booklet.MeasuringSheet(cover, scene.Letter) },
		"wet test":        func() ([]byte, error) { return booklet.WetTest(cover, wetTubs(11), scene.A4) },
	}
	for name, run := range forms {
		first, err := run()
		if err != nil {
			t.Fatal(err)
		}
		if again, _ := run(); !bytes.Equal(first, again) {
			t.Errorf("%s: other bytes the second time", name)
		}
	}
}

func TestWetTestWarnsWhereWaterAndMainsMeet(t *testing.T) {
	var said strings.Builder
	for _, text := range texts(booklet.LaidForms(covers()["metric"], wetTubs(1), scene.A4)["wet test"], false) {
		said.WriteString(text.Text + " ")
	}
	// Common practice, no source: 24 hours, at most 3 mm.
	for _, want := range []string{"24 hours", "3 mm", "never lifted", "air pump dry", "above the water line", "Light-leak", "before planting"} {
		if !strings.Contains(said.String(), want) {
			t.Errorf("the wet test does not say %q", want)
		}
	}
}
