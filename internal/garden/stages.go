package garden

// Stages are what an assessment is asked for beside Build, which it always
// works out. The zero value asks for nothing more, so that a page which moves a
// hole does not pay for chemistry.
type Stages uint

// The stages that can be asked for.
const (
	StageMix    Stages = 1 << iota // the nutrient solution of each tub
	StageSeason                    // its days from the sowing to the harvest
	StageChoose                    // what to buy or build
	StageClass                     // who does what, and the lesson in it
)

// Has tells whether a stage is asked for.
func (s Stages) Has(one Stages) bool { return s&one != 0 }
