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

// A wiped plan says nothing of the class, reads as before, and keeps the rest.
func TestAPlanWithoutItsClass(t *testing.T) {
	for name, school := range map[string]string{
		"flow":  "school: {pupils: 26, teams: [Slate, Jade], arrive: \"08:30\", jobs: [{name: look}], pairs: {never: [[1, 2]]}, absent: [{week: 2027-01-20, number: 3}], ages: [8, 10]}",
		"lines": "school:\n  arrive: \"08:30\" # the bell\n  teams:\n    - Slate # a stone\n    - Jade\n  pupils: 26\n  jobs:\n    - name: look\n      people: 2\n  pairs:\n    never: [[1, 2]]\n  absent:\n    - {week: 2027-01-20, number: 3}\n  ages: [8, 10]",
		"only":  "school:\n  pupils: 26",
	} {
		text := []byte(strings.Replace(string(withSchool("")), "school: {}", school, 1))
		before, problems := plan.Parse(name, text)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		out, err := plan.WithoutClass(text)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		after, problems := plan.Parse(name, out)
		if len(problems) > 0 {
			t.Fatalf("%s: %v\n%s", name, problems, out)
		}
		s := after.School
		if s.Pupils.Given || len(s.Teams)+len(s.Jobs)+len(s.Ages)+len(s.Absent)+len(s.Pairs.Never) > 0 || len(plan.ClassKeys(out)) > 0 || strings.Contains(string(out), "Slate") {
			t.Errorf("%s: the class is still there:\n%s", name, out)
		}
		if s.Arrive != before.School.Arrive || after.Tubs[0].Name != before.Tubs[0].Name || after.Tubs[0].Hole != before.Tubs[0].Hole {
			t.Errorf("%s: something else changed:\n%s", name, out)
		}
		if again, err := plan.WithoutClass(out); err != nil || string(again) != string(out) {
			t.Errorf("%s: a second time changes it: %v", name, err)
		}
	}
	if _, err := plan.WithoutClass([]byte("a: [")); err == nil {
		t.Error("a text that cannot be read")
	}
}
