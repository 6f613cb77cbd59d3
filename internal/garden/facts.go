package garden

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/forecast"
	"rootbell/internal/school/choose"
	"rootbell/internal/school/jobs"
	"rootbell/internal/school/lesson"
	"rootbell/internal/school/meal"
	"rootbell/internal/school/season"
	"rootbell/internal/school/shopping"
	"rootbell/internal/school/stations"
	"rootbell/internal/school/steering"
	"rootbell/internal/school/trouble"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/lamp"
	"rootbell/internal/science/netcup"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/reading"
	"rootbell/internal/science/shelf"
	"rootbell/internal/science/solution"
	"rootbell/internal/science/tub"
	"rootbell/internal/science/water"
)

//go:generate go run rootbell/internal/garden/sources ../../docs/sources.md

// FactTables are the sourced values that assessments rest on, by the package
// that uses them.
func FactTables() []facts.Table {
	return []facts.Table{
		choose.Facts, crop.Facts, crop.GrowthFacts, forecast.Facts, jobs.Facts, lamp.Facts, lesson.Facts, netcup.Facts, oxygen.Facts,
		meal.Facts, reading.Facts, season.Facts, shelf.Facts, shopping.Facts, solution.Facts, stations.Facts, steering.Facts, tub.Facts,
		trouble.Facts, water.Facts,
	}
}

// Facts are all sourced values that assessments rest on, by id.
func Facts() []facts.Fact { return facts.Join(FactTables()...) }
