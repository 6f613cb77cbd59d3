package garden

import (
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/oxygen"
)

// checkAir says what there is to say about a tub's air, its pump and its water.
func (t *tubState) checkAir(tub oxygen.Tub, out *Oxygen) {
	field := t.field + ".air.flow"
	if out.Assumed {
		field = t.field
		t.note("air-assumed", field, fmt.Sprintf("%s: it is not said what the pump gives; %s is taken, by the trade's rule.", t.name, t.flow(out.HaveLMin)), "Read the pump's label, or fill an upturned bottle under water and count the seconds: air.flow.")
	}
	for _, f := range tub.Check(field) {
		t.findings = append(t.findings, t.named(f))
	}
	if head := t.typed.Air.Head; head.Set() && float64(head.Value) <= out.HeadMM {
		t.warn("pump-head", t.field+".air.head", fmt.Sprintf("%s: the pump blows against %s of water at the most, and %s stand over the stone: no air comes.", t.name, t.mm(float64(head.Value)), t.mm(out.HeadMM)),
			"Take a pump with more head, or raise the stone. The tube and the stone ask for some head too.")
	}
	t.warmWaterNow()
}

// warmWaterNow says where the water is warm as the plan has it, not only on a
// warm day.
func (t *tubState) warmWaterNow() {
	w := t.plan.Place.WaterTemperature
	if !w.Set() {
		return
	}
	spinach := false
	for _, g := range t.growth.each {
		spinach = spinach || g.Name == "spinach"
	}
	temperature := func(c float64) string {
		return quantity.Format(quantity.Temperature, quantity.Celsius.Base(c), t.plan.Units)
	}
	for _, f := range oxygen.CheckWater("place.water_temperature", float64(w.Value), spinach) {
		if t.index == 0 || spinach {
			f.Text = fmt.Sprintf("The solution is %s; over %s roots rot more easily, and warm water holds less oxygen.", temperature(float64(w.Value)), temperature(oxygen.WarmFrom(spinach)))
			t.findings = append(t.findings, f)
		}
	}
}

// flow writes an air flow.
func (t *tubState) flow(lMin float64) string {
	return quantity.Format(quantity.AirFlow, quantity.LitrePerMinute.Base(lMin), t.plan.Units)
}
