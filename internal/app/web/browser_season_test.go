//go:build !race

package web_test

import (
	"strings"
	"testing"
)

// Fewer hours of light move the whole season while one types: few runs first,
// then all; nothing is saved by that.
func TestASeasonFollowsTheHoursOfLight(t *testing.T) {
	o := open(t)
	id := o.copied("example-fernhollow")
	b := browse(t, o.base)
	b.visit("/g/" + id + "/season")
	part := func(name string) string { return ask[string](b, `document.getElementById("`+name+`").textContent`) }
	days := part("season-days")
	mass := ask[string](b, `document.getElementById("chart-season-mass-desk").innerHTML`)
	b.follows()
	b.write("lamps[0].lit[1]", "14:00")
	b.full()
	said := strings.Join(ask[[]string](b, `window.said`), " | ")
	if few, all := strings.Index(said, "From few runs"), strings.LastIndex(said, "Not in the plan yet"); few < 0 || all < few {
		t.Errorf("the status said %q, want few runs first, then all", said)
	}
	if part("season-days") == days || ask[string](b, `document.getElementById("chart-season-mass-desk").innerHTML`) == mass {
		t.Error("eight hours of light less change no day")
	}
	if strip := part("term-desk"); !strings.Contains(strip, "Heron: sow") || !strings.Contains(strip, "into the tub") {
		t.Errorf("the strip says %q", strip)
	}
	if !ask[bool](b, `window.alive === true`) || o.value(id, "lamps[0].lit[1]") != "22:00" {
		t.Error("typing alone loaded the page anew, or put something in the plan")
	}
	if focus := ask[string](b, `document.activeElement.name`); focus != "lamps[0].lit[1]" {
		t.Errorf("the focus went to %q", focus)
	}
	b.write("lamps[0].lit[1]", "at night")
	b.until(fieldOf("lamps[0].lit[1]") + `.closest(".q").querySelector(".err") !== null`)
}

// The link beside a chart unfolds the table of all days.
func TestAllDaysUnfold(t *testing.T) {
	o := open(t)
	b := browse(t, o.base)
	b.visit("/g/example-fernhollow/season")
	if ask[bool](b, `document.getElementById("day-by-day").open`) {
		t.Fatal("the days stand open")
	}
	b.click(`a[href="#all-days"]`)
	b.until(`document.getElementById("day-by-day").open`)
}

func TestASeasonWithoutScript(t *testing.T) {
	o := open(t)
	id := o.copied("example-saltbrook")
	b := browse(t, o.base)
	b.log.mayHear("status of 422")
	b.withoutScript()
	b.visit("/g/" + id + "/season?tub=Plover")
	before := b.text("#season-charts")
	b.write("tubs[1].plants", "3")
	b.follow("#season .btn.first")
	if got := o.value(id, "tubs[1].plants"); got != "3" {
		t.Errorf("saved as %q", got)
	}
	if b.text("#season-charts") == before || !strings.Contains(b.text("main"), "Plover") {
		t.Error("three plants change no chart of Plover")
	}
	b.write("school.meal.chance", "150")
	b.follow("#season .btn.first")
	if got := b.text("main"); !strings.Contains(got, "Not saved yet") || b.value("school.meal.chance") != "150" {
		t.Errorf("a chance of 150 %% is answered with\n%s", head(got))
	}
}
