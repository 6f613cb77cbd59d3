package cli

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"rootbell/internal/garden/plan"
)

func versionCommand(s Streams) *cobra.Command {
	return &cobra.Command{
		Use: "version", Short: "Version, Go and commit", Args: noArguments,
		RunE: func(*cobra.Command, []string) error {
			version, goVersion, commit := programVersion()
			_, err := fmt.Fprintf(s.Out, "rootbell %s, %s, commit %s\n", version, goVersion, commit)
			return err
		},
	}
}

func schemaCommand(s Streams) *cobra.Command {
	return &cobra.Command{
		Use: "schema", Short: "JSON Schema of the plan", Args: noArguments,
		Long: "Writes the JSON Schema of the plan document. An editor that is told of it completes\nkeys and marks mistakes.",
		RunE: func(*cobra.Command, []string) error {
			_, err := io.WriteString(s.Out, plan.Schema())
			return err
		},
	}
}
