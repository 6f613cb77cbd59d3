package garden

import (
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/meal"
	"rootbell/internal/school/steering"
	"rootbell/internal/school/trouble"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/reading"
)

// Trouble is what may be wrong with a tub, from the signs that somebody sees
// and what the assessment's day knows of it.
func (a *Assessment) Trouble(tub int, seen []string) trouble.Answer {
	ask := trouble.Ask{Seen: seen}
	if tub >= 0 && tub < len(a.Tubs) && a.Tubs[tub].Today != nil {
		ask.Known = a.Tubs[tub].Today.known
	}
	return trouble.Diagnose(ask)
}

// Meal is how the questions before a meal stand for a tub.
func (a *Assessment) Meal(tub int, replies map[string]meal.Reply) meal.Answer {
	k := meal.Known{}
	if s := a.Plan.School.Site; s.Kitchen != "" {
		k.KitchenYes, k.KitchenNo = s.Kitchen == plan.AnswerYes, s.Kitchen == plan.AnswerNo
	}
	if tub >= 0 && tub < len(a.Tubs) {
		k.SecondHand = a.Plan.Tubs[tub].Past == "unknown"
		if t := a.Tubs[tub].Today; t != nil {
			k.BadRoots = t.known.RootsBrown || t.known.Smells
		}
	}
	return meal.Judge(replies, k)
}

// ColdWords is how cold cut leaves are kept, in the garden's units.
func (a *Assessment) ColdWords() string {
	return quantity.Format(quantity.Temperature.WithDecimals(0, 0), quantity.Celsius.Base(meal.ColdMostC()), a.Plan.Units)
}

// troubleKnown is what the day knows of the tub, for whoever looks for a cause.
func (k *deskTub) troubleKnown() trouble.Known {
	out := trouble.Known{Units: k.Plan.Units, Still: k.t.setup.Still, Low: k.st.LowestL > 0 && k.st.NowL > 0 && k.st.NowL < k.st.LowestL}
	k.troubleCrop(&out)
	k.troubleRead(&out)
	k.troubleDays(&out)
	place := k.Plan.Place
	out.Humidity = trouble.Of(100 * float64(place.Humidity.Or(0.5)))
	if tap := k.Plan.Tap; !tap.Unknown {
		if v := tap.Chlorine; v.Set() {
			out.ChlorineMgL = trouble.Of(float64(v.High))
		}
		if v := tap.Chloramine; v.Set() && float64(v.High) > out.ChlorineMgL.Value {
			out.ChlorineMgL = trouble.Of(float64(v.High))
		}
	}
	full := &k.Tubs[k.t.index]
	if l := full.Light; l != nil {
		out.DLI, out.DLILow, out.DLIHigh = trouble.Of(l.DLI), l.WantLow, l.WantTop
	}
	if o := full.Oxygen; o != nil {
		out.OxygenMgL = trouble.Of(o.SteadyMgL)
	}
	if m := full.Mix; m != nil {
		for _, miss := range m.Misses {
			if miss.HaveMgL < miss.WantMgL {
				out.Lacks = append(out.Lacks, miss.Element)
			}
		}
	}
	return out
}

func (k *deskTub) troubleCrop(out *trouble.Known) {
	out.ECLow, out.ECHigh = float64(k.st.Low), float64(k.st.High)
	out.PHLow, out.PHHigh = float64(k.good.Low), float64(k.good.High)
	if len(k.t.growth.each) == 0 {
		return
	}
	out.Crop = k.t.growth.each[0].Name
	if c, known := crop.Find(out.Crop); known {
		out.Heading = c.Heading()
	}
}

// troubleRead takes what was last read, where that is not doubtful.
func (k *deskTub) troubleRead(out *trouble.Known) {
	if k.st.EC.High > 0 {
		out.EC = trouble.Of(float64(k.st.EC.Mid()))
	}
	if e, ok := reading.Last(k.entries, reading.FieldPH, k.today.At); ok && !e.Doubts(reading.FieldPH) {
		out.PH = trouble.Of(float64(e.PH.Read.Mid()))
	}
	if e, ok := reading.Last(k.entries, reading.FieldWater, k.today.At); ok && e.Water.Set() && !e.Doubts(reading.FieldWater) {
		out.WaterC = trouble.Of(float64(e.Water.Value))
	}
	for _, e := range slices.Backward(k.entries) {
		if e.Roots.Colour != "" || e.Roots.Smell {
			out.RootsBrown, out.Smells = e.Roots.Colour == reading.Brown, e.Roots.Smell
			break
		}
	}
	out.MeterDue = out.EC.Known && k.meterDue(reading.FieldEC) != "" || out.PH.Known && k.meterDue(reading.FieldPH) != ""
}

// troubleDays takes how long ago things were done.
func (k *deskTub) troubleDays(out *trouble.Known) {
	if at, _ := k.since(); !at.IsZero() {
		out.SinceChange = trouble.Of(k.today.At.Sub(at).Hours() / 24)
	}
	if day, known := k.planted(); known && k.today.On.Set() {
		out.SinceMove = trouble.Of(float64(k.today.On.Since(day)))
	}
	if b := k.back(); b != nil {
		out.SinceAway = trouble.Of(float64(k.today.On.Since(b.To)))
	}
	for _, e := range slices.Backward(k.entries) {
		if e.Did(reading.Fed) || e.Did(reading.Corrected) || e.Did(reading.ToppedUp) || e.Did(reading.ChangedOut) {
			out.SinceFed = trouble.Of(k.today.At.Sub(e.At).Hours())
			break
		}
	}
	for _, a := range k.due {
		out.Leak = out.Leak || a.Do == steering.SeekLeak
		if a.Do == steering.ChangeOut && a.Code == "changeout-build-up" {
			out.Gathered = "what the tap brings and plants leave has built up"
		}
	}
}
