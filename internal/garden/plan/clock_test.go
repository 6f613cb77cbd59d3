package plan

import "testing"

// A time of day as people type it; noon is 12 pm and midnight 12 am (common
// practice, no source).
func TestATimeOfDayIsTakenAsPeopleTypeIt(t *testing.T) {
	for text, want := range map[string]Minutes{
		"08:30": 510, "8:30": 510, "3:30 pm": 930, "9 pm": 1260, "6am": 360, "12 pm": 720, "12 am": 0, "24:00": 1440,
	} {
		var got Clock
		if err := readClock(&got, text); err != nil || got.Value != want || !got.Given {
			t.Errorf("%q is minute %d (%v), want %d", text, got.Value, err, want)
		}
	}
	for _, text := range []string{"9", "13 pm", "0 am", "9:5", "25:00", "pm", "", "9:00:00"} {
		var got Clock
		if err := readClock(&got, text); err == nil {
			t.Errorf("%q is taken as minute %d", text, got.Value)
		}
	}
}
