package solution

import "math"

// ThinRoom is how much water brings a tub of so many litres down to a target
// EC, where there is room for it, in L; by the EC curve, not by a straight
// line. ok is false where the target is not below the reading, or not to be
// reached with this water.
func (k Curve) ThinRoom(litres, reading, target float64) (water float64, ok bool) {
	now, then, ok := k.step(reading, target)
	if !ok || then >= now || then <= 0 {
		return 0, false
	}
	return litres * (now - then) / then, true
}

// ThinSwap is how much of a full tub is taken out and replaced with water, in
// L; as for ThinRoom.
func (k Curve) ThinSwap(litres, reading, target float64) (swap float64, ok bool) {
	now, then, ok := k.step(reading, target)
	if !ok || then >= now {
		return 0, false
	}
	return litres * (now - then) / now, true
}

// Strengthen is by how much of a full feed a tub of so many litres has to be
// strengthened: litres times the rise in strength. Times the dose in mL or g
// for a litre at full strength it is what to add.
func (k Curve) Strengthen(litres, reading, target float64) (fullLitres float64, ok bool) {
	now, then, ok := k.step(reading, target)
	if !ok || then <= now {
		return 0, false
	}
	return litres * (then - now), true
}

func (k Curve) step(reading, target float64) (now, then float64, ok bool) {
	now, ok1 := k.Strength(reading)
	then, ok2 := k.Strength(target)
	return now, then, ok1 && ok2
}

// Straight tells whether a step in strength is so small that a straight line
// would serve.
func Straight(now, then float64) bool {
	return now > 0 && math.Abs(then-now) <= percent(factCurveStraightWithin)*now
}

// TooMuch is the tub after a dose was added twice or wrongly: its EC, and what
// to swap for water to come back to the target, in L.
func (k Curve) TooMuch(litres, addedFullLitres, reading, target float64) (ec, swap float64, ok bool) {
	now, ok := k.Strength(reading)
	if !ok || litres <= 0 {
		return 0, 0, false
	}
	strong := now + addedFullLitres/litres
	if strong > k.strongest {
		return 0, 0, false
	}
	ec = k.EC(strong)
	swap, ok = k.ThinSwap(litres, ec, target)
	return ec, swap, ok
}

// Verdict is what two readings say about a tub.
type Verdict int

// The verdicts.
const (
	Steady       Verdict = iota // top up at the same strength
	WaterOnly                   // the plants or the air took water: top up with water
	FeedWanted                  // the plants took more salt than water
	SaltCameFrom                // more salt than before: somebody fed it, or a reading is wrong
)

// Use is what went since the last reading: litres, the share of the salt that
// is still there, and how strong what was used was, in parts of a full feed.
type Use struct {
	LitresGone   float64
	SaltLeft     float64 // 1 is all
	UsedStrength float64 // strength of what went away, 0 is pure water
	Verdict      Verdict
}

// Compare tells evaporation from uptake by the salt in the tub, strength times
// litres, before and after; EC alone cannot. ok is false where a reading lies
// off the curve or the volume did not fall.
func (k Curve) Compare(litresBefore, ecBefore, litresAfter, ecAfter float64) (u Use, ok bool) {
	before, ok1 := k.Strength(ecBefore)
	after, ok2 := k.Strength(ecAfter)
	if !ok1 || !ok2 || !(litresBefore > litresAfter) || !(litresAfter > 0) || before <= 0 {
		return u, false
	}
	u.LitresGone = litresBefore - litresAfter
	u.SaltLeft = after * litresAfter / (before * litresBefore)
	u.UsedStrength = before * litresBefore * (1 - u.SaltLeft) / u.LitresGone
	rise := ecAfter / ecBefore
	// Two pens agree to 5 %; less than that is no news.
	news := percent(factEcBand)
	switch {
	case u.SaltLeft > 1+news:
		u.Verdict = SaltCameFrom
	case rise > 1+news:
		u.Verdict = WaterOnly
	case rise < 1-news:
		u.Verdict = FeedWanted
	}
	return u, true
}

// TopUpMgL is how strong what is topped up should be in the long run, in mg/L of
// nitrogen, by mass balance: nitrogen of the dry matter, times the dry matter
// made for each litre used.
func TopUpMgL() float64 { return percent(factTopupNitrogen) * value(factTopupWue) * 1000 }

// TopUpStrength is the same in parts of a feed that holds so much nitrogen at
// full strength; at most 1.
func TopUpStrength(fullNitrogenMgL float64) float64 {
	if fullNitrogenMgL <= 0 {
		return 0
	}
	return min(1, TopUpMgL()/fullNitrogenMgL)
}

// Gathering is what plants leave of the water that a tub is topped up with.
type Gathering struct {
	Of       Nutrient
	WaterMgL float64
	mostMgL  float64 // that plants bear
}

// Gathers are the ions that a water brings and plants leave: sodium and chloride.
func Gathers(water Content) []Gathering {
	var out []Gathering
	for _, g := range []Gathering{{Of: Sodium, mostMgL: value(factTapSodiumMax)}, {Of: Chlorine, mostMgL: value(factTapChlorideMax)}} {
		if g.WaterMgL = water[g.Of]; g.WaterMgL > 0 {
			out = append(out, g)
		}
	}
	return out
}

// Limit is at what content the whole solution is changed, in mg/L: half of what
// plants bear, or all of it where the fresh filling has half already.
func (g Gathering) Limit(startMgL float64) float64 {
	if room := percent(factChangeoutBuildUp) * g.mostMgL; startMgL < room {
		return room
	}
	return g.mostMgL
}

// BuildUp is the concentration in mg/L of what plants leave behind, after so
// many litres of water were used from a tub.
func BuildUp(startMgL, waterMgL, usedLitres, tubLitres float64) float64 {
	return startMgL + waterMgL*usedLitres/tubLitres
}

// DaysTo is how many days it takes to build up to a limit; infinite where it
// never does.
func DaysTo(limitMgL, startMgL, waterMgL, litresPerDay, tubLitres float64) float64 {
	if startMgL >= limitMgL {
		return 0
	}
	if waterMgL <= 0 || litresPerDay <= 0 {
		return math.Inf(1)
	}
	return (limitMgL - startMgL) * tubLitres / (waterMgL * litresPerDay)
}

// ChangeOut is when the whole solution is changed: as sodium or chloride build
// up to half of what plants bear, or as much water was used as the tub holds,
// whichever comes first, in days; and what decides.
func ChangeOut(water Water, litresPerDay, tubLitres float64) (days float64, why string) {
	days, why = math.Inf(1), "no water is used"
	if litresPerDay > 0 {
		days, why = tubLitres/litresPerDay, "as much water was used as the tub holds"
	}
	for _, g := range Gathers(water.Content) {
		if d := DaysTo(g.Limit(g.WaterMgL), g.WaterMgL, g.WaterMgL, litresPerDay, tubLitres); d > 0 && d < days {
			days, why = d, g.Of.String()+" from the tap builds up"
		}
	}
	return days, why
}
