package garden

import (
	"slices"

	"rootbell/internal/forecast"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/lamp"
)

// stand is plants of one crop in one light.
type stand struct {
	forecast.Stand
	grows int // which of the tub's crops
}

// unevenFrom is the spread of light over a lid from which on its darker and its
// lighter half are followed apart, as the darkest beside the mean.
const unevenFrom = 0.9

// stands are a tub's plants as the forecast follows them: each crop, and where
// the lid has one crop and uneven light, its darker and its lighter half.
func (s *tubSeason) stands() []stand {
	light := s.t.lightOf(s.t.index)
	places := s.t.holePlaces()
	if len(places) == 0 || !light.known() {
		return nil
	}
	ppfd := s.steady(light, places)
	var out []stand
	perM2 := s.t.perM2(s.plants())
	for k, g := range s.t.out.Crops {
		c := crop.Named(g.Name)
		one := stand{grows: k, Stand: forecast.Stand{
			Crop: c, Model: c.Growth(), Plants: g.Plants, PerM2: max(perM2, c.LeastPerM2()), PPFD: lamp.SpreadOf(ppfd).Mean,
			UmolPerJoule: light.source.UmolPerJoule(), PickG: pickG(s.t.typed, c),
		}}
		halves := s.halves(ppfd, g.Plants)
		if len(s.t.out.Crops) > 1 || len(halves) < 2 {
			out = append(out, one)
			continue
		}
		for _, h := range halves {
			one.Plants, one.PPFD = len(h), lamp.SpreadOf(h).Mean
			out = append(out, one)
		}
	}
	return out
}

// steady is the light at some places while the lamp that is lit longest is on:
// lamps that are lit for other hours count with the light that they bring in a
// day.
func (s *tubSeason) steady(light tubLight, places []lamp.Point) []float64 {
	out := make([]float64, len(places))
	for i, p := range places {
		if light.hours > 0 {
			out[i] = light.dli(p) / lamp.DLI(1, light.hours)
		}
	}
	return out
}

// halves are the light of the darker and of the lighter half of so many plants;
// none where it is even.
func (s *tubSeason) halves(ppfd []float64, plants int) [][]float64 {
	if plants < 2 || plants != len(ppfd) || lamp.SpreadOf(ppfd).Even >= unevenFrom {
		return nil
	}
	sorted := slices.Sorted(slices.Values(ppfd))
	half := len(sorted) / 2
	return [][]float64{sorted[:half], sorted[half:]}
}

func (s *tubSeason) plants() int {
	n := 0
	for _, g := range s.t.out.Crops {
		n += g.Plants
	}
	return n
}
