package cli

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"github.com/spf13/cobra"

	"rootbell/internal/app/store"
)

const exportLong = `Writes one garden with all its revisions as one plain text file, to FILE or to
stdout. 'rootbell import' takes it in on another computer. GARDEN is the
garden's name or its id; without it the gardens are listed, those in the bin
last. A file that is there is never overwritten.
`

func exportCommand(s Streams) *cobra.Command {
	var data database
	out := ""
	c := &cobra.Command{
		Use:   "export [GARDEN]",
		Short: "One garden as one text file",
		Long:  exportLong + exits,
		Args:  atMostOne("garden"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 && out != "" {
				return usageError{"no garden is named", "'rootbell export' without -o lists them"}
			}
			st, err := data.openThere(c.Context(), s)
			if err != nil {
				return err
			}
			defer func() { _ = st.Close() }() // it was only read
			if len(args) == 0 {
				return listGardens(c.Context(), s, st)
			}
			return export(c.Context(), s, st, args[0], out)
		},
	}
	data.flag(c)
	c.Flags().StringVarP(&out, "out", "o", "", "the file to write (default: stdout)")
	_ = c.MarkFlagFilename("out")
	return c
}

func export(ctx context.Context, s Streams, st *store.Store, named, out string) error {
	g, err := find(ctx, st, named)
	if err != nil {
		return err
	}
	var text bytes.Buffer
	if err := st.Export(ctx, g.ID, &text); err != nil {
		return wrongly(err)
	}
	if out == "" || out == "-" {
		_, err := s.Out.Write(text.Bytes())
		return err
	}
	if _, err := os.Lstat(out); err == nil {
		return usageError{out + " is there already, and was left as it is", "name another file"}
	}
	if err := placeAll(filepath.Dir(out), []file{{filepath.Base(out), text.Bytes()}}); err != nil {
		return err
	}
	_, err = fmt.Fprintln(s.Out, out)
	return err
}

// listGardens lists what may be exported: id, name, and how often and when it
// was changed.
func listGardens(ctx context.Context, s Streams, st *store.Store) error {
	inUse, err := st.Gardens(ctx)
	if err != nil {
		return failed(err)
	}
	bin, err := st.Bin(ctx)
	if err != nil {
		return failed(err)
	}
	if len(inUse)+len(bin) == 0 {
		s.message("no garden is kept in %s yet", st.Path())
		return nil
	}
	rows := [][]string{{"garden", "revisions", "changed", "", "id"}}
	for _, g := range append(inUse, bin...) {
		where := ""
		if !g.Discarded.IsZero() {
			where = "in the bin"
		}
		rows = append(rows, []string{plain(g.Name), fmt.Sprint(g.Revision), g.Changed.Format(time.DateOnly), where, g.ID})
	}
	var b bytes.Buffer
	table(&b, rows, "lrlll")
	_, err = s.Out.Write(b.Bytes())
	return err
}
