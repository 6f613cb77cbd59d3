package cli

import (
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"rootbell/internal/app/store"
)

const restoreLong = `Brings back a backup: afterwards the database holds what FILE holds. The backup
is read from end to end first, and refused where it is not whole. What the
database held before is kept beside it; the name is written to stdout.

Stop 'rootbell serve' first: a database that is open elsewhere is not replaced.
`

func restoreCommand(s Streams) *cobra.Command {
	var data database
	c := &cobra.Command{
		Use:   "restore FILE",
		Short: "Bring a backup back",
		Long:  restoreLong + exits,
		Args:  oneFile("backup", "name a file that 'rootbell backup' wrote"),
		RunE: func(c *cobra.Command, args []string) error {
			path, err := data.named()
			if err != nil {
				return err
			}
			kept, err := store.Restore(c.Context(), args[0], path, time.Now())
			if err != nil {
				return wrongly(err)
			}
			s.message("%s holds what %s holds", path, args[0])
			if kept == "" {
				return nil
			}
			s.message("what was there before is kept as %s", kept)
			_, err = fmt.Fprintln(s.Out, kept)
			return err
		},
	}
	data.flag(c)
	return c
}
