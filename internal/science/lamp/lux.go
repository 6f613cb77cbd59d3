package lamp

import (
	"strings"

	"rootbell/internal/base/facts"
)

// Source is a kind of light by its name, such as 'white LED'. One factor serves
// each kind: lux count what eyes see, PPFD counts photons that leaves use.
type Source string

// The sources known.
const (
	Daylight     Source = "daylight"
	BlueSky      Source = "blue sky"
	Fluorescent  Source = "fluorescent"
	MetalHalide  Source = "metal halide"
	Sodium       Source = "sodium"
	Incandescent Source = "incandescent"
	WhiteLED     Source = "white LED"
	RedBlueLED   Source = "red and blue LED"
)

type factors struct{ lux, watt facts.ID }

var sources = map[Source]factors{
	Daylight: {factLightLuxDaylight, factLightWattDaylight}, BlueSky: {factLightLuxBlueSky, factLightWattBlueSky},
	Fluorescent: {factLightLuxFluorescent, factLightWattFluorescent}, MetalHalide: {factLightLuxMetalHalide, factLightWattMetalHalide},
	Sodium: {factLightLuxSodium, factLightWattSodium}, Incandescent: {factLightLuxIncandescent, factLightWattIncandescent},
	WhiteLED: {factLightLuxWhiteLed, factLightWattWhiteLed}, RedBlueLED: {"", factLightWattRedBlueLed},
}

// Sources are all sources known, the most usual first.
func Sources() []Source {
	return []Source{WhiteLED, Daylight, Fluorescent, RedBlueLED, BlueSky, MetalHalide, Sodium, Incandescent}
}

// FindSource is the source of a name, without regard to case.
func FindSource(name string) (Source, bool) {
	for _, s := range Sources() {
		if strings.EqualFold(string(s), strings.TrimSpace(name)) {
			return s, true
		}
	}
	return "", false
}

// LuxPerUmol is the lux of one µmol/m²/s; ok is false for a source that no
// single factor serves, such as red and blue LED, where a lux meter is useless.
func (s Source) LuxPerUmol() (factor float64, ok bool) {
	f, known := sources[s]
	if !known || f.lux == "" {
		return 0, false
	}
	return value(f.lux), true
}

// PPFD is what a lux meter's reading means for leaves, in µmol/m²/s.
func (s Source) PPFD(lux float64) (ppfd float64, ok bool) {
	factor, ok := s.LuxPerUmol()
	if !ok {
		return 0, false
	}
	return lux / factor, true
}

// Watts is a PPFD as radiation that leaves use, in W/m²; a source not known
// counts as white LED.
func (s Source) Watts(ppfd float64) float64 { return ppfd / s.UmolPerJoule() }

// UmolPerJoule is the photons of a joule of this light between 400 and 700 nm;
// a source not known counts as white LED.
func (s Source) UmolPerJoule() float64 {
	f, known := sources[s]
	if !known {
		f = sources[WhiteLED]
	}
	return value(f.watt)
}

// Measured is light known from readings at some places.
type Measured []Reading

// Reading is the light at one place, in µmol/m²/s.
type Reading struct {
	Point
	PPFD float64
}

// PPFD is the light at a place: the readings weighted by the inverse square of
// their distance, which is what they say at their own places. It is 0 without
// readings. Source: Shepard, Proc. 23rd ACM Nat. Conf. (1968) 517-524, from
// memory.
func (m Measured) PPFD(xMM, yMM float64) float64 {
	sum, weights := 0.0, 0.0
	for _, r := range m {
		dx, dy := xMM-r.XMM, yMM-r.YMM
		d2 := dx*dx + dy*dy
		if d2 < 1e-6 {
			return r.PPFD
		}
		sum, weights = sum+r.PPFD/d2, weights+1/d2
	}
	if weights == 0 {
		return 0
	}
	return sum / weights
}

// At is the light at each of some places, in their order, in µmol/m²/s.
func (m Measured) At(places []Point) []float64 {
	out := make([]float64, len(places))
	for i, p := range places {
		out[i] = m.PPFD(p.XMM, p.YMM)
	}
	return out
}
