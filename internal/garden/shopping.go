package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/school/shopping"
)

// shopping makes the list of what the design needs, for the tubs that could be
// worked out.
func (a *assessor) shopping(tubs []Tub) []shopping.Item {
	d := shopping.Design{System: a.plan.Units, Prices: map[string]float64{}}
	for item, price := range a.plan.Prices {
		d.Prices[item] = float64(price.Value)
	}
	for i, t := range tubs {
		if t.Lid == nil || t.Plants == nil {
			continue
		}
		p := a.plan.Tubs[i]
		key := "tubs." + Slug(t.Name)
		solution, ok := a.book.Find(key + ".volume_solution")
		if !ok {
			continue
		}
		stones, _ := a.book.Find(key + ".stones")
		height, _ := a.book.Find(key + ".inside_height")
		s := shopping.Tub{
			Name: t.Name, Key: key, Cups: t.Plants.Count, HoleMM: t.Lid.HoleMM, Foam: t.Lid.Foam, Solution: solution,
			Cup:    shopping.Cup{BodyMM: float64(p.Cup.Body.Value), RimMM: float64(p.Cup.Rim.Value), DepthMM: float64(p.Cup.Depth.Value)},
			Empty:  max(len(p.Lid.Holes)-t.Plants.Count, 0),
			Stones: int(stones.Base), Still: p.Method == "still", HeightMM: height.Base,
		}
		if t.Oxygen != nil {
			s.HeadMM = t.Oxygen.HeadMM
			s.Roots, _ = a.book.Find(key + ".oxygen.air_needed")
		}
		if t.Lid.AirLine != nil {
			s.AirHoleMM = t.Lid.AirLine.DiameterMM
		}
		if t.Lid.Service != nil {
			s.ServiceMM = t.Lid.Service.DiameterMM
		}
		for _, g := range t.Crops {
			s.Crops = append(s.Crops, shopping.Crop{Name: g.Name, Plants: g.Plants})
		}
		d.Tubs = append(d.Tubs, s)
	}
	if len(d.Tubs) == 0 {
		return nil
	}
	return shopping.List(a.book, d)
}

// Money writes an amount in the plan's currency.
func (a *Assessment) Money(v float64) string {
	text := quantity.FormatNumber(v, 2)
	if a.Plan.Currency != "" {
		return text + "\u00a0" + a.Plan.Currency
	}
	return text
}
