package crop

import (
	"math"
	"strconv"
	"strings"

	"rootbell/internal/base/facts"
)

func grown(id facts.ID) float64 { return GrowthFacts.Get(id).Value }

// The constants of Van Henten 1994, compiled once from the facts and never
// written again.
var (
	sugarOfCO2     = grown(factGrowthSugar)
	yield          = grown(factGrowthYield)
	growthRate     = grown(factGrowthRate)
	halfStore      = grown(factGrowthHalf)
	lnRateQ10      = math.Log(grown(factGrowthRateQ10))
	shootBurns     = grown(factGrowthRespirationShoot)
	rootBurns      = grown(factGrowthRespirationRoot)
	lnRespirQ10    = math.Log(grown(factGrowthRespirationQ10))
	extinction     = grown(factGrowthExtinction)
	lightUse       = grown(factGrowthLightUse)
	compensation   = grown(factGrowthCompensation)
	lnCompensQ10   = math.Log(grown(factGrowthCompensationQ10))
	co2PerPPM      = grown(factGrowthCo2)
	boundary       = grown(factGrowthBoundary)
	stomata        = grown(factGrowthStomata)
	carboxylation  = threeOf(factGrowthCarboxylation)
	stopsInTheCold = grown(factGrowthAirCool)
)

func threeOf(id facts.ID) (out [3]float64) {
	for i, w := range strings.Fields(GrowthFacts.Get(id).Word) {
		v, err := strconv.ParseFloat(w, 64)
		if err != nil || i > 2 {
			panic("crop: " + string(id) + " does not hold three figures")
		}
		out[i] = v
	}
	return out
}

// Model is how one kind of plant grows: the two-state model of lettuce by Van
// Henten (1994, Agric. Syst. 45:55-72) with what differs between crops and, in
// an ensemble, between its members. The zero Model does not grow.
type Model struct {
	Tempo       float64 // all rates beside those of lettuce: 0.4 takes 10 days for 4 of lettuce's
	Vigour      float64 // photosynthesis beside the published, usually 1
	RootShare   float64 // of the dry mass, 0 to 1
	LeafPerG    float64 // m² of leaf for a gram of structure in the shoot
	FreshPerDry float64 // of the shoot
	FruitShare  float64 // of what grows over the lid, 0 where leaves are picked
	StartG      float64 // dry plant on the day it goes into the tub
	LeafMost    float64 // leaf area over a square metre that counts; 0 for no limit
	ColdC       float64 // growth slows below and stops at 10 °C; 0 for a crop that does not mind
}

// Published is the model as published, in water culture, without any brake.
func Published() Model {
	return Model{
		Tempo: 1, Vigour: 1, RootShare: grown(factGrowthRoots), LeafPerG: grown(factGrowthLeaf),
		FreshPerDry: grown(factGrowthFresh), StartG: grown(factGrowthStart),
	}
}

// State is the dry mass over a square metre of a plant's own ground, in g: sugar
// and starch in store, and structure. It has no plants where both are 0.
type State struct{ Store, Structure float64 }

// DryG is all dry mass in g/m².
func (s State) DryG() float64 { return s.Store + s.Structure }

// Start is a stand on the day it goes into the tub, at some plants a square
// metre.
func (m *Model) Start(perM2 float64) State { return m.OfDryG(m.StartG, perM2) }

// OfDryG is a stand of young plants of a dry mass each.
func (m *Model) OfDryG(eachG, perM2 float64) State {
	store := grown(factGrowthStore) / 100
	return State{store * eachG * perM2, (1 - store) * eachG * perM2}
}

// LeafIndex is the leaf area over a square metre of ground that counts for light
// and for thirst; never over the model's limit.
func (m *Model) LeafIndex(s State) float64 {
	lai := m.LeafPerG * (1 - m.RootShare) * s.Structure
	if m.LeafMost > 0 {
		return min(lai, m.LeafMost)
	}
	return lai
}

// Crowded tells whether there are more leaves than count: the plants shade one
// another away, and the model no longer knows their leaf area.
func (m *Model) Crowded(s State) bool {
	return m.LeafMost > 0 && m.LeafPerG*(1-m.RootShare)*s.Structure > m.LeafMost
}

// ShootG is what stands over the lid, fresh, in g a plant.
func (m *Model) ShootG(s State, perM2 float64) float64 {
	if !(perM2 > 0) {
		return 0
	}
	return m.FreshPerDry * (1 - m.RootShare) * s.DryG() / perM2
}

// HarvestG is what is picked of a plant, fresh, in g: all of the shoot, or the
// fruit's part of it.
func (m *Model) HarvestG(s State, perM2 float64) float64 {
	if m.FruitShare > 0 {
		return m.FruitShare * m.ShootG(s, perM2)
	}
	return m.ShootG(s, perM2)
}

// RootG is a plant's root, dry, in g: what takes oxygen from the water.
func (m *Model) RootG(s State, perM2 float64) float64 {
	if !(perM2 > 0) {
		return 0
	}
	return m.RootShare * s.DryG() / perM2
}

// DryForHarvest is the dry mass in g/m² at which a plant has a harvest in g: the
// brake for Pace.Most.
func (m *Model) DryForHarvest(harvestG, perM2 float64) float64 {
	share := m.FreshPerDry * (1 - m.RootShare)
	if m.FruitShare > 0 {
		share *= m.FruitShare
	}
	if !(share > 0) {
		return 0
	}
	return harvestG * perM2 / share
}

// HeightMM is how high a plant of a fresh mass in g stands over the lid: as high
// as the crop at its usual harvest, by the cube root of the mass. It is the same
// rule as Height's, for a course of many days.
func (c Crop) HeightMM(freshG float64) float64 {
	usual := c.fact("harvest_mass").Value
	if !(usual > 0) || !(freshG > 0) {
		return 0
	}
	return 10 * c.fact("height").Value * math.Cbrt(freshG/usual)
}
