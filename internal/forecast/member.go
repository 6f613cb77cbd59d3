package forecast

import (
	"math"
	"math/rand/v2"
	"slices"

	"rootbell/internal/base/ode"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/water"
)

// Ledger is what went into a tub and out of it, in litres and in salts counted
// as EC times litres: the sum that a balance is checked by. What stands there
// at the beginning counts as poured.
type Ledger struct {
	PouredL, DrunkL, VapourL, ThrownL float64
	PouredSalt, TakenSalt, ThrownSalt float64
}

// State is one member's tub at a moment.
type State struct {
	water.Solution
	OxygenMgL float64
	Stands    []crop.State
	Plants    []int
	Warmed    float64 // °C·d over 0 °C of the room, since the plants moved in
	Ledger    Ledger
}

// member is one possible course of a tub.
type member struct {
	State
	factors                  Factors
	steady                   bool // no day differs from another
	climate                  int  // of the hours passed last
	random                   *rand.Rand
	leastMgL                 float64 // oxygen, since the day began
	today                    float64 // thirst of the day
	thirst, uptakeEC, breath float64
	paces                    []crop.Pace
	leaves                   []water.Canopy
	lidL                     []float64 // litres an hour, for each climate
	warmC                    []float64 // of the room, for each climate
	dryAt                    []float64 // for each watch, the hour of falling below the lowest line
}

// growthTolerance follows a stand to a hundred-thousandth, which is a hundredth
// of what two scales tell apart.
var growthTolerance = ode.Tolerance{Relative: 1e-5, Absolute: 1e-7}

// begin puts a member's tub at the season's first midnight.
func (m *member) begin(c *course) {
	t := &c.Tub
	m.State = State{Stands: make([]crop.State, len(t.Stands)), Plants: make([]int, len(t.Stands))}
	for j, s := range t.Stands {
		m.Stands[j] = s.Model.OfDryG(s.Model.StartG*m.factors.Value(Start), s.PerM2)
		m.Plants[j] = s.Plants
	}
	offMM, times := m.hand()
	over := c.Tub.LitresAt(c.level(t.Start.Litres)+offMM) - c.Tub.LitresAt(c.level(t.Start.Litres))
	m.Solution = water.Solution{Litres: max(0, t.Start.Litres+over), ECmS: t.Start.ECmS * times}
	m.Ledger.PouredL, m.Ledger.PouredSalt = m.Litres, m.Litres*m.ECmS
	m.ready(c)
	if !t.Still && len(c.climates) > 0 {
		m.OxygenMgL = m.oxygen(c, c.climates[0], true).Steady()
	}
}

// goOn is a member that takes up where another left a tub.
func (m *member) goOn(c *course, from State) {
	m.State = from
	m.Stands, m.Plants = slices.Clone(from.Stands), slices.Clone(from.Plants)
	m.ready(c)
}

// ready makes the room that a member works in.
func (m *member) ready(c *course) {
	m.dryAt = make([]float64, len(c.Watches))
	for i := range m.dryAt {
		m.dryAt[i] = math.Inf(1)
	}
	m.today = 1
	n := len(c.climates) * len(c.Tub.Stands)
	m.paces, m.leaves, m.lidL = make([]crop.Pace, n), make([]water.Canopy, n), make([]float64, len(c.climates))
	m.warmC = make([]float64, len(c.climates))
	m.prepare(c)
}

// prepare works out the pace of a member in each climate of the season.
func (m *member) prepare(c *course) {
	t := &c.Tub
	_, breath, _ := oxygen.Respiration()
	m.thirst, m.uptakeEC, m.breath = m.factors.Value(Thirst), water.UptakeEC()*m.factors.Value(Uptake), breath*m.factors.Value(Breath)
	for k, kind := range c.climates {
		room := m.room(kind)
		m.warmC[k] = room.TempC // the room is never under 0 °C
		for j := range t.Stands {
			s := &t.Stands[j]
			ppfd := 0.0
			if kind.lit {
				ppfd = s.PPFD * m.factors.Value(Light)
			}
			watts := ppfd / s.UmolPerJoule
			model := s.Model
			model.Vigour *= m.factors.Value(Growth)
			pace := model.Under(crop.Air{TempC: room.TempC, CO2PPM: kind.span.CO2PPM, WattsM2: watts})
			if s.StopG > 0 {
				pace.Most = s.Model.DryForHarvest(s.StopG, s.PerM2)
			}
			m.paces[k*len(t.Stands)+j] = pace
			m.leaves[k*len(t.Stands)+j] = water.NewCanopy(room, ppfd, watts, water.AirResistance(t.Fan))
		}
		open := min(1, t.OpenShare*m.factors.Value(Open))
		m.lidL[k] = max(0, water.LidMLDay(room, water.StillAirMS(), t.LidM2, open)) / 1000 / 24
	}
}

// room is a climate's air as this member has it.
func (m *member) room(kind climate) water.Room {
	return water.Room{
		TempC:    max(0, min(45, kind.span.Room.TempC+m.factors.Value(Warmth))),
		Humidity: max(0, min(1, kind.span.Room.Humidity+m.factors.Value(Damp))),
	}
}

// pass carries a member through a segment.
func (m *member) pass(c *course, g *segment) {
	m.climate = g.climate
	if g.begins && !m.steady {
		m.today = math.Exp(daySpread * m.random.NormFloat64())
	}
	if g.begins {
		m.leastMgL = m.OxygenMgL
	}
	before := m.Litres
	drink := 0.0
	if before > 0 { // plants without water neither grow nor drink
		drink = m.grow(c, g)
	}
	vapour := m.lidL[g.climate] * g.hours
	if all := drink + vapour; all > before {
		drink, vapour = drink/all*before, vapour/all*before
	}
	salts := m.ECmS * m.Litres
	m.Solution = m.Drink(drink, m.uptakeEC, vapour)
	m.Ledger.DrunkL += drink
	m.Ledger.VapourL += vapour
	m.Ledger.TakenSalt += salts - m.ECmS*m.Litres
	m.Warmed += m.warmC[g.climate] * g.hours / 24
	m.watch(c, g, before)
	if !c.Tub.Still {
		m.OxygenMgL = m.oxygen(c, c.climates[g.climate], g.pumped).After(m.OxygenMgL, g.hours)
		m.leastMgL = min(m.leastMgL, m.OxygenMgL)
	}
}

// grow carries the stands through a segment and gives the litres they drink:
// what leaves of its mean area, by Simpson's rule, breathe out.
func (m *member) grow(c *course, g *segment) (litres float64) {
	stands := c.Tub.Stands
	for j := range stands {
		if m.Plants[j] == 0 {
			continue
		}
		s, i := &stands[j], g.climate*len(stands)+j
		end := m.paces[i].GrowWithin(m.Stands[j], 3600*g.hours, growthTolerance)
		mid := halfway(&m.paces[i], m.Stands[j], end, 3600*g.hours)
		leaf := (s.Model.LeafIndex(m.Stands[j]) + 4*s.Model.LeafIndex(mid) + s.Model.LeafIndex(end)) / 6
		m.Stands[j] = end
		litres += m.leaves[i].Breathe(leaf).GM2H / 1000 * g.hours * float64(m.Plants[j]) / s.PerM2
	}
	return litres * m.thirst * m.today
}

// halfway is the structure of a stand in the middle of some seconds, by the cubic
// that has its value and its rate at both ends.
func halfway(p *crop.Pace, from, to crop.State, seconds float64) crop.State {
	_, atFrom := p.Rates(from.Store, from.Structure)
	_, atTo := p.Rates(to.Store, to.Structure)
	mid := (from.Structure+to.Structure)/2 + seconds/8*(atFrom-atTo)
	return crop.State{Structure: max(from.Structure, min(to.Structure, mid))}
}

// watch notes when the water first falls below the lowest line in a stretch.
func (m *member) watch(c *course, g *segment, before float64) {
	lowest := c.lowestL
	if m.Litres >= lowest {
		return
	}
	at := g.from
	if before > lowest {
		at += g.hours * (before - lowest) / (before - m.Litres)
	}
	for i, w := range c.Watches {
		if g.from >= w.FromHour-instant && g.from < w.ToHour-instant {
			m.dryAt[i] = min(m.dryAt[i], at)
		}
	}
}

// crop is what could be picked of all stands together, fresh, in g.
func (m *member) crop(c *course) (fresh float64) {
	for j := range c.Tub.Stands {
		s := &c.Tub.Stands[j]
		fresh += s.Model.HarvestG(m.Stands[j], s.PerM2) * float64(m.Plants[j])
	}
	return fresh
}

// enough tells whether the crop is what is needed.
func (m *member) enough(c *course) bool {
	if c.NeedG > 0 {
		return m.crop(c) >= c.NeedG
	}
	picked := false
	for j := range c.Tub.Stands {
		s := &c.Tub.Stands[j]
		if s.PickG <= 0 || m.Plants[j] == 0 {
			continue
		}
		if picked = true; s.Model.HarvestG(m.Stands[j], s.PerM2) < s.PickG {
			return false
		}
	}
	return picked
}

// oxygen is the tub as its oxygen sees it.
func (m *member) oxygen(c *course, kind climate, pumped bool) oxygen.Tub {
	t := &c.Tub
	roots := 0.0
	for j := range t.Stands {
		roots += t.Stands[j].Model.RootG(m.Stands[j], t.Stands[j].PerM2) * float64(m.Plants[j])
	}
	out := oxygen.Tub{Water: m.water(c, kind, m.ECmS), Litres: m.Litres}
	out.UptakeMgH = oxygen.UptakeMgH(roots, oxygen.RespirationAt(m.breath, out.TempC))
	if pumped {
		out.Air = oxygen.Air{FlowLMin: t.Air.FlowLMin, DepthMM: max(0, c.level(m.Litres)-t.StoneMM), Transfer: t.Air.Transfer}
	}
	return out
}

// water is a solution in the tub or beside it, as its oxygen sees it.
func (m *member) water(c *course, kind climate, ecMS float64) oxygen.Water {
	return oxygen.Water{TempC: kind.span.WaterC + m.factors.Value(Warmth), PressureKPa: c.Tub.PressureKPa, ECmS: ecMS}
}
