package garden

import (
	"math"
	"strings"
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/steering"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// early is the example on a morning soon after Otter's plants went in, when the
// class has no rate of its own yet, with what it had read by then.
func early(t testing.TB, day int, change func([]reading.Row) []reading.Row) (*Assessment, Morning) {
	t.Helper()
	p, zone := fernhollow(t)
	a, err := Assess(t.Context(), Inputs{Plan: p, Seed: 1, Zone: zone, Effort: lid.Quick, Stages: StageMix})
	if err != nil {
		t.Fatal(err)
	}
	rows := inventedKept(t, p, zone)
	if change != nil {
		rows = change(rows)
	}
	return a, Morning{On: plan.Date{Year: 2027, Month: time.February, Day: day}, Zone: zone, Readings: rows}
}

// With few readings of the level a closed stretch is told by the forecast, and
// called the model's guess; with the class's own rate by that rate, as ever.
func TestAStretchAheadBeforeTheClassHasARate(t *testing.T) {
	for _, c := range []struct {
		day       int
		has, says string
	}{
		{10, "In 1 of 20 cases more than", "That is the model's guess until the water was read three times."},
		{12, "In 1 of 20 cases more than", "That is the season's forecast."},
	} {
		a, m := early(t, c.day, nil)
		got := a.Asked(m).Today
		if got.Ahead == nil || len(got.Ahead.Lines) != 1 || got.Ahead.Lines[0].Tub != "Otter" {
			t.Fatalf("10 Feb: %+v", got.Ahead)
		}
		if why := got.Ahead.Lines[0].Why; !strings.Contains(why, c.has) || !strings.Contains(why, c.says) {
			t.Errorf("%d Feb: %s", c.day, why)
		}
	}
	a, m := early(t, 10, nil)
	m.On = plan.Date(lastInvented)
	for _, l := range a.Asked(m).Today.Ahead.Lines {
		if strings.Contains(l.Why, "guess") || strings.Contains(l.Why, "forecast") {
			t.Errorf("%s has readings for a rate of its own: %s", l.Tub, l.Why)
		}
	}
}

// guessOff is how far a morning's hundred runs may lie from the season's thousand,
// which have other luck: runs differ by some 35 in 100 (thirst 25, light, growth
// and the days beside it), so that the middle of a hundred is off by 1.25*35/10, 4
// in 100, and one in fifty of such tests by more than 10.
const guessOff = 0.1

// What a morning says of the break is what the season says of the same days. The
// season's days end when the last person would leave, so that they have 216 of
// the break's 233 hours.
func TestAMorningsGuessIsTheSeasons(t *testing.T) {
	p, zone := fernhollow(t)
	a, m := early(t, 10, nil)
	m.At = m.Readings[1].At
	full, err := Assess(t.Context(), Inputs{Plan: p, Seed: 5, On: m.On, At: m.At, Zone: zone, Readings: m.Readings, Stages: StageMix | StageSeason})
	if err != nil {
		t.Fatal(err)
	}
	morning := a.Asked(m)
	use, found := morning.Book.Find("tubs.Otter.today.closed.use")
	if !found {
		t.Fatal("no use is told")
	}
	want := 0.0
	for _, d := range full.Tubs[1].Season.Days {
		if d.Date > "2027-02-12" && d.Date <= "2027-02-21" {
			want += d.Litres
		}
	}
	want *= 233.0 / 216
	t.Logf("gone over the break: %.3f L by the morning, %.3f L by the season", quantity.Litre.From(use.Base), want)
	if got := quantity.Litre.From(use.Base); math.Abs(got-want) > guessOff*want {
		t.Errorf("gone over the break: %.2f L by the morning, %.2f L by the season", got, want)
	}
}

// A level that no thirst of the forecast explains is asked about as a leak, also
// before the class has a rate; the class's own readings are not.
func TestALeakBeforeTheClassHasARate(t *testing.T) {
	asks := func(litres float64) bool {
		a, m := early(t, 12, func(rows []reading.Row) []reading.Row {
			rows[2].Level.Litres = figureAs[quantity.L](litres)
			return rows[:3]
		})
		m.At = m.Readings[2].At
		for _, one := range a.Asked(m).Tubs[1].Today.Advice {
			if one.Do == steering.SeekLeak {
				return true
			}
		}
		return false
	}
	for litres, want := range map[float64]bool{25: false, 24: false, 20: true, 12: true} {
		if got := asks(litres); got != want {
			t.Errorf("at %v L two days after 25.5 L a leak is asked about: %v", litres, got)
		}
	}
}

// The guess writes to nothing that mornings share.
func TestAGuessLeavesTheSharedAssessmentAsItIs(t *testing.T) {
	a, m := early(t, 10, nil)
	before, findings := len(a.Book.Numbers()), len(a.Findings)
	done := make(chan string)
	for range 3 {
		go func() { done <- a.Asked(m).Today.Ahead.Lines[0].Why }()
	}
	first := <-done
	for range 2 {
		if got := <-done; got != first {
			t.Errorf("%q and %q", first, got)
		}
	}
	if len(a.Book.Numbers()) != before || len(a.Findings) != findings {
		t.Error("a morning wrote into the assessment that it shares")
	}
}

func BenchmarkMorningWithoutARate(b *testing.B) {
	a, m := early(b, 10, nil)
	for b.Loop() {
		a.Asked(m)
	}
}
