package season

import "context"

func leave(_ context.Context, _ Course, f Followed, w Ways, _ Effort) ([]Closed, error) {
	var out []Closed
	for _, s := range f.Standing {
		if s.Stretch.Since.Before(w.From) {
			continue
		}
		c := Closed{Stretch: s.Stretch, Risk: s.Dry.Risk, Take: -1, Needed: s.Dry.Risk >= MostRisk()}
		c.DryHalf, _ = f.Clock.Moment(s.Dry.DryAt.P50)
		c.DryFirst, _ = f.Clock.Moment(s.Dry.DryAt.P5)
		out = append(out, c)
	}
	return out, nil
}
