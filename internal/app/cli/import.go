package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"rootbell/internal/app/store"
)

const importLong = `Takes in one garden that 'rootbell export' wrote, with all its revisions, or a
plan file as a garden with one revision. It is a new garden each time, and its
id is written to stdout. Nothing of FILE is kept unless all of it is right.
`

func importCommand(s Streams) *cobra.Command {
	var data database
	c := &cobra.Command{
		Use:   "import FILE",
		Short: "Take in an exported garden or a plan",
		Long:  importLong + exits,
		Args:  oneFile("file", "name an exported garden or a plan, or - for standard input"),
		RunE: func(c *cobra.Command, args []string) error {
			text, err := readText(s, args[0], store.MostExport)
			if err != nil {
				return err
			}
			keep, err := takeIn(s, args[0], text)
			if err != nil {
				return err
			}
			st, err := data.open(c.Context(), s)
			if err != nil {
				return err
			}
			defer func() { _ = st.Close() }() // what was kept is on the disk
			g, err := keep(c.Context(), st)
			if err != nil {
				return told(s, args[0], err)
			}
			revisions := fmt.Sprintf("%d revisions", g.Revision)
			if g.Revision == 1 {
				revisions = "1 revision"
			}
			s.message("%s is kept in %s, with %s", plain(g.Name), st.Path(), revisions)
			_, err = fmt.Fprintln(s.Out, g.ID)
			return err
		},
	}
	data.flag(c)
	return c
}

// keeping puts what was read into the database.
type keeping func(context.Context, *store.Store) (store.Garden, error)

// takeIn reads a file to the end before any database is opened, so that a wrong
// one makes none.
func takeIn(s Streams, name string, text []byte) (keeping, error) {
	if store.IsExport(text) {
		if err := store.CheckExport(text); err != nil {
			return nil, told(s, name, err)
		}
		return func(ctx context.Context, st *store.Store) (store.Garden, error) {
			return st.Import(ctx, bytes.NewReader(text), time.Now())
		}, nil
	}
	p, err := parse(s, name, text[:min(len(text), mostBytes+1)])
	if err != nil {
		return nil, err
	}
	return func(ctx context.Context, st *store.Store) (store.Garden, error) {
		return st.Create(ctx, p.Garden, text, "taken in from a plan file", time.Now())
	}, nil
}

// told writes what is wrong with a file to stderr, at its line where it has
// one, and gives the status.
func told(s Streams, name string, err error) error {
	var r *store.Refused
	if !errors.As(err, &r) || r.Line == 0 {
		return wrongly(err)
	}
	s.message("%s:%d:1: %s", name, r.Line, plain(r.What))
	s.hint(r.Hint)
	return status(Unreadable)
}
