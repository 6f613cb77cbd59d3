package cli

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// usageError is wrong usage: it has no place in a plan.
type usageError struct{ what, hint string }

func (e usageError) Error() string { return e.what }

const helpShows = "'rootbell help' shows how commands are written"

// unknownCommand turns what the command parser says of a word that is no
// command into wrong usage with the nearest commands; other errors it leaves.
func unknownCommand(root *cobra.Command, err error) error {
	rest, ok := strings.CutPrefix(err.Error(), `unknown command "`)
	if !ok {
		return err
	}
	typed, _, _ := strings.Cut(rest, `"`)
	return noCommand(root, typed)
}

func noCommand(root *cobra.Command, typed string) usageError {
	var names []string
	for _, c := range root.Commands() {
		names = append(names, c.Name())
	}
	return usageError{fmt.Sprintf("there is no command %s", typed), perhaps(typed, names, helpShows)}
}

// wrongFlag says what is wrong with a flag and names those that are like it.
func wrongFlag(c *cobra.Command, err error) error {
	hint := fmt.Sprintf("'%s --help' lists the flags", c.CommandPath())
	var value *pflag.InvalidValueError
	if errors.As(err, &value) {
		kind := "whole number"
		if value.GetFlag().Value.Type() == "bool" {
			kind = "true or false"
		}
		return usageError{fmt.Sprintf("--%s %s is no %s", value.GetFlag().Name, value.GetValue(), kind), hint}
	}
	rest, unknown := strings.CutPrefix(err.Error(), "unknown flag: --")
	if !unknown {
		return usageError{err.Error(), hint}
	}
	var names []string
	c.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	if near := nearest(rest, names); len(near) > 0 {
		hint = "perhaps --" + strings.Join(near, ", --")
	}
	return usageError{fmt.Sprintf("%s has no flag --%s", c.CommandPath(), rest), hint}
}

// helpCommand shows the help of a command; a word that is none is wrong usage.
func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use: "help [COMMAND]", Short: "How a command is written",
		RunE: func(c *cobra.Command, args []string) error {
			about, rest, err := c.Root().Find(args)
			if err != nil || len(rest) > 0 {
				return noCommand(c.Root(), strings.Join(args, " "))
			}
			about.InitDefaultHelpFlag()
			return about.Help()
		},
	}
}

// completionCommand has the command parser make its scripts for the shells; a
// shell that it does not know is wrong usage.
func completionCommand(root *cobra.Command) {
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() != "completion" {
			continue
		}
		var shells []string
		for _, shell := range c.Commands() {
			shells = append(shells, shell.Name())
			shell.Args = noArguments
		}
		c.RunE = func(_ *cobra.Command, args []string) error {
			what := "no shell is named"
			if len(args) > 0 {
				what = fmt.Sprintf("there are no completions for %s", args[0])
			}
			return usageError{what, "name one of " + strings.Join(shells, ", ")}
		}
		c.Args = cobra.ArbitraryArgs
	}
}

// onePlan wants exactly one argument, the plan.
func onePlan(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return usageError{"no plan is named", "name a plan file, or - for standard input; 'rootbell new my-garden.yaml' makes one"}
	}
	if len(args) > 1 {
		return usageError{fmt.Sprintf("one plan at a time, not %d", len(args)), "run the command once for each plan"}
	}
	return nil
}

// atMostOne wants no more than one argument, which is called what.
func atMostOne(what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) > 1 {
			return usageError{fmt.Sprintf("one %s at a time, not %d", what, len(args)), "run the command once for each"}
		}
		return nil
	}
}

// oneFile wants exactly one argument, a file that is called what.
func oneFile(what, hint string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) == 0 {
			return usageError{fmt.Sprintf("no %s is named", what), hint}
		}
		if len(args) > 1 {
			return usageError{fmt.Sprintf("one %s at a time, not %d", what, len(args)), "run the command once for each"}
		}
		return nil
	}
}

func noArguments(c *cobra.Command, args []string) error {
	if len(args) > 0 {
		return usageError{fmt.Sprintf("%s takes no further word, and there is %q", c.CommandPath(), args[0]), "leave it out"}
	}
	return nil
}

// mostNear is how many near misses a hint names.
const mostNear = 3

// perhaps is a hint that names the words most like the one typed, or says
// otherwise where none is near.
func perhaps(typed string, words []string, otherwise string) string {
	if near := nearest(typed, words); len(near) > 0 {
		return "perhaps " + strings.Join(near, ", ")
	}
	return otherwise
}

// nearest are the words that differ from the one typed by two slips at most or
// begin with it, as the command parser measures it for commands; what adds
// least to the word typed comes first.
func nearest(typed string, words []string) []string {
	list := &cobra.Command{SuggestionsMinimumDistance: 2}
	for _, w := range words {
		list.AddCommand(&cobra.Command{Use: w, Run: func(*cobra.Command, []string) {}})
	}
	if typed == "" {
		return nil
	}
	near := list.SuggestionsFor(typed)
	shortestFirst(near)
	return near[:min(len(near), mostNear)]
}

func shortestFirst(words []string) {
	slices.SortStableFunc(words, func(a, b string) int { return cmp.Compare(len(a), len(b)) })
}

// complete tells a shell which words a flag takes. The flag is there, so the
// only error cannot occur.
func complete(c *cobra.Command, flag string, words ...string) {
	_ = c.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
}
