package forecast

// Forecast is what may come of a season.
type Forecast struct {
	Members   int
	Days      []DayBands // at the end of each day
	Stretches []Stretch  // of each watch
	Expected  []Expected // of each reading, in the order of time
	Factors   []Factors  // of each member, with what was learned
	Ends      []State    // of each member, at the end of the last day
}

// DayBands are the bands at a day's end.
type DayBands struct {
	LevelMM, Litres, ECmS Band
	OxygenMgL             Band    // the lowest of the day; nought in a tub without a pump
	DrunkL                Band    // by leaves and gaps since the tub was filled
	PouredL               Band    // since then, and then
	CropG                 Band    // fresh, what could be picked of all stands together
	Ready                 float64 // chance that the crop is what is needed, 0 to 1; see Season.NeedG
	Stands                []StandBands
}

// StandBands are those of one stand.
type StandBands struct {
	MassG    Band    // fresh, what is picked of one plant
	HeightMM Band    // over the lid; nought for a stand without a crop
	Ready    float64 // chance that it has its harvest mass, 0 to 1; 0 where none is named
}

// Stretch is the answer of a watch.
type Stretch struct {
	Risk  float64 // chance of falling below the lowest line, 0 to 1
	DryAt Band    // hour of the season at which it falls; infinite where it does not
}

// Expected is what the forecast expected of a reading, just before it.
type Expected struct {
	Reading int  // its place in Season.Readings
	Band    Band // of the figure read, with the instrument's error, in its unit
	Learned bool // whether the forecast then learned from it
}
