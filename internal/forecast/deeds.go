package forecast

import "rootbell/internal/science/water"

// happen does what some events do to the tub.
func (m *member) happen(c *course, events []int) {
	for _, i := range events {
		e := &c.Events[i]
		switch e.Kind {
		case TopUp:
			m.pour(e.Litres, e.ECmS, m.most(c))
		case FillTo:
			if m.Litres <= c.Tub.LitresAt(e.LineMM-e.DropMM) {
				m.pour(c.Tub.LitresAt(e.LineMM)-m.Litres, e.ECmS, m.most(c))
			}
		case ChangeOut:
			most := m.most(c) // before the water is out
			m.throw()
			m.pour(c.Tub.LitresAt(e.LineMM), e.ECmS, most)
		case Harvest:
			m.Plants[e.Stand] -= min(e.Plants, m.Plants[e.Stand])
		case LampHours, LampOff, PumpOff, PowerCut: // the course is cut by them
		}
	}
}

// most is how much solution may stand in the tub now: up to the fill line with
// a pump; in a still tub a little over where it stands, so that roots in the
// air gap are not drowned.
func (m *member) most(c *course) float64 {
	line := c.Tub.LitresAt(c.Tub.LineMM)
	if !c.Tub.Still {
		return line
	}
	return min(line, c.Tub.LitresAt(c.level(m.Litres)+value(factStillRaise)))
}

func (m *member) pour(litres, ecMS, most float64) {
	litres = min(litres, most-m.Litres)
	if !(litres > 0) {
		return
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
