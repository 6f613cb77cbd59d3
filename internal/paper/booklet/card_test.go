package booklet_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/booklet"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

var papers = map[string]scene.Size{"A4": scene.A4, "Letter": scene.Letter}

// crowd are lids that ask much of one page.
func crowd() map[string]sheet.Lid {
	out := map[string]sheet.Lid{}
	for _, system := range []quantity.System{quantity.Metric, quantity.US} {
		for n := range 17 {
			out[fmt.Sprintf("%d holes, %s", n, system)] = lidOf(n, system)
		}
		out["60 holes, "+system.String()] = lidOf(60, system)
		long := lidOf(12, system)
		long.Garden = strings.Repeat("The long room behind the gymnasium ", 6)
		long.Tub = "Tub with twenty-four let"
		long.Revision = strings.Repeat("9", 60)
		out["long names, "+system.String()] = long
		board := lidOf(8, system)
		board.ThicknessMM, board.Foam = 30, &sheet.Foam{WebMM: 40, EdgeMM: 50, CupMM: 30}
		out["foam, "+system.String()] = board
		unbroken := lidOf(8, system)
		unbroken.Garden = strings.Repeat("W", 300)
		unbroken.Stop = strings.Repeat("a reason that is long enough to fill a plate ", 20)
		out["a word without a break, "+system.String()] = unbroken
	}
	return out
}

func TestHelperCardKeepsItsTextOnThePageAndApart(t *testing.T) {
	for name, l := range crowd() {
		for paperName, paper := range papers {
			t.Run(name+", "+paperName, func(t *testing.T) {
				elements, blocks, fits := booklet.LaidCard(l, paper)
				if !fits {
					t.Error("no way of setting the card fits")
				}
				page := scene.BoxAt(scene.Point{}, paper.Width, paper.Height).Grown(-10)
				holdApart(t, page, texts(elements, l.Stop != ""))
				for i, a := range blocks {
					for _, b := range blocks[:i] {
						if a.Grown(-0.01).Overlaps(b) {
							t.Errorf("the blocks %v and %v overlap", a, b)
						}
					}
				}
			})
		}
	}
}

// texts are the lettering of a page; the plate of a stop covers the page on
// purpose and is left out.
func texts(elements []scene.Element, stopped bool) []scene.Text {
	var out []scene.Text
	for _, e := range elements {
		if text, ok := e.(scene.Text); ok && (!stopped || !text.Reversed) {
			out = append(out, text)
		}
	}
	return out
}

func holdApart(t *testing.T, page scene.Box, texts []scene.Text) {
	t.Helper()
	for i, a := range texts {
		box := a.Bounds()
		if !page.Holds(box, 0) {
			t.Errorf("%q runs off the page: %v", a.Text, box)
		}
		for _, b := range texts[:i] {
			// Type of the next line may reach up to the descenders' line.
			if box.Grown(-0.15).Overlaps(b.Bounds()) {
				t.Errorf("%q and %q overlap", a.Text, b.Text)
			}
		}
	}
}

// A number that is cut would be marked wrongly.
func TestHelperCardCutsNoNumber(t *testing.T) {
	for _, system := range []quantity.System{quantity.Metric, quantity.US} {
		for paperName, paper := range papers {
			for _, n := range []int{4, 8, 16} {
				l := lidOf(n, system)
				for i := range l.Holes {
					// Nothing but sixteenths, the widest marks there are.
					l.Holes[i].XMM = (13*25.4 + 25.4*13/16) + float64(i%4)*25.4
					l.Holes[i].YMM = (11*25.4 + 25.4*11/16) + float64(i/4)*25.4
				}
				l.Pairs = []sheet.Pair{{A: 1, B: 4, MM: 18*25.4 + 25.4*13/16}, {A: 10, B: 16, MM: 18*25.4 + 25.4*13/16}}
				elements, _, _ := booklet.LaidCard(l, paper)
				for _, text := range texts(elements, false) {
					if strings.Contains(text.Text, "…") {
						t.Errorf("%d holes, %s, %s: %q is cut", n, system, paperName, text.Text)
					}
				}
			}
		}
	}
}

func TestHelperCardIsOnePageForEachTub(t *testing.T) {
	pdf, err := booklet.HelperCards([]sheet.Lid{lidOf(8, quantity.Metric), lidOf(5, quantity.Metric)}, scene.A4)
	if err != nil {
		t.Fatal(err)
	}
	if got := bytes.Count(pdf, []byte("/Type /Page\n")); got != 2 {
		t.Errorf("%d pages for two tubs", got)
	}
}

func TestHelperCardSaysTheCautions(t *testing.T) {
	elements, _, _ := booklet.LaidCard(lidOf(8, quantity.Metric), scene.A4)
	var said strings.Builder
	for _, text := range texts(elements, false) {
		said.WriteString(text.Text + " ")
	}
	// 29 CFR 1910.133(a)(2) asks for side protection; gloves by the task follow
	// 1910.138(b); the rest is common practice, no source.
	for _, caution := range []string{
		"side shields", "Hair", "sleeves", "Jewellery", "lanyard", "Gloves off", "unplugged", "manual decide",
		"Clamp both", "backing board", "trial hole", "forwards, slowly", "brittle", "cannot unscrew", "manual allows",
		"lid cracks", "deburr", "every shaving", "chip zone", "No pupil drills", "local codes", "tub is still empty",
	} {
		if !strings.Contains(said.String(), caution) {
			t.Errorf("the card does not say %q", caution)
		}
	}
}

func TestHelperCardSetsItsStepsInElevenPoints(t *testing.T) {
	for name, paper := range papers {
		elements, _, _ := booklet.LaidCard(lidOf(8, quantity.Metric), paper)
		for _, text := range texts(elements, false) {
			if strings.Contains(text.Text, "trial hole") && text.SizeMM < 11*scene.PointMM-1e-9 {
				t.Errorf("%s: a step is set in %.1f points", name, text.SizeMM/scene.PointMM)
			}
		}
	}
}

func TestHelperCardOfALidNotToBeDrilled(t *testing.T) {
	l := lidOf(3, quantity.Metric)
	l.Stop = "hole 3 leaves too little plastic"
	elements, _, _ := booklet.LaidCard(l, scene.A4)
	found := ""
	for _, e := range elements {
		if text, ok := e.(scene.Text); ok && text.Reversed {
			found += text.Text + " "
		}
	}
	if !strings.Contains(found, "do not drill: hole 3 leaves too little plastic") {
		t.Errorf("the plate says %q", found)
	}
}

func TestHelperCardRefusesALidWithoutAnOutline(t *testing.T) {
	if _, err := booklet.HelperCards([]sheet.Lid{{Tub: "Heron"}}, scene.A4); err == nil {
		t.Error("a lid without an outline gave a card")
	}
}

// A foam board is not drilled, and nothing on its card or its lid sheet says
// that it is; a plastic lid's card has no hot wire.
func TestFoamCardSpeaksOfNoDrill(t *testing.T) {
	board := lidOf(8, quantity.Metric)
	board.Foam = &sheet.Foam{WebMM: 40, EdgeMM: 50, CupMM: 30}
	words := func(l sheet.Lid) string {
		var all []string
		elements, _, _ := booklet.LaidCard(l, scene.A4)
		for _, text := range texts(elements, false) {
			all = append(all, text.Text)
		}
		return strings.Join(all, " ")
	}
	card := words(board)
	for _, bad := range []string{"drill", "Drill", "trigger"} {
		if strings.Contains(card, bad) {
			t.Errorf("the foam card says %q", bad)
		}
	}
	for _, want := range []string{"No pupil cuts", "fumes", "outdoors", "No hole saw", "4.0 cm", "5.0 cm", "3.0 cm", "no source"} {
		if !strings.Contains(card, want) {
			t.Errorf("the foam card does not say %q", want)
		}
	}
	if plain := words(lidOf(8, quantity.Metric)); strings.Contains(plain, "wire") || strings.Contains(plain, "foam") {
		t.Error("the card of a plastic lid speaks of foam")
	}
}
