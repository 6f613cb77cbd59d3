package plan

import "slices"

// School is the calendar and the people, by number and never by name.
type School struct {
	// The terms, each from its first day to its last.
	Terms []Term `plan:"terms"`
	// The days of the week with lessons.
	OpenDays []string `plan:"open_days" words:"mon,tue,wed,thu,fri,sat,sun" default:"mon to fri"`
	// When the first person is there in the morning.
	Arrive Clock `plan:"arrive" default:"08:30"`
	// When the last person leaves.
	Leave Clock `plan:"leave" default:"15:30"`
	// Days on which nobody comes.
	Closed []Closed `plan:"closed"`
	// The meal that the harvest is for.
	Meal Meal `plan:"meal"`
	// How many pupils.
	Pupils Whole `plan:"pupils" in:"1 to 500"`
	// The youngest and the oldest pupil's age in years.
	Ages []Whole `plan:"ages" in:"3 to 20" least:"1" most:"2"`
	// The teams, by colours, birds, anything but people's names.
	Teams []string `plan:"teams"`
	// The jobs of the week, by which a reading can be written down as by a team.
	Jobs []Job `plan:"jobs" default:"what a morning at the tubs asks for"`
	// Who is to work with whom, and who is not.
	Pairs Pairs `plan:"pairs"`
	// Who is away in which week.
	Absent []Absent `plan:"absent"`
	// Whether an adult is there to drill.
	AdultDrills Tick `plan:"adult_drills" default:"no"`
	// Whether somebody looks in during breaks.
	Visits Tick `plan:"visits" default:"no"`
	// How many crops one after the other the costs are counted for.
	CropsPlanned Whole `plan:"crops_planned" in:"1 to 60" default:"3"`
	// What there is where the tubs are to stand.
	Site Site `plan:"site"`
}

// Term is a stretch of school days.
type Term struct {
	// The first day.
	From Date `plan:"from,required"`
	// The last day.
	To Date `plan:"to,required"`
}

// Closed is a day, or a stretch of days, on which nobody comes.
type Closed struct {
	// One day.
	Day Date `plan:"day" one:"days,required"`
	// The first day of a stretch.
	From Date `plan:"from" one:"days,required" needs:"to"`
	// The last day of a stretch; it needs from.
	To Date `plan:"to" with:"from"`
	// Why.
	Why string `plan:"why"`
}

// By are the teams and jobs by which a reading is written down.
func (s School) By() []string {
	out := slices.Clone(s.Teams)
	for _, j := range s.Jobs {
		out = append(out, j.Name)
	}
	return out
}

// Meal is the meal that the harvest is for.
type Meal struct {
	// The day of the meal.
	Day Date `plan:"day"`
	// How many eat.
	Eaters Whole `plan:"eaters" in:"1 to 1000"`
	// Trimmed leaves for each.
	Portion Mass `plan:"portion" in:"1 g to 500 g" default:"20 g"`
	// How sure it has to be.
	Chance Share `plan:"chance" in:"50 % to 99.9 %" default:"80 %"`
}
