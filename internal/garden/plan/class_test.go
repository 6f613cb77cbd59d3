package plan_test

import (
	"strings"
	"testing"

	"rootbell/internal/garden/plan"
)

func withSchool(school string) []byte {
	return []byte("rootbell: 1\ngarden: room\nschool: {" + school + "}\ntubs: [{name: Heron, inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm}, lid: {size: [54 cm, 38 cm]}, cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}}]\n")
}

func TestTheClassIsRead(t *testing.T) {
	p, problems := plan.Parse("class", withSchool("jobs: [{name: look, people: 2, weight: 3, from: 2027-01-11, to: 2027-02-12}], pairs: {wanted: [[3, 7]], never: [[4, 9], [1, 2]]}, absent: [{week: 2027-01-20, number: 14}]"))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	s := p.School
	if s.Jobs[0].People.Value != 2 || s.Jobs[0].Weight.Value != 3 || s.Jobs[0].To.Day != 12 {
		t.Errorf("%+v", s.Jobs)
	}
	if s.Pairs.Wanted[0] != [2]plan.Number{3, 7} || s.Pairs.Never[1] != [2]plan.Number{1, 2} || s.Absent[0].Number != 14 {
		t.Errorf("%+v, %+v", s.Pairs, s.Absent)
	}
}

// Names where numbers belong are refused, at their place and in clear words.
func TestNamesAreNoNumbers(t *testing.T) {
	for school, field := range map[string]string{
		"pairs: {wanted: [[Robin, 7]]}":                  "school.pairs.wanted[0][0]",
		"pairs: {never: [[3, 7], [4, Rob in]]}":          "school.pairs.never[1][1]",
		"absent: [{week: 2027-01-20, number: Robin}]":    "school.absent[0].number",
		"absent: [{week: 2027-01-20, number: pupil 14}]": "school.absent[0].number",
	} {
		_, problems := plan.Parse("class", withSchool(school))
		if len(problems) != 1 || problems[0].Field != field || !strings.Contains(problems[0].What, "a word where a number belongs") || !strings.Contains(problems[0].Hint, "names stay on your own list") {
			t.Errorf("%s: %+v", school, problems)
		}
	}
	for school, what := range map[string]string{
		"pupils: Robin": "not a whole number", "jobs: [{name: look, people: 7}]": "outside", "jobs: [{name: look, weight: 0}]": "outside",
		"pairs: {wanted: [[3]]}": "2 values", "pairs: {wanted: [[3, 501]]}": "outside", "absent: [{week: soon, number: 3}]": "not a day",
	} {
		_, problems := plan.Parse("class", withSchool(school))
		if len(problems) != 1 || !strings.Contains(problems[0].What, what) {
			t.Errorf("%s: %+v", school, problems)
		}
	}
}
