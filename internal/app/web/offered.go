package web

import (
	"net/http"
	"net/url"
	"strings"

	"rootbell/internal/garden/plan"
)

// offeredBody is the first page for who was offered a kit: the kit's own
// fields, and nothing to measure yet.
type offeredBody struct {
	Units    string
	Form     []group
	More     []group
	Problems []problemView
}

func (s *Server) showOffered(w http.ResponseWriter, r *http.Request) {
	s.offeredPage(w, r, http.StatusOK, &form{posted: url.Values{}, units: systemOf(viewOf(r).orElse().Units)})
}

func (s *Server) offeredPage(w http.ResponseWriter, r *http.Request, status int, f *form) {
	body := offeredBody{Units: f.units.String(), Form: f.newOffer(), More: f.newOfferMore()}
	body.Form[0].Legend = "The offer"
	f.nameOffers(chooseForm{New: body.Form, NewMore: body.More})
	body.Problems = f.mends(0)
	frame := s.plainFrame(r, "A kit on offer", "start")
	frame.Here = "/offered"
	frame.Style = []string{chooseStyle}
	s.show(w, status, "offered", frame, body)
}

// offered makes a garden of the starter plan with the offer in it, so that the
// kit stands beside building from the first answer on.
func (s *Server) offered(w http.ResponseWriter, r *http.Request) {
	if !s.readForm(w, r) {
		return
	}
	f := &form{posted: r.PostForm, units: systemOf(postedView(r.PostForm).Units)}
	item, problem := f.kitItem()
	text := []byte(plan.Starter(f.units))
	if problem != nil {
		f.problems = []plan.Problem{*problem}
	} else {
		out, err := plan.Append(text, "offers", item)
		if err != nil {
			f.problems = []plan.Problem{{Field: kit + "name", What: err.Error(), Hint: "Type it in plain words and numbers."}}
		} else {
			text = out
			_, f.problems = plan.Parse("plan", text)
			f.intoKit(f.problems)
		}
	}
	if len(f.problems) > 0 {
		s.offeredPage(w, r, http.StatusUnprocessableEntity, f)
		return
	}
	why := "begun with an offer: " + strings.TrimSpace(r.PostForm.Get(kit+"name"))
	g, err := s.Store.Create(r.Context(), nameOf(text), text, why, s.Now())
	if err != nil {
		s.failed(w, r, err)
		return
	}
	http.Redirect(w, r, "/g/"+g.ID+"/choose?said=offered", http.StatusSeeOther)
}
