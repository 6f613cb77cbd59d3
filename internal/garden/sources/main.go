// Command sources writes docs/sources.md: every fact that assessments rest on,
// with its source and status. It is run by go generate and no part of the
// program.
package main

import (
	"bytes"
	"fmt"
	"os"
	"strings"

	"rootbell/internal/base/facts"
	"rootbell/internal/garden"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "usage: sources FILE")
		os.Exit(2)
	}
	if err := os.WriteFile(os.Args[1], page(garden.FactTables()), 0o644); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(3)
	}
}

const head = `<!-- Written by go generate from the facts.csv of each package: change those. -->

# Sources

Every figure that comes from outside the program, by the package that uses it,
with where it is from and how far it can be trusted. ` + "`rootbell facts`" + ` lists the
same in the terminal.

| status | means |
|---|---|
| read | seen in the source named |
| memory | from a source named but not looked up again |
| common practice | what people in the trade do; no published source is known |
| computed | worked out from other figures, as the row says |

Your own measurement is better than any of them.
`

// page is the whole document.
func page(tables []facts.Table) []byte {
	var b bytes.Buffer
	b.WriteString(head)
	count := map[string]int{}
	total := 0
	for _, t := range tables {
		for _, f := range t.Rows() {
			count[f.Status]++
			total++
		}
	}
	var counts []string
	for _, status := range facts.Statuses {
		counts = append(counts, fmt.Sprintf("%d %s", count[status], status))
	}
	fmt.Fprintf(&b, "\nThere are %d: %s.\n", total, strings.Join(counts, ", "))
	for _, t := range tables {
		section(&b, t)
	}
	return b.Bytes()
}

// section is the table of one package's facts.
func section(b *bytes.Buffer, t facts.Table) {
	pkg, _, _ := strings.Cut(t.Name, "/")
	fmt.Fprintf(b, "\n## %s\n\n| id | value | unit | applies to | status | source | note |\n|---|---|---|---|---|---|---|\n", pkg)
	for _, f := range t.Rows() {
		fmt.Fprintf(b, "| `%s` |", f.ID)
		for _, text := range []string{f.Word, f.Unit, f.AppliesTo, f.Status, f.Source, f.Note} {
			b.WriteString(cell(text))
		}
		b.WriteByte('\n')
	}
}

// cell is text inside a table, whose bars would otherwise end it.
func cell(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if text == "" {
		return " |"
	}
	return " " + strings.NewReplacer("|", `\|`, "<", "&lt;", "*", `\*`).Replace(text) + " |"
}
