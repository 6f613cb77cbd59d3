package cli

import (
	"bytes"
	"fmt"

	"github.com/spf13/cobra"

	"rootbell/internal/base/facts"
	"rootbell/internal/garden"
)

func factsCommand(s Streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "facts [ID]",
		Short: "Facts with their source and status",
		Long:  "Lists every value taken from outside the program, with its source and its\nstatus: read (seen in the source named), memory, common practice, or computed.\n" + exits,
		Args:  atMostOne("fact"),
		RunE: func(_ *cobra.Command, args []string) error {
			rows := garden.Facts()
			if len(args) == 1 {
				rows = only(rows, args[0])
				if len(rows) == 0 {
					return usageError{"there is no fact " + args[0], perhaps(args[0], factIDs(), "'rootbell facts' lists them")}
				}
			}
			if asJSON {
				return writeJSON(s.Out, factRows(rows))
			}
			var b bytes.Buffer
			for _, f := range rows {
				wrap(&b, "", fmt.Sprintf("%s = %s %s", f.ID, f.Word, f.Unit))
				wrap(&b, "    ", fmt.Sprintf("%s. %s. %s", f.AppliesTo, f.Says(), f.Note))
			}
			_, err := s.Out.Write(b.Bytes())
			return err
		},
	}
	c.ValidArgsFunction = cobra.FixedCompletions(factIDs(), cobra.ShellCompDirectiveNoFileComp)
	c.Flags().BoolVar(&asJSON, "json", false, "one JSON document on stdout")
	return c
}

func only(rows []facts.Fact, id string) []facts.Fact {
	var out []facts.Fact
	for _, f := range rows {
		if string(f.ID) == id {
			out = append(out, f)
		}
	}
	return out
}

func factIDs() []string {
	var ids []string
	for _, f := range garden.Facts() {
		ids = append(ids, string(f.ID))
	}
	return ids
}

type factRow struct {
	ID        string `json:"id"`
	Value     string `json:"value"`
	Unit      string `json:"unit"`
	AppliesTo string `json:"applies_to"`
	Status    string `json:"status"`
	Source    string `json:"source"`
	Note      string `json:"note"`
}

func factRows(rows []facts.Fact) []factRow {
	out := []factRow{}
	for _, f := range rows {
		out = append(out, factRow{string(f.ID), f.Word, f.Unit, f.AppliesTo, f.Status, f.Source, f.Note})
	}
	return out
}
