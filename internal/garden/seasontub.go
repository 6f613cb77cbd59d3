package garden

import (
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/forecast"
	"rootbell/internal/school/season"
	"rootbell/internal/school/term"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/water"
)

// tubSeason is the season of one tub while it is worked out.
type tubSeason struct {
	*planner
	t        *tubState
	b        *working.Book // keys under tubs.NAME.season
	field    string
	stood    []stand
	bed      season.Bed
	out      *Season
	log      written // of the present crop
	followed season.Course
	moved    term.Date // into the tub, as the plan or the logbook says
	needG    float64   // fresh and whole, of this tub
	feedEC   float64   // of the solution, mS/cm
	tapEC    float64
}

// tub works out one tub's season. The error is that the context ended.
func (p *planner) tub(i int) error {
	t := p.out.states[i]
	s := &tubSeason{planner: p, t: t, field: t.field, b: p.book.In("tubs." + Slug(t.name) + ".season"), out: &Season{}}
	if !t.wet || t.out.Plants == nil || t.out.Plants.Count == 0 || t.out.Lid == nil {
		return nil // a stop says why
	}
	if !s.tubReady() || !s.dates() {
		return nil
	}
	if err := s.run(); err != nil {
		return err
	}
	p.out.Tubs[i].Season = s.out
	return nil
}

// tubReady makes the tub that the forecast follows. False where it cannot be
// followed; a finding then says why.
func (s *tubSeason) tubReady() bool {
	t := s.t
	if t.lines.Lowest.Base >= t.lines.Fill.Base {
		s.warn("season-no-water", s.field, t.name+": no water stands between the fill line and the lowest safe line, so its days cannot be followed.", "Use a deeper tub or a shorter cup.")
		return false
	}
	if s.stood = s.stands(); len(s.stood) == 0 || !(s.brightest() > 0) {
		const hint = "Write the lamp's flux or power, its height over the lid and its hours."
		if len(s.plan.Lamps) == 0 {
			s.note("season-dark", s.field, t.name+": without a lamp or a lux reading no day of its season is worked out.", hint)
			return false
		}
		s.warn("season-dark", "lamps", t.name+": no light reaches the lid, so nothing grows and no day is worked out.", hint)
		return false
	}
	s.strengths()
	s.bed.Tub = forecast.Tub{
		Shape: t.shape, StonesL: s.stonesL(), CupsL: s.cupsL(), CupBottomMM: t.lines.CupBottom.Base,
		LineMM: t.lines.Fill.Base, LowestMM: t.lines.Lowest.Base, Still: t.setup.Still,
		LidM2: t.shape.AreaMM2(t.lines.Fill.Base) / 1e6, OpenShare: forecast.OpenShare(),
		PressureKPa: water.PressureKPa(float64(s.plan.Place.Altitude.Or(0)) / 1000),
		StoneMM:     s.stoneMM(), Air: s.blown(),
	}
	if most := t.typed.MaxFill; most.Set() {
		s.bed.Tub.LineMM = min(s.bed.Tub.LineMM, s.bed.Tub.LevelMM(float64(most.Value)))
	}
	for _, one := range s.stood {
		s.bed.Tub.Stands = append(s.bed.Tub.Stands, one.Stand)
	}
	s.bed.Tub.Start = water.Solution{Litres: s.bed.Tub.LitresAt(s.bed.Tub.LineMM), ECmS: s.feedEC}
	return s.bed.Tub.Start.Litres > 0
}

func (s *tubSeason) brightest() float64 {
	most := 0.0
	for _, one := range s.stood {
		most = max(most, one.PPFD)
	}
	return most
}

// strengths settles the EC of the solution and of the tap: as mixed, else as
// the feed says, else the middle of what the first crop is grown in.
func (s *tubSeason) strengths() {
	feed := s.plan.Feed
	if own := s.t.typed.Feed; own != nil {
		feed = *own
	}
	c := s.stood[0].Crop
	low, high := c.EC(working.NewBook())
	s.feedEC = quantity.MillisiemensPerCM.From((low.Base + high.Base) / 2)
	if feed.EC.Set() {
		s.feedEC = float64(feed.EC.Value)
	}
	if m := s.planner.out.Tubs[s.t.index].Mix; m != nil && m.EC != nil {
		s.feedEC = *m.EC
	}
	if tap := s.plan.Tap; tap.EC.Set() && !tap.Unknown {
		s.tapEC = float64(tap.EC.Mid())
	}
}

// halfEC is that of half-strength solution.
func (s *tubSeason) halfEC() float64 { return (s.feedEC + s.tapEC) / 2 }

func (s *tubSeason) stonesL() float64 {
	t := s.t
	if t.setup.Still {
		return 0
	}
	none := working.NewBook()
	set := t.setup
	return quantity.Litre.From(t.shape.StonesAside(none, t.lines, set, none.Typed("cups_none", "no cups", "n", quantity.Count, 0, 0)).Base)
}

// cupsL is what the cups push aside at the fill line.
func (s *tubSeason) cupsL() float64 {
	deep := max(0, s.t.lines.Fill.Base-s.t.lines.CupBottom.Base)
	r := s.t.cup.BodyMM / 2
	return quantity.Litre.From(float64(s.plants()) * math.Pi * r * r * deep)
}

func (s *tubSeason) stoneMM() float64 {
	if h := s.t.setup.StoneHeightMM; h != nil {
		return *h
	}
	return usualStoneMM
}

// usualStoneMM is the height of an air stone that nobody measured.
const usualStoneMM = 25

// blown is what the pump gives; where the plan does not say, by the trade's
// rule. The stone's share of oxygen is the lower end, which is the cautious side.
func (s *tubSeason) blown() oxygen.Air {
	low, _, _ := oxygen.Transfer()
	flow := s.t.typed.Air.Flow
	a := oxygen.Air{FlowLMin: oxygen.RuleLMin(quantity.Litre.From(s.t.fill.Base)), Transfer: low}
	if flow.Set() {
		a.FlowLMin = float64(flow.Value)
	}
	return a
}
