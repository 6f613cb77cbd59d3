package cli_test

import (
	"bytes"
	"context"
	"path/filepath"
	"strings"
	"testing"

	"rootbell/internal/app/cli"
)

// On a terminal long work says how it stands, and takes its words away again;
// into a file or a pipe it says nothing.
func TestProgressOnlyOnATerminal(t *testing.T) {
	plan := filepath.Join(examples, "saltbrook.yaml")
	for _, terminal := range []bool{false, true} {
		var out, messages bytes.Buffer
		status := cli.Run(context.Background(), []string{"check", plan}, cli.Streams{Out: &out, Err: &messages, Progress: terminal})
		if status != cli.Done {
			t.Fatalf("exit status %d: %s", status, messages.String())
		}
		if said := strings.Contains(messages.String(), "laying out"); said != terminal {
			t.Errorf("terminal %v: messages %q", terminal, messages.String())
		}
		line := messages.String()
		if terminal && strings.TrimRight(line[strings.LastIndex(strings.TrimRight(line, "\r"), "\r")+1:], " \r") != "" {
			t.Errorf("the line is left standing: %q", line)
		}
		if strings.Contains(out.String(), "\r") {
			t.Error("progress among the results")
		}
	}
}

// Who presses Ctrl-C gets the shell back, with nothing half done.
func TestInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, messages bytes.Buffer
	dir := filepath.Join(t.TempDir(), "papers")
	status := cli.Run(ctx, []string{"pack", filepath.Join(examples, "fernhollow.yaml"), "-o", dir}, cli.Streams{Out: &out, Err: &messages})
	if status != cli.Failed || out.Len() > 0 || !strings.HasPrefix(messages.String(), "error: interrupted") {
		t.Errorf("exit status %d, stdout %q, stderr %q", status, out.String(), messages.String())
	}
	if found, _ := filepath.Glob(dir + "*"); len(found) > 0 {
		t.Errorf("left behind: %v", found)
	}
}
