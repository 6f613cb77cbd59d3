package garden

import (
	"time"

	"rootbell/internal/school/term"
)

// Season is a tub's season: when to sow, what each day brings, and how likely
// the tub outlives each stretch in which nobody comes. A nil pointer and a day
// left out are what could not be worked out; dates are calendar days at the
// school, moments carry its offset.
type Season struct {
	SowOn        string  `json:"sow_on"`        // the day that is best, or the day that the plan says
	SowFrom      string  `json:"sow_from"`      // the earliest that makes sense
	SowLatest    string  `json:"sow_latest"`    // the last on which it is ready by the meal with the chosen chance
	TransplantOn string  `json:"transplant_on"` // when the plants move into the tub
	HarvestFrom  string  `json:"harvest_from"`  // first day on which half the runs are ready
	HarvestTo    string  `json:"harvest_to"`    // last day before quality falls, or the meal
	ReadyChance  float64 `json:"ready_chance"`  // by the meal; without a meal by the term's end
	WantedChance float64 `json:"wanted_chance"`
	Seeds        int     `json:"seeds"`
	NeededG      float64 `json:"needed_g"`   // of the meal, this tub's share
	ExpectedG    Range   `json:"expected_g"` // of all its plants on the meal's day

	Days   []SeasonDay   `json:"days"`
	Closed []LeaveIt     `json:"closed"`
	Tasks  []SeasonTask  `json:"tasks"`  // dated: sow, thin, move, raise the lamp, change out, order, harvest
	Score  []SeasonScore `json:"score"`  // earlier forecasts against what came
	Guess  string        `json:"guess"`  // said while too few water readings are there
	Runs   int           `json:"runs"`   // members of the ensemble
	Ready  []CropReady   `json:"crops"`  // by crop
	Moves  []string      `json:"moves"`  // what could be done where the date cannot be met
	Learnt []Learnt      `json:"learnt"` // how this class's tub differs from the model

	More     []MoreSown `json:"more_sowings"` // that the term has room for besides
	Nursery  term.Span  `json:"-"`            // from the sowing to the move
	Readings []SeenMark `json:"-"`            // what was read, for the charts
	Key      string     `json:"-"`            // of its numbers: tubs.Heron.season
}

// Range is what may come: one in twenty lies under P5 and one in twenty over
// P95, half lie between P25 and P75.
type Range struct {
	P5  float64 `json:"p5"`
	P25 float64 `json:"p25"`
	P50 float64 `json:"p50"`
	P75 float64 `json:"p75"`
	P95 float64 `json:"p95"`
}

// SeasonDay is one day from the move into the tub on, at the hour the last
// person leaves.
type SeasonDay struct {
	Date    string  `json:"date"`
	Open    bool    `json:"open"`
	LineMM  float64 `json:"line_mm"` // up to which it is filled on that day
	LevelMM Range   `json:"level_mm"`
	Litres  float64 `json:"litres"` // drunk and dried up on that day, the middle
	EC      float64 `json:"ec"`     // mS/cm at 25 °C, the middle
	ECBand  Range   `json:"ec_band"`
	MassG   Range   `json:"mass_g"` // fresh, of all its plants
	DOMgL   float64 `json:"do_mg_l"`
	DOBand  Range   `json:"do_band"`
	Filled  bool    `json:"filled,omitempty"` // topped up or filled anew on that day
}

// LeaveIt is one stretch in which nobody comes, and what can be done before it.
type LeaveIt struct {
	From        time.Time  `json:"from"` // the last person leaves
	To          time.Time  `json:"to"`   // the first person comes
	Hours       float64    `json:"hours"`
	Why         string     `json:"why,omitempty"`
	Risk        float64    `json:"risk"`         // of falling below the lowest line, as things stand
	RiskHigh    float64    `json:"risk_high"`    // at 90 % thirst
	RunsDryP50  *time.Time `json:"runs_dry_p50"` // nil: not within the stretch
	RunsDryP95  *time.Time `json:"runs_dry_p95"` // at which one run in twenty has fallen below
	Options     []LeaveDo  `json:"options"`      // from the least burden up
	Take        int        `json:"take"`         // the option to take; -1: nothing is needed
	PowerCut    *LeaveCase `json:"power_cut,omitempty"`
	PumpFailure *LeaveCase `json:"pump_failure,omitempty"`

	Key string `json:"-"` // of the risk: tubs.Heron.season.closed_1
}

// LeaveDo is one thing that can be done for a stretch, with the risk that is
// left then.
type LeaveDo struct {
	Kind   string     `json:"kind"` // fill, lamp, harvest, fewer, visit, still, and joined by +
	Do     string     `json:"do"`
	Risk   float64    `json:"risk"`
	LineMM float64    `json:"line_mm,omitempty"`
	Hours  float64    `json:"lamp_hours,omitempty"`
	Timer  string     `json:"timer,omitempty"` // from when to when the lamp is lit then
	Plants int        `json:"plants,omitempty"`
	Litres float64    `json:"litres,omitempty"`      // of plain water that the visit pours in
	PourL  float64    `json:"pour_l,omitempty"`      // that filling up to the line takes, the middle
	Meal   *float64   `json:"meal_chance,omitempty"` // where plants are taken out that the meal needs: that what stays is enough
	VisitA *time.Time `json:"visit_from,omitempty"`  // the window of the one visit
	VisitB *time.Time `json:"visit_to,omitempty"`
}

// LeaveCase is what a failure does within a stretch that is left in the way to take.
type LeaveCase struct {
	Hours  float64 `json:"hours"`  // that it lasts
	To4    float64 `json:"to_4_h"` // hours until the oxygen falls to 4, 3 and 2 mg/L
	To3    float64 `json:"to_3_h"`
	To2    float64 `json:"to_2_h"`
	Risk   float64 `json:"risk"` // of falling below the lowest line
	Says   string  `json:"says"`
	LoseKG float64 `json:"-"`
}

// SeasonTask is something to do on a day of the season.
type SeasonTask struct {
	Kind string `json:"kind"` // sow, thin, transplant, lamp, change-out, lower, order, harvest, meal
	On   string `json:"on"`
	Do   string `json:"do"`
	Why  string `json:"why,omitempty"`
	Key  string `json:"key,omitempty"`

	overLidMM float64 // new height of the lamp
}

// SeasonScore is how well earlier forecasts of one quantity did.
type SeasonScore struct {
	Of      string  `json:"of"` // level, ec, height, harvest
	Count   int     `json:"count"`
	InWide  int     `json:"in_wide"` // of them in the band of nine in ten
	InHalf  int     `json:"in_half"`
	MeanOff float64 `json:"mean_off"` // without its sign, in mm, mS/cm or g
	Says    string  `json:"says"`
}

// MoreSown is one more crop in the same tub, before or after this one.
type MoreSown struct {
	SowOn        string  `json:"sow_on"`
	TransplantOn string  `json:"transplant_on"`
	ReadyOn      string  `json:"ready_on"`
	Chance       float64 `json:"ready_chance"`
}

// CropReady is one crop of a tub.
type CropReady struct {
	Crop        string  `json:"crop"`
	Plants      int     `json:"plants"`
	PickG       float64 `json:"pick_g"` // harvest mass of one plant
	MassG       Range   `json:"mass_g"` // of one plant on the meal's day
	ReadyChance float64 `json:"ready_chance"`
	Seeds       int     `json:"seeds"`
	SowOn       string  `json:"sow_on"`
	Transplant  string  `json:"transplant_on"`
	UpOn        string  `json:"up_on,omitempty"`    // seedlings show
	ThinOn      string  `json:"thin_on,omitempty"`  // one is left in each cell; empty where one seed is sown in a cell
	Cells       int     `json:"cells,omitempty"`    // to sow, the seeds shared among them
	CoverMM     float64 `json:"cover_mm,omitempty"` // how deep a seed lies; 0 for pressed in
}

// Learnt is one factor by which the class's tub differs from the model.
type Learnt struct {
	Of   string `json:"of"` // growth, thirst
	Band Range  `json:"band"`
	Says string `json:"says"`
}

// SeenMark is one reading on a chart.
type SeenMark struct {
	At      time.Time
	Of      string // level, ec, height, harvest
	Value   float64
	Learned bool
	Was     Range // what the forecast expected of it, just before it
}
