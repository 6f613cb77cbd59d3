package forecast

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// one is the model's own course without any chance.
func one(t testing.TB, s Season) Forecast { return run(t, s, Options{Members: 1}) }

func level(f Forecast, day int) float64 { return f.Days[day-1].LevelMM.P50 }

// A tub with a pump is filled up to its line and no drop over it; one without
// rises by 20 mm at most (Kratky, Acta Hort. 648:83-89, 2004), however much is
// poured, and a change of its water is held to the same.
func TestLineRules(t *testing.T) {
	for _, kind := range []Event{
		{Kind: TopUp, Litres: 30, ECmS: 1},
		{Kind: FillTo, LineMM: 270, ECmS: 1},
		{Kind: ChangeOut, LineMM: 270, ECmS: 1},
	} {
		for _, still := range []bool{false, true} {
			s := season(t, 3)
			s.Tub.Still, s.Tub.OpenShare = still, 0
			s.Tub.Stands[0].Plants = 0
			s.Tub.Start.Litres = s.Tub.LitresAt(150)
			kind.AtHour = 30
			s.Events = []Event{kind}
			want := s.Tub.LineMM
			if still {
				want = 170
			}
			if got := level(one(t, s), 3); math.Abs(got-want) > 0.25 { // a step of the gauge
				t.Errorf("still %v, %+v: the water stands at %.2f mm, want %v", still, kind, got, want)
			}
		}
	}
}

// A tub that has not fallen far enough is not filled up.
func TestSmallFallIsLeft(t *testing.T) {
	s := season(t, 2)
	s.Tub.Start.Litres = s.Tub.LitresAt(220)
	s.Events = []Event{{AtHour: 1, Kind: FillTo, LineMM: 235, DropMM: 20}}
	if got := level(one(t, s), 1); got > 220 {
		t.Errorf("filled to %v mm", got)
	}
	s.Events[0].DropMM = 10
	if got := level(one(t, s), 1); got < 230 {
		t.Errorf("left at %v mm", got)
	}
}

// Each of these makes the tub use less water than the same season without it.
func TestWhatSavesWater(t *testing.T) {
	plain := season(t, 14)
	plain.Tub.Stands[0].Plants = 12
	base := one(t, plain).Days[13]
	for name, events := range map[string][]Event{
		"fewer hours of lamp": {{AtHour: 48, Kind: LampHours, Hours: 12}},
		"harvest of some":     {{AtHour: 48, Kind: Harvest, Plants: 4}},
		"the lamp fails":      {{AtHour: 48, Kind: LampOff, Hours: 72}},
		"a power cut":         {{AtHour: 48, Kind: PowerCut, Hours: 72}},
	} {
		s := plain
		s.Events = events
		got := one(t, s).Days[13]
		if got.DrunkL.P50 >= base.DrunkL.P50 {
			t.Errorf("%s: %v L used, %v without", name, got.DrunkL.P50, base.DrunkL.P50)
		}
		if name != "harvest of some" && got.Stands[0].MassG.P50 >= base.Stands[0].MassG.P50 {
			t.Errorf("%s: plants grew no less", name)
		}
	}
}

// A pump that stops harms the oxygen alone; a power cut harms light too.
func TestPumpStops(t *testing.T) {
	s := season(t, 4)
	s.Tub.Stands[0].Model.StartG = 5
	whole := one(t, s).Days[1]
	s.Events = []Event{{AtHour: 40, Kind: PumpOff, Hours: 8}}
	stopped := one(t, s)
	if got := stopped.Days[1]; !(got.OxygenMgL.P50 < whole.OxygenMgL.P50-1) || got.Litres != whole.Litres {
		t.Errorf("%+v beside %+v", got, whole)
	}
	if got := stopped.Days[3].OxygenMgL.P50; got < whole.OxygenMgL.P50-1 {
		t.Errorf("a day after the pump runs again there are %v mg/L", got)
	}
}

// A lamp of twelve hours is twelve hours lit, whatever cuts the day.
func TestLampHoursAreCounted(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := season(t, 5)
		hours := rapid.Float64Range(0, 20).Draw(rt, "hours")
		s.Events = append(drawEvents(rt, 5), Event{Kind: LampHours, Hours: hours})
		for i := range s.Events[:len(s.Events)-1] {
			if s.Events[i].Kind >= LampHours {
				s.Events[i].Kind = TopUp
			}
		}
		lit, all := 0.0, 0.0
		c := lay(s)
		for _, g := range c.segments {
			if all += g.hours; c.climates[g.climate].lit {
				lit += g.hours
			}
		}
		if want := 5 * min(16, hours); math.Abs(lit-want) > 1e-6 || math.Abs(all-120) > 1e-6 {
			rt.Fatalf("lit %v h of %v, want %v", lit, all, want)
		}
	})
}

// A tub that runs dry is dry at the hour at which its water is used up, and
// not one drop under nought.
func TestRunsDry(t *testing.T) {
	s := season(t, 30)
	s.Tub.Stands[0].Plants = 30
	s.Watches = []Watch{{0, 24 * 30}, {0, 24}}
	f := one(t, s)
	at := f.Stretches[0].DryAt.P50
	if f.Stretches[0].Risk != 1 || f.Stretches[1].Risk != 0 || !math.IsInf(f.Stretches[1].DryAt.P50, 1) {
		t.Fatalf("%+v", f.Stretches)
	}
	day := int(at / 24)
	if !(level(f, day) >= s.Tub.LowestMM && level(f, day+1) < s.Tub.LowestMM) {
		t.Errorf("below the lowest line from hour %v, but the days before and after stand at %v and %v mm", at, level(f, day), level(f, day+1))
	}
	if f.Ends[0].Litres != 0 {
		t.Errorf("%v L are left after 30 days of 30 plants", f.Ends[0].Litres)
	}
}

// Going on from where a forecast ended is the same as never having stopped, for
// the model itself.
func TestGoesOn(t *testing.T) {
	whole := one(t, filled(t, 14))
	first := one(t, filled(t, 7))
	rest := filled(t, 7)
	got := run(t, rest, Options{Members: 1, After: &first})
	for d, day := range got.Days {
		if want := whole.Days[7+d]; math.Abs(day.Litres.P50-want.Litres.P50) > 1e-9 || math.Abs(day.Stands[0].MassG.P50-want.Stands[0].MassG.P50) > 1e-9 {
			t.Fatalf("day %d: %v L and %v g, want %v and %v", 8+d, day.Litres.P50, day.Stands[0].MassG.P50, want.Litres.P50, want.Stands[0].MassG.P50)
		}
	}
	rest.Tub.Stands = nil
	if _, err := Run(t.Context(), rest, Options{After: &first}); err == nil {
		t.Error("a tub goes on with other stands")
	}
}

// A level is what its litres say, and a jug poured up to a line says the level
// before.
func TestLevelsAndLitres(t *testing.T) {
	b := box(t)
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.Float64Range(10, 279).Draw(t, "level")
		if got := b.LevelMM(b.LitresAt(mm)); math.Abs(got-mm) > 1e-6 {
			t.Fatalf("%v mm", got)
		}
		added := rapid.Float64Range(0, 20).Draw(t, "added")
		if before := b.BeforeFill(b.LineMM, added); math.Abs(b.LitresAt(before)+added-b.LitresAt(b.LineMM)) > 1e-6 {
			t.Fatalf("%v mm", before)
		}
		c := course{Season: Season{Tub: b}}
		c.measure()
		if got := c.level(b.LitresAt(mm)); math.Abs(got-mm) > 0.25 {
			t.Fatalf("by the gauge %v mm, not %v", got, mm)
		}
		i := rapid.IntRange(0, gaugeSteps).Draw(t, "step")
		if want := b.LevelMM(c.mostL * float64(i) / gaugeSteps); math.Abs(c.gauge[i]-want) > 1e-6 {
			t.Fatalf("step %d of the gauge is %v mm, by halving %v", i, c.gauge[i], want)
		}
	})
}

// The case of one member is the one asked for: more thirst, an earlier hour.
func TestOneCase(t *testing.T) {
	s := season(t, 30)
	s.Tub.Stands[0].Plants = 30
	s.Watches = []Watch{{0, 720}}
	usual, thirsty := one(t, s), run(t, s, Options{Members: 1, Known: []Factors{{Thirst: 1.2816}}})
	if !(thirsty.Stretches[0].DryAt.P50 < usual.Stretches[0].DryAt.P50-12) {
		t.Errorf("%v and %v", thirsty.Stretches[0], usual.Stretches[0])
	}
}
