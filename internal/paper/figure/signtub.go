package figure

import "rootbell/internal/paper/scene"

func (s *sketch) hotPlug() {
	s.chain("k", true, at(30, 24), at(58, 24), at(58, 46), at(30, 46))
	s.line("k", at(38, 24), at(38, 14))
	s.line("k", at(50, 24), at(50, 14))
	s.curve("mm", false, 12, func(t float64) scene.Point { return at(44+8*t*t, 46+16*t) })
	for _, x := range []float64{16, 70} {
		s.chain("k", false, at(x, 12), at(x+4, 22), at(x-2, 24), at(x+4, 36))
	}
}

func (s *sketch) wetFloor() {
	s.chain("k", false, at(22, 10), at(26, 42), at(62, 42), at(66, 10))
	s.line("n", at(2, 44), at(86, 44))
	s.curve("watl", true, 40, func(t float64) scene.Point {
		p := leaf(at(44, 60), 16, 76, 0, 0)(t)
		return at(p.X, p.Y-2)
	})
}

func (s *sketch) splash() {
	s.curve("k", true, 40, func(t float64) scene.Point { return leaf(at(14, 36), 60, 30, 90, 0)(t) })
	s.circle("k", at(44, 36), 8)
	for _, c := range []scene.Point{at(30, 10), at(44, 6), at(58, 10)} {
		s.curve("mm", true, 16, leaf(at(c.X, c.Y+9), 10, 6, 0, 0))
	}
}

func (s *sketch) unknownLiquid() {
	s.chain("k", true, at(36, 6), at(52, 6), at(52, 18), at(62, 28), at(62, 60), at(26, 60), at(26, 28), at(36, 18))
	s.text(lettering{words: "?", class: "b", anchor: scene.Middle, at: at(44, 50)})
}

func (s *sketch) rootsSlimy() {
	s.rooted("kk", 7, 32, 2.4)
	s.dots("n", 8, 30, 34, 58, 58, 2)
}

func (s *sketch) rootsTan()   { s.rooted("mm", 9, 32, 1.2) }
func (s *sketch) rootsShort() { s.rooted("kk", 5, 10, 0.4) }

func (s *sketch) smell() {
	s.water(40)
	for _, x := range []float64{28, 44, 60} {
		s.wave("mm", at(x, 34), 28, 3)
	}
}

func (s *sketch) green() {
	s.water(24)
	s.dots("solid", 24, 18, 30, 70, 57, 1.3)
}

func (s *sketch) cloudy() {
	s.water(24)
	for _, y := range []float64{32, 40, 48} {
		s.line("hid", at(20, y), at(68, y))
	}
	s.dots("mm", 10, 20, 56, 68, 60, 1.4)
}

func (s *sketch) foam() {
	s.water(34)
	s.dots("mm", 12, 18, 26, 70, 33, 3.4)
}

func (s *sketch) fallsFast() {
	s.water(48)
	s.line("hid", at(11, 22), at(77, 22))
	s.arrow(44, 24, 44)
}

func (s *sketch) low() {
	s.water(54)
	s.line("lowl", at(12, 44), at(76, 44))
}

func (s *sketch) raised() {
	s.water(20)
	s.line("hid", at(13, 46), at(75, 46))
	s.arrow(44, 44, 24)
}

// cells are three seed cells.
func (s *sketch) cells() {
	for k := range 3 {
		x := 10 + 24*float64(k)
		s.chain("mm", false, at(x, 40), at(x+3, 60), at(x+17, 60), at(x+20, 40))
		s.line("n", at(x+1, 44), at(x+19, 44))
	}
}

func (s *sketch) noSeedlings() {
	s.cells()
	for k := range 3 {
		s.circle("mm", at(20+24*float64(k), 48), 1.8)
	}
}

func (s *sketch) fallOver() {
	s.cells()
	for k := range 3 {
		x := 20 + 24*float64(k)
		s.curve("mm", false, 10, func(t float64) scene.Point { return at(x+12*t, 44-9*t*(1-t)*4) })
		s.curve("mm", true, 12, leaf(at(x+12, 44), 7, 4, 110, 0))
	}
}

func (s *sketch) afterMove() {
	s.rooted("n", 4, 22, 1)
	for _, turn := range []float64{-40, 0, 40} {
		s.curve("mm", true, 16, leaf(at(44, 14), 12, 6, turn, 0))
	}
	s.arrow(70, 30, 54)
}

func (s *sketch) noBubbles() {
	s.water(20)
	s.chain("k", true, at(34, 52), at(54, 52), at(54, 58), at(34, 58))
	s.line("mm", at(44, 52), at(44, 4))
	for _, c := range [][2]float64{{34, 44}, {54, 40}, {38, 32}, {52, 28}} {
		s.circle("hid", at(c[0], c[1]), 3)
	}
	s.line("k", at(28, 26), at(60, 48))
}

func (s *sketch) lampOff() {
	s.chain("k", true, at(14, 10), at(74, 10), at(74, 18), at(14, 18))
	for _, x := range []float64{22, 36, 52, 66} {
		s.line("hid", at(x, 20), at(x, 34))
	}
	s.circle("mm", at(44, 48), 12)
	s.chain("k", false, at(44, 40), at(44, 48), at(51, 51))
}

func (s *sketch) mould() {
	s.chain("mm", false, at(26, 24), at(32, 60), at(56, 60), at(62, 24))
	s.line("k", at(20, 24), at(68, 24))
	for k := range 12 {
		x := 26 + 3.2*float64(k)
		s.line("n", at(x, 24), at(x-3, 15))
		s.line("n", at(x, 24), at(x+2, 13))
		s.circle("n", at(x+2, 12), 1.4)
	}
}
