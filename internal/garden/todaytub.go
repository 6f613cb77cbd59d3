package garden

import (
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/steering"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
	"rootbell/internal/science/tub"
)

// deskTub is one tub on one morning. Volumes are of solution, unless they are
// called water: that is up to a line, with what cups and stones push aside, as
// the dipstick shows it.
type deskTub struct {
	*desk
	t       *tubState
	typed   *plan.Tub
	b       *working.Book // the tub's; its morning's keys begin with 'today.'
	out     *TubToday
	entries []reading.Entry
	vessel  reading.Vessel
	lower   bool           // the line is lowered, as roots hang
	line    working.Number // of the day
	fill    working.Number // solution up to it
	most    working.Number
	lowest  working.Number // without a symbol where there is none
	now     working.Number // likewise where the level is not read
	readOn  term.Date      // of the level
	st      steering.Tub
	good    reading.Range[quantity.PH] // that suits the crops
	due     []steering.Advice
	lost    []gone // see losses; nil: not looked at yet
}

// tub is the tub of a place in the plan; nil where its lines contradict each
// other.
func (d *desk) tub(i int) *deskTub {
	t := d.states[i]
	if !t.wet || len(t.out.Levels) == 0 {
		return nil
	}
	k := &deskTub{desk: d, t: t, typed: t.typed, b: d.book.In("tubs." + Slug(t.name)), out: &TubToday{}}
	k.entries = reading.Of(d.entries, t.name)
	k.lines()
	k.st = steering.Tub{Still: t.setup.Still, TriggerMM: quantity.MM(tub.TopUpDropMM()), Closing: d.closing(), System: d.Plan.Units}
	k.strengths()
	k.water()
	k.feeding()
	k.seen()
	k.uptake()
	k.describe()
	return k
}

// planted is the day on which the plants went in, as the logbook says.
func (k *deskTub) planted() (day term.Date, known bool) {
	for _, e := range k.entries {
		if e.Did(reading.Planted) {
			day, known = k.dayOf(e.At), true
		}
	}
	return day, known
}

func (d *desk) dayOf(at time.Time) term.Date { return term.DateOf(at.In(d.today.At.Location())) }

// lines settles the fill line of the day, and what the tub holds at its lines.
func (k *deskTub) lines() {
	t := k.t
	k.line = t.lines.Fill
	if day, known := k.planted(); known && t.lowers() && k.today.On.Since(day) >= tub.LowerAfterDays() {
		k.line, k.lower = t.lines.Lowered, true
	}
	tape := t.setup.TapeErrorMM
	water := t.fill
	if k.lower {
		water = t.shape.Water(k.b, "volume_lowered", "water up to the lowered line", k.line, tape)
	}
	top := t.solution
	if top.Symbol == "" {
		top = t.shape.Standing(k.b, "today.at_fill", "solution at the fill line of transplant day", t.lines, t.setup, t.lines.Fill, t.fill, k.cups())
	}
	if most := t.typed.MaxFill; most.Set() {
		k.most = k.b.Work(leastOfLaw, "today.most", "the most it may hold", top, k.b.Typed("max_fill", "the most that may be filled in", "m", quantity.Volume, most.Value.Base(), 0))
	} else {
		k.most = k.b.Work(sameLaw, "today.most", "the most it may hold", top)
	}
	at := top
	if k.lower {
		at = t.shape.Standing(k.b, "today.at_line", "solution at the fill line of the day", t.lines, t.setup, k.line, water, k.cups())
	}
	k.fill = k.b.Work(leastOfLaw, "today.fill", "at today's fill line", at, k.most)
	if t.lines.Lowest.Base < k.line.Base {
		low := t.shape.Water(k.b, "volume_lowest", "water up to the lowest safe line", t.lines.Lowest, tape)
		k.lowest = t.shape.Standing(k.b, "today.lowest", "solution at the lowest safe line", t.lines, t.setup, t.lines.Lowest, low, k.cups())
	}
	k.vessel = k.Vessel(t.index, k.entries, k.today.At.Location())
}

func (k *deskTub) cups() working.Number {
	if k.t.cups.Symbol != "" {
		return k.t.cups
	}
	return k.b.Typed("cups_none", "no cups", "n", quantity.Count, 0, 0)
}

func litresOf(n working.Number) quantity.L { return quantity.FromBase[quantity.L](n.Base) }

// water settles what is poured in.
func (k *deskTub) water() {
	p := k.Plan
	tap := p.Tap
	k.st.Tap.Told = tap.EC.Set() && !tap.Unknown
	if k.st.Tap.Told {
		k.st.Tap.EC = tap.EC.Mid()
		k.b.Noted("today.tap_ec", "EC of the tap water", "W", quantity.Conductivity, tap.EC.Mid().Base(), (tap.EC.High-tap.EC.Low).Base()/2, "the plan")
	}
	if c := tap.Chlorine; c.Set() && !tap.Unknown {
		k.st.Tap.Safe, k.st.Tap.Some = c.High <= 0, c.High > 0
	}
	for _, e := range k.entries {
		fresh := k.today.On.Since(k.dayOf(e.At)) <= steering.WorkingLifeDays()
		if e.Did(reading.Fed) && e.Added.EC.Set() && fresh && !e.Doubts(reading.FieldAdded) {
			k.st.FeedEC = e.Added.EC.Value
			k.b.Noted("today.feed_ec", "EC of the solution", "W", quantity.Conductivity, e.Added.EC.Value.Base(), 0, "the logbook, "+k.dayOf(e.At).Words())
		}
	}
}

// seen enters what the logbook tells of the tub.
func (k *deskTub) seen() {
	k.st = k.st.Seen(k.entries, k.vessel, k.today.At)
	water := k.st.NowL
	k.st.FillL, k.st.MostL = litresOf(k.fill), litresOf(k.most)
	if k.lowest.Symbol != "" {
		k.st.LowestL = litresOf(k.lowest)
	}
	if k.st.PouredL > 0 {
		k.b.Noted("today.poured_today", "poured in today already", "p", quantity.Volume, k.st.PouredL.Base(), 0, "the logbook, "+k.today.On.Words())
	}
	e, ok := reading.Last(k.entries, reading.FieldLevel, k.today.At)
	if water <= 0 || !ok {
		k.st.NowL = 0
		return
	}
	k.readOn = k.dayOf(e.At)
	k.level(water)
	k.strengthRead()
}

// level enters what stands in the tub as last read.
func (k *deskTub) level(water quantity.L) {
	t := k.t
	source := "the logbook, " + k.readOn.Words()
	deep, inside := t.shape.Depth(water)
	if !inside {
		deep = t.shape.HeightMM()
	}
	span := float64(reading.LevelErrorMM())
	more := (t.shape.Volume(min(deep+span, t.shape.HeightMM())) - t.shape.Volume(max(deep-span, 0))) / 2
	k.st.ErrorL = more
	as := k.b.Noted("today.water", "water in the tub as read", "v", quantity.Volume, water.Base(), more.Base(), source)
	depth := k.b.Found("today.depth", "how deep that stands", "l", quantity.Length, deep, "the depth at which the dipstick shows it")
	k.now = t.shape.Standing(k.b, "today.in_tub", "in the tub now", t.lines, t.setup, depth, as, k.cups())
	k.st.NowL = litresOf(k.now)
	k.st.Aside = water - k.st.NowL
	fall := k.b.Work(fallLaw, "today.fall", "fall of the line", k.line, depth)
	k.st.DropMM = quantity.MM(fall.Base)
	if t.setup.Still {
		k.stillRoom(deep)
	}
	at := deep
	k.out.LevelMM = &at
	moment := k.readAt()
	k.out.Read = &moment
}

func (k *deskTub) readAt() time.Time {
	e, _ := reading.Last(k.entries, reading.FieldLevel, k.today.At)
	return e.At.In(k.today.At.Location())
}

// stillRoom enters what may be poured into a still tub: up to so much over the
// lowest line that it has had since it was filled.
func (k *deskTub) stillRoom(deep float64) {
	t := k.t
	least := deep
	for _, e := range k.entries {
		if e.Did(reading.ChangedOut) {
			least = deep
		}
		if before, _, ok := e.Litres(k.vessel); ok && !e.Doubts(reading.FieldLevel) {
			if was, in := t.shape.Depth(before); in {
				least = min(least, was)
			}
		}
	}
	rise := steering.Facts.Get(steering.StillRaiseFact)
	line := k.b.Work(riseLaw, "today.still_line", "how high the line may stand",
		k.b.Noted("today.least_line", "lowest line since it was filled", "l", quantity.Length, least, 0, "the logbook"),
		k.b.Fact("today.still_rise", "what a still tub's line may rise by", "u", quantity.Length, rise.Value, rise),
		k.b.Typed("inside_height", "inside height", "H", quantity.Length, t.shape.HeightMM(), t.setup.TapeErrorMM))
	water := k.b.Noted("today.still_water", "water up to there", "v", quantity.Volume, t.shape.Volume(line.Base).Base(), 0, "the tub's shape")
	room := k.b.Work(roomLaw, "today.still_room", "what the line of a still tub may rise by", t.shape.Standing(k.b, "today.at_still", "solution up to there", t.lines, t.setup, line, water, k.cups()), k.now)
	k.st.StillRoomL = max(litresOf(room), 0)
}
