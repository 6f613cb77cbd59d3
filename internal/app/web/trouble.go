package web

import (
	"html/template"
	"net/http"
	"net/url"
	"slices"

	"rootbell/internal/garden"
	"rootbell/internal/paper/figure"
	"rootbell/internal/school/meal"
	"rootbell/internal/school/trouble"
)

// troubleStyle is the style sheet of the pages Something is wrong and Meal day.
const troubleStyle = "trouble.css"

// mostSigns is how many signs an address may tick.
const mostSigns = 40

// troubleBody is the page on which somebody ticks what is seen.
type troubleBody struct {
	ID     string
	Tub    string
	Tubs   []string
	Asked  bool
	Answer trouble.Answer
	Groups []signGroup
}

// signGroup are the signs of one place.
type signGroup struct {
	Place trouble.Place
	Signs []signView
}

type signView struct {
	trouble.Sign
	Picture template.HTML
	Seen    bool
}

// showTrouble answers what may be wrong, from the signs in the address.
func (s *Server) showTrouble(w http.ResponseWriter, r *http.Request) {
	o, a, _, ok := s.readyOn(w, r)
	if !ok {
		return
	}
	q := r.URL.Query()
	tub := tubAsked(o.Plan, q.Get("tub"))
	seen := q["seen"]
	if len(seen) > mostSigns {
		seen = seen[:mostSigns]
	}
	body := troubleBody{ID: o.ID, Tub: a.Tubs[tub].Name, Tubs: tubNames(a), Asked: len(seen) > 0, Answer: a.Trouble(tub, seen)}
	for _, p := range trouble.Places() {
		g := signGroup{Place: p}
		for _, one := range trouble.Signs() {
			if one.Place == p {
				g.Signs = append(g.Signs, signView{one, svg(figure.Sign(one.ID)), slices.Contains(seen, one.ID)})
			}
		}
		body.Groups = append(body.Groups, g)
	}
	f := s.frameOf(r, o, a, "class", "Something is wrong")
	f.Drawing = body.Tub + ": what is seen"
	f.Style = []string{troubleStyle}
	s.show(w, http.StatusOK, "trouble", f, body)
}

func tubNames(a *garden.Assessment) []string {
	var out []string
	for _, t := range a.Tubs {
		out = append(out, t.Name)
	}
	return out
}

// mealBody is the page of the meal.
type mealBody struct {
	ID     string
	Tub    string
	Tubs   []string
	Asked  bool
	Answer meal.Answer
	Steps  []meal.Step

	Practice string // what a rule without a source is
}

// showMeal holds the replies in the address against the questions that come
// before a meal.
func (s *Server) showMeal(w http.ResponseWriter, r *http.Request) {
	o, a, _, ok := s.readyOn(w, r)
	if !ok {
		return
	}
	q := r.URL.Query()
	tub := tubAsked(o.Plan, q.Get("tub"))
	replies := repliesOf(q)
	body := mealBody{
		ID: o.ID, Tub: a.Tubs[tub].Name, Tubs: tubNames(a), Asked: len(replies) > 0,
		Answer: a.Meal(tub, replies), Steps: meal.Steps(a.ColdWords()), Practice: meal.Practice,
	}
	f := s.frameOf(r, o, a, "class", "Meal day")
	f.Drawing = body.Tub + ": before the meal"
	f.Style = []string{troubleStyle}
	s.show(w, http.StatusOK, "meal", f, body)
}

// repliesOf are the replies in an address; what is no reply counts as none.
func repliesOf(q url.Values) map[string]meal.Reply {
	out := map[string]meal.Reply{}
	for _, g := range meal.Gates() {
		if r := meal.Reply(q.Get(g.ID)); r == meal.Yes || r == meal.No {
			out[g.ID] = r
		}
	}
	return out
}
