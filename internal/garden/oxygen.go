package garden

// Oxygen is the oxygen in a tub's water with its plants grown, the water warm
// and the pump running. Where a range is known of what air stones bring, the
// times without the pump are of its lower end.
type Oxygen struct {
	SteadyMgL   float64 `json:"steady_mg_l"`
	LowMgL      float64 `json:"steady_low_mg_l"` // with a stone that brings the least
	SaturateMgL float64 `json:"saturation_mg_l"`
	WarmC       float64 `json:"warm_c"`    // the water that is counted on
	HoldMgL     float64 `json:"hold_mg_l"` // what the air is to hold
	NeedLMin    float64 `json:"need_l_min"`
	HaveLMin    float64 `json:"have_l_min"`
	Assumed     bool    `json:"assumed,omitempty"` // have_l_min is the trade's rule, not the plan's
	To4H        float64 `json:"to_4_h"`            // from the pump's stop
	To3H        float64 `json:"to_3_h"`
	To2H        float64 `json:"to_2_h"`
	QuietMin    float64 `json:"quiet_min"` // how long the pump may be off in a lesson
	HeadMM      float64 `json:"head_mm"`   // of water that the pump must push through
	KWhADay     float64 `json:"kwh_day"`   // 0 where the pump's power is not known

	Key string `json:"-"` // of its numbers: tubs.Heron.oxygen
}
