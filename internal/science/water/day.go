package water

// Day is the water of one square metre of leaves in a day of two lights.
type Day struct {
	LitresM2  float64
	DarkShare float64 // of it, while the lamp is off, 0 to 1
}

// DayOf is a day of which so many hours are lit: what leaves breathe out in the
// light and in the dark, in g/m²/h. Nights count.
func DayOf(lit, dark Leaf, hours float64) Day {
	on, off := lit.GM2H*hours, dark.GM2H*(24-hours)
	d := Day{LitresM2: (on + off) / 1000}
	if on+off > 0 {
		d.DarkShare = off / (on + off)
	}
	return d
}

// PlantML is a plant's part of that day in mL, where so many stand on a square
// metre; 0 where none do.
func (d Day) PlantML(perM2 float64) float64 {
	if !(perM2 > 0) {
		return 0
	}
	return 1000 * d.LitresM2 / perM2
}

// OpenMMDay is what open water loses to the room in mm a day, by Penman 1948,
// with the air at some m/s over it.
func OpenMMDay(room Room, airMS float64) float64 {
	return value(factOpenRate) * (1 + value(factOpenWind)*airMS) * room.DeficitKPa()
}

// StillAirMS is the air of a room without a fan at the water, in m/s.
func StillAirMS() float64 { return value(factOpenAirSpeed) }

// LidMLDay is what passes a lid in mL a day: the open share of its area, 0 to
// 1, loses as open water does (common practice).
func LidMLDay(room Room, airMS, areaM2, openShare float64) float64 {
	return 1000 * OpenMMDay(room, airMS) * areaM2 * openShare
}
