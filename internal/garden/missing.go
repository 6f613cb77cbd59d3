package garden

import (
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/netcup"
)

// missing notes what the plan leaves out and what is taken instead, where it
// matters, and what an adult must see to.
func (a *assessor) missing() {
	if !a.plan.School.AdultDrills.Given || !a.plan.School.AdultDrills.Value {
		a.warn("adult-drills", "school.adult_drills", "The plan does not say that an adult drills. Pupils do not drill.", "Find an adult used to a hole saw, then tick adult_drills.")
	}
	for i := range a.plan.Tubs {
		t := &a.plan.Tubs[i]
		field := fmt.Sprintf("tubs[%d]", i)
		if t.Air.Pump == "below water" {
			a.warn("pump-below-water", field+".air.pump", fmt.Sprintf("%s: a pump below the water line lets water run back down the line when it stops.", t.Name), "Stand it outside the tub, above the water, tied so that it cannot fall in, with a check valve in the line.")
		}
		if t.Lid.Size.Set() && t.Outside != nil && t.Outside.Size.Set() {
			if t.Lid.Size[0].Value > t.Outside.Size[0].Value || t.Lid.Size[1].Value > t.Outside.Size[1].Value {
				a.warn("lid-over-outside", field+".lid.size", fmt.Sprintf("%s: the lid's flat part is bigger than the tub's outside.", t.Name), "One of the two was measured wrong.")
			}
		}
	}
	if !a.plan.Tools.MarkingError.Set() && !a.plan.Tools.DrillingError.Set() {
		a.note("tool-errors", "tools", fmt.Sprintf("Marking and drilling are taken to be good to %s together.", quantity.Format(quantity.SmallLength, netcup.ErrorMM(), a.plan.Units)), "A careful helper with a punch does better: tools.marking_error, tools.drilling_error.")
	}
}
