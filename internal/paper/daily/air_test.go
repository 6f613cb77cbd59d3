package daily_test

import (
	"bytes"
	"strings"
	"testing"

	"rootbell/internal/paper/daily"
)

// The card has a page's sheet for each tub: its cautions first, the lamp kept
// 15 cm over the leaves (common practice, no source), every hole, and how long
// the pump may be off where there is one.
func TestLightAndAir(t *testing.T) {
	for name, wants := range map[string][]string{
		"fernhollow": {"Do not look into the lamp", "5.0 cm 30.0 cm", "25.0 cm 40.0 cm", "For a quiet lesson", "check valve"},
		"saltbrook":  {"Do not look into the lamp", "2 in 12 in", "10 in 16 in", "For a quiet lesson"},
	} {
		a := example(t, name, "2027-02-01")
		c, ok := daily.LightAndAir(a, "")
		if !ok {
			t.Fatalf("%s: no card", name)
		}
		for _, size := range sizes {
			sheets := c.Sheets(size)
			if len(sheets) != len(a.Tubs) {
				t.Errorf("%s: %d sheets for %d tubs", name, len(sheets), len(a.Tubs))
			}
			said := strings.ReplaceAll(words(sheets), "\u00a0", " ")
			for _, want := range wants {
				if !strings.Contains(said, want) {
					t.Errorf("%s says nothing of %q:\n%s", name, want, said)
				}
			}
			pdf, err := c.PDF(size)
			again, _ := c.PDF(size)
			if err != nil || !bytes.HasPrefix(pdf, []byte("%PDF")) || !bytes.Equal(pdf, again) {
				t.Errorf("%s: %v, %d bytes", name, err, len(pdf))
			}
		}
	}
}
