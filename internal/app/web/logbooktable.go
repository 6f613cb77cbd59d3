package web

import (
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/science/reading"
)

// tableBody is the page of all readings.
type tableBody struct {
	ID      string
	Example bool
	Rows    []logRow
	Heads   logHeadsView
	Tubs    []string
	Tub     string // empty: all
	Older   string // where the page of older ones lies
	Newest  bool
	Refused *refusedTable
}

// refusedTable is why a table was not read in: everything that is wrong, at its
// line and column.
type refusedTable struct {
	File     string
	Problems []reading.Problem
	More     int
}

// mostTold is how many problems of a table are told at once.
const mostTold = 100

// showReadings is the page of all readings, a page at a time.
func (s *Server) showReadings(w http.ResponseWriter, r *http.Request) {
	l, ok := s.openLogbook(w, r, r.URL.Query().Get("tub"))
	if !ok {
		return
	}
	s.readingsPage(w, r, http.StatusOK, l, nil)
}

func (s *Server) readingsPage(w http.ResponseWriter, r *http.Request, status int, l *logbook, refused *refusedTable) {
	q := r.URL.Query()
	body := tableBody{ID: l.ID, Example: l.Example, Heads: l.heads(), Newest: !q.Has("before"), Refused: refused}
	for _, t := range l.Plan.Tubs {
		body.Tubs = append(body.Tubs, t.Name)
	}
	span := store.Span{Most: mostOnPage + 1}
	if q.Get("tub") != "" {
		body.Tub = l.tubName()
		span.Tub = body.Tub
	}
	if ms, number, ok := pageMark(q.Get("before")); ok {
		span.Until, span.Number = time.UnixMilli(ms), number
	}
	if l.bound() {
		kept, err := s.readings(r.Context(), l.opened, span)
		if err != nil {
			s.failed(w, r, err)
			return
		}
		body.Rows = l.rowsShown(kept)
	}
	if len(body.Rows) > mostOnPage {
		body.Rows = body.Rows[:mostOnPage]
		last := body.Rows[mostOnPage-1]
		next := url.Values{"before": {fmt.Sprintf("%d.%d", last.at.UnixMilli(), last.number)}}
		if body.Tub != "" {
			next.Set("tub", q.Get("tub"))
		}
		body.Older = "/g/" + l.ID + "/logbook/all?" + next.Encode()
	}
	frame := s.frameOf(r, l.opened, l.a, "logbook", "All readings")
	frame.Message = l.said
	s.show(w, status, "readings", frame, body)
}

// pageMark reads where a page of older readings begins.
func pageMark(text string) (ms int64, number int, ok bool) {
	before, after, found := strings.Cut(text, ".")
	ms, err := strconv.ParseInt(before, 10, 64)
	if err != nil || !found {
		return 0, 0, false
	}
	number, err = strconv.Atoi(after)
	return ms, number, err == nil && number > 0
}

// downloadReadings is the whole logbook as a table for a spreadsheet.
func (s *Server) downloadReadings(w http.ResponseWriter, r *http.Request) {
	l, ok := s.openLogbook(w, r, "")
	if !ok {
		return
	}
	var kept []store.Written
	if l.bound() {
		var err error
		if kept, err = s.readings(r.Context(), l.opened, store.Span{}); err != nil {
			s.failed(w, r, err)
			return
		}
	}
	table, err := reading.CSV(rowsOf(kept), l.Now.Location())
	if err != nil {
		s.failed(w, r, err)
		return
	}
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="`+fileName(l.Name)+`-logbook.csv"`)
	_, _ = w.Write(table) // whoever asked is gone
}

// importReadings reads a table in: all of its rows, or none. A table with a
// column about people is refused before anything is looked at.
func (s *Server) importReadings(w http.ResponseWriter, r *http.Request) {
	if strings.HasPrefix(r.PathValue("garden"), examplePrefix) {
		s.readOnly(w, r)
		return
	}
	l, ok := s.openLogbook(w, r, "")
	if !ok {
		return
	}
	file, about, err := r.FormFile("file")
	if err != nil {
		s.refuse(w, r, http.StatusBadRequest, "No table was chosen, or it was too long.", "Choose a CSV file of at most "+strconv.Itoa(mostTableBytes>>20)+" MiB.")
		return
	}
	text, err := io.ReadAll(file)
	_ = file.Close() // it was only read
	if err != nil {
		s.refuse(w, r, http.StatusBadRequest, "The table could not be read.", "Choose it once more.")
		return
	}
	known, err := s.Store.ReadingIDs(r.Context(), l.ID)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	table, problems := reading.ReadCSV(text, reading.Import{Zone: l.Now.Location(), By: l.teams(), Known: known})
	if len(problems) > 0 {
		more := max(0, len(problems)-mostTold)
		s.readingsPage(w, r, http.StatusUnprocessableEntity, l, &refusedTable{about.Filename, problems[:len(problems)-more], more})
		return
	}
	fresh, err := s.Store.AddReadings(r.Context(), l.ID, table.Rows, l.Now)
	if err != nil {
		s.notReadIn(w, r, l, about.Filename, err)
		return
	}
	l.said = readIn(len(table.Rows), fresh, table.Left)
	s.readingsPage(w, r, http.StatusOK, l, nil)
}

// readIn says what came of a table.
func readIn(rows, fresh int, left []string) string {
	said := fmt.Sprintf("Read in: %d new %s.", fresh, plural(fresh, "row", "rows"))
	if there := rows - fresh; there > 0 {
		said += fmt.Sprintf(" %d %s in the book already.", there, plural(there, "was", "were"))
	}
	if len(left) > 0 {
		said += " Left out, as the logbook has no such column: " + strings.Join(left, ", ") + "."
	}
	return said
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// notReadIn answers a table that the store did not take. Nothing of it is kept.
func (s *Server) notReadIn(w http.ResponseWriter, r *http.Request, l *logbook, file string, err error) {
	var taken *store.Taken
	var refused *store.Refused
	switch {
	case errors.As(err, &taken):
		p := reading.Problem{Field: "id", What: "the id '" + taken.There.ID + "' stands for another reading in the book", Hint: "give the row an id of its own, or leave the id empty"}
		s.readingsPage(w, r, http.StatusConflict, l, &refusedTable{File: file, Problems: []reading.Problem{p}})
	case errors.As(err, &refused):
		p := reading.Problem{What: refused.What, Hint: refused.Hint}
		s.readingsPage(w, r, http.StatusServiceUnavailable, l, &refusedTable{File: file, Problems: []reading.Problem{p}})
	default:
		s.failed(w, r, err)
	}
}
