package season

import "rootbell/internal/base/facts"

func value(id facts.ID) float64 { return Facts.Get(id).Value }

// MostRisk is the chance of falling below the lowest line from which something
// is to be done before a closed stretch, 0 to 1.
func MostRisk() float64 { return value(factRiskMost) / 100 }

// UsualChance is the chance of being ready that is wanted where nobody says, 0
// to 1.
func UsualChance() float64 { return value(factChanceUsual) / 100 }
