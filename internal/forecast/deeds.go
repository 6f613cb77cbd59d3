package forecast

import (
	"math"

	"rootbell/internal/science/water"
)

// happen does what some events do to the tub.
func (m *member) happen(c *course, events []int) {
	for _, i := range events {
		e := &c.Events[i]
		offMM, times := m.hand()
		switch e.Kind {
		case TopUp:
			m.pour(c, e.Litres, e.ECmS*times, m.most(c, offMM))
		case FillTo:
			if m.Litres <= c.Tub.LitresAt(e.LineMM-e.DropMM) {
				m.pour(c, c.Tub.LitresAt(e.LineMM+offMM)-m.Litres, e.ECmS*times, m.most(c, offMM))
			}
		case ChangeOut:
			most := m.most(c, offMM) // before the water is out
			m.throw()
			m.pour(c, c.Tub.LitresAt(e.LineMM+offMM), e.ECmS*times, most)
		case Harvest:
			m.Plants[e.Stand] -= min(e.Plants, m.Plants[e.Stand])
		case LampHours, LampOff, PumpOff, PowerCut: // the course is cut by them
		}
	}
}

// hand is by how much a pour misses its line, and a mix its strength.
func (m *member) hand() (offMM, times float64) {
	if m.steady {
		return 0, 1
	}
	return fillMM * m.random.NormFloat64(), math.Exp(mixSpread * m.random.NormFloat64())
}

// most is how much solution may stand in the tub now: up to the fill line with
// a pump; in a still tub a little over where it stands, so that roots in the
// air gap are not drowned.
func (m *member) most(c *course, offMM float64) float64 {
	line := c.Tub.LineMM
	if c.Tub.Still {
		line = min(line, c.level(m.Litres)+value(factStillRaise))
	}
	return c.Tub.LitresAt(line + offMM)
}

// pour adds solution, which is full of oxygen: it stood in an open can, or fell
// through the air.
func (m *member) pour(c *course, litres, ecMS, most float64) {
	litres = min(litres, most-m.Litres)
	if !(litres > 0) {
		return
	}
	if !c.Tub.Still && m.climate < len(c.climates) {
		full := m.water(c, c.climates[m.climate], ecMS).Saturation()
		m.OxygenMgL = (m.OxygenMgL*m.Litres + full*litres) / (m.Litres + litres)
	}
	m.Solution = m.TopUp(litres, ecMS)
	m.Ledger.PouredL += litres
	m.Ledger.PouredSalt += litres * ecMS
}

func (m *member) throw() {
	m.Ledger.ThrownL += m.Litres
	m.Ledger.ThrownSalt += m.Litres * m.ECmS
	m.Solution = water.Solution{}
}
