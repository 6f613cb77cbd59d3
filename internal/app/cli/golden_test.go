package cli_test

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rootbell/internal/app/cli"
)

var update = flag.Bool("update", false, "write the golden files and the README's sample anew")

// A golden file is no proof of its values, which other tests hold against the
// outside: it shows in a review what a change moves.
func TestGoldenCheck(t *testing.T) {
	for _, name := range []string{"fernhollow", "saltbrook"} {
		t.Run(name, func(t *testing.T) {
			got := check(t, filepath.Join(examples, name+".yaml"), "--json")
			compare(t, filepath.Join("testdata", "golden", name+".json"), got)
		})
	}
}

func TestGoldenSeason(t *testing.T) {
	for _, name := range []string{"fernhollow", "saltbrook"} {
		t.Run(name, func(t *testing.T) {
			compare(t, filepath.Join("testdata", "golden", name+"-season.txt"), printed(t, "season", filepath.Join(examples, name+".yaml")))
		})
	}
}

func TestGoldenMix(t *testing.T) {
	for _, name := range []string{"fernhollow", "saltbrook"} {
		t.Run(name, func(t *testing.T) {
			compare(t, filepath.Join("testdata", "golden", name+"-mix.txt"), printed(t, "mix", filepath.Join(examples, name+".yaml")))
		})
	}
}

// The README shows what the program prints today, not what it once printed.
func TestReadmeShowsRealOutput(t *testing.T) {
	const readme, begin, end = "../../../README.md", "```text\n", "```\n"
	text, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(text), begin)
	if !ok {
		t.Fatalf("%s holds no block of text", readme)
	}
	_, after, _ := strings.Cut(rest, end)
	compare(t, readme, []byte(before+begin+heron(t)+end+after))
}

// heron is the part of the first example's report that the README shows.
func heron(t *testing.T) string {
	report := string(check(t, filepath.Join(examples, "fernhollow.yaml")))
	_, rest, ok := strings.Cut(report, "\nHeron\n")
	if !ok {
		t.Fatalf("no tub Heron in:\n%s", report)
	}
	tub, _, _ := strings.Cut(rest, "\nOtter\n")
	return "Heron\n" + tub
}

func check(t *testing.T, args ...string) []byte {
	t.Helper()
	return printed(t, append([]string{"check"}, args...)...)
}

func printed(t *testing.T, args ...string) []byte {
	t.Helper()
	var out, messages bytes.Buffer
	status := cli.Run(context.Background(), args, cli.Streams{In: strings.NewReader(""), Out: &out, Err: &messages})
	if status != cli.Done {
		t.Fatalf("exit status %d: %s", status, messages.String())
	}
	return out.Bytes()
}

func compare(t *testing.T, path string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s (go test ./internal/app/cli -update writes it anew):\n%s", path, diff)
	}
}
