package web_test

import (
	"bytes"
	"context"
	"net/http"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"rootbell/examples"
	"rootbell/internal/garden"
	"rootbell/internal/paper/pack"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// The season's papers are on the list, are files of their kind as the pack draws
// them, and are pages that say all of it; the calendar file comes as one.
func TestTheSeasonsPapersAreFilesAndPages(t *testing.T) {
	o := open(t)
	const base = "/g/example-fernhollow/papers"
	p := exampleOf(t, "fernhollow").Plan
	zone, err := time.LoadLocation(p.Place.TimeZone)
	if err != nil {
		t.Fatal(err)
	}
	table, err := examples.Logbooks.ReadFile("fernhollow.csv")
	if err != nil {
		t.Fatal(err)
	}
	book, problems := reading.ReadCSV(table, reading.Import{Zone: zone, By: p.School.By()})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Zone: zone, Readings: book.Rows, Effort: lid.Full, Seed: 1, Stages: garden.StageSeason})
	if err != nil {
		t.Fatal(err)
	}
	size, _ := pack.Size(a.Paper())
	list, _ := o.get(base, http.StatusOK)
	papers := pack.Season(a)
	if !strings.Contains(list, "For the season") || len(papers) < 8 {
		t.Errorf("%d papers of the season, and the list:\n%s", len(papers), head(list))
	}
	for _, paper := range papers {
		if !strings.Contains(list, `"`+base+"/"+paper.Name+`"`) {
			t.Errorf("%s is not on the list", paper.Name)
		}
		file, header := o.get(base+"/"+paper.Name, http.StatusOK)
		if got := header.Get("Content-Type"); got != paper.Kind.MediaType() || strings.HasSuffix(paper.Name, ".ics") && got != "text/calendar; charset=utf-8" {
			t.Errorf("%s comes as %s", paper.Name, got)
		}
		want, err := paper.Draw(size)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal([]byte(file), want) {
			t.Errorf("%s is not what the pack draws", paper.Name)
		}
		body, _ := o.get(base+"/"+paper.Name+"/page", http.StatusOK)
		doc, err := html.Parse(strings.NewReader(body))
		if err != nil {
			t.Fatal(err)
		}
		page, err := paper.Page(size)
		if err != nil {
			t.Fatal(err)
		}
		seen := words(readable(doc))
		for _, said := range everything(page) {
			if !strings.Contains(seen, words(said)) {
				t.Errorf("the page of %s does not say: %s", paper.Name, said)
			}
		}
		tablesAndFigures(t, paper.Name, doc)
	}
}
