package store

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"
)

// Import keeps one garden that Export wrote, as a new garden that counts as
// changed at that moment. Nothing of it is kept unless all of it is right; the
// *Refused then names the line.
func (s *Store) Import(ctx context.Context, r io.Reader, at time.Time) (Garden, error) {
	text, err := io.ReadAll(io.LimitReader(r, MostExport+1))
	if err != nil {
		return Garden{}, fmt.Errorf("the file cannot be read: %w", err)
	}
	if len(text) > MostExport {
		return Garden{}, unfit("the file is longer than %d MiB", "check that it is one exported garden", MostExport>>20)
	}
	l, err := parse(text)
	if err != nil {
		return Garden{}, err
	}
	return s.add(ctx, l.name, l.created, at, l.revisions, l.readings)
}

// lines reads a file line by line. The first thing that is wrong ends it: from
// then on it gives nothing.
type lines struct {
	rest   []byte
	number int
	sum    []byte // of what was read before this line
	seen   hasher
	err    error
}

type hasher interface {
	io.Writer
	Sum(before []byte) []byte
}

func (l *lines) fail(reason Reason, what, hint string, parts ...any) {
	if l.err == nil {
		l.err = &Refused{Reason: reason, What: fmt.Sprintf(what, parts...), Hint: hint, Line: l.number}
	}
}

const hintAgain = "fetch the file once more from where it was exported; nothing of it was kept"

func (l *lines) broken(what string, parts ...any) { l.fail(Damaged, what, hintAgain, parts...) }

// next is the next line without its end.
func (l *lines) next() string {
	if l.err != nil {
		return ""
	}
	l.number++
	line, rest, ended := bytes.Cut(l.rest, []byte("\n"))
	if !ended {
		l.broken("the file is cut off here")
		return ""
	}
	l.rest = rest
	line = bytes.TrimSuffix(line, []byte("\r"))
	l.sum = l.seen.Sum(nil)
	_, _ = l.seen.Write(line) // a hash takes everything
	_, _ = l.seen.Write([]byte("\n"))
	return string(line)
}

// head is the value of the next line, which must have this key.
func (l *lines) head(key string) string {
	line := l.next()
	value, ok := strings.CutPrefix(line, key+":")
	if ok && value == "" {
		return ""
	}
	value, blank := strings.CutPrefix(value, " ")
	if !ok || !blank || value == "" {
		l.broken("a line beginning with '%s:' should stand here", key)
		return ""
	}
	return value
}

// count is a head that is a whole number between two.
func (l *lines) count(key string, least, most int) int {
	value := l.head(key)
	n, err := strconv.Atoi(value)
	if err != nil || strconv.Itoa(n) != value || n < least || n > most {
		l.broken("'%s' should be a whole number from %d to %d", key, least, most)
		return 0
	}
	return n
}

func (l *lines) moment(key string) time.Time {
	value := l.head(key)
	at, err := time.Parse(transferTime, value)
	if err != nil || at.Format(transferTime) != value {
		l.broken("'%s' should be a moment such as %s", key, transferTime)
	}
	return at
}

func (l *lines) blank() {
	if line := l.next(); line != "" {
		l.broken("an empty line should stand here")
	}
}

// check takes what a rule of the store says about the lines just read.
func (l *lines) check(err error) {
	if err != nil {
		l.broken("%v", err)
	}
}

// parse reads a garden on its way.
func parse(text []byte) (letter, error) {
	l := &lines{rest: bytes.TrimPrefix(text, byteOrderMark), seen: sha256.New()}
	version, ours := strings.CutPrefix(l.next(), transferName)
	switch {
	case !ours:
		l.err = nil
		l.fail(Foreign, "the file is not an exported garden", "choose a file that 'export' wrote")
	case version == transferPlan, version == transferLogbook:
	case isNumber(version):
		l.fail(Newer, "the file was written by a newer version of Rootbell", "use the newer version")
	default:
		l.broken("the version of the file cannot be read")
	}
	parsed := letter{name: l.head("name")}
	l.check(checkName(parsed.name))
	l.check(checkTrimmed(parsed.name))
	parsed.created = l.moment("created")
	n, readings := l.count("revisions", 1, mostRevisions), 0
	if version == transferLogbook {
		readings = l.count("readings", 1, mostReadings)
	}
	for i := 1; i <= n && l.err == nil; i++ {
		parsed.revisions = append(parsed.revisions, l.revision(i))
	}
	parsed.readings = l.readings(readings)
	l.blank()
	l.end()
	if l.err != nil {
		return letter{}, l.err
	}
	return parsed, nil
}

func isNumber(word string) bool {
	_, err := strconv.ParseUint(word, 10, 64)
	return err == nil
}

func (l *lines) revision(number int) Revision {
	l.blank()
	l.count("revision", number, number)
	r := Revision{Number: number, At: l.moment("at"), Why: l.head("why")}
	l.check(checkLine("what it is for", r.Why, MostWhy))
	l.check(checkTrimmed(r.Why))
	n := l.count("lines", 0, MostText)
	var text strings.Builder
	for i := 1; i <= n && l.err == nil; i++ {
		text.WriteString(l.text(i == n))
		if text.Len() > MostText {
			l.broken("the plan is longer than %d KiB", MostText>>10)
		}
	}
	r.Text = []byte(text.String())
	l.check(checkText(r.Text))
	return r
}

// readings are so many lines of the logbook, behind an empty one.
func (l *lines) readings(n int) (all []Written) {
	if n > 0 {
		l.blank()
	}
	seen := map[string]bool{}
	for i := 1; i <= n && l.err == nil; i++ {
		w := l.reading()
		if l.err == nil && seen[w.ID] {
			l.broken("the reading '%s' stands here for the second time", w.ID)
		}
		seen[w.ID] = true
		w.Number = i
		all = append(all, w)
	}
	return all
}

func (l *lines) reading() (w Written) {
	recorded, cells, _ := strings.Cut(l.head("reading"), " ")
	if l.err != nil {
		return w
	}
	at, err := time.Parse(transferTime, recorded)
	if err != nil || at.Format(transferTime) != recorded {
		l.broken("a reading should begin with a moment such as %s", transferTime)
		return w
	}
	w.Recorded, w.cells = at, []byte(cells)
	if err := json.Unmarshal(w.cells, &w.Row); err != nil {
		l.broken("the reading cannot be read: %v", err)
		return w
	}
	if again, err := json.Marshal(w.Row); err != nil || string(again) != cells {
		l.broken("the reading is not written as the logbook writes it")
	}
	for _, p := range w.Check([]string{w.By}) {
		l.broken("the reading cannot be kept: %s", p.What)
	}
	return w
}

// text is the next line of a plan with its end.
func (l *lines) text(last bool) string {
	line := l.next()
	if l.err != nil {
		return ""
	}
	end := "\n"
	body, ok := strings.CutPrefix(line, "|")
	if !ok && last {
		end = ""
		body, ok = strings.CutPrefix(line, `\`)
		ok = ok && body != ""
	}
	plain := unescapes.Replace(body)
	if !ok || escapes.Replace(plain) != body {
		l.broken("a line of the plan should stand here, after a '|'")
	}
	return plain + end
}

func (l *lines) end() {
	sum := l.head(transferSum)
	if l.err == nil && sum != fmt.Sprintf("%x", l.sum) {
		l.broken("the file was changed on its way: its sum is not right")
	}
	if l.err == nil && len(l.rest) > 0 {
		l.number++
		l.broken("nothing more should stand here")
	}
}

func checkTrimmed(line string) error {
	if strings.TrimSpace(line) != line {
		return fmt.Errorf("blanks stand at the line's end")
	}
	return nil
}
