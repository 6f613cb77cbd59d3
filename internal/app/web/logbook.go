package web

import (
	"context"
	"crypto/rand"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/steering"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// How many readings stand on the page Logbook, how many before a reading it is
// held against, and how many stand on a page of all of them.
const (
	mostLast   = 8
	mostBeside = 12
	mostOnPage = 50
)

// logbook is a garden with what its pages about readings need.
type logbook struct {
	*opened
	a   *garden.Assessment
	tub int // the tub that is asked for

	said string // what was just done
}

// openLogbook opens a garden for its logbook. The answer is given here where
// that is not possible.
func (s *Server) openLogbook(w http.ResponseWriter, r *http.Request, tub string) (*logbook, bool) {
	o, ok := s.open(w, r)
	if !ok {
		return nil, false
	}
	if o.Plan == nil {
		http.Redirect(w, r, "/g/"+o.ID+"/text", http.StatusSeeOther)
		return nil, false
	}
	a, err := s.assess(r.Context(), o, lid.Quick)
	if err != nil {
		s.failed(w, r, err)
		return nil, false
	}
	return &logbook{opened: o, a: a, tub: tubAsked(o.Plan, tub)}, true
}

func (l *logbook) tubName() string { return l.Plan.Tubs[l.tub].Name }

// teams are the words that may stand under a reading.
func (l *logbook) teams() []string { return l.Plan.School.By() }

// logbookAddress is where the logbook of a tub lies.
func logbookAddress(id, tub, said string) string {
	q := url.Values{}
	if tub != "" {
		q.Set("tub", garden.Slug(tub))
	}
	if said != "" {
		q.Set("said", said)
	}
	return strings.TrimSuffix("/g/"+id+"/logbook?"+q.Encode(), "?")
}

// newEntryID is the id of a reading to be written: a random UUID of version 4
// (RFC 9562), as browsers make them too.
func newEntryID() string {
	var b [16]byte
	_, _ = rand.Read(b[:]) // it fills the slice or ends the program
	b[6], b[8] = b[6]&0x0f|0x40, b[8]&0x3f|0x80
	const digits = "0123456789abcdef"
	var out strings.Builder
	for i, v := range b {
		if i == 4 || i == 6 || i == 8 || i == 10 {
			out.WriteByte('-')
		}
		out.WriteByte(digits[v>>4])
		out.WriteByte(digits[v&15])
	}
	return out.String()
}

// showLogbook is the page Logbook: the form of a reading, or of the correction
// of one, with the last readings of the tub.
func (s *Server) showLogbook(w http.ResponseWriter, r *http.Request) {
	q := r.URL.Query()
	l, ok := s.openLogbook(w, r, q.Get("tub"))
	if !ok {
		return
	}
	f := &logForm{logbook: l, values: url.Values{"id": {newEntryID()}, "tub": {l.tubName()}}}
	if id := q.Get("correct"); id != "" && !l.Example {
		was, err := s.Store.Reading(r.Context(), l.ID, id)
		if err != nil {
			s.failed(w, r, err)
			return
		}
		f.correct(was)
	}
	s.logbookPage(w, r, http.StatusOK, f)
}

// logbookPage writes the page.
func (s *Server) logbookPage(w http.ResponseWriter, r *http.Request, status int, f *logForm) {
	l := f.logbook
	body := logBody{ID: l.ID, Example: l.Example, Tub: l.tubName(), Now: l.Now.Format(time.RFC3339), Heads: l.heads()}
	if l.bound() {
		kept, err := s.readings(r.Context(), l.opened, store.Span{Tub: l.tubName(), Most: 2 * mostLast})
		if err != nil {
			s.failed(w, r, err)
			return
		}
		f.last = reading.Standing(rowsOf(kept))
		body.Rows = l.rowsShown(kept)
		body.More = len(body.Rows) > mostLast
		body.Rows = body.Rows[:min(len(body.Rows), mostLast)]
		if body.Clash, err = s.clash(r.Context(), l, f.last); err != nil {
			s.failed(w, r, err)
			return
		}
		if r.URL.Query().Get("said") == "written" {
			if body.Leak, err = s.leak(r.Context(), l); err != nil {
				s.failed(w, r, err)
				return
			}
		}
		if !l.Example {
			body.Form = f.view()
		}
	}
	if l.Example {
		body.Others = l.otherTubs(l.tub)
	}
	body.Stick = stickOf(l)
	frame := s.frameOf(r, l.opened, l.a, "logbook", "Logbook")
	frame.Here = logbookAddress(l.ID, l.tubName(), "")
	frame.Drawing = "Logbook of " + l.tubName()
	frame.Message = messages[r.URL.Query().Get("said")]
	if !l.Example {
		frame.Script = []string{"logbook.js"}
	}
	s.show(w, status, "logbook", frame, body)
}

// writeReading writes a reading down, or a correction of one. What is doubtful
// comes back as a question, with all that was typed.
func (s *Server) writeReading(w http.ResponseWriter, r *http.Request) {
	if strings.HasPrefix(r.PathValue("garden"), examplePrefix) {
		s.readOnly(w, r)
		return
	}
	if err := r.ParseForm(); err != nil {
		s.refuse(w, r, http.StatusBadRequest, "The entry was too long or broken, so nothing was written down.", "Go back and try again.")
		return
	}
	l, ok := s.openLogbook(w, r, garden.Slug(r.PostForm.Get("tub")))
	if !ok {
		return
	}
	f := &logForm{logbook: l, values: r.PostForm}
	row, err := s.rowPosted(r.Context(), f)
	if err != nil {
		s.notWritten(w, r, f, err)
		return
	}
	if len(f.problems) > 0 || len(f.questions) > 0 {
		s.askBack(w, r, f)
		return
	}
	stored, err := s.Store.AddReading(r.Context(), l.ID, row, l.Now)
	if err != nil {
		s.notWritten(w, r, f, err)
		return
	}
	said := "written"
	switch {
	case !stored:
		said = "there"
	case row.Withdrawn:
		said = "takenout"
	}
	address := logbookAddress(l.ID, row.Tub, said) + "&entry=" + url.QueryEscape(row.ID)
	if wantsJSON(r) {
		answerJSON(w, entryAnswer{Stored: true, Again: !stored, ID: row.ID, To: address})
		return
	}
	http.Redirect(w, r, address, http.StatusSeeOther)
}

// notWritten answers an entry that the store did not take. What was typed stays
// in the form, and on a device that keeps it.
func (s *Server) notWritten(w http.ResponseWriter, r *http.Request, f *logForm, err error) {
	var taken *store.Taken
	var refused *store.Refused
	switch {
	case errors.As(err, &taken):
		f.correctTaken(taken.There)
		s.askBack(w, r, f)
		return
	case !errors.As(err, &refused):
		s.failed(w, r, err)
		return
	}
	status := http.StatusServiceUnavailable
	if refused.Reason == store.Full {
		status = http.StatusInsufficientStorage
	}
	f.says = "Not written down: " + refused.What + ". What you typed is still here. " + capital(refused.Hint) + "."
	if wantsJSON(r) {
		w.Header().Set("Content-Type", "application/json; charset=utf-8")
		w.WriteHeader(status)
		answerJSON(w, entryAnswer{ID: f.values.Get("id"), Error: f.says})
		return
	}
	s.logbookPage(w, r, status, f)
}

// askBack answers that nothing is written down yet: a person has to look.
func (s *Server) askBack(w http.ResponseWriter, r *http.Request, f *logForm) {
	if wantsJSON(r) {
		answerJSON(w, entryAnswer{ID: f.values.Get("id"), Ask: true})
		return
	}
	s.logbookPage(w, r, http.StatusUnprocessableEntity, f)
}

// rowPosted is the row of a posted form, with the answers given to questions.
// What keeps it from being written down is left in the form.
func (s *Server) rowPosted(ctx context.Context, f *logForm) (reading.Row, error) {
	if f.values.Get("withdraw") == "yes" {
		was, err := s.Store.Reading(ctx, f.ID, f.values.Get("corrects"))
		row := was.Withdrawal(f.values.Get("id"))
		if row.By = f.values.Get("by"); !reading.Named(f.teams(), row.By) {
			row.By = ""
		}
		return row, err
	}
	var there store.Written
	if f.values.Get("moment") == "" && f.values.Get("at") == "" {
		var err error
		if there, err = s.there(ctx, f); err != nil {
			return reading.Row{}, err
		}
	}
	row := f.row(there)
	if len(f.problems) > 0 {
		return row, nil
	}
	beside, err := s.beside(ctx, f.logbook, row)
	if err != nil {
		return reading.Row{}, err
	}
	row = f.answer(row, beside)
	if len(f.questions) == 0 {
		return row, nil
	}
	// What is written down already was asked about then.
	if there, err = s.there(ctx, f); there.ID != "" {
		f.questions = nil
	}
	return row, err
}

// there is the row that is kept under a form's id already, if any.
func (s *Server) there(ctx context.Context, f *logForm) (store.Written, error) {
	there, err := s.Store.Reading(ctx, f.ID, f.values.Get("id"))
	var none *store.NotFound
	if errors.As(err, &none) {
		err = nil
	}
	return there, err
}

// beside is what a new row is held against.
func (s *Server) beside(ctx context.Context, l *logbook, row reading.Row) (reading.Beside, error) {
	b := reading.Beside{Now: l.Now, Others: map[string]reading.Row{}, System: l.Plan.Units, Target: l.Plan.Feed.EC.Value}
	for i, t := range l.Plan.Tubs {
		span := store.Span{Tub: t.Name, Until: row.At.Add(time.Millisecond), Most: 1}
		if reading.SameTub(t.Name, row.Tub) {
			span.Most = mostBeside
		}
		kept, err := s.readings(ctx, l.opened, span)
		if err != nil {
			return b, err
		}
		entries := reading.Standing(rowsOf(kept))
		if span.Most == 1 {
			if len(entries) > 0 {
				b.Others[t.Name] = entries[len(entries)-1].Row
			}
			continue
		}
		b.Tub = l.a.Vessel(i, entries, l.Now.Location())
		if row.ToTheLine() || slices.ContainsFunc(entries, func(e reading.Entry) bool { return e.ToTheLine() }) {
			if b.Tub, err = s.vesselOf(ctx, l, i); err != nil { // the line is lowered some days after the plants went in
				return b, err
			}
		}
		for _, e := range entries {
			if e.ID != row.Corrects {
				b.Last = append(b.Last, e)
			}
		}
	}
	return b, nil
}

// vesselOf is what the readings need to know of a tub.
func (s *Server) vesselOf(ctx context.Context, l *logbook, i int) (reading.Vessel, error) {
	kept, err := s.lastReadings(ctx, l.opened)
	if err != nil {
		return reading.Vessel{}, err
	}
	entries := reading.Of(reading.Standing(kept), l.Plan.Tubs[i].Name)
	return l.a.Vessel(i, entries, l.Now.Location()), nil
}

func rowsOf(kept []store.Written) []reading.Row {
	rows := make([]reading.Row, len(kept))
	for i, w := range kept {
		rows[i] = w.Row
	}
	return rows
}

// entryAnswer is what the page's script is told of an entry that it sent.
type entryAnswer struct {
	ID     string `json:"id"`
	Stored bool   `json:"stored"`
	Again  bool   `json:"again,omitempty"` // it was there already
	Ask    bool   `json:"ask,omitempty"`   // a person has to look at it first
	To     string `json:"to,omitempty"`    // the page that says so
	Error  string `json:"error,omitempty"` // why it could not be kept
}

func wantsJSON(r *http.Request) bool { return r.Header.Get("Accept") == "application/json" }

// leak is the advice to look for one, where the tub's last readings ask for it:
// it is said as soon as the reading is written down, before anybody tops up.
func (s *Server) leak(ctx context.Context, l *logbook) (*garden.Advised, error) {
	a, err := s.morning(ctx, l.opened, plan.Date{})
	if err != nil {
		return nil, err
	}
	for i := range a.Tubs {
		if a.Tubs[i].Name != l.tubName() || a.Tubs[i].Today == nil {
			continue
		}
		for _, one := range a.Tubs[i].Today.Advice {
			if one.Do == steering.SeekLeak {
				return &one, nil
			}
		}
	}
	return nil, nil
}
