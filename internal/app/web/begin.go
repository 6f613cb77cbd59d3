package web

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/figure"
)

// beginForm asks the fewest questions that lead to a lid: units and paper, the
// tub, its lid, the cup and the crop.
type beginForm struct {
	Units, Paper string
	Shape        string
	Name, Tub    field
	Inside       []field
	Lid          []field
	Cup          []field
	Crop         field
	Problems     []problemView
	TubPicture   pictures
	LidPicture   pictures
	CupPicture   pictures
	Defaults     []defaultRow
	OtherShapes  [][2]string
	LidRound     bool
}

// defaultRow is something taken as given until the teacher says otherwise.
type defaultRow struct{ What, Value, Source string }

// question is one thing to measure: its path in the plan, its label, and the
// letter of its ring in the drawing.
type question struct{ path, label, letter string }

var insideQuestions = map[string][]question{
	"box": {
		{"tubs[0].inside.top[0]", "top, long", figure.LetterTopLong},
		{"tubs[0].inside.top[1]", "top, wide", figure.LetterTopWide},
		{"tubs[0].inside.base[0]", "base, long", figure.LetterBaseLong},
		{"tubs[0].inside.base[1]", "base, wide", figure.LetterBaseWide},
		{"tubs[0].inside.height", "height", figure.LetterHeight},
	},
	"round": {
		{"tubs[0].round.top", "top, across", figure.LetterTopLong},
		{"tubs[0].round.base", "base, across", figure.LetterBaseLong},
		{"tubs[0].round.height", "height", figure.LetterHeight},
	},
	"poured": {
		{"tubs[0].poured[0].volume", "first, poured in so far", figure.LetterPoured},
		{"tubs[0].poured[0].depth", "how deep it stands", figure.LetterDeep},
		{"tubs[0].poured[1].volume", "then, so far", figure.LetterPoured},
		{"tubs[0].poured[1].depth", "how deep it stands", figure.LetterDeep},
		{"tubs[0].poured[2].volume", "full to the rim", figure.LetterPoured},
		{"tubs[0].poured[2].depth", "how deep it stands", figure.LetterDeep},
	},
}

var (
	boxLid   = []question{{"tubs[0].lid.size[0]", "flat, long", figure.LetterLidLong}, {"tubs[0].lid.size[1]", "flat, wide", figure.LetterLidWide}}
	roundLid = []question{{"tubs[0].lid.diameter", "flat, across", figure.LetterLidLong}}
	cupAsked = []question{
		{"tubs[0].cup.rim", "over the rim", figure.LetterCupRim},
		{"tubs[0].cup.body", "under the rim", figure.LetterCupBody},
		{"tubs[0].cup.depth", "depth", figure.LetterCupDepth},
	}
)

// newBegin makes the form, filled with what was posted.
func newBegin(v viewing, shape string, posted url.Values, problems []plan.Problem) beginForm {
	if insideQuestions[shape] == nil {
		shape = "box"
	}
	b := beginForm{Units: v.Units, Paper: v.Paper, Shape: shape, LidRound: shape == "round"}
	f := &form{posted: posted, units: systemOf(v.Units), problems: problems}
	if posted == nil {
		f.posted = url.Values{}
	}
	ask := func(questions []question) []field {
		var out []field
		for _, q := range questions {
			one := f.field(q.path, q.label, " ")
			one.Hint, one.Letter = "", q.letter
			out = append(out, one)
		}
		return out
	}
	b.Inside = ask(insideQuestions[shape])
	if b.LidRound {
		b.Lid = ask(roundLid)
	} else {
		b.Lid = ask(boxLid)
	}
	b.Cup = ask(cupAsked)
	b.Crop = f.field("tubs[0].crop", "Crop", "Lettuce is the surest first crop: six to seven weeks from seed.")
	b.Name = f.field("garden", "What the garden is called", "For instance the room. No person's name.")
	for _, p := range problems {
		b.Problems = append(b.Problems, problemView{What: p.What, Hint: p.Hint, Field: p.Field, Where: b.labelOf(p.Field), Address: "#" + idOf(p.Field)})
	}
	b.pictures(f)
	b.Defaults = defaultsOf(systemOf(v.Units), b.Crop.Value)
	for _, other := range [][2]string{{"box", "A box"}, {"round", "Round tub"}, {"poured", "Odd shape: pour and measure"}} {
		if other[0] != shape {
			b.OtherShapes = append(b.OtherShapes, other)
		}
	}
	return b
}

// labelOf is the ring and the label of a field, for the list of what to mend.
func (b *beginForm) labelOf(path string) string {
	for _, f := range append(append(append([]field{b.Name, b.Crop}, b.Inside...), b.Lid...), b.Cup...) {
		if f.Name == path {
			return strings.TrimSpace(f.Letter + " " + f.Label)
		}
	}
	return ""
}

func systemOf(units string) quantity.System {
	if units == "us" {
		return quantity.US
	}
	return quantity.Metric
}

// begun is the document that a filled form stands for, and what is missing.
func begun(v viewing, shape string, posted url.Values) ([]byte, []plan.Problem) {
	f := &form{posted: posted, units: systemOf(v.Units)}
	b := newBegin(v, shape, posted, nil)
	value := func(path string) string { return flowText(f.typedIn(path, posted.Get(path))) }
	var problems []plan.Problem
	for _, one := range append(append(append([]field{}, b.Inside...), b.Lid...), b.Cup...) {
		if p, wrong := f.measureWrong(one); wrong {
			problems = append(problems, p)
		}
	}
	name := strings.TrimSpace(posted.Get("garden"))
	if name == "" {
		name = "Classroom garden"
	}
	var t strings.Builder
	fmt.Fprintf(&t, "# Made from the measures typed on the first page; every line can be changed.\nrootbell: 1\ngarden: %s\nunits: %s\npaper: %s\n", quoted(name), v.Units, v.Paper)
	fmt.Fprintf(&t, "tubs:\n  - name: Tub 1\n    crop: %s\n    plants: best\n", quoted(posted.Get("tubs[0].crop")))
	switch b.Shape {
	case "round":
		fmt.Fprintf(&t, "    round: {top: %s, base: %s, height: %s}\n", value("tubs[0].round.top"), value("tubs[0].round.base"), value("tubs[0].round.height"))
		fmt.Fprintf(&t, "    lid: {diameter: %s}\n", value("tubs[0].lid.diameter"))
	case "poured":
		t.WriteString("    poured:\n")
		for i := range 3 {
			fmt.Fprintf(&t, "      - {volume: %s, depth: %s}\n", value(fmt.Sprintf("tubs[0].poured[%d].volume", i)), value(fmt.Sprintf("tubs[0].poured[%d].depth", i)))
		}
	default:
		fmt.Fprintf(&t, "    inside: {top: [%s, %s], base: [%s, %s], height: %s}\n", value("tubs[0].inside.top[0]"), value("tubs[0].inside.top[1]"), value("tubs[0].inside.base[0]"), value("tubs[0].inside.base[1]"), value("tubs[0].inside.height"))
	}
	if b.Shape != "round" {
		fmt.Fprintf(&t, "    lid: {size: [%s, %s]}\n", value("tubs[0].lid.size[0]"), value("tubs[0].lid.size[1]"))
	}
	fmt.Fprintf(&t, "    cup: {body: %s, rim: %s, depth: %s}\n    layout: ruler\n", value("tubs[0].cup.body"), value("tubs[0].cup.rim"), value("tubs[0].cup.depth"))
	text := []byte(t.String())
	if len(problems) > 0 {
		return text, problems
	}
	_, problems = plan.Parse("plan", text)
	return text, problems
}

// measureWrong tells what is wrong with a measure by itself, so that an empty
// field beside it hides nothing.
func (f *form) measureWrong(one field) (plan.Problem, bool) {
	if strings.TrimSpace(one.Value) == "" {
		return plan.Problem{Field: one.Name, What: one.Letter + " is empty", Hint: "Measure it and write it here."}, true
	}
	spec, _ := plan.SpecAt(one.Name)
	_, err := quantity.Parse(spec.Kind, f.typedIn(one.Name, one.Value))
	var wrong *quantity.Error
	if errors.As(err, &wrong) {
		return plan.Problem{Field: one.Name, What: one.Letter + ": " + wrong.What, Hint: wrong.Hint}, true
	}
	return plan.Problem{}, false
}

// postedView reads the first question.
func postedView(posted url.Values) viewing {
	v := viewing{}
	if posted.Get("units") == "us" {
		v.Units = "us"
	}
	if p := posted.Get("paper"); p == "A4" || p == "Letter" {
		v.Paper = p
	}
	return v.orElse()
}

// begin makes a garden from the first page.
func (s *Server) begin(w http.ResponseWriter, r *http.Request) {
	if !s.readForm(w, r) {
		return
	}
	v := postedView(r.PostForm)
	shape := r.PostForm.Get("shape")
	if other := r.PostForm.Get("other"); other != "" {
		s.startPage(w, r, http.StatusOK, newBegin(v, other, r.PostForm, nil))
		return
	}
	text, problems := begun(v, shape, r.PostForm)
	if len(problems) > 0 {
		s.startPage(w, r, http.StatusUnprocessableEntity, newBegin(v, shape, r.PostForm, problems))
		return
	}
	g, err := s.Store.Create(r.Context(), nameOf(text), text, "begun with the first measures", s.Now())
	if err != nil {
		s.failed(w, r, err)
		return
	}
	http.Redirect(w, r, "/g/"+g.ID+"/build?said=begun", http.StatusSeeOther)
}

// tryBegin draws what is being measured, while it is typed.
func (s *Server) tryBegin(w http.ResponseWriter, r *http.Request) {
	if !s.readForm(w, r) {
		return
	}
	b := newBegin(postedView(r.PostForm), r.PostForm.Get("shape"), r.PostForm, nil)
	answerJSON(w, tried{Problems: []problemView{}, Parts: map[string]string{
		"tub-picture": s.part("start", "both", b.TubPicture),
		"lid-picture": s.part("start", "both", b.LidPicture),
		"cup-picture": s.part("start", "both", b.CupPicture),
	}})
}
