package garden

import (
	"fmt"
	"strings"

	"rootbell/internal/base/finding"
)

// ofWater are the parts of a plan that say what the water is mixed from; their
// dangers concern no lid.
var ofWater = []string{"tap", "blend", "fertilisers", "acids", "bases", "feed", "stocks", "spoons", "bleach"}

// StopOf is why nobody may drill a tub's lid: the first stop that concerns the
// tub, or the garden as a whole. Empty where nothing stops it.
func (a *Assessment) StopOf(tub int) string {
	return a.stopOf(tub, func(f finding.Finding) bool {
		return !OfMix(f.Field) && !within("school", f.Field) && !within("offers", f.Field)
	})
}

// StopMixOf is why nobody may mix a tub's solution: the first stop about the
// water or the feed. Empty where nothing stops it, or Mix was not asked for.
func (a *Assessment) StopMixOf(tub int) string {
	return a.stopOf(tub, func(f finding.Finding) bool { return OfMix(f.Field) || strings.HasSuffix(f.Field, ".max_fill") })
}

func (a *Assessment) stopOf(tub int, concerns func(finding.Finding) bool) string {
	own := fmt.Sprintf("tubs[%d]", tub)
	for _, f := range a.Findings {
		if f.Level == finding.Stop && concerns(f) && (!strings.HasPrefix(f.Field, "tubs[") || strings.HasPrefix(f.Field, own)) {
			return f.Text
		}
	}
	return ""
}

// OfMix tells whether a finding's field is about what the water is mixed from.
func OfMix(field string) bool {
	for _, part := range ofWater {
		if within(part, field) {
			return true
		}
	}
	_, below, inTub := strings.Cut(field, "].")
	return inTub && strings.HasPrefix(field, "tubs[") && within("feed", below)
}

// within tells whether a field is a part of the plan, or stands in it.
func within(part, field string) bool {
	rest, is := strings.CutPrefix(field, part)
	return is && (rest == "" || rest[0] == '.' || rest[0] == '[')
}
