// Package cli is the command line: it reads a plan, asks for its assessment
// and writes results to stdout and messages to stderr.
//
// The rules of the interface:
//   - results on stdout, messages on stderr, '-' reads the plan from stdin;
//   - exit 0 done, 1 a stop finding, 2 an unreadable plan or wrong usage with
//     an empty stdout, 3 anything else;
//   - a message is 'FILE:LINE:COL: what is wrong', then a line 'hint: …';
//   - nothing half-written: a file is written beside its place and renamed.
package cli

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
)

//go:generate go run rootbell/internal/app/cli/manpages ../../../docs/man

// The exit statuses.
const (
	Done       = 0
	Stopped    = 1 // a stop finding
	Unreadable = 2 // the plan or the usage is wrong
	Failed     = 3 // anything else
)

// Streams are where a command reads and writes.
type Streams struct {
	In       io.Reader
	Out, Err io.Writer
	Progress bool // stderr is a terminal: long work may say how it stands
}

// status ends a command with an exit status; its messages are written already.
type status int

func (s status) Error() string { return fmt.Sprintf("exit status %d", int(s)) }

// Run runs one command and returns its exit status.
func Run(ctx context.Context, args []string, s Streams) int {
	root := Root(s)
	root.SetArgs(args)
	root.SetIn(s.In)
	root.SetOut(s.Out)
	root.SetErr(s.Err)
	err := root.ExecuteContext(ctx)
	if err == nil {
		return Done
	}
	var code status
	if errors.As(err, &code) {
		return int(code)
	}
	var usage usageError
	if errors.As(unknownCommand(root, err), &usage) {
		s.fail(usage.what, usage.hint)
		return Unreadable
	}
	var failed failedError
	switch {
	case errors.As(err, &failed):
		s.fail(failed.what, failed.hint)
	case ctx.Err() != nil:
		s.fail("interrupted before it was done", "nothing was written; run it again")
	default:
		s.fail(cause(err).Error(), "")
	}
	return Failed
}

// message writes a line to stderr. Where that cannot be written nobody is left
// to be told.
func (s Streams) message(format string, parts ...any) {
	_, _ = fmt.Fprintf(s.Err, format+"\n", parts...)
}

// hint writes what to do, where there is something.
func (s Streams) hint(text string) {
	if text != "" {
		s.message("hint: %s", plain(text))
	}
}

func (s Streams) fail(what, hint string) {
	s.message("error: %s", plain(what))
	s.hint(hint)
}

const exits = `
Exit status: 0 done; 1 there is a stop finding (results are still given);
2 the plan cannot be read or the usage is wrong; 3 anything else.`

// Root is the program's command with everything under it.
func Root(s Streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "rootbell",
		Short: "Plan and build a classroom garden of deep-water-culture tubs",
		Long: `Rootbell takes a measured tub and says how many plants it feeds, where the
holes go in its lid, and why, with the working of every number.

Begin with 'rootbell new my-garden.yaml', change the measures to yours, then
'rootbell check my-garden.yaml' and 'rootbell pack my-garden.yaml -o papers'.
` + exits,
		SilenceErrors: true, SilenceUsage: true,
	}
	root.SetFlagErrorFunc(wrongFlag)
	root.SetUsageTemplate(strings.ReplaceAll(root.UsageTemplate(), ".FlagUsages ", fmt.Sprintf(".FlagUsagesWrapped %d ", columns)))
	root.SetHelpCommand(helpCommand())
	root.AddCommand(newCommand(s), checkCommand(s), packCommand(s), mixCommand(s), chooseCommand(s), seasonCommand(s), todayCommand(s), explainCommand(s), factsCommand(s), schemaCommand(s), versionCommand(s), serveCommand(s))
	root.AddCommand(backupCommand(s), restoreCommand(s), exportCommand(s), importCommand(s))
	completionCommand(root)
	return root
}
