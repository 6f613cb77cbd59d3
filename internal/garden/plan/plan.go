package plan

import "rootbell/internal/base/quantity"

// Format is the version of the document that this program reads.
const Format = 1

// Plan is one garden as its teacher wrote it down.
type Plan struct {
	// The version of this document: 1.
	Rootbell int `plan:"rootbell,required" in:"1 to 1"`
	// What the garden is called. No person's name.
	Garden string `plan:"garden,required"`
	// Whether the numbers are made up, as in the examples: every paper then says so.
	Invented Tick `plan:"invented" default:"no"`
	// The units in which results are shown. It never changes what a typed quantity means.
	Units quantity.System `plan:"units" words:"metric,us" default:"metric"`
	// The paper that is in the printer.
	Paper string `plan:"paper" words:"A4,Letter" default:"A4; Letter with US units"`
	// The currency of all prices, by its three letters.
	Currency string `plan:"currency" pattern:"currency"`
	// The room the garden stands in.
	Place Place `plan:"place"`
	// What measures, marks and weighs.
	Tools Tools `plan:"tools"`
	// The bay of the shelf that the tubs stand in.
	Shelf *Shelf `plan:"shelf"`
	// The tap water, from the supplier's report or from strips; or the word unknown.
	Tap Tap `plan:"tap"`
	// The school's calendar and its people, without names.
	School School `plan:"school"`
	// The lamps over the tubs.
	Lamps []Lamp `plan:"lamps"`
	// What a lux meter read under the lamps. Where there is any, it counts in place of what is worked out from them.
	Lux []Lux `plan:"lux"`
	// The fertilisers at hand.
	Fertilisers []Fertiliser `plan:"fertilisers"`
	// The acids at hand. Only an adult doses them.
	Acids []Acid `plan:"acids"`
	// The bases at hand. Only an adult doses them.
	Bases []Base `plan:"bases"`
	// What there is to blend the tap water with.
	Blend string `plan:"blend" words:"rain,deionised,none" default:"none"`
	// Stock solutions A and B to mix the tubs from.
	Stocks *Stocks `plan:"stocks"`
	// Level spoons of fertiliser, each weighed by the class itself.
	Spoons []Spoon `plan:"spoons"`
	// The bleach for cleaning down. Only an adult handles it.
	Bleach *Bleach `plan:"bleach"`
	// What the nutrient solution is to be.
	Feed Feed `plan:"feed"`
	// The tubs.
	Tubs []Tub `plan:"tubs,required" least:"1"`
	// Kits and offers to compare.
	Offers []Offer `plan:"offers"`
	// Your own prices, by item of the shopping list; and electricity, by the kilowatt-hour.
	Prices Prices `plan:"prices"`

	// Name is what the text is called in messages, such as its file's name.
	Name string

	text []byte
	root *node
}

// Place is the room the garden stands in.
type Place struct {
	// The time zone by its name in the time zone database, such as Europe/Dublin.
	TimeZone string `plan:"time_zone" pattern:"zone"`
	// Height above the sea.
	Altitude Length `plan:"altitude" in:"-450 m to 5000 m" default:"0 m"`
	// Air temperature in attended hours.
	AirTemperature Temperature `plan:"air_temperature" in:"0 °C to 45 °C" default:"21 °C"`
	// Air temperature at night, at weekends and in breaks.
	AirTemperatureClosed Temperature `plan:"air_temperature_closed" in:"-5 °C to 45 °C" default:"5 °C under air_temperature"`
	// Temperature of the water in the tubs in attended hours.
	WaterTemperature Temperature `plan:"water_temperature" in:"1 °C to 40 °C" default:"air_temperature"`
	// Temperature of the water in the tubs when nobody is there.
	WaterTemperatureClosed Temperature `plan:"water_temperature_closed" in:"0 °C to 40 °C" default:"air_temperature_closed"`
	// The coldest it gets where stock solutions stand.
	Coldest Temperature `plan:"coldest" in:"0 °C to 40 °C" default:"15 °C"`
	// Relative humidity of the air.
	Humidity Share `plan:"humidity" in:"5 % to 100 %" default:"50 %"`
	// Carbon dioxide in the air in attended hours.
	CO2 MoleShare `plan:"co2" in:"200 ppm to 5000 ppm" default:"800 ppm"`
	// Carbon dioxide in the air when nobody is there.
	CO2Closed MoleShare `plan:"co2_closed" in:"200 ppm to 5000 ppm" default:"420 ppm"`
}

// Tools is what measures, marks and weighs, and how well.
type Tools struct {
	// The step of the ruler that marks the lid.
	RulerStep Length `plan:"ruler_step" in:"0.5 mm to 50 mm" default:"5 mm; 1/4 in with US units"`
	// The error of one inside measure taken with the tape.
	TapeError Length `plan:"tape_error" in:"0 mm to 20 mm" default:"2 mm"`
	// How far a mark may lie from where it should.
	MarkingError Length `plan:"marking_error" in:"0 mm to 10 mm" default:"2 mm"`
	// How far the saw may wander from the mark.
	DrillingError Length `plan:"drilling_error" in:"0 mm to 10 mm" default:"1.5 mm"`
	// The step of the scale.
	ScaleStep Mass `plan:"scale_step" in:"0.001 g to 100 g" default:"1 g"`
	// How pH is read.
	PH string `plan:"ph" words:"strips,drops,meter,none"`
	// How electrical conductivity is read.
	EC string `plan:"ec" words:"meter,none"`
	// What the EC meter shows: mS/cm, or ppm on one of three scales. None of them is mg/L of nutrients.
	ECScale string `plan:"ec_scale" words:"mS/cm,ppm 500,ppm 640,ppm 700" default:"mS/cm"`
}

// Shelf is the bay that the tubs stand in.
type Shelf struct {
	// Clear width of the bay, from upright to upright.
	Width Length `plan:"width" in:"20 cm to 5 m"`
	// Depth from the front edge to the back.
	Depth Length `plan:"depth" in:"15 cm to 2 m"`
	// Height from the board to whatever is above it.
	ClearHeight Length `plan:"clear_height" in:"20 cm to 4 m"`
	// The load that the maker rates one board for, evenly spread.
	RatedLoad Mass `plan:"rated_load" in:"1 kg to 2000 kg"`
}

// Prices are the teacher's own, by item of the shopping list.
type Prices map[string]Cash
