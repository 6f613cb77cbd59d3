package web

import (
	"context"
	"fmt"
	"mime"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/lessons"
	"rootbell/internal/paper/pack"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/lesson"
	"rootbell/internal/science/lid"
)

// taught is the garden worked out in full at this moment, with its class.
func (s *Server) taught(ctx context.Context, o *opened) (*garden.Assessment, error) {
	a, err := s.work.of(ctx, o.Text, o.Plan, o.Today, lid.Full, garden.StageClass)
	if err != nil {
		return nil, err
	}
	return s.asked(ctx, o, a, plan.Date{})
}

// lessonAsk is what an address asks of a lesson sheet.
type lessonAsk struct {
	lesson.Choice
	Tub   int
	All   bool              // no band was asked for
	Typed map[string]string // what was typed for a reading, by its row
	Wrong map[string]string // what is wrong with it
	Seed  string            // as typed
	Note  string            // what is wrong with the number
}

// mostSeed is the highest number of a variant.
const mostSeed = 9999

// lessonAsked reads an address. What makes no sense is left at its default and
// said.
func lessonAsked(a *garden.Assessment, p *plan.Plan, q url.Values) lessonAsk {
	ask := lessonAsk{Tub: a.Class.LessonTub(), Typed: map[string]string{}, Wrong: map[string]string{}}
	if q.Has("tub") {
		ask.Tub = tubAsked(p, q.Get("tub"))
	}
	band, ok := lesson.ParseBand(q.Get("band"))
	ask.Band, ask.All = band, !ok
	ask.Choice.Seed, ask.Seed = 1, "1"
	if typed := strings.TrimSpace(q.Get("number")); typed != "" {
		ask.Seed = typed
		n, err := strconv.ParseUint(typed, 10, 64)
		if err != nil || n < 1 || n > mostSeed {
			ask.Note = fmt.Sprintf("‘%s’ is no number from 1 to %d. Variant 1 is shown.", typed, mostSeed)
		} else {
			ask.Choice.Seed = n
		}
	}
	ask.Filled = q.Get("graph") == "filled"
	for key := range q {
		if id, mine := strings.CutPrefix(key, "odd-"); mine {
			ask.decide(id, q.Get(key), strings.TrimSpace(q.Get("value-"+id)))
		}
	}
	return ask
}

// decide enters what is to be done with a reading that stands out.
func (ask *lessonAsk) decide(id, do, typed string) {
	d := lesson.Decision{ID: id, Do: lesson.Deed(do)}
	ask.Typed[id] = typed
	switch d.Do {
	case lesson.Keep, lesson.LeaveOut:
	case lesson.Correct:
		v, err := strconv.ParseFloat(strings.ReplaceAll(typed, ",", "."), 64)
		if err != nil || !(v >= -1e5 && v <= 1e5) {
			ask.Wrong[id] = "Type the right value as a number. Until then the reading is kept."
			return
		}
		d.Value = v
	default:
		return
	}
	ask.Odd = append(ask.Odd, d)
}

// query is the same ask as an address has it.
func (ask lessonAsk) query(a *garden.Assessment) url.Values {
	q := url.Values{"tub": {garden.Slug(a.Tubs[ask.Tub].Name)}, "number": {strconv.FormatUint(ask.Choice.Seed, 10)}}
	if !ask.All {
		q.Set("band", string(ask.Band))
	}
	if ask.Filled {
		q.Set("graph", "filled")
	}
	for _, d := range ask.Odd {
		q.Set("odd-"+d.ID, string(d.Do))
		if d.Do == lesson.Correct {
			q.Set("value-"+d.ID, ask.Typed[d.ID])
		}
	}
	return q
}

// showLessons lists the sheets that can be had.
func (s *Server) showLessons(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.readyFor(w, r, s.taught)
	if !ok {
		return
	}
	ask := lessonAsked(a, o.Plan, r.URL.Query())
	f := s.frameOf(r, o, a, "class", "Lesson sheets")
	f.Style = []string{lessonStyle}
	s.show(w, http.StatusOK, "lessons", f, lessonsOf(o, a, ask))
}

// oneLesson is the sheet that an address names; what cannot be given is answered
// here.
func (s *Server) oneLesson(w http.ResponseWriter, r *http.Request) (o *opened, a *garden.Assessment, ask lessonAsk, sheet lesson.Sheet, ok bool) {
	if o, a, ok = s.readyFor(w, r, s.taught); !ok {
		return
	}
	ask = lessonAsked(a, o.Plan, r.URL.Query())
	ask.Template = strings.TrimSuffix(strings.TrimSuffix(r.PathValue("sheet"), ".pdf"), "-key")
	t, known := lesson.Named(ask.Template)
	if known && !ask.All && !t.For(ask.Band) {
		ask.Band, ask.All = "", true
	}
	if sheet, ok = a.Lesson(ask.Tub, ask.Choice); !ok {
		s.refuse(w, r, http.StatusNotFound, "There is no lesson sheet of this name.", "The page ‘Lesson sheets’ lists all of them.")
	}
	return
}

// showLesson is one sheet with its key, or one of the two as a file.
func (s *Server) showLesson(w http.ResponseWriter, r *http.Request) {
	o, a, ask, sheet, ok := s.oneLesson(w, r)
	if !ok {
		return
	}
	if strings.HasSuffix(r.PathValue("sheet"), ".pdf") {
		s.lessonFile(w, r, o, a, sheet)
		return
	}
	f := s.frameOf(r, o, a, "class", sheet.Template.Title)
	f.Style = []string{paperStyle, lessonStyle}
	s.show(w, http.StatusOK, "lesson", f, lessonOf(o, a, ask, sheet))
}

// lessonFile is the pupil's copy or the key as a PDF.
func (s *Server) lessonFile(w http.ResponseWriter, r *http.Request, o *opened, a *garden.Assessment, sheet lesson.Sheet) {
	name := r.URL.Query().Get("paper")
	if name == "" {
		name = a.Paper()
	}
	size, ok := pack.Size(name)
	if !ok {
		s.refuse(w, r, http.StatusBadRequest, "There is no paper of the size "+name+" here.", "Ask for A4 or Letter.")
		return
	}
	if sheet.Why != "" {
		s.refuse(w, r, http.StatusNotFound, "This sheet cannot be made for this tub. "+sheet.Why, "Choose another tub or another sheet.")
		return
	}
	c := lessons.Single(a, sheet, strings.HasSuffix(r.PathValue("sheet"), "-key.pdf"), revisionOf(o))
	text, err := c.PDF(scene.Size(size))
	if err != nil {
		s.undrawn(w, r, err)
		return
	}
	w.Header().Set("Content-Type", pack.PDF.MediaType())
	w.Header().Set("Content-Disposition", mime.FormatMediaType("attachment", map[string]string{"filename": c.Name}))
	w.Header().Set("Content-Length", strconv.Itoa(len(text)))
	_, _ = w.Write(text)
}
