//go:build !race

package web_test

import (
	"net/http"
	"testing"
)

// logbookScenes are the logbook of a garden of one's own in each of its states.
func (o *opened) logbookScenes(id string) []scene {
	o.Helper()
	address := "/g/" + id + "/logbook"
	o.post(address, entry("s1", "ph", "6.9", "at", "2027-02-09T09:30:00Z"), http.StatusOK)
	o.post(address, entry("s2", "corrects", "s1", "at", "2027-02-09T09:30:00Z"), http.StatusOK)
	o.post(address, entry("s3", "by", "Slate", "at", "2027-02-10T09:20:00Z"), http.StatusOK)
	o.post(address, entry("s4", "ph", "6.2", "at", "2027-02-10T09:25:00Z"), http.StatusOK)
	o.post(address, entry("s5", "at", "2027-02-08T09:25:00Z"), http.StatusOK)
	o.post(address, entry("s6", "corrects", "s5", "withdraw", "yes"), http.StatusOK)
	press := func(fields ...string) func(*tab) {
		return func(b *tab) {
			b.visit(address)
			for i := 0; i < len(fields); i += 2 {
				b.write(fields[i], fields[i+1])
			}
			b.follow("#entry .btn.first")
		}
	}
	return []scene{
		{"logbook", "Two teams wrote at once", func(b *tab) { b.visit(address) }},
		{"logbook-unfolded", "Leaves", func(b *tab) {
			b.visit(address)
			ask[any](b, `document.querySelectorAll("details").forEach((d) => { d.open = true; })`)
		}},
		{"logbook-correct", "Correct a reading", func(b *tab) { b.visit(address + "?correct=s4") }},
		{"logbook-asks", "did you mean 6.1", press("ph", "61", "water", "68")},
		{"logbook-to-mend", "Not written down yet", press("ph", "six", "level", "3 kg")},
		{"logbook-waits", "waits on this device", func(b *tab) {
			b.visit(address)
			b.settled()
			b.line(false)
			b.reading("Jade", "22.5", "6.1")
			b.until(`!document.getElementById("waits").hidden`)
		}},
		{"readings", "All readings", func(b *tab) {
			b.line(true) // what waited is sent now
			b.visit(address + "/all")
		}},
	}
}

func TestTheLogbookServesEveryone(t *testing.T) {
	o := open(t)
	scenes := o.logbookScenes(o.mine())
	b := browse(t, o.base)
	b.log.mayHear("422")
	b.log.mayHear("ERR_INTERNET_DISCONNECTED")
	b.visit("/")
	for _, s := range scenes {
		b.wide(deskWide, deskHigh)
		s.open(b)
		b.serves(s, map[string]bool{}, deskWide, deskWide/2, 320)
	}
}
