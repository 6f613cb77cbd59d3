package cli

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"rootbell/internal/app/store"
)

// database is which file the gardens are kept in.
type database struct{ path string }

func (d *database) flag(c *cobra.Command) {
	c.Flags().StringVar(&d.path, "data", "", "the database (default: in your settings folder)")
	_ = c.MarkFlagFilename("data", "db")
}

// named is the file that --data names, or the usual one.
func (d *database) named() (string, error) {
	if d.path != "" {
		return d.path, nil
	}
	path, err := store.DefaultPath()
	return path, failed(err)
}

// open opens the database; where there is none yet, an empty one is made.
func (d *database) open(ctx context.Context, s Streams) (*store.Store, error) {
	path, err := d.named()
	if err != nil {
		return nil, err
	}
	st, err := store.Open(ctx, path, time.Now())
	if err != nil {
		return nil, failed(err)
	}
	if st.Kept() != "" {
		s.message("%s was brought up to date; as it was before, it is kept as %s", st.Path(), st.Kept())
	}
	return st, nil
}

// openThere opens the database that must be there already.
func (d *database) openThere(ctx context.Context, s Streams) (*store.Store, error) {
	path, err := d.named()
	if err != nil {
		return nil, err
	}
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return nil, usageError{"there is no database " + path, "name another with --data, or bring a garden in with 'rootbell import FILE'"}
	}
	return d.open(ctx, s)
}

// failed is an error of the store as a failure, with what to do.
func failed(err error) error {
	var r *store.Refused
	if errors.As(err, &r) {
		return failedError{r.Error(), r.Hint}
	}
	return err
}

// wrongly is an error of the store as wrong usage where the reason lies in what
// was named, and as a failure where it lies in the disk or another program.
func wrongly(err error) error {
	var r *store.Refused
	if !errors.As(err, &r) || slices.Contains([]store.Reason{store.Busy, store.Full, store.ReadOnly}, r.Reason) {
		return failed(err)
	}
	return usageError{r.What, r.Hint}
}

// find is the garden of an id or a name; one in use comes before one in the bin.
func find(ctx context.Context, st *store.Store, named string) (store.Garden, error) {
	inUse, err := st.Gardens(ctx)
	if err != nil {
		return store.Garden{}, failed(err)
	}
	bin, err := st.Bin(ctx)
	if err != nil {
		return store.Garden{}, failed(err)
	}
	var names []string
	for _, some := range [][]store.Garden{inUse, bin} {
		var found []store.Garden
		for _, g := range some {
			if g.ID == named {
				return g, nil
			}
			if strings.EqualFold(g.Name, named) {
				found = append(found, g)
			}
			names = append(names, g.Name)
		}
		if len(found) == 1 {
			return found[0], nil
		}
		if len(found) > 1 {
			return store.Garden{}, usageError{fmt.Sprintf("%d gardens are called %s", len(found), named), "name one of them by its id: " + ids(found)}
		}
	}
	return store.Garden{}, usageError{"there is no garden " + named, perhapsName(named, names, "'rootbell export' lists them")}
}

// perhapsName is perhaps for names, which may be of several words.
func perhapsName(typed string, names []string, otherwise string) string {
	var joined []string
	for _, name := range names {
		joined = append(joined, strings.ReplaceAll(name, " ", "_"))
	}
	return strings.ReplaceAll(perhaps(strings.ReplaceAll(typed, " ", "_"), joined, otherwise), "_", " ")
}

func ids(gardens []store.Garden) string {
	var all []string
	for _, g := range gardens {
		all = append(all, g.ID)
	}
	return strings.Join(all, ", ")
}
