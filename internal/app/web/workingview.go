package web

import (
	"math"
	"regexp"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden"
)

// workingView is one number with its working, for the nested unfolding.
type workingView struct {
	Garden  string // the garden's id, for links
	Key     string
	Name    string
	Result  string
	Symbol  string
	Formula string
	PutIn   string
	Letters []letterView
	Range   string
	Basis   string
	Source  string
	From    []workingView // what went in, unfolded as far as the page goes
	Deeper  bool          // there is more behind the numbers put in than shown
	Open    bool
}

// letterView is one letter of a formula with what was put in for it.
type letterView struct {
	Letter, Meaning, Value, Key string
	Blank                       bool // worked out earlier on the same sheet
}

// mostUnfolded is how many numbers one page unfolds, so that it stays small.
const mostUnfolded = 60

// unfolding makes the views of one page.
type unfolding struct {
	garden string
	system quantity.System
	left   int
}

// workingOf is the working of a number, unfolded level by level as far as depth.
func workingOf(a *garden.Assessment, id string, n working.Number, depth int) workingView {
	u := unfolding{id, a.Plan.Units, mostUnfolded}
	v := u.one(n)
	u.fill(&v, n, depth)
	return v
}

func (u *unfolding) one(n working.Number) workingView {
	shown := n.Show(u.system)
	v := workingView{Garden: u.garden, Key: n.Key, Name: n.Name, Symbol: n.Symbol, Basis: string(n.Basis), Source: n.Source, Result: resultOf(shown), Deeper: len(n.Inputs) > 0}
	if shown.None {
		v.Result = "no result"
	}
	if n.Law == nil {
		return v
	}
	v.Formula, v.PutIn = sums(shown.Formula), sums(shown.PutIn)
	for i, w := range n.Law.Where {
		if i < len(n.Inputs) {
			v.Letters = append(v.Letters, letterView{w.Name, w.Meaning, resultOf(n.Inputs[i].Show(u.system)), n.Inputs[i].Key, false})
		}
	}
	if shown.Low != shown.High {
		v.Range = quantity.FormatNumber(shown.Low, shown.Decimals) + " to " + quantity.FormatNumber(shown.High, shown.Decimals) + " " + shown.Unit
	}
	return v
}

// fill unfolds what went in, breadth before depth so that the page's share is
// spent on the nearest.
func (u *unfolding) fill(v *workingView, n working.Number, depth int) {
	if depth == 0 || u.left < len(n.Inputs) {
		return
	}
	seen := map[string]bool{}
	var inputs []working.Number
	for _, in := range n.Inputs {
		if !seen[in.Key] {
			seen[in.Key] = true
			inputs = append(inputs, in)
		}
	}
	v.Deeper = false
	u.left -= len(inputs)
	v.From = make([]workingView, len(inputs))
	for i, in := range inputs {
		v.From[i] = u.one(in)
	}
	for i, in := range inputs {
		u.fill(&v.From[i], in, depth-1)
	}
}

func resultOf(s working.Shown) string {
	if s.None || math.IsNaN(s.Value) {
		return "not known"
	}
	return strings.TrimSpace(strings.ReplaceAll(quantity.FormatNumber(s.Value, s.Decimals), "-", "−") + "\u00a0" + s.Unit)
}

// sums writes a formula with the signs of a school book. It stays one grammar
// with what the terminal shows.
func sums(formula string) string {
	formula = piPattern.ReplaceAllString(formula, "π")
	return strings.NewReplacer("^2", "²", "^3", "³", "sqrt(", "√(", "*", " × ", "-", " − ", "+", " + ", "/", " / ").Replace(formula)
}

var piPattern = regexp.MustCompile(`\bpi\b`)

// numberOf is a number of the assessment to unfold; nil without one.
func numberOf(o *opened, a *garden.Assessment, key string) *workingView {
	n, ok := a.Book.Find(key)
	if key == "" || !ok || !n.Known() {
		return nil
	}
	v := workingOf(a, o.ID, n, 0)
	return &v
}

// numbersOf are the numbers to unfold of which there are any, by the ends of
// their keys.
func numbersOf(o *opened, a *garden.Assessment, head string, ends ...string) []workingView {
	var out []workingView
	for _, end := range ends {
		if v := numberOf(o, a, head+end); v != nil {
			out = append(out, *v)
		}
	}
	return out
}
