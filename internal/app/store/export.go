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

// Export writes one garden with all its revisions and its logbook as one plain text file, as
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
		return l.takeReadings(ctx, tx, id, size)
	})
	if err != nil {
		return err
	}
	text := l.format()
	if len(text) > MostExport || len(l.revisions) > mostRevisions || len(l.readings) > mostReadings {
		return tooLong(l.name)
	}
	_, err = w.Write(text)
	return err
}

// takeReadings adds the whole logbook of a garden.
func (l *letter) takeReadings(ctx context.Context, tx *sql.Tx, id string, size int) error {
	rows, err := tx.QueryContext(ctx, "SELECT "+readingColumns+" FROM reading r WHERE r.garden = $1 ORDER BY r.number", id)
	if err != nil {
		return err
	}
	defer func() { _ = rows.Close() }() // rows.Err tells what matters
	for rows.Next() {
		w, err := scanReading(rows)
		if err != nil {
			return err
		}
		if size += len(w.cells); size > MostExport {
			return tooLong(l.name)
		}
		l.readings = append(l.readings, w)
	}
	return rows.Err()
}

func (l letter) version() string {
	if len(l.readings) > 0 {
		return transferLogbook
	}
	return transferPlan
}

func tooLong(name string) error {
	return unfit("%s has more revisions or readings than one file takes", "make a backup of everything instead: 'rootbell backup'", name)
}

func (l letter) format() []byte {
	var b bytes.Buffer
	b.WriteString(transferName + l.version() + "\n")
	head(&b, "name", l.name)
	head(&b, "created", l.created.UTC().Format(transferTime))
	head(&b, "revisions", len(l.revisions))
	if len(l.readings) > 0 {
		head(&b, "readings", len(l.readings))
	}
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
	if len(l.readings) > 0 {
		b.WriteByte('\n')
	}
	for _, w := range l.readings {
		head(&b, "reading", w.Recorded.UTC().Format(transferTime)+" "+string(w.cells))
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
