package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/water"
)

// aired is a tub's water with its plants grown and the pump running, on a warm
// day.
type aired struct {
	oxygen.Tub         // its UptakeMgH is that of one plant
	rootG      float64 // of one plant, dry, the mean of the crops
	waterC     float64 // as the plan has it; TempC is warmer
	assumed    bool    // the flow is the trade's rule
}

// air is known for a tub with a pump whose water stands over its stone. Before
// the plants are counted its litres are those up to the fill line, on which no
// number of plants rests.
func (t *tubState) air() (a aired, ok bool) {
	if t.setup.Still || !t.wet {
		return a, false
	}
	at := t.plan.Place
	a.waterC = float64(at.WaterTemperature.Or(at.AirTemperature.Or(roomC)))
	a.Water = oxygen.Water{TempC: max(a.waterC, oxygen.WarmFrom(false)), PressureKPa: water.PressureKPa(t.altitudeM()), ECmS: t.feedEC()}
	a.Litres = quantity.Litre.From(t.fill.Base)
	if t.solution.Known() && t.solution.Base > 0 {
		a.Litres = quantity.Litre.From(t.solution.Base)
	}
	_, stone, _ := oxygen.Transfer()
	a.Air = oxygen.Air{FlowLMin: oxygen.RuleLMin(a.Litres), DepthMM: max(0, t.lines.Fill.Base-t.stoneTopMM()), Transfer: stone}
	if a.assumed = !t.typed.Air.Flow.Set(); !a.assumed {
		a.FlowLMin = float64(t.typed.Air.Flow.Value)
	}
	_, usual, _ := oxygen.Respiration()
	a.rootG = t.rootG()
	a.UptakeMgH = oxygen.UptakeMgH(a.rootG, oxygen.RespirationAt(usual, a.TempC))
	return a, a.DepthMM > 0 && a.Valid()
}

func (t *tubState) altitudeM() float64 { return float64(t.plan.Place.Altitude.Or(0)) / 1000 }

// feedEC is the strength of the solution in mS/cm: as the feed has it, else the
// middle of what the first crop is grown in. Oxygen hardly depends on it.
func (t *tubState) feedEC() float64 {
	feed := t.plan.Feed
	if t.typed.Feed != nil {
		feed = *t.typed.Feed
	}
	if feed.EC.Set() {
		return float64(feed.EC.Value)
	}
	low, high := t.kinds()[0].EC(working.NewBook())
	return quantity.MillisiemensPerCM.From((low.Base + high.Base) / 2)
}

// stoneTopMM is how high the air stone's top lies over the floor.
func (t *tubState) stoneTopMM() float64 {
	for _, n := range t.lines.Lowest.Inputs {
		if n.Symbol == "s" {
			return n.Base
		}
	}
	return 0
}

// rootG is the dry root of one plant that is picked, the mean of the crops.
func (t *tubState) rootG() float64 {
	sum, plants := 0.0, 0.0
	for i, c := range t.kinds() {
		m := c.Growth()
		n := float64(t.growth.each[i].share())
		sum += n * m.RootG(m.OfDryG(m.DryForHarvest(t.pickG(c), 1), 1), 1)
		plants += n
	}
	return sum / max(plants, 1)
}

// airLimit is how many grown plants the pump's air keeps in water with enough
// oxygen on a warm day. A pump that keeps none is no limit but a warning.
func (t *tubState) airLimit(limits map[string]int, words map[string]string) {
	a, ok := t.air()
	if !ok {
		return
	}
	words[ByOxygen] = "more air, a finer stone or cooler water"
	if n := a.PlantsAt(a.Hold(), a.UptakeMgH); n > 0 {
		limits[ByOxygen] = min(n, mostByAir)
	}
}

// mostByAir bounds what is said of air: more plants than any tub takes.
const mostByAir = 200

// breathe works out the oxygen of a tub whose plants are counted.
func (t *tubState) breathe() {
	a, ok := t.air()
	if !ok || t.out.Plants == nil || t.out.Plants.Count == 0 {
		return
	}
	b := t.book.In("oxygen")
	t.showAir(b, a)
	tub := a.Tub
	tub.UptakeMgH *= float64(t.out.Plants.Count)
	each := oxygen.ShowUptake(b, "uptake_each", "oxygen that one plant's roots take", a.rootG, a.TempC)
	all := oxygen.ShowUptake(b, "uptake", "oxygen that the roots take", float64(t.out.Plants.Count)*a.rootG, a.TempC)
	shown := tub.Show(b, all)
	tub.ShowPlants(b, shown, each)
	out := &Oxygen{
		SteadyMgL: quantity.Round(tub.Steady(), 2), SaturateMgL: quantity.Round(tub.Saturation(), 2), WarmC: quantity.Round(a.TempC, 2),
		HoldMgL: tub.Hold(), HaveLMin: quantity.Round(a.FlowLMin, 2), Assumed: a.assumed, HeadMM: quantity.Round(a.DepthMM, 1), Key: t.book.Key("oxygen"),
	}
	if flow, ok := tub.FlowFor(tub.Hold()); ok {
		out.NeedLMin = quantity.Round(flow, 2)
		tub.ShowFlow(b, shown)
	}
	poor := tub
	poor.Transfer, _, _ = oxygen.Transfer()
	poor.ShowStop(b, poor.ShowLow(b, shown))
	stop := poor.Stopped()
	hours := func(h float64) float64 { return quantity.Round(min(h, mostHours), 2) }
	out.LowMgL, out.QuietMin = quantity.Round(stop.FromMgL, 2), stop.QuietMinutes
	out.To4H, out.To3H, out.To2H = hours(stop.ToWarn), hours(stop.ToAct), hours(stop.ToTwo)
	if watts := float64(t.typed.Air.Power.Value); watts > 0 {
		out.KWhADay = quantity.Round(watts*24/1000, 3)
	}
	t.out.Oxygen = out
	t.checkAir(tub, out)
}

// mostHours is told where roots take next to nothing: ten days.
const mostHours = 240
