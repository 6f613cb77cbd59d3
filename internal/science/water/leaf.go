package water

import "math"

var (
	stomata        = figures(factLeafStomata)
	heatOfVapour   = value(factAirLatentHeat)
	heatOfAir      = value(factAirHeat)
	mostLeafIndex  = value(factLeafIndexMost)
	usualThrowBack = value(factLeafReflection) / 100
	usualTaken     = value(factLeafExtinction)
)

// Canopy is a stand of leaves as one big leaf in a room under steady light,
// made ready so that asking it for each leaf area is quick.
//
// Source: Graamans et al. 2017, Agric. Syst. 153:138-147.
type Canopy struct {
	airResistance   float64 // s/m
	absorbedW       float64 // W/m² on ground that leaves cover whole
	tempC           float64
	vapourGM3       float64
	pores           pores   // at the temperature of the room
	conductHeat     float64 // W/m²/K for each m² of leaf
	conductVapour   float64 // W/m² for each g/m³ and m² of leaf
	gramsFromVapour float64 // g/m²/h for each g/m³ and m² of leaf
}

// pores are the water in the air of a leaf's pores, g/m³, and how it changes
// with the leaf's temperature: once and twice for each kelvin.
type pores struct{ full, slope, bend float64 }

func poresAt(tempC float64) pores {
	d, k := 1/(tempC+vapourB), 1/(tempC+kelvin)
	full := gasPerKPa * k * vapour0 * math.Exp(vapourA*tempC*d)
	g := vapourA*vapourB*d*d - k
	return pores{full, full * g, full * (g*g - 2*vapourA*vapourB*d*d*d + k*k)}
}

// AirResistance is that of the air at the leaf in s/m, with a fan or without.
func AirResistance(fan bool) float64 {
	if fan {
		return value(factLeafAirFan)
	}
	return value(factLeafAirStill)
}

// PoreResistance is that of the leaf's pores in s/m under a PPFD in µmol/m²/s:
// they open to light.
func PoreResistance(ppfd float64) float64 {
	ppfd = max(0, ppfd)
	return stomata[0] * (stomata[1] + ppfd) / (stomata[2] + ppfd)
}

// NewCanopy is a canopy under a PPFD in µmol/m²/s, which is so many W/m² of
// radiation that leaves use, in a room whose air resists so many s/m at the
// leaf; see AirResistance.
func NewCanopy(room Room, ppfd, wattsM2, airResistance float64) Canopy {
	resistance := PoreResistance(ppfd) + airResistance
	return Canopy{
		airResistance: airResistance, absorbedW: (1 - usualThrowBack) * max(0, wattsM2),
		tempC: room.TempC, vapourGM3: room.VapourGM3(), pores: poresAt(room.TempC),
		conductHeat: heatOfAir / airResistance, conductVapour: heatOfVapour / resistance, gramsFromVapour: 3600 / resistance,
	}
}

// lastStepK is a step of the leaf's temperature after which the next would be
// some millionths of a hundredth of it.
const lastStepK = 1e-2

// Leaf is what one big leaf does.
type Leaf struct {
	TempC float64 // of the leaf
	GM2H  float64 // water breathed out, g for each m² of ground and hour
}

// Breathe is what leaves of an area, in m² for each m² of ground, breathe out.
// Leaves over an index of 3 shade one another and count as 3. It is never
// under 0.
func (c *Canopy) Breathe(leafIndex float64) Leaf {
	lai := min(leafIndex, mostLeafIndex)
	if !(lai > 0) {
		return Leaf{TempC: c.tempC}
	}
	light := c.absorbedW * (1 - math.Exp(-usualTaken*lai)) / lai
	// What light brings in goes out as heat and as vapour. Each step solves that
	// balance with the vapour's curve taken as a parabola, of which the right
	// branch is the nearer one.
	leaf, p := c.tempC, c.pores
	for range 20 {
		over := light - c.conductHeat*(leaf-c.tempC) - c.conductVapour*(p.full-c.vapourGM3)
		slope := c.conductHeat + c.conductVapour*p.slope
		step := 2 * over / (slope + math.Sqrt(max(0, slope*slope+2*c.conductVapour*p.bend*over)))
		leaf += step
		if math.Abs(step) < lastStepK {
			full := p.full + step*(p.slope+step*p.bend/2)
			return Leaf{TempC: leaf, GM2H: max(0, lai*c.gramsFromVapour*(full-c.vapourGM3))}
		}
		p = poresAt(leaf)
	}
	return Leaf{TempC: c.tempC}
}
