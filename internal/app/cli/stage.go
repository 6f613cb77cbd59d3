package cli

import (
	"io"

	"github.com/spf13/cobra"

	"rootbell/internal/garden"
)

// stage is a command that works a plan out and tells one part of the answer.
type stage struct {
	name, short, long string
	asks              garden.Stages
	report            func(io.Writer, *garden.Assessment) error // for the terminal
	document          func(*garden.Assessment) any              // for --json; nil: the whole assessment
}

func (st stage) command(s Streams) *cobra.Command {
	var q question
	c := &cobra.Command{
		Use:   st.name + " PLAN",
		Short: st.short,
		Long:  st.long + exits,
		Args:  onePlan,
		RunE: func(c *cobra.Command, args []string) error {
			a, err := q.assess(c, s, args[0], st.asks)
			if err != nil {
				return err
			}
			if err := st.tell(s, a, q.json); err != nil {
				return err
			}
			return stopped(a.Findings)
		},
	}
	q.flags(c)
	return c
}

func (st stage) tell(s Streams, a *garden.Assessment, asJSON bool) error {
	switch {
	case !asJSON:
		return st.report(s.Out, a)
	case st.document != nil:
		return writeJSON(s.Out, st.document(a))
	}
	return writeJSON(s.Out, a)
}
