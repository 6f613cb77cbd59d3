package figure_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"rootbell/internal/paper/figure"
	"rootbell/internal/school/trouble"
)

// Every sign has a drawing of its own, and no drawing is without a sign.
func TestEverySignIsDrawn(t *testing.T) {
	drawn := map[string]string{}
	for _, s := range trouble.Signs() {
		svg, ok := figure.Sign(s.ID)
		if !ok {
			t.Errorf("%s has no drawing", s.ID)
			continue
		}
		if other, twice := drawn[svg]; twice {
			t.Errorf("%s is drawn like %s", s.ID, other)
		}
		drawn[svg] = s.ID
		if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
			t.Errorf("%s: %s", s.ID, svg)
		}
		for d := xml.NewDecoder(strings.NewReader(svg)); ; {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatalf("%s: %v", s.ID, err)
			}
		}
	}
	if len(figure.Signs()) != len(trouble.Signs()) {
		t.Errorf("%d drawings, %d signs", len(figure.Signs()), len(trouble.Signs()))
	}
	if _, ok := figure.Sign("nothing"); ok {
		t.Error("what is no sign has a drawing")
	}
}
