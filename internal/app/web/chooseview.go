package web

import (
	"fmt"
	"html/template"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/deciding"
	"rootbell/internal/paper/pack"
)

// chooseWork is what the assessment says of the decision, ready to be shown.
// Each of its parts is replaced by itself while a teacher types.
type chooseWork struct {
	ID, Currency string
	Example      bool
	Crops        int
	Bold, Rest   string
	Findings     []findingView
	Options      []wayView
	Needs        []string // that every option has
	Sizes        []garden.ChooseSize
	Senses       []senseView
	Papers       []pack.Paper
	Share        string // that a class brings to the harvest
}

// wayView is one option: its row side by side, and its part of the page.
type wayView struct {
	ID, Name                                      string
	Plants, First, Total, Planted, Harvest, Serve string
	NotYet, NotFood                               string
	Feeds, Which                                  string
	Holes                                         template.HTML
	Caption                                       string
	For, Against, Needs, Unknown                  []string
	Workings                                      []workingView
	Possible, ForFood                             bool
}

type senseView struct {
	Says    string
	Working *workingView
}

func chooseWorkOf(o *opened, a *garden.Assessment, f *form) *chooseWork {
	c := a.Choose
	w := &chooseWork{ID: o.ID, Example: o.Example, Crops: c.Crops, Currency: a.Plan.Currency, Sizes: c.Sizes, Papers: pack.ChooseOf(a, revisionOf(o))}
	w.Bold, w.Rest = c.Answer(a)
	w.Share = quantity.Format(quantity.Share, c.Harvested, quantity.Metric)
	w.Findings = findingsOf(o, a, f, ofOffers, besideOffer)
	needs, same := deciding.CommonNeeds(c)
	w.Needs = needs
	for i := range c.Offers {
		v := optionOf(o, a, &c.Offers[i])
		v.ID = fmt.Sprintf("option-%d", i+1)
		if same {
			v.Needs = nil
		}
		w.Options = append(w.Options, v)
	}
	for _, one := range c.Senses {
		w.Senses = append(w.Senses, senseView{one.Says, numberOf(o, a, one.Key)})
	}
	if len(w.Sizes) < 2 {
		w.Sizes = nil
	}
	return w
}

// ofOffers tells what concerns the offers, and whether an adult drills instead.
func ofOffers(one finding.Finding) bool {
	return strings.HasPrefix(one.Field, "offers") || one.Field == "school.adult_drills"
}

// besideOffer is where an offer is mended that has no field for what is wrong.
func besideOffer(field string) string {
	var index int
	if !scans(field, "offers[%d]", &index) {
		return ""
	}
	return "#" + idOf(fmt.Sprintf("offers[%d].sites", index))
}

// workingEnds are the numbers of an option that unfold on the page.
var workingEnds = []string{"litres_per_site", "plants", "first_outlay", "each_crop", "replacements", "first_crop", "total", "per_planted", "per_harvested", "per_serving", "energy", "mass_water"}

func optionOf(o *opened, a *garden.Assessment, k *garden.ChooseOffer) wayView {
	v := wayView{
		Name: k.Name, Plants: deciding.Plants(k), First: deciding.Amount(k, k.FirstCrop), Total: deciding.Amount(k, k.Total), Planted: deciding.Amount(k, k.PerPlanted),
		Harvest: deciding.Amount(k, k.PerHarvested), Serve: deciding.Amount(k, k.PerServing), Possible: k.Possible, ForFood: k.ForFood,
		Feeds: k.Feeds(a), Which: k.Which(a), For: deciding.For(k), Against: deciding.Against(k), Unknown: k.Unknown,
	}
	for _, words := range k.Needs {
		v.Needs = append(v.Needs, sentence(words))
	}
	if !k.Possible {
		v.NotYet = sentence(strings.Join(k.NotYet, "; "))
	}
	if !k.ForFood {
		v.NotFood = sentence(k.NotFood)
	}
	if f, ok := deciding.HolesFigure(a, k); ok {
		// The drawing writes its own SVG and escapes every word in it.
		v.Holes, v.Caption = template.HTML(f.SVG), f.Caption
	}
	v.Workings = numbersOf(o, a, k.Key+".", workingEnds...)
	return v
}
