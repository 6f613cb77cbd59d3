package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/spf13/cobra"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// mostBytes is the longest plan read; more is no plan.
const mostBytes = 1 << 20

// question is what the common flags ask.
type question struct {
	on       string
	readings string
	seed     uint64
	json     bool
}

func (q *question) flags(c *cobra.Command) {
	c.Flags().StringVar(&q.on, "on", "", "the day it is asked for, such as 2027-01-11 (default: that of the last reading, else the first term day)")
	q.readingsFlag(c)
	c.Flags().Uint64Var(&q.seed, "seed", 1, "seed of the searches and of the forecast's luck: the same seed gives the same answer")
	c.Flags().BoolVar(&q.json, "json", false, "one JSON document on stdout")
}

// read reads and parses the plan. What is wrong with it is written to stderr,
// all of it at once.
func read(s Streams, name string) (*plan.Plan, error) {
	text, err := readText(s, name, mostBytes)
	if err != nil {
		return nil, err
	}
	return parse(s, name, text)
}

func parse(s Streams, name string, text []byte) (*plan.Plan, error) {
	p, problems := plan.Parse(name, text)
	if len(problems) == 0 {
		return p, nil
	}
	for _, problem := range problems {
		s.message("%s:%d:%d: %s", name, problem.Line, problem.Column, plain(problem.What))
		s.hint(problem.Hint)
	}
	return nil, status(Unreadable)
}

// readText reads a file, or standard input for -, up to a byte more than most.
func readText(s Streams, name string, most int64) ([]byte, error) {
	if name == "-" {
		return limited(s.In, name, most)
	}
	f, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, usageError{fmt.Sprintf("there is no file %s", name), "check the name, or make a plan with 'rootbell new " + name + "'"}
	}
	if err != nil {
		return nil, usageError{fmt.Sprintf("%s cannot be read: %s", name, cause(err)), "check that it is a file you may read"}
	}
	text, err := limited(f, name, most)
	_ = f.Close() // it was only read
	return text, err
}

func limited(r io.Reader, name string, most int64) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, most+1))
	if err != nil {
		return nil, usageError{fmt.Sprintf("%s cannot be read: %s", name, cause(err)), "check that it is a file you may read"}
	}
	return text, nil
}

// cause is the cause of a file error, without the paths again.
func cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}

// assess reads the plan and works it out, with the stages beside Build.
func (q *question) assess(c *cobra.Command, s Streams, name string, stages garden.Stages) (*garden.Assessment, error) {
	in := garden.Inputs{Seed: q.seed, Stages: stages}
	if c.Flags().Changed("on") {
		day, err := time.Parse(time.DateOnly, q.on)
		if err != nil {
			return nil, usageError{fmt.Sprintf("--on %q is no day", q.on), "write it as 2027-01-11"}
		}
		in.On = plan.Date{Year: day.Year(), Month: day.Month(), Day: day.Day()}
	}
	if q.readings == "-" && name == "-" {
		return nil, usageError{"standard input cannot be both the plan and its readings", "name a file for one of them"}
	}
	p, err := read(s, name)
	if err != nil {
		return nil, err
	}
	in.Plan = p
	if err := q.logbook(s, p, &in); err != nil {
		return nil, err
	}
	if s.Progress {
		defer s.progress("laying out the lids …")()
	}
	return garden.Assess(c.Context(), in)
}

// progress says on one line of a terminal what takes its time; done wipes it.
func (s Streams) progress(what string) (done func()) {
	_, _ = fmt.Fprint(s.Err, what, "\r")
	return func() {
		_, _ = fmt.Fprint(s.Err, strings.Repeat(" ", utf8.RuneCountInString(what)), "\r")
	}
}
