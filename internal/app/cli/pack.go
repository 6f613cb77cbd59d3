package cli

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"rootbell/internal/garden"
	"rootbell/internal/paper/booklet"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

func packCommand(s Streams) *cobra.Command {
	var q question
	out, stage, paper := "", "build", ""
	c := &cobra.Command{
		Use:   "pack PLAN -o DIR",
		Short: "The papers",
		Long:  "Writes the papers of a stage under DIR: for each tub its lid sheet at true scale\n(PDF, SVG, DXF, CSV), and the helper card. Where a stop stands, every page of\nthe tub concerned says 'do not drill' and why.\n" + exits,
		Args:  onePlan,
		RunE: func(c *cobra.Command, args []string) error {
			if out == "" {
				return usageError{"no folder is named", "say where the papers go: -o papers"}
			}
			if stage != "build" {
				return usageError{fmt.Sprintf("--stage %s is not a stage", stage), "the stage is build"}
			}
			a, err := q.assess(c, s, args[0])
			if err != nil {
				return err
			}
			if paper == "" {
				paper = a.Paper()
			}
			size, ok := sizes[paper]
			if !ok {
				return usageError{fmt.Sprintf("--paper %s is neither A4 nor Letter", paper), "write --paper A4 or --paper Letter"}
			}
			files, err := buildPapers(a, size)
			if err != nil {
				return err
			}
			if err := placeAll(filepath.Join(out, "build"), files); err != nil {
				return err
			}
			if err := q.tell(s, filepath.Join(out, "build"), files); err != nil {
				return err
			}
			return stopped(a.Findings)
		},
	}
	q.flags(c)
	c.Flags().StringVarP(&out, "out", "o", "", "the folder for the papers")
	c.Flags().StringVar(&stage, "stage", "build", "the stage: build")
	c.Flags().StringVar(&paper, "paper", "", "A4 or Letter (default: the plan's)")
	return c
}

var sizes = map[string]scene.Size{"A4": scene.A4, "Letter": scene.Letter}

// paperFile is one paper by its name in the folder.
type paperFile struct {
	name string
	text []byte
}

// buildPapers makes every paper of the day of building before any is written.
func buildPapers(a *garden.Assessment, size scene.Size) ([]paperFile, error) {
	var files []paperFile
	var lids []sheet.Lid
	for i := range a.Tubs {
		l, ok := sheet.Of(a, i, "")
		if !ok {
			continue
		}
		lids = append(lids, l)
		slug := "lid-" + garden.Slug(a.Tubs[i].Name)
		for _, kind := range []struct {
			ending string
			make   func() ([]byte, error)
		}{
			{".pdf", func() ([]byte, error) { return sheet.LidPDF(l, size) }},
			{".svg", func() ([]byte, error) { return sheet.LidSVG(l) }},
			{".dxf", func() ([]byte, error) { return sheet.LidDXF(l) }},
			{".csv", func() ([]byte, error) { return sheet.LidCSV(l) }},
		} {
			text, err := kind.make()
			if err != nil {
				return nil, fmt.Errorf("%s%s: %w", slug, kind.ending, err)
			}
			files = append(files, paperFile{slug + kind.ending, text})
		}
	}
	if len(lids) > 0 {
		text, err := booklet.HelperCards(lids, size)
		if err != nil {
			return nil, fmt.Errorf("helper-card.pdf: %w", err)
		}
		files = append(files, paperFile{"helper-card.pdf", text})
	}
	return files, nil
}

// placeAll writes the files beside their places and renames them when all are
// whole.
func placeAll(dir string, files []paperFile) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %w", dir, cause(err))
	}
	for _, f := range files {
		if err := place(filepath.Join(dir, f.name), f.text); err != nil {
			return err
		}
	}
	return nil
}

func (q *question) tell(s Streams, dir string, files []paperFile) error {
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
