package season

import "rootbell/internal/science/crop"

// CoverMM is how deep a crop's seed lies in its plug, in mm: lettuce is hardly
// covered, other seed by two to three times its thickness.
func CoverMM(c crop.Crop) float64 {
	if c.Lettuce() {
		return value(factCoverLettuce)
	}
	return value(factCoverOther)
}
