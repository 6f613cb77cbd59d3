package cli

import (
	"encoding/json"
	"io"

	"github.com/spf13/cobra"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
)

func checkCommand(s Streams) *cobra.Command {
	return stage{
		name: "check", short: "Every number and finding, and what binds",
		long: "Works the plan out and shows how many plants each tub takes, what binds, where\nthe holes go and what to mind.\n",
		asks: garden.StageMix | garden.StageSeason | garden.StageChoose | garden.StageClass, report: report,
	}.command(s)
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
