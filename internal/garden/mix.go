package garden

import (
	"rootbell/internal/science/solution"
)

// MixWay is how the amounts of a mix came about.
type MixWay string

// The ways of a mix.
const (
	ByDose   MixWay = "dose"   // the maker's dose times the litres
	ByRecipe MixWay = "recipe" // a recipe fitted with what stands on the shelf
)

// Mix is a tub's nutrient solution: what to weigh and pour for its real volume,
// and what a meter and a strip should then show. A nil pointer is a number that
// could not be worked out; the keys carry their units.
type Mix struct {
	Way          MixWay             `json:"way"`
	SolutionL    float64            `json:"solution_l"`
	Recipe       string             `json:"recipe,omitempty"`   // its name in the plan; empty for a target or a dose
	Strength     *float64           `json:"strength,omitempty"` // parts of the recipe that give the EC
	TargetMgL    map[string]float64 `json:"target_mg_l,omitempty"`
	ElementsMgL  map[string]float64 `json:"elements_mg_l"` // in the tub, water and acid included
	EC           *float64           `json:"ec_ms_cm"`
	Band         *[2]float64        `json:"band"` // of the EC, lowest and highest, mS/cm
	PPM          *float64           `json:"ppm,omitempty"`
	Water        MixWater           `json:"water"`
	Weigh        []Weigh            `json:"weigh"`
	Acid         *MixAcid           `json:"acid,omitempty"`
	Base         *MixBase           `json:"base,omitempty"`
	PHAfterSalts *float64           `json:"ph_after_salts"`
	Drift        *MixDrift          `json:"drift,omitempty"`
	Chlorine     *MixChlorine       `json:"chlorine,omitempty"`
	Misses       []MixMiss          `json:"misses,omitempty"`
	Stocks       *MixStocks         `json:"stocks,omitempty"`
	Clean        *MixClean          `json:"clean,omitempty"`
	TooMuch      []MixTooMuch       `json:"too_much,omitempty"`
	LifeDays     float64            `json:"life_days"` // of what is mixed and not used, closed and dark
	Steps        []MixStep          `json:"steps"`

	Elements []MixElement `json:"-"` // what is aimed at first, then what else there is
	Scale    MeterScale   `json:"-"`
	Key      string       `json:"-"` // of its numbers: tubs.Heron.mix

	chemistry mixChemistry
}

// MixWater is the water a tub is filled with, before anything is added.
type MixWater struct {
	TapL           float64  `json:"tap_l"`
	BlendL         float64  `json:"blend_l"` // of rain or deionised water
	Blend          string   `json:"blend,omitempty"`
	AlkalinityMgL  float64  `json:"alkalinity_mg_l"` // as CaCO3, blended
	AlkalinityTold bool     `json:"alkalinity_told"` // false: assumed
	EC             float64  `json:"ec_ms_cm"`        // worked out from its ions
	PH             float64  `json:"ph"`
	Assumed        []string `json:"assumed,omitempty"`
}

// Weigh is one fertiliser as the class measures it out for the tub: by the
// scale, by the syringe, out of a small stock or in level spoons.
type Weigh struct {
	Name         string     `json:"name"`
	Grams        float64    `json:"grams"`         // what the sum asks for
	RoundedGrams float64    `json:"rounded_grams"` // what the measuring gives
	ScaleStepG   *float64   `json:"scale_step_g,omitempty"`
	Millilitres  *float64   `json:"millilitres,omitempty"` // to pour: of a liquid, or of the small stock
	Stock        *WeighPour `json:"stock"`                 // made because the scale cannot weigh so little
	Spoons       *float64   `json:"spoons,omitempty"`
	Spoon        string     `json:"spoon,omitempty"`
	Part         string     `json:"part,omitempty"` // the bottle of a set
	Hazards      []Hazard   `json:"hazards,omitempty"`

	Index int    `json:"-"` // of the fertiliser in the plan
	Key   string `json:"-"` // of the number
}

// WeighPour is a small stock: so many grams, made up to so many litres, of which
// so much is poured. Thin is 10 where a tenth of it is made up to as much again
// and that is poured instead.
type WeighPour struct {
	Grams  float64 `json:"grams"`
	Litres float64 `json:"litres"`
	Thin   float64 `json:"thin"`
	PourML float64 `json:"pour_ml"`
}

// Hazard is a statement as labels print it, by its code. The label in hand rules.
type Hazard struct {
	Code string `json:"code"`
	Says string `json:"says"`
}

// MixAcid is the acid that a tub's water needs. Closed is what reads the target
// at once and does not last in air; open is what lasts. Why says why there is no
// dose at all. Without an acid in the plan Missing names what is needed, and the
// millilitres are a worked example for phosphoric acid that stands on no card.
type MixAcid struct {
	Name        string   `json:"name,omitempty"`
	Why         string   `json:"why,omitempty"`
	Missing     string   `json:"missing,omitempty"`
	MmolLClosed *float64 `json:"mmol_l_closed,omitempty"`
	MmolLOpen   *float64 `json:"mmol_l_open,omitempty"`
	MLClosed    *float64 `json:"ml_closed,omitempty"`
	MLOpen      *float64 `json:"ml_open,omitempty"`
	GClosed     *float64 `json:"g_closed,omitempty"` // of a solid, in place of millilitres
	GOpen       *float64 `json:"g_open,omitempty"`
	DoseTodayML *float64 `json:"dose_today_ml,omitempty"` // into unplanted, aerated water, the day before
	DoseTodayG  *float64 `json:"dose_today_g,omitempty"`
	PHAtOnce    *float64 `json:"ph_at_once,omitempty"`
	PHAfterAir  *float64 `json:"ph_after_air,omitempty"`
	PHRebound   *float64 `json:"ph_rebound,omitempty"` // where the closed dose ends up in air
	PlantedML   *float64 `json:"planted_ml,omitempty"` // the most at one time with plants in the tub
	PlantedG    *float64 `json:"planted_g,omitempty"`
	PlantedPH   *float64 `json:"planted_ph,omitempty"` // at once, after that
	PlantedWait *float64 `json:"planted_wait_h,omitempty"`
	Burns       bool     `json:"burns,omitempty"`
	Solid       bool     `json:"solid,omitempty"`
	Citric      bool     `json:"citric,omitempty"` // for small trims only; it does not last

	Key string `json:"-"` // of the number of today's dose
}

// MixBase is a little base for water that the salts turn sour.
type MixBase struct {
	Name  string   `json:"name"`
	MmolL float64  `json:"mmol_l"`
	ML    *float64 `json:"ml,omitempty"`
	G     *float64 `json:"g,omitempty"`
	Burns bool     `json:"burns,omitempty"`

	Key string `json:"-"`
}

// MixDrift is which way plants take the pH, and how far for so much taken up: a
// direction and a size, no forecast.
type MixDrift struct {
	MmolL         float64 `json:"mmol_l"`
	AfterAmmonium float64 `json:"after_ammonium_ph"`
	AfterNitrate  float64 `json:"after_nitrate_ph"`
}

// MixChlorine is how chlorine comes out of the tap water before the salts go in.
type MixChlorine struct {
	Told          bool     `json:"told"`        // false: nobody measured, and the most that taps hold is taken
	StandHours    float64  `json:"stand_h"`     // open and under 20 cm; 0 where standing does not help
	DeepHours     float64  `json:"deep_h"`      // deeper or colder
	AscorbicMg    *float64 `json:"ascorbic_mg"` // nil where nobody measured
	ThiosulfateMg *float64 `json:"thiosulfate_mg"`
	JugMg         *float64 `json:"ascorbic_mg_per_10_l"` // for jugs and cans to top up with
	UseBelowMgL   float64  `json:"use_below_mg_l"`
}

// MixMiss is a nutrient that the shelf does not bring to its target.
type MixMiss struct {
	Element  string   `json:"element"`
	HaveMgL  float64  `json:"have_mg_l"`
	WantMgL  float64  `json:"want_mg_l"`
	Level    string   `json:"level"`
	InTheWay string   `json:"in_the_way"`
	Buy      []string `json:"buy,omitempty"`
}

// MixElement is one bar: what is in the tub beside what is aimed at and the
// range that plants bear. Want is 0 for what nobody aims at.
type MixElement struct {
	Symbol, Word     string
	HaveMgL, WantMgL float64
	LowMgL, HighMgL  float64
	WaterMgL         float64 // what water and acid bring of it
	Micro            bool
	Key              string // of the sum a pencil can check
}

// MixStocks are the two stock solutions that the tub is mixed from.
type MixStocks struct {
	Strength   float64  `json:"strength"`
	LitresEach float64  `json:"litres_each"`
	A          MixTank  `json:"a"`
	B          MixTank  `json:"b"`
	DoseMLPerL float64  `json:"dose_ml_per_l"` // of each
	PourML     float64  `json:"pour_ml"`       // of each, for the tub
	Fills      float64  `json:"fills"`
	LifeDays   float64  `json:"life_days"`
	Apart      []string `json:"apart,omitempty"` // what can go into neither
}

// MixTank is one stock: what goes into it, and how near it is to falling out.
type MixTank struct {
	Weigh    []Weigh `json:"weigh"`
	Load     float64 `json:"load"`           // of what dissolves at the coldest; 1 is the limit
	Gypsum   float64 `json:"gypsum_index"`   // above 0 it falls out
	Brushite float64 `json:"brushite_index"` // likewise
}

// MixClean is the bleach for cleaning the tub down.
type MixClean struct {
	WaterL         float64 `json:"water_l"`
	BleachML       float64 `json:"bleach_ml"`
	ChlorineMgL    float64 `json:"chlorine_mg_l"`
	ContactMinutes float64 `json:"contact_min"`
	RinseBelowMgL  float64 `json:"rinse_below_mg_l"`
	LifeDays       float64 `json:"life_days"`

	Key string `json:"-"`
}

// MixStep is one thing to do, in order.
type MixStep struct {
	When string `json:"when"` // the day before, or on the day
	Who  string `json:"who"`  // adult or class
	Do   string `json:"do"`
	Why  string `json:"why,omitempty"`
	Key  string `json:"key,omitempty"` // of the number behind it
}

// When a step is done, and by whom.
const (
	DayBefore = "the day before"
	OnTheDay  = "on the day"
	ByAdult   = "adult"
	ByClass   = "class"
)

// MeterScale is how the class's EC meter shows its figure; 0 is mS/cm.
type MeterScale = solution.Scale

// mixChemistry is what the curves of a mix are drawn from.
type mixChemistry struct {
	water, feed solution.Ions    // mol/L: the water with its acid, and what the fertilisers bring
	plain       solution.Ions    // the water alone
	tap         solution.Content // of that, mg/L
	air         solution.Air
	tempC       float64
	acid        *solution.Reagent
	lasting     float64 // mol/L
}

// Curve is the EC of the mix against its strength: 1 is as mixed.
func (m *Mix) Curve() solution.Curve {
	return solution.NewCurve(m.chemistry.water, m.chemistry.feed, m.chemistry.air)
}

// Titration is the pH at once and after air against the acid in mmol/L, in so
// many points; ok is false where no acid is dosed.
func (m *Mix) Titration(points int) (atOnce, aired []solution.Point, ok bool) {
	k := m.chemistry
	if k.acid == nil || k.lasting <= 0 {
		return nil, nil, false
	}
	c, _ := solution.At(k.tempC)
	atOnce, aired = c.Titration(k.plain, *k.acid, k.lasting, k.air, points)
	return atOnce, aired, true
}
