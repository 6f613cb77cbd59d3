package garden

import (
	"fmt"

	"rootbell/internal/garden/plan"
	"rootbell/internal/science/netcup"
)

// FoamRule is what a lid of foam board wants, which tears where plastic bends:
// lengths in mm.
type FoamRule struct {
	WebMM  float64 // left between two holes in the worst case
	EdgeMM float64 // left between a hole and the board's edge
	CupMM  float64 // of the cup below the board
}

// FoamRules are the lengths, common practice without a source.
func FoamRules() FoamRule {
	return FoamRule{WebMM: netcup.FoamWebMM(), EdgeMM: netcup.FoamEdgeMM(), CupMM: netcup.UnderFoamMM()}
}

// foamCups stops a cup that ends inside its board or close under it, where no
// water reaches it.
func (a *assessor) foamCups() {
	for i := range a.plan.Tubs {
		a.foamCup(&a.plan.Tubs[i], fmt.Sprintf("tubs[%d].cup.depth", i))
	}
}

func (a *assessor) foamCup(t *plan.Tub, field string) {
	if t.Lid.Material != "foam" || !t.Cup.Depth.Set() {
		return
	}
	board := netcup.ThicknessMM(true)
	if t.Lid.Thickness.Set() {
		board = float64(t.Lid.Thickness.Value)
	}
	if deep, least := float64(t.Cup.Depth.Value), board+netcup.UnderFoamMM(); deep < least {
		a.stop("foam-cup-short", field, fmt.Sprintf("%s: the cup is %s deep and the foam board %s thick, so too little of it hangs in the tub.", t.Name, a.small(deep), a.small(board)),
			fmt.Sprintf("Use a cup at least %s deep, or a thinner board (common practice).", a.small(least)))
	}
}
