package quantity

import (
	"regexp"
	"testing"
)

func TestPatternTakesWhatParseTakes(t *testing.T) {
	for _, tt := range namedByUnits {
		if !regexp.MustCompile(Pattern(tt.kind, false)).MatchString(tt.typed) {
			t.Errorf("the pattern of %s refuses %q", tt.kind.Name, tt.typed)
		}
	}
	for _, text := range []string{"1 1/2 in", "5 ft 2 in", `5'2"`, "2½ in", "14,5\u00a0cm", "−3 mm", "1/4 in"} {
		if !regexp.MustCompile(Pattern(Length, false)).MatchString(text) {
			t.Errorf("the pattern of a length refuses %q", text)
		}
	}
	for _, text := range []string{"80 to 120 mg/L", "80–120 mg/L", "90 ppm", "80 mg/L to 0.1 g/L"} {
		if !regexp.MustCompile(Pattern(Content, true)).MatchString(text) {
			t.Errorf("the pattern of a content refuses %q", text)
		}
	}
	for _, text := range []string{"3", "3 lb", "lb", "", "in 3", "3 inn", "80 to 120 mm"} {
		if regexp.MustCompile(Pattern(Length, false)).MatchString(text) {
			t.Errorf("the pattern of a length takes %q", text)
		}
	}
}
