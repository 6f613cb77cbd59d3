package web_test

import (
	"context"
	"html"
	"net/http"
	"regexp"
	"strings"
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

// written puts rows of the tub into a garden's logbook, one a day at half past
// ten, up to the day before the tests.
func (o *opened) written(id, tub string, rows ...reading.Row) {
	o.Helper()
	for i := range rows {
		rows[i].Tub = tub
		if rows[i].At.IsZero() {
			rows[i].At = time.Date(2027, 2, 10-len(rows)+i, 10, 30, 0, 0, time.UTC)
		}
		if rows[i].ID == "" {
			rows[i].ID = "row-" + string(rune('a'+i))
		}
	}
	if _, err := o.store.AddReadings(context.Background(), id, rows, moment); err != nil {
		o.Fatal(err)
	}
}

func acid(low, high float64) reading.Row {
	return reading.Row{PH: reading.PH{Read: quantity.Interval[quantity.PH]{Low: quantity.PH(low), High: quantity.PH(high), Text: "as read"}, With: reading.Meter}}
}

func tepid(c float64) reading.Row {
	return reading.Row{Water: quantity.Typed[quantity.DegC]{Value: quantity.DegC(c), Text: "as read"}}
}

var tagPattern = regexp.MustCompile(`<[^>]*>`)

// section is one chart of the page as plain words, with its drawings' labels.
func section(page, key string) string {
	_, rest, _ := strings.Cut(page, `id="`+key+`"`)
	rest, _, _ = strings.Cut(rest, "</section>")
	return html.UnescapeString(tagPattern.ReplaceAllString(rest, " "))
}

func TestChartsSayWhatToSee(t *testing.T) {
	for _, c := range []struct {
		name, key string
		rows      []reading.Row
		want      []string
	}{
		{"one reading", "ph", []reading.Row{acid(6.1, 6.1)}, []string{"One reading: 6.1 on Tue 9 Feb. Not enough to say where it goes.", "Tue 9 Feb  6.1"}},
		{"too few", "ph", []reading.Row{acid(6.1, 6.1), acid(6.3, 6.3)}, []string{"Not enough to say where it goes: that takes four readings on three days."}},
		{"rising", "ph", []reading.Row{acid(5.6, 5.6), acid(5.7, 5.7), acid(5.9, 5.9), acid(6.1, 6.1)}, []string{"Rising: from about 5.5 on Sat 6 Feb to about 6.1 on Tue 9 Feb."}},
		{"steady, strips", "ph", []reading.Row{acid(5.5, 6), acid(5.5, 6), acid(5.5, 6), acid(5.5, 6)}, []string{"Steady: between 5.5 and 6.0 since Sat 6 Feb. Last 5.5\u00a0to\u00a06.0 on Tue 9 Feb."}},
		{"not read", "ec", []reading.Row{acid(5.5, 6)}, []string{"Not read in these days.", "No reading in these days."}},
		{"water falling", "water", []reading.Row{tepid(23), tepid(22), tepid(21), tepid(20)}, []string{"Falling: from about 23.0 on Sat 6 Feb to about 20.0\u00a0°C on Tue 9 Feb."}},
	} {
		o := open(t)
		id := o.beginGarden("metric")
		o.written(id, "Tub 1", c.rows...)
		page, _ := o.get("/g/"+id+"/logbook/charts", http.StatusOK)
		o.wellMade("charts", page)
		got := section(page, c.key)
		for _, want := range c.want {
			if !strings.Contains(got, want) {
				t.Errorf("%s: %q is not in\n%s", c.name, want, got)
			}
		}
	}
}

// What was corrected is struck through, what is doubtful says so, and neither
// bends the axis.
func TestChartsShowCorrectedAndDoubtful(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	slip := acid(61, 61)
	slip.Doubtful = []reading.Field{reading.FieldPH}
	wrong := acid(6.9, 6.9)
	wrong.At, wrong.ID = time.Date(2027, 2, 8, 10, 30, 0, 0, time.UTC), "wrong"
	right := acid(6.1, 6.1)
	right.At, right.Corrects = wrong.At, "wrong"
	o.written(id, "Tub 1", wrong, right, slip)
	page, _ := o.get("/g/"+id+"/logbook/charts", http.StatusOK)
	for _, want := range []string{"<s>6.9</s> 6.1", "61.0, doubtful", "corrected"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is not on the page", want)
		}
	}
	if strings.Contains(page, ">60</text>") {
		t.Error("a slip of the pen stretches the axis")
	}
}

// In US units 20 °C are 68 °F (NIST SP 811 B.8) and 10 L are 2.64 gal
// (1 gal = 3.785412 L, NIST SP 811 B.8).
func TestChartsInUSUnits(t *testing.T) {
	o := open(t)
	id := o.beginGarden("us")
	row := tepid(20)
	row.Level.Litres = quantity.Typed[quantity.L]{Value: 10, Text: "10 L"}
	o.written(id, "Tub 1", row)
	page, _ := o.get("/g/"+id+"/logbook/charts", http.StatusOK)
	if got := section(page, "water"); !strings.Contains(got, "68.0\u00a0°F on Tue 9 Feb") {
		t.Error(got)
	}
	if got := section(page, "level"); !strings.Contains(got, "2.64\u00a0gal on Tue 9 Feb") {
		t.Error(got)
	}
}

func TestChartsBeforeTheFirstReading(t *testing.T) {
	o := open(t)
	for _, id := range []string{o.beginGarden("metric"), "example-saltbrook"} {
		page, _ := o.get("/g/"+id+"/logbook/charts", http.StatusOK)
		if !strings.Contains(page, "<strong>No reading yet.</strong> The first one takes a minute.") || strings.Count(page, "<svg class=\"fig chart") != 8 {
			t.Errorf("%s: no empty charts", id)
		}
	}
}

// The weeks before are reached as far back as something was read, and whatever
// an address asks for is answered.
func TestEarlierWeeks(t *testing.T) {
	o := open(t)
	id := o.beginGarden("metric")
	old := acid(5.7, 5.7)
	old.At, old.ID = time.Date(2026, 11, 2, 10, 30, 0, 0, time.UTC), "old"
	o.written(id, "Tub 1", old, acid(6, 6))
	address, back := "/g/"+id+"/logbook/charts", 0
	for ; back < 10; back++ {
		page, _ := o.get(address, http.StatusOK)
		m := regexp.MustCompile(`<a href="([^"]*)">Earlier weeks</a>`).FindStringSubmatch(page)
		if m == nil {
			if !strings.Contains(section(page, "ph"), "Mon 2 Nov  5.7") {
				t.Error("the first reading is not on the last page back")
			}
			break
		}
		address = html.UnescapeString(m[1])
	}
	// Five weeks end on Sun 14 Feb; the week of 2 November is fifteen before.
	if back != 2 {
		t.Errorf("%d pages back", back)
	}
	for _, q := range []string{"?until=2026-02-31", "?until=0001-01-01", "?until=9999-12-31", "?span=never", "?span=all", "?span=term", "?tub=none&until=%00"} {
		o.get("/g/"+id+"/logbook/charts"+q, http.StatusOK)
	}
}

// everyMark is a logbook with a mark of each kind.
func everyMark() []reading.Row {
	slip := acid(61, 61)
	slip.Doubtful = []reading.Field{reading.FieldPH}
	odd := acid(6.6, 6.6)
	odd.Doubtful = slip.Doubtful
	wrong := acid(6.9, 6.9)
	wrong.At, wrong.ID = time.Date(2027, 2, 3, 10, 30, 0, 0, time.UTC), "wrong"
	right := acid(6.1, 6.1)
	right.At, right.Corrects = wrong.At, "wrong"
	full := tepid(20)
	full.Level.Filled = quantity.Typed[quantity.L]{Value: 3, Text: "3 L"}
	low := tepid(21)
	low.Level.Litres = quantity.Typed[quantity.L]{Value: 12, Text: "12 L"}
	return []reading.Row{wrong, right, acid(5.5, 6), odd, slip, acid(5.8, 5.8), full, low}
}
