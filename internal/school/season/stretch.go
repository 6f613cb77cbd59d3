package season

import (
	"context"

	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
)

// dates are the closed days of the stretch, in order.
func (t tries) dates() (out []term.Date) {
	for d := t.Stretch.From; !d.After(t.Stretch.To); d = d.Add(1) {
		out = append(out, d)
	}
	return out
}

// closed is the answer of one stretch.
func (t tries) closed(ctx context.Context) (Closed, error) {
	out := Closed{Stretch: t.Stretch, Take: -1, Risk: t.Dry.Risk}
	out.Needed = out.Risk >= MostRisk()
	out.DryHalf, _ = t.clock.Moment(t.Dry.DryAt.P50)
	out.DryFirst, _ = t.clock.Moment(t.Dry.DryAt.P5)
	now, err := t.run(ctx, attempt{}, t.e.search(), asTheyAre)
	if err != nil {
		return out, err
	}
	if out.RiskHigh, err = t.risk(ctx, attempt{}, t.e.search(), high); err != nil {
		return out, err
	}
	if out.RiskHigh > seldomDry {
		if out.RiskHigh, err = t.risk(ctx, attempt{}, t.e.members(), high); err != nil {
			return out, err
		}
	}
	if out.Needed || out.RiskHigh >= MostRisk() {
		if out.Options, err = t.options(ctx); err != nil {
			return out, err
		}
	}
	if out.Needed {
		out.Take = first(out.Options)
	}
	return out, t.cases(ctx, &out, now)
}

// first is the first option that brings the risk under the most that is let
// be; -1 for none.
func first(all []Option) int {
	for i, o := range all {
		if o.enough() {
			return i
		}
	}
	return -1
}

// cases enters what failures do. How fast the oxygen falls is worked out for
// the stretch's last hour, when roots are largest and the water is lowest.
// Plants drink as much without the pump as with it, and less in the dark.
func (t tries) cases(ctx context.Context, out *Closed, now forecast.Forecast) error {
	if t.Tub.Still {
		return nil
	}
	hours := t.Stretch.Hours()
	pump := Case{Hours: hours, Risk: out.Risk}
	pump.To4, pump.To3, pump.To2 = t.breath(now)
	cut := pump
	cut.Hours = min(hours, value(factPowerCut))
	if out.Risk > 0 {
		var err error
		e := forecast.Event{Kind: forecast.PowerCut, Hours: cut.Hours}
		if cut.Risk, err = t.risk(ctx, attempt{failure: &e}, t.e.members(), asTheyAre); err != nil {
			return err
		}
	}
	out.Pump, out.PowerCut = &pump, &cut
	return nil
}
