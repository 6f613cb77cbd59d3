// Command manpages writes the manual pages of the program, one a command, into
// the folder named. It is run by go generate and no part of the program.
package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"

	"rootbell/internal/app/cli"
)

// edition is the day the pages say they are of. It is fixed, so that the same
// commands give the same pages; whoever changes the commands may move it.
var edition = time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: manpages FOLDER")
		os.Exit(2)
	}
	if err := write(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(3)
	}
}

// write makes the folder hold the pages of today's commands and no others.
func write(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	former, err := filepath.Glob(filepath.Join(dir, "*.1"))
	if err != nil {
		return err
	}
	for _, page := range former {
		if err := os.Remove(page); err != nil {
			return err
		}
	}
	return page(cli.Root(cli.Streams{}), dir)
}

// page writes the page of a command and those of the commands under it.
func page(c *cobra.Command, dir string) error {
	for _, under := range c.Commands() {
		if !under.IsAvailableCommand() || under.IsAdditionalHelpTopicCommand() {
			continue
		}
		if err := page(under, dir); err != nil {
			return err
		}
	}
	c.DisableAutoGenTag = true
	c.InitDefaultHelpFlag()
	name := strings.ReplaceAll(c.CommandPath(), " ", "-")
	day := edition
	var text bytes.Buffer
	header := doc.GenManHeader{Title: strings.ToUpper(name), Section: "1", Date: &day, Source: "Rootbell", Manual: "Rootbell"}
	if err := doc.GenMan(c, &header, &text); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, name+".1"), text.Bytes(), 0o644)
}
