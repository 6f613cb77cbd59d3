package garden_test

import (
	"reflect"
	"testing"

	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
)

const fernhollow = "../../examples/fernhollow.yaml"

// calendars are tried among the other findings.
var calendars = []spoiled{
	{"the term's days are swapped", fernhollow, []edit{{"school.terms[0].from", "2027-05-02"}}, stop, "term-backwards", "school.terms[0].to", []string{"Fri 2 Apr 2027", "Sun 2 May 2027"}},
	{"the term ends in another year", fernhollow, []edit{{"school.terms[0].to", "2028-04-02"}}, warn, "term-long", "school.terms[0]", []string{"2028", "a year"}},
	{"no day of the term is open", fernhollow, []edit{{"school.closed[0].from", "2027-01-01"}, {"school.closed[0].to", "2027-04-30"}}, warn, "term-without-days", "school.terms[0]", []string{"school.closed"}},
	{"the break's days are swapped", fernhollow, []edit{{"school.closed[0].to", "2027-02-11"}}, stop, "closed-backwards", "school.closed[0].to", []string{"Thu 11 Feb 2027", "Mon 15 Feb 2027"}},
	{"a closed day of another year", fernhollow, []edit{{"school.closed[1].day", "2026-03-08"}}, note, "closed-outside-terms", "school.closed[1]", []string{"Sun 8 Mar 2026", "year"}},
	{"a break of another year", fernhollow, []edit{{"school.closed[0].from", "2026-02-15"}, {"school.closed[0].to", "2026-02-19"}}, note, "closed-outside-terms", "school.closed[0]", []string{"Thu 19 Feb 2026"}},
	{"home before school", fernhollow, []edit{{"school.leave", "3:30"}}, stop, "leave-before-arrive", "school.leave", []string{"03:30", "08:30", "24-hour"}},
	{"school after the bell that is taken", fernhollow, []edit{{"school.leave", ""}, {"school.arrive", "16:00"}}, stop, "leave-before-arrive", "school.arrive", []string{"16:00", "15:30"}},
	{"a meal on a Sunday", fernhollow, []edit{{"school.meal.day", "2027-03-21"}}, warn, "meal-closed", "school.meal.day", []string{"Sun 21 Mar 2027", "Fri 19 Mar 2027", "Mon 22 Mar 2027"}},
	{"a meal on the staff day", fernhollow, []edit{{"school.meal.day", "2027-03-08"}}, warn, "meal-closed", "school.meal.day", []string{"staff day", "Tue 9 Mar 2027"}},
	{"a meal on a closed day without a reason", fernhollow, []edit{{"school.meal.day", "2027-03-08"}, {"school.closed[1].why", ""}}, warn, "meal-closed", "school.meal.day", []string{"closed days"}},
	{"a meal after the term", fernhollow, []edit{{"school.meal.day", "2027-04-12"}}, warn, "meal-closed", "school.meal.day", []string{"outside every term", "last open day", "Fri 2 Apr 2027"}},
	{"a meal before the term", fernhollow, []edit{{"school.meal.day", "2027-01-08"}}, warn, "meal-closed", "school.meal.day", []string{"first open day", "Mon 11 Jan 2027"}},
}

// A second term is typed as a whole, since an edit types one value.
func TestTermsThatOverlap(t *testing.T) {
	p := parsed(t, fernhollow, text(t, fernhollow))
	p.School.Terms = append(p.School.Terms, plan.Term{From: plan.Date{Year: 2027, Month: 4, Day: 2}, To: plan.Date{Year: 2027, Month: 6, Day: 25}})
	a := assessed(t, p)
	if f, found := found(a, "terms-overlap"); !found || f.Level != warn || f.Field != "school.terms[1]" {
		t.Errorf("one day in two terms: %v", codes(a))
	}
}

// A mistake in the calendar stops what rests on it, and no lid.
func TestTheCalendarStopsNoDrill(t *testing.T) {
	a := edited(t, fernhollow, edit{"school.terms[0].from", "2027-05-02"})
	if why := a.StopOf(0); why != "" {
		t.Errorf("do not drill: %s", why)
	}
	if a.Term.Known() {
		t.Error("a term that ends before it begins is none")
	}
}

// The examples' calendars as their files say, and no finding about them.
func TestCalendarsOfTheExamples(t *testing.T) {
	for _, c := range []struct {
		name   string
		terms  int
		days   int
		closed string
	}{
		{fernhollow, 1, 12*5 - 6, "2027-02-15"},
		{"../../examples/saltbrook.yaml", 1, 12*3 - 4, "2027-01-12"},
		{"testdata/clean.yaml", 0, 0, "2027-02-13"},
	} {
		_, a := standing(t, c.name, systems[0])
		days := 0
		for _, s := range a.Term.Terms() {
			days += len(a.Term.OpenDays(s))
		}
		closed, err := term.ParseDate(c.closed)
		if err != nil {
			t.Fatal(err)
		}
		if len(a.Term.Terms()) != c.terms || days != c.days || a.Term.Open(closed) {
			t.Errorf("%s: %d terms of %d days, %s open %v", c.name, len(a.Term.Terms()), days, c.closed, a.Term.Open(closed))
		}
		for _, wrong := range calendars {
			if _, found := found(a, wrong.code); found {
				t.Errorf("%s: %s", c.name, wrong.code)
			}
		}
	}
}

// The defaults that the plan's documentation states are the ones taken.
func TestStatedSchoolHours(t *testing.T) {
	school := reflect.TypeOf(plan.School{})
	for name, taken := range map[string]plan.Minutes{"Arrive": term.ArriveMin, "Leave": term.LeaveMin} {
		field, found := school.FieldByName(name)
		if stated := field.Tag.Get("default"); !found || stated != taken.String() {
			t.Errorf("%s: %s is stated, %s is taken", name, stated, taken)
		}
	}
}
