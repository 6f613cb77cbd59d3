package cli

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
)

func newCommand(s Streams) *cobra.Command {
	units, force := "metric", false
	c := &cobra.Command{
		Use:   "new [FILE]",
		Short: "A commented plan to start from",
		Long:  "Writes a commented plan with invented measures to FILE, or to stdout. Change the\nmeasures to yours.\n" + exits,
		Args:  atMostOne("file"),
		RunE: func(_ *cobra.Command, args []string) error {
			system := quantity.Metric
			switch units {
			case "us":
				system = quantity.US
			case "metric":
			default:
				return usageError{fmt.Sprintf("--units %s is neither metric nor us", units), "write --units metric or --units us"}
			}
			text := []byte(plan.Starter(system))
			if len(args) == 0 || args[0] == "-" {
				_, err := s.Out.Write(text)
				return err
			}
			if _, err := os.Lstat(args[0]); err == nil && !force {
				return usageError{args[0] + " is there already, and was left as it is", "name another file, or overwrite it with --force"}
			}
			if err := placeAll(filepath.Dir(args[0]), []file{{filepath.Base(args[0]), text}}); err != nil {
				return err
			}
			s.message("%s is written. Change its measures to yours, then: rootbell check %s", args[0], args[0])
			return nil
		},
	}
	c.Flags().StringVar(&units, "units", "metric", "metric or us")
	complete(c, "units", "metric", "us")
	c.Flags().BoolVar(&force, "force", false, "overwrite FILE if it is there")
	return c
}
