package scene_test

import (
	"bytes"
	"errors"
	"math"
	"testing"

	"rootbell/internal/paper/scene"
)

func TestPressGivesTheSameBytesTwice(t *testing.T) {
	run := func() []byte {
		press := scene.NewPress("Two pages", "2027-01-11")
		for range 2 {
			page := press.Page(scene.A4)
			for face := scene.Sans; face <= scene.SerifItalic; face++ {
				page.Draw(scene.Text{At: scene.Point{X: 20, Y: 20 + 10*float64(face)}, Text: "⌀ 76 ± 2 × 3 − 1 ≤ 4", SizeMM: 5, Face: face})
			}
			page.Draw(scene.Circle{Centre: scene.Point{X: 100, Y: 100}, RadiusMM: 38, Class: scene.Edge})
		}
		out, err := press.Bytes()
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	first := run()
	for range 5 {
		if !bytes.Equal(first, run()) {
			t.Fatal("the same drawing gave other bytes")
		}
	}
}

func TestPressRefusesAPlaceThatIsNoNumber(t *testing.T) {
	press := scene.NewPress("none", "")
	press.Page(scene.A4).Draw(scene.Line{To: scene.Point{X: math.NaN()}})
	if _, err := press.Bytes(); !errors.Is(err, scene.ErrNotFinite) {
		t.Errorf("a line to nowhere gave %v, want ErrNotFinite", err)
	}
}
