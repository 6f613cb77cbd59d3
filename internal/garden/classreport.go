package garden

import (
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// ClassReport is what the logbook and the list of what was bought say of the
// garden's run, for whoever paid for it. Learners are a number.
type ClassReport struct {
	Learners  int         `json:"learners"` // 0 where the plan gives none
	Readings  int         `json:"readings"`
	From      string      `json:"from,omitempty"` // of the first and the last reading
	To        string      `json:"to,omitempty"`
	Tubs      []ReportTub `json:"tubs"`
	Spent     float64     `json:"spent"`     // of what has a price in the plan
	Priced    int         `json:"priced"`    // lines of the shopping list with a price
	Priceless int         `json:"priceless"` // and without
}

// ReportTub is one tub's part of it.
type ReportTub struct {
	Name       string   `json:"name"`
	Plants     int      `json:"plants"`
	Readings   int      `json:"readings"`
	PouredL    float64  `json:"poured_l"` // as written down
	Harvested  []string `json:"harvested"`
	Picked     int      `json:"picked,omitempty"`   // plants, as written down
	PickedG    float64  `json:"picked_g,omitempty"` // fresh, of all that were weighed
	ChangedOut int      `json:"changed_out"`
	TallestMM  float64  `json:"tallest_mm"` // 0: no height was read
}

// report sums up to the moment that is asked for.
func (d *desk) report() ClassReport {
	out := ClassReport{Learners: d.Plan.School.Pupils.Or(0), Readings: len(d.entries), Tubs: []ReportTub{}}
	if n := len(d.entries); n > 0 {
		zone := d.today.At.Location()
		out.From, out.To = term.DateOf(d.entries[0].At.In(zone)).String(), term.DateOf(d.entries[n-1].At.In(zone)).String()
	}
	for _, t := range d.Tubs {
		out.Tubs = append(out.Tubs, d.reportOf(t))
	}
	for _, item := range d.Shopping {
		if money, known := item.Total(); known {
			out.Spent += money
			out.Priced++
		} else {
			out.Priceless++
		}
	}
	return out
}

func (d *desk) reportOf(t Tub) ReportTub {
	out := ReportTub{Name: t.Name, Harvested: []string{}}
	if t.Plants != nil {
		out.Plants = t.Plants.Count
	}
	for _, e := range reading.Of(d.entries, t.Name) {
		out.Readings++
		out.PouredL += float64(e.Poured())
		if e.CountsPicked() {
			out.Picked += int(e.Picked.Plants.Value)
		}
		if e.Picked.Mass.Set() && !e.Doubts(reading.FieldWeigh) {
			out.PickedG += float64(e.Picked.Mass.Value)
		}
		if e.Did(reading.Harvested) || e.CountsPicked() {
			out.Harvested = append(out.Harvested, term.DateOf(e.At.In(d.today.At.Location())).String())
		}
		if e.Did(reading.ChangedOut) {
			out.ChangedOut++
		}
		if e.Height.Set() && !e.Doubts(reading.FieldHeight) {
			out.TallestMM = max(out.TallestMM, float64(e.Height.Value))
		}
	}
	return out
}
