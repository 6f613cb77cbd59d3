package cli

import (
	"errors"
	"time"

	"github.com/spf13/cobra"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/reading"
)

// mostTable is the longest table of readings read: a logbook of a hundred
// thousand rows is shorter.
const mostTable = 32 << 20

func (q *question) readingsFlag(c *cobra.Command) {
	c.Flags().StringVar(&q.readings, "readings", "", "the logbook as a table: the CSV file that its page gives")
	_ = c.MarkFlagFilename("readings", "csv")
}

// logbook reads the table of readings into what is asked. What is wrong with it
// is written to stderr, all of it at once.
func (q *question) logbook(s Streams, p *plan.Plan, in *garden.Inputs) error {
	in.Zone = zoneOf(p)
	if q.readings == "" {
		return nil
	}
	const hint = "name the table that the page Logbook gives"
	text, err := readText(s, q.readings, mostTable)
	var usage usageError
	if errors.As(err, &usage) {
		return usageError{usage.what, hint}
	}
	if len(text) > mostTable {
		return usageError{q.readings + " is longer than a logbook", hint}
	}
	table, problems := reading.ReadCSV(text, reading.Import{Zone: in.Zone, By: p.School.By()})
	for _, problem := range problems {
		s.message("%s:%d:%d: %s", q.readings, problem.Line, problem.Column, plain(problem.What))
		s.hint(problem.Hint)
	}
	if len(problems) > 0 {
		return status(Unreadable)
	}
	in.Readings = table.Rows
	return nil
}

// zoneOf is the time zone of a plan; one that names none, or one that this
// computer does not know, counts in UTC.
func zoneOf(p *plan.Plan) *time.Location {
	if zone, err := time.LoadLocation(p.Place.TimeZone); err == nil && p.Place.TimeZone != "" {
		return zone
	}
	return time.UTC
}
