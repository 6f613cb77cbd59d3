package web

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"slices"
	"strings"
	"time"

	"rootbell/internal/science/reading"
)

// atOnce is within how long two readings of one tub by two teams are taken for
// the same reading written twice: a reading takes a minute, and two teams seldom
// measure one tub within a quarter of an hour.
const atOnce = 15 * time.Minute

// clashView is two entries that two teams wrote at once, side by side.
type clashView struct {
	Tub     string
	Minutes int
	Sides   [2]clashSide
	Rows    []clashRow
	Mark    string // stands for the two
}

type clashSide struct{ ID, By, When string }

// clashRow is one figure of both; Differs underlines it.
type clashRow struct {
	Name    string
	Values  [2]string
	Differs bool
}

// clash finds the latest two entries of today that two teams wrote at once and
// that nobody has said to keep both of.
func (s *Server) clash(ctx context.Context, l *logbook, entries []reading.Entry) (*clashView, error) {
	for i := len(entries) - 1; i > 0; i-- {
		a, b := entries[i-1], entries[i]
		if l.Now.Sub(b.At).Abs() > 24*time.Hour {
			return nil, nil
		}
		if b.At.Sub(a.At) > atOnce || a.By == "" || b.By == "" || strings.EqualFold(a.By, b.By) {
			continue
		}
		v := l.clashOf(a.Row, b.Row)
		kept, err := s.Store.Setting(ctx, "both "+v.Mark)
		if err != nil {
			return nil, err
		}
		if kept == "" {
			return v, nil
		}
	}
	return nil, nil
}

func (l *logbook) clashOf(a, b reading.Row) *clashView {
	v := &clashView{Tub: a.Tub, Minutes: int(b.At.Sub(a.At).Round(time.Minute) / time.Minute), Mark: clashMark(a.ID, b.ID)}
	for i, r := range []reading.Row{a, b} {
		v.Sides[i] = clashSide{r.ID, r.By, r.At.In(l.Now.Location()).Format("15:04")}
	}
	add := func(name, x, y string) {
		if x != "" || y != "" {
			v.Rows = append(v.Rows, clashRow{name, [2]string{x, y}, x != y})
		}
	}
	for _, f := range []reading.Field{reading.FieldLevel, reading.FieldPH, reading.FieldEC, reading.FieldWater} {
		add(string(f), l.fieldWords(a, f), l.fieldWords(b, f))
	}
	add("note", l.noteOf(a), l.noteOf(b))
	return v
}

func clashMark(ids ...string) string {
	slices.Sort(ids)
	sum := sha256.Sum256([]byte(strings.Join(ids, " ")))
	return hex.EncodeToString(sum[:12])
}

// keepBoth remembers that two entries are both right.
func (s *Server) keepBoth(w http.ResponseWriter, r *http.Request) {
	l, ok := s.openLogbook(w, r, r.FormValue("tub"))
	if !ok {
		return
	}
	mark := r.FormValue("mark")
	if l.Example {
		s.readOnly(w, r)
		return
	}
	if bare, err := hex.DecodeString(mark); err != nil || len(bare) != 12 {
		s.refuse(w, r, http.StatusBadRequest, "This does not say which two entries to keep.", "Open the logbook again and press the button there.")
		return
	}
	if err := s.Store.SetSetting(r.Context(), "both "+mark, "yes", l.Now); err != nil {
		s.failed(w, r, err)
		return
	}
	http.Redirect(w, r, logbookAddress(l.ID, l.tubName(), ""), http.StatusSeeOther)
}
