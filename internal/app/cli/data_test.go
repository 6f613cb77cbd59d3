package cli_test

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"rootbell/internal/app/cli"
	"rootbell/internal/app/store"
)

// While the pages are served from a database it can be backed up, exported and
// imported into, and is not replaced.
func TestCommandsBesideAProgramThatServes(t *testing.T) {
	dir := t.TempDir()
	data, copied := filepath.Join(dir, "data.db"), filepath.Join(dir, "copy.db")
	st, err := store.Open(t.Context(), data, time.Date(2027, time.January, 11, 8, 30, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := st.Close(); err != nil {
			t.Error(err)
		}
	}()
	plan := filepath.Join(examples, "fernhollow.yaml")
	cases := []struct {
		args   []string
		status int
		says   string
	}{
		{[]string{"import", plan}, cli.Done, "Fernhollow science room is kept"},
		{[]string{"backup", copied}, cli.Done, ""},
		{[]string{"export", "Fernhollow science room"}, cli.Done, ""},
		{[]string{"restore", copied}, cli.Failed, "error: another program has " + data + " open"},
	}
	for _, c := range cases {
		var out, messages bytes.Buffer
		got := cli.Run(context.Background(), append(c.args, "--data", data), cli.Streams{In: os.Stdin, Out: &out, Err: &messages})
		if got != c.status || !strings.HasPrefix(messages.String(), c.says) {
			t.Errorf("%v: status %d, %s", c.args, got, messages.String())
		}
		if (got == cli.Done) != (out.Len() > 0) {
			t.Errorf("%v: stdout %q", c.args, out.String())
		}
	}
	if all, err := st.Gardens(t.Context()); err != nil || len(all) != 1 {
		t.Errorf("served is %v, %v", all, err)
	}
}
