package season

import (
	"context"
	"slices"

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
	var err error
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
	return out, t.cases(ctx, &out)
}

// first is the first option that is enough, else the first that keeps the
// water; -1 for none.
func first(all []Option) int {
	if i := slices.IndexFunc(all, Option.enough); i >= 0 {
		return i
	}
	return slices.IndexFunc(all, Option.keeps)
}

// cases enters what failures do where the tub is left in the way to take, or as
// it stands where there is none. How fast the oxygen falls is worked out for
// the stretch's last hour, when roots are largest and the water is lowest.
// Plants drink as much without the pump as with it, and less in the dark.
func (t tries) cases(ctx context.Context, out *Closed) error {
	if t.Tub.Still {
		return nil
	}
	way, risk := attempt{}, out.Risk
	if out.Take >= 0 {
		way, risk = out.Options[out.Take].how, out.Options[out.Take].Risk
	}
	end, err := t.run(ctx, way, t.e.search(), asTheyAre)
	if err != nil {
		return err
	}
	hours := t.Stretch.Hours()
	pump := Case{Hours: hours, Risk: risk}
	pump.To4, pump.To3, pump.To2 = t.breath(end)
	cut := pump
	cut.Hours = min(hours, value(factPowerCut))
	if risk > 0 {
		way.failure = &forecast.Event{Kind: forecast.PowerCut, Hours: cut.Hours}
		if cut.Risk, err = t.risk(ctx, way, t.e.members(), asTheyAre); err != nil {
			return err
		}
	}
	out.Pump, out.PowerCut = &pump, &cut
	return nil
}
