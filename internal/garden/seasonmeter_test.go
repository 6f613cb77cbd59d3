package garden_test

import (
	"slices"
	"strings"
	"testing"
)

// A class whose logbook has the EC by a meter has one, whatever the plan's tools
// leave out: the season's next change of water is the one that Today names.
func TestTheSeasonCountsWithTheMeterThatWasReadWith(t *testing.T) {
	whole := string(text(t, fernhollowPlan))
	lines := []string{"Heron 2027-01-25 09:00 done=planted level=25 EC=1.40", "Heron 2027-01-28 09:00 level=24.5 EC=1.45"}
	changes := func(said string, lines []string) (days []string) {
		a := seasonOf(t, parsed(t, "fernhollow", []byte(strings.Replace(whole, ", ec: meter", said, 1))), nil, lines...)
		for _, task := range a.Tubs[0].Season.Tasks {
			if task.Do == "Change the water." {
				days = append(days, task.On)
			}
		}
		return days
	}
	typed, read, neither := changes(", ec: meter", lines), changes("", lines), changes("", []string{"Heron 2027-01-25 09:00 done=planted level=25", "Heron 2027-01-28 09:00 level=24.5"})
	if len(typed) == 0 || !slices.Equal(typed, read) {
		t.Errorf("with the meter in the plan the water is changed on %v, with it in the logbook on %v", typed, read)
	}
	if len(neither) <= len(typed) {
		t.Errorf("without a meter it is changed on %v, no more often than on %v with one", neither, typed)
	}
}
