package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"database/sql"
	"fmt"
	"io"
	"strings"
)

// Export writes one garden with all its revisions as one plain text file, as
// the comment on the format says. Nothing is written where something is wrong.
func (s *Store) Export(ctx context.Context, id string, w io.Writer) error {
	var l letter
	err := s.look(ctx, func(tx *sql.Tx) error {
		g, err := gardenIn(ctx, tx, id)
		if err != nil {
			return err
		}
		l = letter{name: g.Name, created: g.Created}
		size := 0
		for n := 1; n <= g.Revision; n++ {
			r, err := revisionIn(ctx, tx, id, n)
			if err != nil {
				return err
			}
			if size += len(r.Text); size > MostExport {
				return tooLong(g.Name)
			}
			l.revisions = append(l.revisions, r)
		}
		return nil
	})
	if err != nil {
		return err
	}
	text := l.format()
	if len(text) > MostExport || len(l.revisions) > mostRevisions {
		return tooLong(l.name)
	}
	_, err = w.Write(text)
	return err
}

func tooLong(name string) error {
	return unfit("%s has more revisions than one file takes", "make a backup of everything instead: 'rootbell backup'", name)
}

func (l letter) format() []byte {
	var b bytes.Buffer
	b.WriteString(transferName + transferVersion + "\n")
	head(&b, "name", l.name)
	head(&b, "created", l.created.UTC().Format(transferTime))
	head(&b, "revisions", len(l.revisions))
	for _, r := range l.revisions {
		b.WriteByte('\n')
		head(&b, "revision", r.Number)
		head(&b, "at", r.At.UTC().Format(transferTime))
		head(&b, "why", r.Why)
		head(&b, "lines", lineCount(r.Text))
		for line := range strings.Lines(string(r.Text)) {
			body, ended := strings.CutSuffix(line, "\n")
			b.WriteString(map[bool]string{true: "|", false: `\`}[ended])
			b.WriteString(escapes.Replace(body))
			b.WriteByte('\n')
		}
	}
	b.WriteByte('\n')
	head(&b, transferSum, fmt.Sprintf("%x", sha256.Sum256(b.Bytes())))
	return b.Bytes()
}

// head writes one head. An empty value has no blank before it, since editors
// take blanks at the end of a line away.
func head(b *bytes.Buffer, key string, value any) {
	b.WriteString(strings.TrimSuffix(fmt.Sprintf("%s: %v", key, value), " ") + "\n")
}

func lineCount(text []byte) int {
	n := bytes.Count(text, []byte("\n"))
	if len(text) > 0 && text[len(text)-1] != '\n' {
		n++
	}
	return n
}
