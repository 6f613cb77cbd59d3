package cli

import (
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"rootbell/internal/paper/scene"
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
			if _, ok := sizes[paper]; !ok && c.Flags().Changed("paper") {
				return usageError{fmt.Sprintf("--paper %s is neither A4 nor Letter", paper), "write --paper A4 or --paper Letter"}
			}
			a, err := q.assess(c, s, args[0])
			if err != nil {
				return err
			}
			if paper == "" {
				paper = a.Paper()
			}
			size := sizes[paper]
			files, err := buildPapers(a, size)
			if err != nil {
				return err
			}
			undo, err := makeFolder(filepath.Join(out, stage))
			if err != nil {
				return err
			}
			if err := placeAll(filepath.Join(out, stage), files); err != nil {
				undo()
				return err
			}
			if err := q.tell(s, filepath.Join(out, stage), files); err != nil {
				return err
			}
			return stopped(a.Findings)
		},
	}
	q.flags(c)
	c.Flags().StringVarP(&out, "out", "o", "", "the folder for the papers")
	c.Flags().StringVar(&stage, "stage", "build", "the stage: build")
	c.Flags().StringVar(&paper, "paper", "", "A4 or Letter (default: the plan's)")
	complete(c, "stage", "build")
	complete(c, "paper", "A4", "Letter")
	_ = c.MarkFlagDirname("out")
	return c
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
