package cli

import (
	"bytes"
	"slices"
	"strings"

	"rootbell/internal/garden"
)

// reportAir says what is known of a tub's light and oxygen.
func reportAir(b *bytes.Buffer, a *garden.Assessment, t garden.Tub) {
	i := slices.IndexFunc(a.Tubs, func(o garden.Tub) bool { return o.Name == t.Name })
	for _, part := range []struct {
		lead  string
		words []string
	}{{"Light. ", a.LightWords(i)}, {"Oxygen. ", a.AirWords(i)}} {
		if len(part.words) > 0 {
			wrap(b, "", part.lead+strings.Join(part.words, " "))
			b.WriteByte('\n')
		}
	}
}
