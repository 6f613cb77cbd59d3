package solution

import (
	"math"

	"rootbell/internal/base/facts"
)

// logK gives the logarithm of a constant at a temperature in kelvin.
type logK func(kelvin float64) float64

const (
	reference   = 298.15 // K, 25 °C
	gasConstant = 8.314462618e-3
)

// analytic is a + b·T + c/T + d·log T + e/T² + f·T².
func analytic(id facts.ID) logK {
	c := numbers(id, 6)
	return func(t float64) float64 {
		return c[0] + c[1]*t + c[2]/t + c[3]*math.Log10(t) + c[4]/(t*t) + c[5]*t*t
	}
}

// vantHoff carries log K from 25 °C with a constant enthalpy in kJ/mol.
func vantHoff(id facts.ID) logK {
	c := numbers(id, 2)
	return func(t float64) float64 {
		return c[0] - c[1]/(math.Ln10*gasConstant)*(1/t-1/reference)
	}
}

// species is a complex of at most one cation and one anion of the components,
// with protons taken up or given off.
type species struct {
	name          string
	cation, anion Ion // none where it holds none
	protons       int
	charge        int
	k             logK
	limit         facts.ID // conductivity without coefficients of its own
	mc            facts.ID // coefficients of McCleskey et al.
}

const none Ion = -1

// The places of the species that others ask for.
const (
	hydroxide = iota
	bicarbonate
	carbonDioxide
	_ // bisulfate
	hydrogenPhosphate
)

var complexes = []species{
	{"OH", none, none, -1, -1, analytic(factEquilibriumWater), "", factConductivityOH},
	{"HCO3", none, CO3, 1, -1, analytic(factEquilibriumBicarbonate), "", factConductivityHCO3},
	{"CO2", none, CO3, 2, 0, analytic(factEquilibriumCarbonDioxide), "", ""},
	{"HSO4", none, SO4, 1, -1, vantHoff(factEquilibriumBisulfate), "", factConductivityHSO4},
	{"HPO4", none, PO4, 1, -2, vantHoff(factEquilibriumPhosphate1), factConductivityLimitHPO4, ""},
	{"H2PO4", none, PO4, 2, -1, vantHoff(factEquilibriumPhosphate2), factConductivityLimitH2PO4, ""},
	{"H3PO4", none, PO4, 3, 0, vantHoff(factEquilibriumPhosphate3), "", ""},
	{"NH3", NH4, none, -1, 0, analytic(factEquilibriumAmmonia), "", ""},
	{"B(OH)4", none, Borate, -1, -1, vantHoff(factEquilibriumBorate), factConductivityLimitBorate, ""},
	{"HCit", none, Citrate, 1, -2, vantHoff(factEquilibriumCitrate1), factConductivityLimitHCit, ""},
	{"H2Cit", none, Citrate, 2, -1, vantHoff(factEquilibriumCitrate2), factConductivityLimitH2Cit, ""},
	{"H3Cit", none, Citrate, 3, 0, vantHoff(factEquilibriumCitrate3), "", ""},
	{"CaSO4", Ca, SO4, 0, 0, vantHoff(factEquilibriumCaSO4), "", ""},
	{"MgSO4", Mg, SO4, 0, 0, vantHoff(factEquilibriumMgSO4), "", ""},
	{"KSO4", K, SO4, 0, -1, vantHoff(factEquilibriumKSO4), "", factConductivityKSO4},
	{"NaSO4", Na, SO4, 0, -1, vantHoff(factEquilibriumNaSO4), factConductivityLimitNaSO4, ""},
	{"NH4SO4", NH4, SO4, 0, -1, vantHoff(factEquilibriumNH4SO4), factConductivityLimitNH4SO4, ""},
	{"CaHCO3", Ca, CO3, 1, 1, vantHoff(factEquilibriumCaHCO3), factConductivityLimitCaHCO3, ""},
	{"MgHCO3", Mg, CO3, 1, 1, vantHoff(factEquilibriumMgHCO3), factConductivityLimitMgHCO3, ""},
	{"CaCO3", Ca, CO3, 0, 0, vantHoff(factEquilibriumCaCO3), "", ""},
	{"MgCO3", Mg, CO3, 0, 0, vantHoff(factEquilibriumMgCO3), "", ""},
	{"CaH2PO4", Ca, PO4, 2, 1, vantHoff(factEquilibriumCaH2PO4), factConductivityLimitPair, ""},
	{"CaHPO4", Ca, PO4, 1, 0, vantHoff(factEquilibriumCaHPO4), "", ""},
	{"CaPO4", Ca, PO4, 0, -1, vantHoff(factEquilibriumCaPO4), factConductivityLimitPair, ""},
	{"MgH2PO4", Mg, PO4, 2, 1, vantHoff(factEquilibriumMgH2PO4), factConductivityLimitPair, ""},
	{"MgHPO4", Mg, PO4, 1, 0, vantHoff(factEquilibriumMgHPO4), "", ""},
	{"CaCit", Ca, Citrate, 0, -1, vantHoff(factEquilibriumCaCit), factConductivityLimitPair, ""},
	{"CaHCit", Ca, Citrate, 1, 0, vantHoff(factEquilibriumCaHCit), "", ""},
	{"CaH2Cit", Ca, Citrate, 2, 1, vantHoff(factEquilibriumCaH2Cit), factConductivityLimitPair, ""},
	{"MgCit", Mg, Citrate, 0, -1, vantHoff(factEquilibriumMgCit), factConductivityLimitPair, ""},
	{"MgHCit", Mg, Citrate, 1, 0, vantHoff(factEquilibriumMgHCit), "", ""},
	{"MgH2Cit", Mg, Citrate, 2, 1, vantHoff(factEquilibriumMgH2Cit), factConductivityLimitPair, ""},
}

const complexCount = 32

var (
	henry        = analytic(factEquilibriumCarbonDioxideGas)
	daviesA      = value(factActivityDaviesA)
	daviesB      = value(factActivityDaviesB)
	permittivity = numbers(factActivityPermittivity, 4)
)

// davies is A of the Davies equation at a temperature in °C: the value for
// 25 °C, carried by (ε T)^-1.5 with the permittivity of water.
func davies(tempC float64) float64 {
	et := func(t float64) float64 {
		p := permittivity
		return (p[0] + t*(p[1]+t*(p[2]+t*p[3]))) * (t + 273.15)
	}
	return daviesA * math.Pow(et(25)/et(tempC), 1.5)
}
