package reading

import (
	"time"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
)

// Passport is what is written on a meter's card: when it was last calibrated
// or checked, and the bottles for it. Days are midnight UTC; zero is unknown.
type Passport struct {
	Name       string // what the class calls the meter
	Measures   Field  // FieldPH or FieldEC
	Calibrated time.Time
	Bottles    []Bottle
}

// Bottle is a buffer or a standard.
type Bottle struct {
	Name   string // such as buffer 7
	Opened time.Time
	UseBy  time.Time // as printed on the bottle
}

// Good is the day on which a bottle is no longer good: so many months after it
// was opened, or the day printed on it where that comes first. False where
// neither is known.
func (b Bottle) Good() (time.Time, bool) {
	end := b.UseBy
	if !b.Opened.IsZero() {
		open := monthsOn(b.Opened, int(Facts.Get(factPhBufferOpenMonths).Value))
		if end.IsZero() || open.Before(end) {
			end = open
		}
	}
	return end, !end.IsZero()
}

// monthsOn is the same day so many months later, or the last one of a shorter
// month: 31 August and six months is the end of February.
func monthsOn(day time.Time, months int) time.Time {
	later := day.AddDate(0, months, 0)
	for later.Day() < day.Day() && later.Day() < 4 {
		later = later.AddDate(0, 0, -1)
	}
	return later
}

// Due is the day by which the meter has to be calibrated or checked again.
// False where nobody knows when it last was.
func (p Passport) Due() (time.Time, bool) {
	if p.Calibrated.IsZero() {
		return time.Time{}, false
	}
	days := Facts.Get(factPhCalibrateDays).Value
	if p.Measures == FieldEC {
		days = Facts.Get(factEcCheckDays).Value
	}
	return p.Calibrated.AddDate(0, 0, int(days)), true
}

// Check says what has to be done before the meter is believed, on a day. None:
// it is ready.
func (p Passport) Check(on time.Time) []finding.Finding {
	var out []finding.Finding
	add := func(code, text, hint string) {
		out = append(out, finding.Finding{Level: finding.Warn, Code: code, Text: text, Hint: hint})
	}
	on = day(on)
	what, how := "calibrated", "calibrate it with buffer 7, then buffer 4, before it is read"
	if p.Measures == FieldEC {
		what, how = "checked", "check it against the standard before it is read"
	}
	due, known := p.Due()
	switch {
	case !known:
		add("meter-unknown", "Nobody knows when "+p.name()+" was last "+what+".", how)
	case day(p.Calibrated).After(on):
		add("meter-ahead", p.name()+" is said to have been "+what+" on "+long(p.Calibrated)+", which is still to come.", "look at the date on its card")
	case on.After(day(due)):
		add("meter-due", p.name()+" was last "+what+" on "+long(p.Calibrated)+". It was due again on "+long(due)+".", how)
	}
	for _, b := range p.Bottles {
		end, known := b.Good()
		switch {
		case !known:
			add("bottle-unknown", "Nobody knows how old the bottle of "+b.Name+" is.", "open a new one and write the date on it")
		case on.After(day(end)):
			add("bottle-old", "The bottle of "+b.Name+" was good until "+long(end)+".", "open a new one, write the date on it and calibrate again")
		}
	}
	return out
}

func (p Passport) name() string {
	if p.Name == "" {
		return "the meter"
	}
	return p.Name
}

// Passport of the pH meter and the EC meter, as a reading tells them.
func (p PH) Passport() Passport { return Passport{Measures: FieldPH, Calibrated: p.Calibrated} }

// Passport of the EC meter as a reading tells it.
func (e EC) Passport() Passport { return Passport{Measures: FieldEC, Calibrated: e.Calibrated} }

// day is midnight UTC of the day a moment falls on in its own zone.
func day(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// age is how many days lie between a day and the day of a moment. False where
// the day is unknown or still to come.
func age(since, at time.Time) (days int, known bool) {
	if since.IsZero() {
		return 0, false
	}
	hours := day(at).Sub(day(since)) / time.Hour
	return int(hours / 24), hours >= 0
}

func long(t time.Time) string { return t.Format("Mon 2 Jan 2006") }

// number writes a figure as a person would: no more digits than it has, and no
// trace of binary fractions.
func number(v float64, decimals int) string { return trimmed(quantity.FormatNumber(v, decimals)) }
