package web

import (
	"fmt"
	"net/http"
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/figure"
)

// lightBody is the page of one tub's light and oxygen. The same unfolds in the
// page Build.
type lightBody struct {
	ID, Tub string
	Others  []string
	Air     airView
}

// airView is the light at every hole of a tub and the oxygen in its water.
type airView struct {
	Picture  pictures
	Holes    []lightRow
	Light    []string
	Air      []string
	Workings []workingView
}

type lightRow struct {
	N                int
	PPFD, DLI, Share string
}

const hoursNumber = "light.hours_needed"

// airNumbers are the numbers of light and oxygen that Build shows, by the end
// of their key.
var airNumbers = []string{"limit_lamp", "light.dli", hoursNumber, "light.lamp_fee", "light.lamp_energy", "oxygen.plants_oxygen", "oxygen.oxygen_steady", "oxygen.air_needed", "oxygen.pump_quiet"}

// showLight is the page.
func (s *Server) showLight(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.ready(w, r)
	if !ok {
		return
	}
	tub := tubAsked(o.Plan, r.URL.Query().Get("tub"))
	body := lightBody{ID: o.ID, Tub: o.Plan.Tubs[tub].Name, Others: o.otherTubs(tub), Air: airOf(o, a, tub)}
	f := s.frameOf(r, o, a, "build", "Light and oxygen")
	f.Here = pageAddress("light", o.ID, body.Tub, "")
	f.Drawing = body.Tub + ": light at every hole"
	f.Script = []string{"working.js"}
	s.show(w, http.StatusOK, "light", f, body)
}

// showLightPart is the same as a piece that unfolds in the page Build.
func (s *Server) showLightPart(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.ready(w, r)
	if !ok {
		return
	}
	v := airOf(o, a, tubAsked(o.Plan, r.URL.Query().Get("tub")))
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = w.Write([]byte(s.part("light", "light-and-air", v)))
}

func airOf(o *opened, a *garden.Assessment, index int) airView {
	t := &a.Tubs[index]
	v := airView{Light: a.LightWords(index), Air: a.AirWords(index)}
	if l := t.Light; l != nil {
		for _, h := range l.PPFD {
			row := lightRow{N: h.N, PPFD: quantity.FormatNumber(h.PPFD, 0), DLI: quantity.FormatNumber(h.DLI, 1)}
			if l.DLI > 0 {
				row.Share = fmt.Sprintf("%.0f\u00a0%%", 100*h.DLI/l.DLI)
			}
			v.Holes = append(v.Holes, row)
		}
		v.Picture = pictures{svg(figure.Light(a, index, figure.Desk)), svg(figure.Light(a, index, figure.Hand)), "The light on the leaf at each hole, in µmol/m²/s, under the hole's number."}
		if l.From == garden.FromLamps {
			v.Picture.Note += " Tinted: the lamp over the lid."
		}
	}
	shown := airNumbers
	if t.Light == nil || t.Light.NeedH == 0 { // more than a day has, or than leaves stand
		shown = slices.DeleteFunc(slices.Clone(shown), func(key string) bool { return key == hoursNumber })
	}
	v.Workings = numbersOf(o, a, "tubs."+garden.Slug(t.Name)+".", shown...)
	return v
}
