package figure

import "rootbell/internal/paper/scene"

// big is the leaf that fills a drawing.
var big = at(44, 60)

func (s *sketch) bigLeaf() { s.leafed("mm", big, 56, 40, 0) }

func (s *sketch) edgesOld() {
	s.bigLeaf()
	s.curve("hid", true, 32, leaf(big, 56, 40, 0, 5))
	outer, inner := leaf(big, 56, 40, 0, 0), leaf(big, 56, 40, 0, 5)
	for k := 3; k < 30; k++ {
		t := float64(k) / 32
		s.line("n", outer(t), inner(t))
	}
}

func (s *sketch) edgesNew() {
	for _, turn := range []float64{-70, -35, 35, 70} {
		s.leafed("mm", at(44, 58), 42, 18, turn)
	}
	heart := at(44, 58)
	s.leafed("k", heart, 26, 14, 0)
	outer, inner := leaf(heart, 26, 14, 0, 0), leaf(heart, 26, 14, 0, 3)
	for k := 8; k < 25; k++ {
		s.line("k", outer(float64(k)/32), inner(float64(k)/32))
	}
}

func (s *sketch) paleAll() {
	s.curve("hid", true, 32, leaf(big, 56, 40, 0, 0))
	s.line("hid", big, at(44, 12))
}

// plant has two pairs of leaves: the low ones and the new ones.
func (s *sketch) plant(low, fresh string) {
	s.line("mm", at(44, 62), at(44, 26))
	for _, turn := range []float64{-78, 78} {
		s.curve(low, true, 24, leaf(at(44, 52), 38, 16, turn, 0))
	}
	for _, turn := range []float64{-28, 28} {
		s.curve(fresh, true, 24, leaf(at(44, 30), 26, 12, turn, 0))
	}
}

func (s *sketch) paleOld() { s.plant("hid", "mm") }

func (s *sketch) paleNew() {
	s.plant("mm", "hid")
	for _, x := range []float64{-1, 1} {
		s.line("k", at(44, 30), at(44+x*10, 11))
	}
}

func (s *sketch) stripesOld() {
	s.curve("hid", true, 32, leaf(big, 56, 40, 0, 0))
	s.line("kk", big, at(44, 10))
	s.veins("k", big, 56, 40)
}

func (s *sketch) purple() {
	s.bigLeaf()
	for k := range 9 {
		y := 14 + 5*float64(k)
		half := leaf(big, 56, 40, 0, 2)((60-y)/56/2).X - 44
		s.line("n", at(44-half, y), at(44+half, y))
	}
	s.line("kk", big, at(44, 30))
}

func (s *sketch) bleached() {
	s.chain("k", true, at(20, 4), at(68, 4), at(68, 9), at(20, 9))
	for _, x := range []float64{30, 44, 58} {
		s.line("n", at(x, 11), at(x, 17))
	}
	s.leafed("mm", at(44, 62), 42, 40, 0)
	s.dots("hid", 4, 34, 28, 52, 48, 5)
}

func (s *sketch) bitten() {
	s.bigLeaf()
	for _, c := range [][3]float64{{38, 30, 4}, {52, 40, 5}, {42, 48, 3}, {28, 34, 6}, {60, 26, 5}} {
		s.circle("mm", at(c[0], c[1]), c[2])
	}
}

func (s *sketch) insects() {
	s.bigLeaf()
	for _, c := range []scene.Point{at(34, 34), at(52, 28), at(48, 46), at(70, 16), at(16, 22)} {
		s.circle("solid", c, 2)
		s.line("n", at(c.X-5, c.Y-4), c)
		s.line("n", at(c.X+5, c.Y-4), c)
	}
}

func (s *sketch) powder() {
	s.bigLeaf()
	s.dots("n", 26, 30, 20, 58, 50, 1.6)
}

// droop is a plant whose leaves hang, over water at a line.
func (s *sketch) droop(line float64) {
	s.line("k", at(4, 30), at(84, 30))
	s.line("mm", at(44, 30), at(44, 14))
	for _, turn := range []float64{-150, 150, -115, 115} {
		s.curve("mm", true, 24, leaf(at(44, 13), 26, 9, turn, 0))
	}
	for _, x := range []float64{40, 44, 48} {
		s.wave("n", at(x, 56), 26, 1.5)
	}
	s.line("watl", at(8, line), at(80, line))
}

func (s *sketch) hang()    { s.droop(38) }
func (s *sketch) hangDry() { s.droop(61) }

func (s *sketch) leggy() {
	s.curve("mm", false, 12, func(t float64) scene.Point { return at(24+34*t*t, 62-50*t) })
	for _, turn := range []float64{10, 70, 120} {
		s.curve("mm", true, 20, leaf(at(58, 12), 16, 8, turn, 0))
	}
	s.curve("mm", true, 20, leaf(at(31, 40), 14, 6, -60, 0))
}

func (s *sketch) bolt() {
	for _, turn := range []float64{-75, -45, 45, 75} {
		s.leafed("mm", at(44, 60), 34, 14, turn)
	}
	s.line("k", at(44, 60), at(44, 8))
	for _, y := range []float64{14, 24, 34} {
		s.curve("mm", true, 16, leaf(at(44, y+4), 10, 5, 50, 0))
		s.curve("mm", true, 16, leaf(at(44, y+4), 10, 5, -50, 0))
	}
}

func (s *sketch) small() {
	for _, turn := range []float64{-60, 0, 60} {
		s.curve("pha", true, 24, leaf(at(44, 60), 50, 22, turn, 0))
		s.curve("k", true, 20, leaf(at(44, 60), 16, 8, turn, 0))
	}
}

func (s *sketch) crowded() {
	for _, foot := range []float64{24, 44, 64} {
		for _, turn := range []float64{-55, 0, 55} {
			s.leafed("mm", at(foot, 60), 40, 20, turn)
		}
	}
}
