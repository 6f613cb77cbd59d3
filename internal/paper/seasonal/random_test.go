package seasonal_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/seasonal"
	"rootbell/internal/school/term"
)

var (
	oddText = rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"", "Do it.", "a\r\nb", strings.Repeat("wide ", 60), strings.Repeat("W", 90), "Ünder ⌀ □ 水 🌱"}))
	oddDay  = rapid.OneOf(rapid.SampledFrom([]string{"", "2027-02-30", "soon", "2027-01-11", "2027-02-17", "9999-12-31"}), rapid.Custom(func(t *rapid.T) string {
		return term.Date{Year: 2027, Month: 1, Day: 1}.Add(rapid.IntRange(0, 120).Draw(t, "day")).String()
	}))
	oddFigure = rapid.SampledFrom([]float64{-5, 0, 0.004, 0.05, 0.5, 0.999, 1, 12.3, 140, 1e6})
)

// oddSeason is a season of whatever a mistake elsewhere could make of it.
func oddSeason(t *rapid.T, zone *time.Location) *garden.Season {
	s := &garden.Season{
		SowOn: oddDay.Draw(t, "sow"), SowLatest: oddDay.Draw(t, "latest"), TransplantOn: oddDay.Draw(t, "move"), HarvestTo: oddDay.Draw(t, "to"),
		ReadyChance: oddFigure.Draw(t, "ready"), WantedChance: oddFigure.Draw(t, "wanted"),
	}
	for range rapid.IntRange(0, 30).Draw(t, "tasks") {
		kind := rapid.SampledFrom([]string{"sow", "thin", "transplant", "lamp", "change-out", "lower", "order", "harvest", "meal", "", "dance"}).Draw(t, "kind")
		s.Tasks = append(s.Tasks, garden.SeasonTask{Kind: kind, On: oddDay.Draw(t, "on"), Do: oddText.Draw(t, "do"), Why: oddText.Draw(t, "why")})
	}
	for range rapid.IntRange(0, 4).Draw(t, "days") {
		s.Days = append(s.Days, garden.SeasonDay{Date: oddDay.Draw(t, "day"), LineMM: oddFigure.Draw(t, "line")})
	}
	for range rapid.IntRange(0, 3).Draw(t, "crops") {
		s.Ready = append(s.Ready, garden.CropReady{
			Crop: oddText.Draw(t, "crop"), Plants: rapid.IntRange(-1, 9).Draw(t, "plants"), Seeds: rapid.IntRange(-1, 30).Draw(t, "seeds"),
			Cells: rapid.IntRange(-1, 200).Draw(t, "cells"), SowOn: oddDay.Draw(t, "sow"), ThinOn: oddDay.Draw(t, "thin"), CoverMM: oddFigure.Draw(t, "cover"),
		})
	}
	for range rapid.IntRange(0, 4).Draw(t, "closed") {
		s.Closed = append(s.Closed, oddLeave(t, zone))
	}
	return s
}

func oddLeave(t *rapid.T, zone *time.Location) garden.LeaveIt {
	at := func() time.Time {
		return time.Date(2027, 1, 1, 0, rapid.IntRange(0, 200_000).Draw(t, "minutes"), 0, 0, zone)
	}
	l := garden.LeaveIt{From: at(), To: at(), Hours: oddFigure.Draw(t, "hours"), Why: oddText.Draw(t, "why"), Risk: oddFigure.Draw(t, "risk"), RiskHigh: oddFigure.Draw(t, "high"), Take: rapid.IntRange(-2, 4).Draw(t, "take")}
	if rapid.Bool().Draw(t, "fails") {
		l.PumpFailure = &garden.LeaveCase{To4: oddFigure.Draw(t, "4"), To3: oddFigure.Draw(t, "3"), To2: oddFigure.Draw(t, "2")}
		l.PowerCut = l.PumpFailure
	}
	for range rapid.IntRange(0, 3).Draw(t, "options") {
		o := garden.LeaveDo{
			Kind: rapid.SampledFrom([]string{"", "fill", "visit", "fill+lamp", "harvest+visit", "still", "fewer", "dance"}).Draw(t, "kind"), Do: oddText.Draw(t, "do"), Risk: oddFigure.Draw(t, "risk"),
			LineMM: oddFigure.Draw(t, "line"), PourL: oddFigure.Draw(t, "pour"), Litres: oddFigure.Draw(t, "litres"), Hours: oddFigure.Draw(t, "lamp"), Plants: rapid.IntRange(-1, 9).Draw(t, "plants"),
		}
		if rapid.Bool().Draw(t, "visit") {
			a, b := at(), at()
			o.VisitA, o.VisitB = &a, &b
		}
		l.Options = append(l.Options, o)
	}
	return l
}

// Whatever a season holds, its papers are drawn inside their margins, in type
// that can be read, and the calendar file has no line that breaks the standard.
func TestOddSeasonsAreDrawn(t *testing.T) {
	base := example(t, "fernhollow", garden.Metric)
	zone, err := time.LoadLocation("Europe/Dublin")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		a := *base
		a.Tubs = append([]garden.Tub(nil), base.Tubs...)
		for i := range a.Tubs {
			a.Tubs[i].Season = oddSeason(t, zone)
		}
		size := rapid.SampledFrom(sizes).Draw(t, "size")
		cards := seasonal.Cards(&a, "1")
		printed := rapid.IntRange(0, len(cards)-1).Draw(t, "printed")
		for k, c := range cards {
			c.Sheets(size)
			if k == printed {
				if _, err := c.PDF(size); err != nil {
					t.Fatalf("%s: %v", c.Name, err)
				}
			}
			if c.Drawn == nil {
				continue
			}
			for _, pages := range c.Drawn(size) {
				for _, page := range pages {
					if complaint := wrong(page.Size, page.Elements); complaint != "" {
						t.Fatalf("%s: %s", c.Name, complaint)
					}
				}
			}
		}
		dates, _ := seasonal.Agenda(&a, "1")
		for _, line := range strings.Split(string(dates.ICS()), "\r\n") {
			if len(line) > 75 || strings.ContainsAny(line, "\r\n") {
				t.Fatalf("a line of %d octets: %q", len(line), line)
			}
		}
	})
}

func wrong(size scene.Size, elements []scene.Element) string {
	inner := scene.Box{Min: scene.Point{X: 12, Y: 12}, Max: scene.Point{X: size.Width - 12, Y: size.Height - 12}}
	for _, e := range elements {
		if !inner.Holds(e.Bounds(), 0.6) {
			return fmt.Sprintf("%+v stands outside", e)
		}
		if text, ok := e.(scene.Text); ok && text.At.Y > 24 && text.SizeMM < 11*scene.PointMM-1e-9 {
			return fmt.Sprintf("%q in %.1f points", text.Text, text.SizeMM/scene.PointMM)
		}
	}
	return ""
}
