package netcup

// What a lid of foam board wants, in mm.

// FoamWebMM is what must be left between two holes.
func FoamWebMM() float64 { return Facts.Get(factLidWebFoam).Value }

// FoamEdgeMM is what must be left between a hole's rim and the board's edge.
func FoamEdgeMM() float64 { return Facts.Get(factLidHoleToEdgeFoam).Value }

// UnderFoamMM is how much of a cup hangs below the board, at least.
func UnderFoamMM() float64 { return Facts.Get(factCupUnderFoam).Value }
