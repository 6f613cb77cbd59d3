package term

import "time"

// Arrives is when the first person comes on a day, by the zone's clock (nil: UTC).
func (c *Calendar) Arrives(d Date, zone *time.Location) time.Time { return d.At(c.arrive, zone) }

// Leaves is when the last person goes.
func (c *Calendar) Leaves(d Date, zone *time.Location) time.Time { return d.At(c.leave, zone) }

// Attended tells whether somebody is at the school at a moment: on an open day
// from arriving up to leaving, by the zone's clock (nil: UTC).
func (c *Calendar) Attended(moment time.Time, zone *time.Location) bool {
	if zone == nil {
		zone = time.UTC
	}
	d := DateOf(moment.In(zone))
	return c.Open(d) && !moment.Before(c.Arrives(d, zone)) && moment.Before(c.Leaves(d, zone))
}
