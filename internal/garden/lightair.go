package garden

// Light is what the lamps bring to a tub.
type Light struct {
	PPFD    []HoleLight `json:"ppfd"`      // at each hole of the chosen layout, on leaves at transplant
	MeanPPF float64     `json:"mean_ppfd"` // µmol/m²/s
	DLI     float64     `json:"dli"`       // mol/m²/d, mean over the holes
	LowDLI  float64     `json:"low_dli"`   // of the darkest hole
	HighDLI float64     `json:"high_dli"`
	Hours   float64     `json:"hours"`    // lit in a day
	NeedH   float64     `json:"need_h"`   // that would bring the crop's daily light; 0 where no day is long enough
	KWhADay float64     `json:"kwh_day"`  // of all lamps of the garden
	From    string      `json:"from"`     // lamps, or lux readings
	WantLow float64     `json:"want_low"` // daily light that the crop wants
	WantTop float64     `json:"want_top"`
}

// HoleLight is the light at one hole.
type HoleLight struct {
	N    int     `json:"n"`
	PPFD float64 `json:"ppfd"`
	DLI  float64 `json:"dli"`
}

// Oxygen is the oxygen in a tub's water with its plants grown.
type Oxygen struct {
	SteadyMgL   float64 `json:"steady_mg_l"`
	SaturateMgL float64 `json:"saturation_mg_l"`
	NeedLMin    float64 `json:"need_l_min"` // of air
	HaveLMin    float64 `json:"have_l_min"`
	To4H        float64 `json:"to_4_h"` // from the pump's stop
	To3H        float64 `json:"to_3_h"`
	To2H        float64 `json:"to_2_h"`
	QuietMin    float64 `json:"quiet_min"` // how long the pump may be off in a lesson
	HeadMM      float64 `json:"head_mm"`   // of water that the pump must push through
}
