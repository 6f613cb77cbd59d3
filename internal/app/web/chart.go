package web

import (
	"context"
	"html/template"
	"net/http"
	"net/url"
	"strings"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/garden"
	"rootbell/internal/paper/chart"
	"rootbell/internal/paper/figure"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// chartsBody is the page of charts of one tub.
type chartsBody struct {
	ID, Tub string
	Example bool
	Others  []chartLink // the other tubs
	Spans   []chartLink // how many days are shown
	Answer  string
	Empty   bool
	Old     string // the day of the last reading, where that is some time ago
	Charts  []chartView
	Rough   bool   // too many readings to tell what was corrected and done
	Latest  string // how many of the latest are drawn, where there are more
	Earlier string // addresses of the weeks before and after
	Later   string
}

// chartLink is a choice of the page; Here is the one that is shown.
type chartLink struct {
	Words, Address string
	Here           bool
}

// chartView is one chart with what it says and its table.
type chartView struct {
	Name, Key, Says string
	Desk, Hand      template.HTML
	Note            string
	Head            string // of the column of values
	Rows, All       []chart.Row
	Many            bool // too many days for a table on this page
}

// Limits of a page of charts.
const (
	mostRows   = 8    // of a table before 'All days'
	mostDays   = 190  // of 'All days': a term
	mostWhole  = 1000 // readings whose corrections and deeds are looked up
	mostDrawn  = 4000 // readings, the latest, that a page takes in
	weeksShown = 5
)

// showCharts is the page of charts: what was read in one tub, one quantity
// under the other, over one row of days.
func (s *Server) showCharts(w http.ResponseWriter, r *http.Request) {
	l, ok := s.openLogbook(w, r, r.URL.Query().Get("tub"))
	if !ok {
		return
	}
	body := chartsBody{ID: l.ID, Tub: l.tubName(), Example: l.Example}
	for _, name := range l.otherTubs(l.tub) {
		body.Others = append(body.Others, chartLink{Words: name, Address: "?tub=" + garden.Slug(name)})
	}
	if err := s.fillCharts(r.Context(), l, &body, r.URL.Query()); err != nil {
		s.failed(w, r, err)
		return
	}
	frame := s.frameOf(r, l.opened, l.a, "logbook", "Charts of "+l.tubName())
	s.show(w, http.StatusOK, "charts", frame, body)
}

// fillCharts draws what was read in the days asked for.
func (s *Server) fillCharts(ctx context.Context, l *logbook, body *chartsBody, asked url.Values) error {
	var last time.Time
	if l.bound() {
		latest, err := s.figures(ctx, l.opened, store.Span{Tub: l.tubName(), Most: 1})
		if err != nil {
			return err
		}
		if len(latest) > 0 {
			last = latest[0].At
		}
	}
	days := l.daysAsked(body, asked, last)
	vessel, err := s.vesselOf(ctx, l, l.tub)
	if err != nil {
		return err
	}
	read := tubRead{vessel: vessel}
	if !last.IsZero() {
		if err := s.readTub(ctx, l, &days, &read); err != nil {
			return err
		}
	}
	if err := s.offerEarlier(ctx, l, body, days); err != nil {
		return err
	}
	body.Empty, body.Rough = last.IsZero(), read.rough
	if len(read.entries) == mostDrawn {
		body.Latest = number(mostDrawn)
	}
	if day := term.DateOf(last.In(days.Zone)); !last.IsZero() && term.DateOf(l.Now).Since(day) > 7 {
		body.Old = day.Long()
	}
	quantities := quantitiesOf(l, read.vessel)
	for i := range quantities {
		body.Charts = append(body.Charts, quantities[i].view(&read, days, i == 0))
	}
	body.Answer = chartsAnswer(body.Tub, quantities)
	return nil
}

// daysAsked is the row of days, and the choices of others. Its first day is not
// set where all that was read is asked for.
func (l *logbook) daysAsked(body *chartsBody, asked url.Values, last time.Time) chart.Days {
	zone, today := l.Now.Location(), term.DateOf(l.Now)
	d := chart.Days{Zone: zone, Calendar: l.a.Term, Now: l.Now}
	newest := today
	if day := term.DateOf(last.In(zone)); !last.IsZero() && (today.Since(day) > 7*(weeksShown-1) || day.After(today)) {
		newest = day
	}
	d.To = newest.Monday().Add(6)
	choices := map[string]bool{"weeks": true, "term": l.a.Term != nil && l.a.Term.Known(), "all": !last.IsZero()}
	span := asked.Get("span")
	if !choices[span] {
		span = "weeks"
	}
	switch span {
	case "weeks":
		l.weeksAsked(body, asked.Get("until"), &d)
	case "term":
		which, _ := l.a.Term.Current(today)
		shown := l.a.Term.Terms()[which]
		d.From, d.To = shown.From.Monday(), shown.To.Monday().Add(6)
	}
	for _, c := range []chartLink{{Words: "Five weeks", Address: "weeks"}, {Words: "The term", Address: "term"}, {Words: "All days", Address: "all"}} {
		if choices[c.Address] {
			body.Spans = append(body.Spans, chartLink{c.Words, chartsAddress(l.ID, l.tubName(), c.Address), c.Address == span})
		}
	}
	return d
}

// weeksAsked is the weeks up to a day that the address names, else the newest.
func (l *logbook) weeksAsked(body *chartsBody, until string, d *chart.Days) {
	newest := d.To
	day, err := term.ParseDate(until)
	if err == nil && day.Before(newest) && newest.Since(day) < chart.MostDays {
		d.To = day.Monday().Add(6)
	}
	d.From = d.To.Add(1 - 7*weeksShown)
	address := func(to term.Date) string {
		return chartsAddress(l.ID, l.tubName(), "") + "&until=" + to.String()
	}
	if d.To.Before(newest) {
		body.Later = address(d.To.Add(7 * weeksShown))
	}
	body.Earlier = address(d.From.Add(-1))
}

// offerEarlier takes back the offer of the weeks before where nothing was read
// in any of them.
func (s *Server) offerEarlier(ctx context.Context, l *logbook, body *chartsBody, d chart.Days) error {
	if body.Earlier == "" || !l.bound() {
		body.Earlier = ""
		return nil
	}
	earlier, err := s.figures(ctx, l.opened, store.Span{Tub: l.tubName(), Until: d.From.At(0, d.Zone), Most: 1})
	if len(earlier) == 0 {
		body.Earlier = ""
	}
	return err
}

// chartsAddress is where the charts of a tub lie.
func chartsAddress(id, tub, span string) string {
	q := url.Values{}
	if tub != "" {
		q.Set("tub", garden.Slug(tub))
	}
	if span != "" && span != "weeks" {
		q.Set("span", span)
	}
	return strings.TrimSuffix("/g/"+id+"/logbook/charts?"+q.Encode(), "?")
}

// tubRead is what was read in a tub in the days shown.
type tubRead struct {
	vessel  reading.Vessel
	entries []reading.Entry
	rough   bool
}

// readTub gets the readings of the days shown. Where there are few of them, what
// was corrected and what was done comes with them.
func (s *Server) readTub(ctx context.Context, l *logbook, d *chart.Days, out *tubRead) error {
	span := store.Span{Tub: l.tubName(), Until: d.To.Add(1).At(0, d.Zone), Most: mostDrawn}
	if d.From.Set() {
		span.From = d.From.At(0, d.Zone)
	}
	entries, err := s.figures(ctx, l.opened, span)
	if err != nil {
		return err
	}
	if !d.From.Set() && len(entries) > 0 {
		d.From = term.DateOf(entries[0].At.In(d.Zone)).Monday()
	}
	out.entries, out.rough = entries, len(entries) > mostWhole
	if !out.rough {
		kept, err := s.readings(ctx, l.opened, span)
		if err != nil {
			return err
		}
		out.entries = reading.Standing(rowsOf(kept))
	}
	return nil
}

// widths are the two drawings of a chart.
var widths = []figure.Width{figure.Desk, figure.Hand}
