package season

import (
	"math"

	"rootbell/internal/forecast"
	"rootbell/internal/science/oxygen"
)

// breath is how many hours after the pump stops the oxygen falls to 4, 3 and 2
// mg/L, at the end of what was followed of a stretch.
func (t tries) breath(f forecast.Forecast) (to4, to3, to2 forecast.Band) {
	var all [3][]float64
	for i, end := range f.Ends {
		stop := t.oxygen(end, f.Factors[i]).Stopped()
		for k, h := range []float64{stop.ToWarn, stop.ToAct, stop.ToTwo} {
			all[k] = append(all[k], h)
		}
	}
	return bandOf(all[0]), bandOf(all[1]), bandOf(all[2])
}

// oxygen is a member's tub as its oxygen sees it, in the air of closed hours.
func (t tries) oxygen(end forecast.State, f forecast.Factors) oxygen.Tub {
	roots := 0.0
	for j := range t.Tub.Stands {
		s := &t.Tub.Stands[j]
		roots += s.Model.RootG(end.Stands[j], s.PerM2) * float64(end.Plants[j])
	}
	warm := t.Closed.WaterC + f.Value(forecast.Warmth)
	_, usual, _ := oxygen.Respiration()
	level := t.Tub.LevelMM(end.Litres)
	return oxygen.Tub{
		Water:     oxygen.Water{TempC: warm, PressureKPa: t.Tub.PressureKPa, ECmS: end.ECmS},
		Air:       oxygen.Air{FlowLMin: t.Tub.Air.FlowLMin, DepthMM: math.Max(0, level-t.Tub.StoneMM), Transfer: t.Tub.Air.Transfer},
		Litres:    end.Litres,
		UptakeMgH: oxygen.UptakeMgH(roots, oxygen.RespirationAt(usual*f.Value(forecast.Breath), warm)),
	}
}
