package tub

import (
	"fmt"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Setup is what decides a tub's lines, beside its shape. Lengths in mm; the
// pointers are nil where the plan leaves them out.
type Setup struct {
	Still         bool // without an air pump
	AboveRimMM    float64
	ThicknessMM   float64
	CupDepthMM    float64
	CupBodyMM     float64
	FillDepthMM   *float64
	StoneHeightMM *float64
	Stones        int
	TapeErrorMM   float64
	EmptyMass     quantity.KG
	Water         *quantity.DegC
}

// Lines are the heights that matter in a tub, above its inside floor.
type Lines struct {
	CupBottom working.Number
	Fill      working.Number // transplant day
	Lowered   working.Number // once roots hang; without a key in a still tub
	Lowest    working.Number // never below
	Highest   working.Number // rim less freeboard
}

func mm(b *working.Book, key, name, symbol string, id facts.ID) working.Number {
	f := Facts.Get(id)
	return b.Fact(key, name, symbol, quantity.Length, f.Value, f)
}

// Lines enters the lines of a tub into the book.
func (s Shape) Lines(b *working.Book, set Setup) Lines {
	h := b.Typed("inside_height", "inside height", "H", quantity.Length, s.heightMM, set.TapeErrorMM)
	above := b.Typed("lid_above_rim", "lid's underside above the inside rim", "u", quantity.Length, set.AboveRimMM, 0)
	thick := b.Typed("lid_thickness", "lid thickness", "t", quantity.Length, set.ThicknessMM, 0)
	deep := b.Typed("cup_depth", "net cup, depth under the lip", "c", quantity.Length, set.CupDepthMM, 0)
	l := Lines{CupBottom: b.Work(cupBottomLaw, "cup_bottom", "cup bottom above the floor", h, above, thick, deep)}

	over := mm(b, "water_over_cup", "water over the cup bottom on transplant day", "o", overCup(set.Still))
	if set.FillDepthMM != nil {
		l.Fill = b.Typed("fill_depth", "fill line", "h", quantity.Length, *set.FillDepthMM, set.TapeErrorMM)
	} else {
		l.Fill = b.Work(aboveLaw, "fill_depth", "fill line on transplant day", l.CupBottom, over)
	}
	if !set.Still { // a still tub's line falls by itself, and is never raised again
		l.Lowered = lowered(b, l.CupBottom)
	}
	free := mm(b, "freeboard", "freeboard", "g", factWaterFreeboardMin)
	l.Highest = b.Work(belowLaw, "highest_depth", "highest safe line", h, free)

	l.Lowest = b.Work(lowestLaw, "lowest_depth", "lowest safe line",
		mm(b, "least_depth", "least depth of any tub", "k", factWaterDepthMin), set.stoneHeight(b),
		mm(b, "water_over_stone", "water over the air stone", "o", factWaterDepthOverStoneMin))
	return l
}

// stoneHeight enters what the plan says, else the usual height: a default that
// decides nothing is not listed.
func (set Setup) stoneHeight(b *working.Book) working.Number {
	if set.StoneHeightMM != nil {
		return b.Typed("stone_height_typed", "height of the air stone", "s", quantity.Length, *set.StoneHeightMM, 0)
	}
	return mm(b, "stone_height", "height of the air stone", "s", factWaterStoneHeight)
}

// temperature enters the water's, likewise.
func (set Setup) temperature(b *working.Book) working.Number {
	if set.Water != nil {
		return b.Typed("water_temperature_typed", "water temperature", "t", quantity.Temperature, set.Water.Base(), 0)
	}
	f := Facts.Get(factWaterTemperature)
	return b.Fact("water_temperature", "water temperature", "t", quantity.Temperature, quantity.Celsius.Base(f.Value), f)
}

// lowered enters the fill line of a tub with a pump once its roots hang.
func lowered(b *working.Book, cupBottom working.Number) working.Number {
	gap := mm(b, "gap_under_cup", "gap under the cup once roots hang", "g", factWaterGapUnderCupAfterRoots)
	return b.Work(belowLaw, "lowered_depth", "fill line once roots hang "+fmt.Sprintf("%g mm", Facts.Get(factWaterRootsOutBeforeLowering).Value), cupBottom, gap)
}

func overCup(still bool) facts.ID {
	if still {
		return factWaterLineOverCupBottomStill
	}
	return factWaterLineOverCupBottomAerated
}

// Water enters the water up to a line: its areas under the key, then the
// volume. The line must lie within the tub.
func (s Shape) Water(b *working.Book, key, name string, line working.Number, tapeErrorMM float64) working.Number {
	if s.form == poured {
		lo, hi := s.step(line.Base)
		return b.Work(pouredLaw, key, name,
			b.Typed(key+"_step_below", "poured, the step below", "v", quantity.Volume, lo.Volume.Base(), 0),
			b.Typed(key+"_step_above", "poured, the step above", "w", quantity.Volume, hi.Volume.Base(), 0), line,
			b.Typed(key+"_depth_below", "depth of the step below", "p", quantity.Length, lo.DepthMM, tapeErrorMM),
			b.Typed(key+"_depth_above", "depth of the step above", "q", quantity.Length, hi.DepthMM, tapeErrorMM))
	}
	floor := b.Typed("floor", "the inside floor", "h", quantity.Length, 0, 0)
	half := b.Work(halfLaw, key+"_half_depth", "half the depth", line)
	return b.Work(volumeLaw, key, name, line,
		s.area(b, "area_floor", "area at the floor", floor, tapeErrorMM),
		s.area(b, key+"_area_half", "area at half the depth", half, tapeErrorMM),
		s.area(b, key+"_area_top", "area at the water", line, tapeErrorMM))
}

func (s Shape) area(b *working.Book, key, name string, at working.Number, tapeErrorMM float64) working.Number {
	typed := func(key, name, symbol string, v float64) working.Number {
		return b.Typed(key, name, symbol, quantity.Length, v, tapeErrorMM)
	}
	h := typed("inside_height", "inside height", "H", s.heightMM)
	if s.form == round {
		return b.Work(roundAreaLaw, key, name,
			typed("inside_base_across", "inside diameter at the base", "a", s.length[0]),
			typed("inside_top_across", "inside diameter at the top", "c", s.length[1]), h, at)
	}
	return b.Work(rectAreaLaw, key, name,
		typed("inside_base_length", "inside length at the base", "a", s.length[0]), typed("inside_top_length", "inside length at the top", "c", s.length[1]),
		typed("inside_base_width", "inside width at the base", "b", s.width[0]), typed("inside_top_width", "inside width at the top", "d", s.width[1]),
		typed("inside_base_corner", "inside corner radius at the base", "r", s.radius[0]), typed("inside_top_corner", "inside corner radius at the top", "R", s.radius[1]), h, at)
}

// Load is what a filled tub holds and weighs.
type Load struct {
	Displaced working.Number
	Solution  working.Number
	Mass      working.Number
	Trips     working.Number
}

// Load enters what cups and stones push aside, the solution left, its mass and
// the buckets to carry. fill is the volume up to the fill line.
func (s Shape) Load(b *working.Book, l Lines, set Setup, fill, cups working.Number) Load {
	var out Load
	out.Displaced = s.aside(b, "displaced", "pushed aside by cups and stones", l, set, cups)
	out.Solution = b.Work(solutionLaw, "volume_solution", "nutrient solution", fill, out.Displaced)
	density := b.Work(densityLaw, "water_density", "density of water", set.temperature(b))
	empty := b.Typed("empty_mass", "tub and lid, empty", "e", quantity.Mass, set.EmptyMass.Base(), 0)
	out.Mass = b.Work(massLaw, "mass_filled", "tub filled", empty, out.Solution, density)
	carry := Facts.Get(factCarryBucketAdult)
	bucket := b.Fact("bucket", "water in one bucket", "b", quantity.Volume, quantity.Litre.Base(carry.Value), carry)
	out.Trips = b.Work(tripsLaw, "bucket_trips", "buckets to carry", out.Solution, bucket)
	return out
}

// StonesAside enters what the air stones alone push aside; cups is nought.
func (s Shape) StonesAside(b *working.Book, l Lines, set Setup, cups working.Number) working.Number {
	return s.aside(b, "displaced_stones", "pushed aside by air stones", l, set, cups)
}

// Standing enters the solution that stands in a tub up to a line: the water up
// to there less what cups and stones push aside.
func (s Shape) Standing(b *working.Book, key, name string, l Lines, set Setup, at, water, cups working.Number) working.Number {
	l.Fill = at
	return b.Work(solutionLaw, key, name, water, s.aside(b, key+"_aside", "pushed aside by cups and stones there", l, set, cups))
}

// LowerAfterDays is how many days after transplant the fill line of a tub with
// a pump is lowered, as roots mostly hang then.
func LowerAfterDays() int { return int(Facts.Get(factWaterLowerAfterDays).Value) }

func (s Shape) aside(b *working.Book, key, name string, l Lines, set Setup, cups working.Number) working.Number {
	body := b.Typed("cup_body", "net cup, body under the lip", "b", quantity.SmallLength, set.CupBodyMM, 0)
	stone := b.Typed("stones", "air stones", "s", quantity.Count, float64(set.Stones), 0)
	across := mm(b, "stone_across", "air stone, across", "d", factAirStoneDiameter)
	tall := set.stoneHeight(b)
	return b.Work(displacedLaw, key, name, cups, body, l.Fill, l.CupBottom,
		b.Typed("floor", "the inside floor", "h", quantity.Length, 0, 0), stone, across, tall)
}

// Reserve enters the water between two lines.
func Reserve(b *working.Book, key, name string, upper, lower working.Number) working.Number {
	return b.Work(differenceLaw, key, name, upper, lower)
}

// Lasts enters the days until the lowest line at a daily use.
func Lasts(b *working.Book, reserve working.Number, use quantity.LPerDay) working.Number {
	return b.Work(daysLaw, "days_to_lowest", "days until the lowest line", reserve,
		b.Typed("daily_topup", "water the tub takes in a day", "q", quantity.DailyVolume, use.Base(), 0))
}

// Reach is what a tub's inside height should be for a classroom, in mm.
func Reach() (leastMM, mostMM float64) {
	return Facts.Get(factTubInsideHeightMin).Value, Facts.Get(factTubInsideHeightMax).Value
}

// MostOverCup is the deepest a cup may stand in the water, in mm.
func MostOverCup() float64 { return Facts.Get(factWaterLineOverCupBottomMax).Value }

// TapeErrorMM is the error of a tape where the plan names none.
func TapeErrorMM() float64 { return Facts.Get(factTubMeasureErrorTape).Value }

// TopUpDropMM is how far a line may fall before it is topped up, in mm.
func TopUpDropMM() float64 { return Facts.Get(factTopupTriggerDrop).Value }
