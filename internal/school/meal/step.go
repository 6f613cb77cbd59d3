package meal

import "fmt"

// Step is one thing to do on the day.
type Step struct {
	Do, Why string
	Adult   bool
	Source  string
}

// Steps are the day's work in its order. lateC is what cut leaves may reach, in
// words of the unit system.
func Steps(coldWords string) []Step {
	return []Step{
		{"Wash hands with soap under running water, for " + fmt.Sprintf("%.0f", value(factWashHands)) + " seconds. Gel does not take its place.", "", false, usda},
		{"Clean the table, the bowls and the scale. Tie hair back.", "", false, Practice},
		{"Lift plant after plant out by its cup. Weigh it and write it down before anything is cut off.", "The forecast is held against it.", false, Practice},
		{"An adult cuts off roots and plug. Roots, plugs and outer leaves go on the compost or in the bin.", "Knives are an adult's.", true, Practice},
		{"Wash each leaf under running drinking water, never in the water of the tub. No soap, no bleach.", "", false, usda},
		{"Dry them in a clean towel, and put them in the cold at once: " + coldWords + " or under.", "", false, usda},
		{fmt.Sprintf("Eat on the same day. What stood out of the cold for %.0f hours is thrown away.", value(factOutMost)), "", true, memory},
		{"Not for babies, and nobody has to eat.", "", true, Practice},
		{"Write down what was eaten and what was not. Both count.", "", false, Practice},
	}
}

// ColdMostC is what cut leaves may reach, °C.
func ColdMostC() float64 { return value(factColdMost) }
