package garden

import (
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/solution"
)

// MixTooMuch is the tub after its dose went in more than once: what the meter
// then shows, and what is swapped for water to come back.
type MixTooMuch struct {
	Times float64 `json:"times"` // the dose that the tub should have
	EC    float64 `json:"ec_ms_cm"`
	SwapL float64 `json:"swap_l"`

	Key string `json:"-"`
}

// mishaps are how often a dose may have gone in by mistake.
var mishaps = []float64{1.5, 2, 3}

// tooMuch enters what a mistaken dose does to the tub, by the mix's own curve.
func (k *tubMix) tooMuch() {
	if k.out.EC == nil {
		return
	}
	curve := k.out.Curve()
	litres := quantity.Litre.From(k.litres.Base)
	right := curve.EC(1)
	for _, times := range mishaps {
		ec, swap, ok := curve.TooMuch(litres, (times-1)*litres, right, right)
		if !ok {
			continue
		}
		b := k.b.In(fmt.Sprintf("too_much_%g", times))
		_, n := solution.ShowThin(b, k.litres, times, 1)
		k.out.TooMuch = append(k.out.TooMuch, MixTooMuch{Times: times, EC: quantity.Round(ec, 2), SwapL: quantity.Round(swap, 2), Key: n.Key})
	}
}

// TooMuchWords are what is done after a mistaken dose: one sentence for each.
func (m *Mix) TooMuchWords(s quantity.System) []string {
	if len(m.TooMuch) == 0 {
		return nil
	}
	name := map[float64]string{1.5: "half as much again", 2: "twice", 3: "three times"}
	var out []string
	for _, x := range m.TooMuch {
		out = append(out, fmt.Sprintf("The dose went in %s: the meter shows about %s. Take out %s and fill up with plain water.",
			name[x.Times], m.ECWords(x.EC), quantity.Format(quantity.Volume, quantity.Litre.Base(x.SwapL), s)))
	}
	return append(out, "With plants in the tub take out no more than half of it at once; do the rest the next day.")
}
