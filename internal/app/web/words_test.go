package web

import "testing"

func TestSentencesAreMadeForTeachers(t *testing.T) {
	for text, want := range map[string]string{
		"use mm, cm, m, in or ft":                  "Use mm, cm, m, in or ft.",
		"Measure the bay: width and clear_height.": "Measure the bay: width and 'clear height'.",
		"then tick adult_drills":                   "Then tick 'adult drills'.",
		"write it: place.time_zone":                "Write it: 'place time zone'.",
		"count the seconds: air.flow.":             "Count the seconds: 'air flow'.",
		"is it so?":                                "Is it so?",
		"add height: …":                            "Add height: …",
		"":                                         "",
	} {
		if got := sentence(text); got != want {
			t.Errorf("%q is said as %q, want %q", text, got, want)
		}
	}
	for what, want := range map[string]string{
		"Height: kg is not a unit of length.": "kg is not a unit of length.",
		"'Fill depth': 3 m is too much.":      "3 m is too much.",
		"The lid has no size.":                "The lid has no size.",
		"Line 3: x":                           "Line 3: x",
	} {
		if got := (problemView{What: what}).Bare(); got != want {
			t.Errorf("%q without its key is %q, want %q", what, got, want)
		}
	}
}

func TestFormulasAreWrittenAsInASchoolBook(t *testing.T) {
	if got, want := sums("pi*(r+2)^2/piece"), "π × (r + 2)² / piece"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
