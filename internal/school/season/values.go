package season

import "rootbell/internal/base/facts"

func value(id facts.ID) float64 { return Facts.Get(id).Value }

// MostRisk is the chance of falling below the lowest line from which something
// is to be done before a closed stretch, 0 to 1.
func MostRisk() float64 { return value(factLeaveRisk) / 100 }

// UsualChance is the chance of being ready that is wanted where nobody says, 0
// to 1.
func UsualChance() float64 { return value(factChanceUsual) / 100 }

// BestChance is the chance of being ready that the best day to sow is looked
// for with, 0 to 1.
func BestChance() float64 { return value(factChanceBest) / 100 }

// VisitLitres is the most that one visit pours in.
func VisitLitres() float64 { return value(factVisitWater) }

// MealKeepsDays is how many days before a meal plants are picked for it.
func MealKeepsDays() int { return int(value(factMealKeeps)) }
