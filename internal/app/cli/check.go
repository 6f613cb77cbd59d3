package cli

import (
	"encoding/json"
	"io"

	"github.com/spf13/cobra"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
)

func checkCommand(s Streams) *cobra.Command {
	var q question
	c := &cobra.Command{
		Use:   "check PLAN",
		Short: "Every number and finding, and what binds",
		Long:  "Works the plan out and shows how many plants each tub takes, what binds, where\nthe holes go and what to mind.\n" + exits,
		Args:  onePlan,
		RunE: func(c *cobra.Command, args []string) error {
			a, err := q.assess(c, s, args[0], garden.StageMix|garden.StageSeason|garden.StageChoose|garden.StageClass)
			if err != nil {
				return err
			}
			if q.json {
				if err := writeJSON(s.Out, a); err != nil {
					return err
				}
			} else if err := report(s.Out, a); err != nil {
				return err
			}
			return stopped(a.Findings)
		},
	}
	q.flags(c)
	return c
}

// stopped is the exit status of the findings.
func stopped(all []finding.Finding) error {
	if finding.Worst(all) == finding.Stop {
		return status(Stopped)
	}
	return nil
}

func writeJSON(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	return enc.Encode(v)
}
