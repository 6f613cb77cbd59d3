package season

import (
	"math"
	"slices"

	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
)

// Nursery is how many days a crop takes from its sowing to the tub: its own at
// 20 to 22 °C, and as many more or fewer as its seed takes to show in plugs of
// the temperature given. It is 0 for what comes as a plant; false where nothing
// comes up.
func (c Crop) Nursery() (days float64, grows bool) {
	own := c.Kind.NurseryDays()
	if c.NurseryDays > 0 || own == 0 {
		return c.NurseryDays, true
	}
	usual, known := c.Kind.Emergence(value(factNurseryAt))
	if !known {
		return own, true
	}
	here, grows := c.Kind.Emergence(c.Seed.TempC)
	return max(1, own+(here.Days-usual.Days)), grows
}

// warmed are the bed's stands with the warmth that their seedlings had since
// they showed: that of the plugs, day by day.
func (c Course) warmed() []forecast.Stand {
	out := slices.Clone(c.Tub.Stands)
	for _, k := range c.Crops {
		days, grows := k.Nursery()
		e, known := k.Kind.Emergence(k.Seed.TempC)
		if !grows || !known || days == 0 {
			continue
		}
		sown := k.SownOn
		if !sown.Set() {
			sown = c.MoveOn.Add(-int(math.Ceil(days)))
		}
		up := sown.Add(int(math.Ceil(e.Days)))
		for _, j := range k.Stands {
			out[j].Warmed = float64(max(0, c.MoveOn.Since(up))) * max(0, k.Seed.TempC)
		}
	}
	return out
}

func (c Crop) seedsInACell() int {
	if c.SeedsInACell > 0 {
		return c.SeedsInACell
	}
	return max(1, c.Kind.SeedsInACell())
}

// thinned tells whether a cell's seedlings are cut down to one: two or three
// are, a clump of herbs is not.
func (c Crop) thinned() bool { return c.seedsInACell() > 1 && c.seedsInACell() <= 3 }

// dates are those of a crop of so many plants that moves on a day and is not
// sown before another; false where no day suits.
func (c Crop) dates(cal *term.Calendar, move, first term.Date, plants int) (d CropDates, ok bool) {
	days, grows := c.Nursery()
	if !grows {
		return d, false
	}
	d.MoveOn, d.SowOn = move, c.SownOn
	if !d.SowOn.Set() {
		if days == 0 {
			d.SowOn = move
		} else if d.SowOn, ok = settleUntil(cal, move.Add(-int(math.Ceil(days))), first); !ok && first.Set() {
			return d, false
		} else if !ok {
			d.SowOn = move.Add(-int(math.Ceil(days)))
		}
	}
	if e, known := c.Kind.Emergence(c.Seed.TempC); known && days > 0 {
		d.UpOn = d.SowOn.Add(int(math.Ceil(e.Days)))
		if c.thinned() {
			d.ThinOn = thinOn(cal, d.UpOn, move)
		}
	}
	d.sown(c, plants, days)
	return d, true
}

// thinOn is the day on which cells are thinned: some days after seedlings show,
// on the next day that suits, or else the last one that does, or on the day of
// the move.
func thinOn(cal *term.Calendar, up, move term.Date) term.Date {
	want := up.Add(int(value(factThinAfter)))
	if d, ok := settleFrom(cal, want); ok && d.Before(move) {
		return d
	}
	if d, ok := settleUntil(cal, want, up.Add(1)); ok && d.Before(move) {
		return d
	}
	return move
}

// sown enters the cells and seeds for so many plants.
func (d *CropDates) sown(c Crop, plants int, days float64) {
	if days == 0 {
		d.Enough = 1
		return
	}
	if s, ok := crop.Sow(plants, c.Kind.Chance(c.Seed), c.seedsInACell(), crop.UsualChance()); ok {
		d.Cells, d.Seeds, d.Enough = s.Cells, s.Seeds, s.Enough
	}
}
