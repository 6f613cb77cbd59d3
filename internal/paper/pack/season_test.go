package pack_test

import (
	"bytes"
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"rootbell/examples"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/pack"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/science/lid"
)

// seasoned works an example out with its season, with little effort.
func seasoned(t *testing.T, name, units string) *garden.Assessment {
	t.Helper()
	text, err := examples.Plans.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	if text, err = plan.Edit(text, "units", units); err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(name, text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	zone, err := time.LoadLocation(p.Place.TimeZone)
	if err != nil {
		t.Fatal(err)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Zone: zone, Effort: lid.Quick, Seed: 1, Stages: garden.StageSeason})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// The papers of a real season: what each is called, what its page and its sheet
// say, and the revision in its title block; each can be read without seeing.
func TestTheSeasonsPapers(t *testing.T) {
	for _, way := range []struct {
		name, units string
		size        scene.Size
		papers      []string
	}{
		{"fernhollow", "metric", scene.A4, []string{"sowing-Heron.pdf", "move-day-Heron.pdf", "leave-it-Heron.pdf", "sowing-Otter.pdf", "move-day-Otter.pdf", "leave-it-Otter.pdf"}},
		{"saltbrook", "us", scene.Letter, []string{"sowing-Tern.pdf", "move-day-Tern.pdf", "leave-it-Tern.pdf", "sowing-Plover.pdf", "move-day-Plover.pdf", "leave-it-Plover.pdf"}},
	} {
		t.Run(way.name, func(t *testing.T) {
			a := seasoned(t, way.name, way.units)
			papers := pack.SeasonOf(a, "7")
			for _, name := range append(way.papers, "wall-calendar.pdf", "seed-labels.pdf", "season.ics") {
				if _, ok := pack.Named(papers, name); !ok {
					t.Errorf("there is no %s", name)
				}
			}
			for _, p := range papers {
				page, err := p.Page(way.size)
				if err != nil {
					t.Fatal(err)
				}
				if p.Title == "" || !strings.HasSuffix(p.About, ".") || !strings.HasSuffix(p.Name, "."+string(p.Kind)) {
					t.Errorf("%s is a %s called %q: %q", p.Name, p.Kind, p.Title, p.About)
				}
				readable(t, page, way.size)
				if p.Tub != "" != slices.Contains(way.papers, p.Name) {
					t.Errorf("%s is said to be of the tub %q", p.Name, p.Tub)
				}
				if p.Kind == pack.PDF {
					sameSaid(t, page, way.size)
				}
			}
		})
	}
}

func readable(t *testing.T, p pack.Page, size scene.Size) {
	t.Helper()
	for _, s := range p.Sheets {
		if s.Block.Revision != "7" || p.Kind == pack.PDF && s.Block.Paper != sheet.PaperName(size) || !strings.Contains(s.Block.Garden, "(invented)") {
			t.Errorf("%s: the title block is %+v", p.Name, s.Block)
		}
		for _, x := range s.Sections {
			if x.Heading == "" {
				t.Errorf("%s: a section without a heading", p.Name)
			}
			for _, table := range x.Tables {
				checkTable(t, p.Name, table)
			}
		}
	}
}

// The calendar file is told to a browser as what it is (RFC 5545 section 8.1),
// and is the same each time.
func TestTheCalendarFileIsACalendar(t *testing.T) {
	a := seasoned(t, "fernhollow", "metric")
	p, ok := pack.Named(pack.Season(a), "season.ics")
	if !ok || p.Kind.MediaType() != "text/calendar; charset=utf-8" {
		t.Fatalf("%v, %s", ok, p.Kind.MediaType())
	}
	first, err := p.Draw(scene.A4)
	if err != nil {
		t.Fatal(err)
	}
	again, err := p.Draw(scene.Letter)
	if err != nil || !bytes.Equal(first, again) || !bytes.HasPrefix(first, []byte("BEGIN:VCALENDAR\r\n")) {
		t.Errorf("the file is %q… the first time and not the second, %v", first[:20], err)
	}
}

// Without a term there is no season and no paper of it, and no error.
func TestNoSeasonNoPaper(t *testing.T) {
	if got := pack.Season(assessed(t, "../../../examples/fernhollow.yaml", "metric")); len(got) != 0 {
		t.Errorf("%d papers of a season that was not asked for", len(got))
	}
}
