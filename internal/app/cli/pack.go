package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

const packLong = `Writes the papers of a stage under DIR. For the day of building, in DIR/build:
for each tub its lid sheet at true scale (PDF, SVG, DXF, CSV), a dipstick, the
tub cut through and numbered rings for its cups; the helper card (for a lid of
foam the foam card), a measuring sheet, the wet test, light and air, and the
shopping list.
Where a stop stands, every page concerned says 'do not drill' and why.

For the days at the tub, in DIR/today: what is due on the day of --on, and the
return card, puddle card, change-out card, meter passport, the sheet for when
something is wrong and the meal card.

For the day of mixing, in DIR/mix: the mixing card, the dose table for the wall,
labels for the bottles, the letter to the water company, and, where the plan
gives reason for them, the acid card and the clean-down card.

For the season, in DIR/season: the wall calendar, a sowing sheet, a move-day
sheet and the leave-it sheets of each tub, labels for the seedlings, the card
for a visitor where a visit would help, and season.ics for a calendar program.

For the decision whether to buy or to build, in DIR/choose: the decision page,
the budget (PDF, CSV, XLSX), what to ask permission for, the caretaker's tags
and a letter to parents.

For the class, in DIR/class: the rota for the wall, job cards, station cards for
ten minutes at the tub, slips to adopt a hole, the report, the hand-over pack,
the cards to lay up and to start up, and the lesson sheets with their keys.

All of them are written, or none.
`

func packCommand(s Streams) *cobra.Command {
	var q question
	out, stage, paper := "", "build", ""
	c := &cobra.Command{
		Use:   "pack PLAN -o DIR",
		Short: "The papers",
		Long:  packLong + exits,
		Args:  onePlan,
		RunE: func(c *cobra.Command, args []string) error {
			if out == "" {
				return usageError{"no folder is named", "say where the papers go: -o papers"}
			}
			asked, known := stageOf(stage)
			if !known {
				return usageError{fmt.Sprintf("--stage %s is not a stage", stage), "the stages are " + strings.Join(stageNames(), ", ")}
			}
			if _, ok := sizes[paper]; !ok && c.Flags().Changed("paper") {
				return usageError{fmt.Sprintf("--paper %s is neither A4 nor Letter", paper), "write --paper A4 or --paper Letter"}
			}
			a, err := q.assess(c, s, args[0], asked.Asks)
			if err != nil {
				return err
			}
			if paper == "" {
				paper = a.Paper()
			}
			dir := filepath.Join(out, stage)
			files, err := drawn(asked.Papers(a), sizes[paper])
			if err != nil {
				return err
			}
			if err := placed(dir, files); err != nil {
				return err
			}
			if err := q.tell(s, dir, files); err != nil {
				return err
			}
			tellStops(s, args[0], a)
			if len(files) == 0 {
				s.message("no paper of the stage %s: the plan gives no ground for one", stage)
				s.hint("'rootbell check " + args[0] + "' says what is missing; a season needs school.terms")
			}
			if stage == "build" {
				tellMissing(s, dir, a, files)
			}
			return stopped(a.Findings)
		},
	}
	q.flags(c)
	c.Flags().StringVarP(&out, "out", "o", "", "the folder for the papers")
	c.Flags().StringVar(&stage, "stage", "build", "the stage: "+strings.Join(stageNames(), ", "))
	c.Flags().StringVar(&paper, "paper", "", "A4 or Letter (default: the plan's)")
	complete(c, "stage", stageNames()...)
	complete(c, "paper", "A4", "Letter")
	_ = c.MarkFlagDirname("out")
	return c
}

// placed puts the papers in their folder: all of them, or nothing is left of it.
func placed(dir string, files []file) error {
	undo, err := makeFolder(dir)
	if err != nil {
		return err
	}
	if err := placeAll(dir, files); err != nil {
		undo()
		return err
	}
	return nil
}

var sizes = map[string]scene.Size{"A4": scene.A4, "Letter": scene.Letter}

func (q *question) tell(s Streams, dir string, files []file) error {
	names := []string{}
	for _, f := range files {
		names = append(names, filepath.ToSlash(filepath.Join(dir, f.name)))
	}
	if q.json {
		return writeJSON(s.Out, map[string][]string{"files": names})
	}
	for _, n := range names {
		if _, err := fmt.Fprintln(s.Out, n); err != nil {
			return err
		}
	}
	return nil
}

// tellStops says on stderr why the status is 1: the papers say it too.
func tellStops(s Streams, name string, a *garden.Assessment) {
	for _, f := range a.Findings {
		if f.Level != finding.Stop {
			continue
		}
		s.message("%s:%d:%d: stop: %s", name, f.Line, f.Column, plain(f.Text))
		s.hint(f.Hint)
	}
}

// tellMissing names the tubs that have no lid sheet. One of an earlier plan may
// lie in the folder, and nobody should drill by it.
func tellMissing(s Streams, dir string, a *garden.Assessment, files []file) {
	for _, t := range a.Tubs {
		sheet := "lid-" + garden.Slug(t.Name) + ".pdf"
		if slices.ContainsFunc(files, func(f file) bool { return f.name == sheet }) {
			continue
		}
		s.message("%s: no lid sheet", t.Name)
		if _, err := os.Lstat(filepath.Join(dir, sheet)); err == nil {
			s.hint(filepath.Join(dir, sheet) + " is from an earlier plan; throw it away, do not drill by it")
		}
	}
}
