package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"rootbell/internal/app/store"
)

const backupLong = `Writes everything that is kept into one new file: every garden, every revision.
It may run while the pages are being served. The file is checked before it gets
its name, and one that is there is never overwritten.

Keep it on another disk or stick. 'rootbell restore FILE' brings it back.
`

func backupCommand(s Streams) *cobra.Command {
	var data database
	c := &cobra.Command{
		Use:   "backup FILE",
		Short: "A copy of all gardens in one file",
		Long:  backupLong + exits,
		Args:  oneFile("backup", "name the file to write: rootbell backup gardens.db"),
		RunE: func(c *cobra.Command, args []string) (err error) {
			st, err := data.openThere(c.Context(), s)
			if err != nil {
				return err
			}
			defer func() { _ = st.Close() }() // it was only read
			err = st.Backup(c.Context(), args[0])
			var r *store.Refused
			if errors.As(err, &r) && r.Reason == store.Exists {
				return usageError{r.What, r.Hint}
			}
			if err != nil {
				return failed(err)
			}
			_, err = fmt.Fprintln(s.Out, args[0])
			return err
		},
	}
	data.flag(c)
	return c
}
