package garden

import (
	"fmt"
	"strings"

	"rootbell/internal/base/finding"
)

// StopOf is why nobody may drill a tub's lid: the first stop that concerns the
// tub, or the garden as a whole; the school's calendar concerns no lid. Empty
// where nothing stops it.
func (a *Assessment) StopOf(tub int) string {
	own := fmt.Sprintf("tubs[%d]", tub)
	for _, f := range a.Findings {
		if strings.HasPrefix(f.Field, "school.") {
			continue
		}
		if f.Level == finding.Stop && (!strings.HasPrefix(f.Field, "tubs[") || strings.HasPrefix(f.Field, own)) {
			return f.Text
		}
	}
	return ""
}
