package garden_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// anyLog draws readings of two weeks, plausible or not, and the day of the last.
func anyLog(t *rapid.T, tubs []string) (out []string, last time.Time) {
	day := time.Date(2027, 1, 29, 9, 0, 0, 0, time.UTC)
	if rapid.IntRange(0, 3).Draw(t, "planted long ago") == 3 {
		out = append(out, tubs[0]+" 2027-01-04 09:00 level=24 done=planted")
	}
	for i := range rapid.IntRange(0, 12).Draw(t, "readings") {
		day = day.Add(time.Duration(rapid.IntRange(0, 40).Draw(t, "hours")) * time.Hour)
		line := rapid.SampledFrom(tubs).Draw(t, "tub") + " " + day.Add(time.Duration(i)*time.Minute).Format("2006-01-02 15:04")
		switch rapid.IntRange(0, 4).Draw(t, "level") {
		case 0, 1, 2:
			line += fmt.Sprintf(" level=%.1f", rapid.Float64Range(0.5, 30).Draw(t, "litres"))
		case 3:
			line += fmt.Sprintf(" filled=%.1f", rapid.Float64Range(0.1, 9).Draw(t, "filled"))
		}
		if rapid.Bool().Draw(t, "has an EC") {
			line += fmt.Sprintf(" EC=%.2f", rapid.Float64Range(0.1, 6).Draw(t, "EC"))
			if rapid.Bool().Draw(t, "unchecked") {
				line += " checked=2026-11-30"
			}
		}
		if rapid.Bool().Draw(t, "has a pH") {
			line += fmt.Sprintf(" pH=%.1f", rapid.Float64Range(3, 10).Draw(t, "pH"))
		}
		if !strings.Contains(line, "filled") && rapid.IntRange(0, 3).Draw(t, "added") == 3 {
			line += fmt.Sprintf(" added=%.1f of=%.1f", rapid.Float64Range(0.1, 6).Draw(t, "added"), rapid.Float64Range(0.2, 5).Draw(t, "of"))
		}
		if rapid.IntRange(0, 3).Draw(t, "did") == 3 {
			line += " done=" + rapid.SampledFrom([]string{"fed", "changed_out", "planted", "pH_corrected", "topped_up"}).Draw(t, "deed")
		}
		if rapid.IntRange(0, 5).Draw(t, "picked") == 5 {
			line += fmt.Sprintf(" picked=%d weigh=%.1f", rapid.IntRange(1, 12).Draw(t, "plants"), rapid.Float64Range(0.1, 3000).Draw(t, "mass"))
		}
		if rapid.IntRange(0, 5).Draw(t, "counted") == 5 {
			line += fmt.Sprintf(" leaves=%d", rapid.IntRange(1, 120).Draw(t, "leaves"))
		}
		if len(strings.Fields(line)) > 3 {
			out = append(out, line)
			last = day
		}
		if strings.Contains(line, " EC=") && !strings.Contains(line, "done=") && rapid.Bool().Draw(t, "twice") {
			out = append(out, strings.Replace(line, day.Add(time.Duration(i)*time.Minute).Format("15:04"), day.Add(time.Duration(i+1)*time.Minute).Format("15:04"), 1))
		}
	}
	if last.IsZero() {
		return out, last
	}
	// Half of the logs end on something to do, so that each kind comes up.
	const checked = " checked=2027-01-20"
	ends := []string{"", "", " level=16 EC=3.0" + checked, " level=17 EC=2.4" + checked, " level=19 EC=2.8" + checked, " level=29 EC=1.4" + checked, " level=28 EC=1.6" + checked, " level=15 EC=1.5" + checked, " level=18 EC=0.4" + checked}
	if end := rapid.SampledFrom(ends).Draw(t, "end"); end != "" {
		last = last.Truncate(24 * time.Hour).Add(15 * time.Hour)
		for i := range 2 {
			out = append(out, tubs[0]+" "+last.Add(time.Duration(30*i+50)*time.Minute).Format("2006-01-02 15:04")+end)
		}
	}
	return out, last
}

// Whatever is in the logbook, and on whatever day: there is a morning, it never
// advises more into a tub than it may hold nor two things that both change its
// water, every number can be worked out with a pencil, the same logbook gives
// the same bytes, and units change only what is shown.
func TestAnyMorningIsSafe(t *testing.T) {
	type pair struct{ metric, us *garden.Assessment }
	var gardens []pair
	for _, name := range []string{"../../examples/fernhollow.yaml", "testdata/round-still.yaml"} {
		var p pair
		for _, s := range systems {
			parsed := parsed(t, name, text(t, name))
			parsed.Units = s
			if s == quantity.Metric {
				p.metric = assessed(t, parsed)
			} else {
				p.us = assessed(t, parsed)
			}
		}
		gardens = append(gardens, p)
	}
	due, drawn := map[string]int{}, 0
	rapid.Check(t, func(r *rapid.T) {
		drawn++
		g := rapid.SampledFrom(gardens).Draw(r, "garden")
		var names []string
		for _, tub := range g.metric.Tubs {
			names = append(names, tub.Name)
		}
		lines, last := anyLog(r, names)
		on := plan.Date{Year: 2027, Month: 2, Day: rapid.IntRange(1, 28).Draw(r, "day")}
		if !last.IsZero() && rapid.IntRange(0, 3).Draw(r, "another day") > 0 {
			on = plan.Date{Year: last.Year(), Month: last.Month(), Day: last.Day()}
		}
		m := garden.Morning{On: on, Zone: dublin, Readings: wrote(t, dublin, lines...)}
		a, b := g.metric.Asked(m), g.us.Asked(m)
		r.Logf("%s on %s\n%s", strings.Join(lines, "\n"), on, told(a))
		safe(r, a)
		safe(r, b)
		first, second := document(t, a), document(t, g.metric.Asked(m))
		if !bytes.Equal(first, second) {
			r.Fatal("other bytes the second time")
		}
		finite(r, first)
		for _, n := range a.Numbers {
			if strings.Contains(n.Key, ".today.") {
				walked(r, n)
			}
		}
		for i, tub := range a.Tubs {
			for k, x := range tub.Today.Advice {
				y := b.Tubs[i].Today.Advice[k]
				if x.Do != y.Do || x.Code != y.Code || x.Text == "" || x.Source == "" {
					r.Errorf("%s: %+v in one unit system, %+v in the other", tub.Name, x, y)
				}
				due[string(x.Do)]++
			}
		}
	})
	for _, do := range []string{"top up", "take out", "thin", "read again", "change out", "nothing"} {
		if inFull(drawn) && due[do] == 0 {
			t.Errorf("'%s' was never due: the test draws too little", do)
		}
	}
}
