package netcup

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func small(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.SmallLength}
}

var (
	errorLaw = working.Must(working.Law{
		Symbol: "e", Kind: quantity.SmallLength, Formula: "m+d", Where: []working.Symbol{small("m", "marking error"), small("d", "drilling error")},
		Basis: working.OfTrade, Source: "the worst case of a mark and of a saw started on it, added",
	})
	edgeLaw = working.Must(working.Law{
		Symbol: "k", Kind: quantity.SmallLength, Formula: "max(E, h/2+w+e)",
		Where: []working.Symbol{small("E", "edge distance wanted"), small("h", "hole"), small("w", "least web"), small("e", "marking and drilling error")},
		Basis: working.OfTrade, Source: "plastic left between hole and edge in the worst case",
	})
	clearLaw = working.Must(working.Law{
		Symbol: "k", Kind: quantity.SmallLength, Formula: "h/2+max(c, w+e)",
		Where: []working.Symbol{small("h", "hole"), small("c", "plastic wanted beside it"), small("w", "least web"), small("e", "marking and drilling error")},
		Basis: working.OfTrade, Source: "plastic left between hole and shape in the worst case",
	})
	wallLaw = working.Must(working.Law{
		Symbol: "k", Kind: quantity.SmallLength, Formula: "b/2+g", Where: []working.Symbol{small("b", "cup body"), small("g", "gap to the wall")},
		Basis: working.OfTrade, Source: "the cup hangs free of the tapering wall at the depth of its bottom",
	})
	apartLaw = working.Must(working.Law{
		Symbol: "s", Kind: quantity.SmallLength, Formula: "max(r+l, h+w+2*e)",
		Where: []working.Symbol{
			small("r", "rim"), small("l", "gap between lips"), small("h", "hole"), small("w", "least web"), small("e", "marking and drilling error"),
		},
		Basis: working.OfTrade, Source: "lips side by side, and plastic left between two holes in the worst case",
	})
)

// Wish is what the plan says of a tub's holes; nil where it says nothing.
type Wish struct {
	HoleMM                     float64
	EdgeMM, ClearMM            *float64
	MarkingErrorMM, DrillingMM *float64
	Foam                       bool
}

// Margins are the distances every centre keeps.
type Margins struct {
	Error working.Number
	Edge  working.Number // from the lid's outline
	Clear working.Number // from a keep-clear shape
	Wall  working.Number // from the inner wall at the depth of the cup's bottom
	Apart working.Number // from another centre, at the very least
	Web   working.Number // plastic that must be left in the worst case
}

func row(b *working.Book, key, name, symbol string, id facts.ID, typed *float64) working.Number {
	if typed != nil {
		return b.Typed(key, name, symbol, quantity.SmallLength, *typed, 0)
	}
	f := Facts.Get(id)
	return b.Fact(key, name, symbol, quantity.SmallLength, f.Value, f)
}

// Margins enters the distances to keep into the book.
func (c Cup) Margins(b *working.Book, w Wish) Margins {
	hole := b.Typed("hole", "hole to cut", "h", quantity.SmallLength, w.HoleMM, 0)
	rim := b.Typed("cup_rim", "net cup, over the lip", "r", quantity.SmallLength, c.RimMM, 0)
	body := b.Typed("cup_body", "net cup, body under the lip", "b", quantity.SmallLength, c.BodyMM, 0)
	webID, edgeID := factLidWebRefuse, factLidEdgeMargin
	if w.Foam {
		webID = factLidWebFoam
	}
	var m Margins
	m.Web = row(b, "least_web", "plastic left in the worst case, at least", "w", webID, nil)
	m.Error = b.Work(errorLaw, "hole_error", "marking and drilling error",
		row(b, "marking_error", "marking error", "m", factToolsMarkingError, w.MarkingErrorMM),
		row(b, "drilling_error", "drilling error", "d", factToolsDrillingError, w.DrillingMM))
	edgeWeb := m.Web
	if w.Foam {
		edgeWeb = row(b, "foam_edge", "foam left between hole and edge, at least", "w", factLidHoleToEdgeFoam, nil)
	}
	m.Edge = b.Work(edgeLaw, "margin_edge", "centre to lid edge, at least",
		row(b, "edge_wanted", "edge distance wanted", "E", edgeID, w.EdgeMM), hole, edgeWeb, m.Error)
	m.Clear = b.Work(clearLaw, "margin_clear", "centre to a keep-clear shape, at least", hole,
		row(b, "clear_wanted", "plastic wanted beside a keep-clear shape", "c", factLidClear, w.ClearMM), m.Web, m.Error)
	m.Wall = b.Work(wallLaw, "margin_wall", "centre to the inner wall, at least", body, row(b, "wall_gap", "gap between cup and wall", "g", factLidCupToWallMin, nil))
	m.Apart = b.Work(apartLaw, "margin_apart", "centre to centre, at the very least", rim,
		row(b, "lip_gap", "gap between lips", "l", factLidLipGapMin, nil), hole, m.Web, m.Error)
	return m
}

// DeckOffsetMM is the lid's underside above the rim where the plan is silent.
func DeckOffsetMM() float64 { return Facts.Get(factLidDeckOffset).Value }

// RulerStepMM is the ruler's step where the plan is silent.
func RulerStepMM() float64 { return Facts.Get(factToolsRulerStep).Value }

// ServiceHoleMM is the diameter of the service hole.
func ServiceHoleMM() float64 { return Facts.Get(factLidServiceHole).Value }

// AirHoleMM is the diameter of the air line's hole where no tube is named.
func AirHoleMM() float64 { return Facts.Get(factLidAirlineHole).Value }

// WebWarnMM is the plastic, left in the worst case, below which care is asked.
func WebWarnMM() float64 { return Facts.Get(factLidWebWarn).Value }

// ThicknessMM is the lid's thickness where the plan names none.
func ThicknessMM(foam bool) float64 {
	if foam {
		return Facts.Get(factLidThicknessFoam).Value
	}
	return Facts.Get(factLidThicknessPlastic).Value
}

// WetMass enters a cup with its wet pebbles, without plant.
func WetMass(b *working.Book) working.Number {
	f := Facts.Get(factCupMassWet)
	return b.Fact("cup_mass", "net cup with wet pebbles", "p", quantity.Mass, f.Value, f)
}

// ErrorMM is the marking and drilling error together where the plan names none.
func ErrorMM() float64 {
	return Facts.Get(factToolsMarkingError).Value + Facts.Get(factToolsDrillingError).Value
}
