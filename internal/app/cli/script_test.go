package cli_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/testscript"

	"rootbell/internal/app/cli"
)

// examples is where the plans of the two invented gardens are.
const examples = "../../../examples"

func TestMain(m *testing.M) {
	programs := map[string]func(){"rootbell": run}
	for name, program := range hinderedPrograms() {
		programs[name] = program
	}
	testscript.Main(m, programs)
}

// run is the program as main wires it, with no terminal.
func run() {
	os.Exit(cli.Run(context.Background(), os.Args[1:], cli.Streams{In: os.Stdin, Out: os.Stdout, Err: os.Stderr}))
}

// Each script is one topic of the interface as a teacher or a script meets it.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			for _, name := range []string{"fernhollow.yaml", "saltbrook.yaml"} {
				text, err := os.ReadFile(filepath.Join(examples, name))
				if err != nil {
					return err
				}
				if err := os.WriteFile(filepath.Join(env.WorkDir, name), text, 0o644); err != nil {
					return err
				}
			}
			return writeMarked(env.WorkDir)
		},
		Condition: func(name string) (bool, error) {
			if name != "small-disk" {
				return false, fmt.Errorf("no condition %s", name)
			}
			return exec.Command("unshare", "--mount", "sh", "-c", "mount -t tmpfs none /mnt").Run() == nil, nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits":  exits,
			"fits":   fits,
			"json":   wellFormed,
			"change": change,
			"fill":   fill,
		},
	})
}

// writeMarked writes the first example as some editors save it: with a byte
// order mark and lines that end as on Windows.
func writeMarked(dir string) error {
	text, err := os.ReadFile(filepath.Join(dir, "fernhollow.yaml"))
	if err != nil {
		return err
	}
	marked := "\ufeff" + strings.ReplaceAll(string(text), "\n", "\r\n")
	return os.WriteFile(filepath.Join(dir, "marked.yaml"), []byte(marked), 0o644)
}

// exits STATUS PROGRAM ARGS... runs a program and asks for its exit status.
func exits(ts *testscript.TestScript, _ bool, args []string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var ended *exec.ExitError
		if !errors.As(err, &ended) {
			ts.Fatalf("%v", err)
		}
		got = ended.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
}

// fits FILE asks that no line is wider than a terminal of 80 columns.
func fits(ts *testscript.TestScript, _ bool, args []string) {
	for line := range strings.Lines(ts.ReadFile(args[0])) {
		if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > 80 {
			ts.Fatalf("%d columns: %s", n, line)
		}
	}
}

// json FILE [KEY...] asks for exactly one JSON document, with these keys.
func wellFormed(ts *testscript.TestScript, _ bool, args []string) {
	var document any
	ts.Check(json.Unmarshal([]byte(ts.ReadFile(args[0])), &document))
	for _, key := range args[1:] {
		object, ok := document.(map[string]any)
		if !ok {
			ts.Fatalf("no object")
		}
		if _, ok := object[key]; !ok {
			ts.Fatalf("no key %s", key)
		}
	}
}

// change FROM TO OLD NEW writes TO: FROM with OLD, which stands in it, replaced.
func change(ts *testscript.TestScript, _ bool, args []string) {
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[2]) {
		ts.Fatalf("%q is not in %s", args[2], args[0])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(strings.ReplaceAll(text, args[2], args[3])), 0o644))
}

// fill FILE BYTES CHARACTER writes a file of one character; \0 is the zero byte.
func fill(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	character := []byte(args[2])
	if args[2] == `\0` {
		character = []byte{0}
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), bytes.Repeat(character, n), 0o644))
}
